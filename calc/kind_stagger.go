package calc

import (
	"fmt"

	"lastrow/calc/length"
	"lastrow/calc/limit"
	"lastrow/calc/term"
)

func init() { handlers[term.AskStagger] = stagger }

// stagger judges how far a row's joint lies from the joints of the row before. An offcut starts its row, so that its end
// is the joint; joints repeat every plank, so that the nearest one counts.
func stagger(in *inputs) (Result, error) {
	if offset, ok := in.length(term.Offset); ok {
		return in.staggerResult(offset, nil)
	}
	joint := in.joint()
	before := in.needLength(term.PreviousJoint)
	plank := in.needLength(term.PlankLength)
	if err := in.err(); err != nil {
		return Result{}, err
	}
	if in.has(term.Offcut) && !in.has(term.Joint) && joint > plank {
		in.refuse("an offcut of %s is longer than the plank, %s", in.tape.Exact(joint), in.tape.Exact(plank))
		return Result{}, in.err()
	}
	apart := joint - before
	if apart < 0 {
		apart = -apart
	}
	t := in.text
	lines := []string{fmt.Sprintf("%s - %s = %s", t(max(joint, before)), t(min(joint, before)), t(apart))}
	offset := apart % plank
	if offset < apart {
		lines = append(lines, fmt.Sprintf("less whole planks of %s: %s", t(plank), t(offset)))
	}
	if plank-offset < offset {
		lines = append(lines, fmt.Sprintf("to the next joint: %s - %s = %s", t(plank), t(offset), t(plank-offset)))
		offset = plank - offset
	}
	return in.staggerResult(offset, lines)
}

// joint is where the row's joint lies from its start: as said, or the end of the offcut that starts it.
func (in *inputs) joint() length.Length {
	if in.has(term.Joint) {
		return in.needLength(term.Joint)
	}
	return in.needLength(term.Offcut, term.Joint)
}

func (in *inputs) staggerResult(offset length.Length, lines []string) (Result, error) {
	least := in.lengthOr(term.LeastStagger, limit.LeastStagger.In(in.tape.System))
	word := "keeps"
	if offset < least {
		word = "is short of"
	}
	return Result{
		Values: []term.Named{
			{Name: term.Offset, Value: term.Len(offset)},
			{Name: term.LeastStagger, Value: term.Len(least)},
			{Name: term.Passes, Value: term.Pass(offset >= least)},
		},
		Working: append(lines, fmt.Sprintf("%s %s the least of %s", in.text(offset), word, in.text(least))),
	}, in.err()
}
