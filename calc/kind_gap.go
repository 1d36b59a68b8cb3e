package calc

import (
	"fmt"
	"math/big"

	"lastrow/calc/length"
	"lastrow/calc/limit"
	"lastrow/calc/subfloor"
	"lastrow/calc/term"
)

func init() {
	handlers[term.AskGap] = gap
	handlers[term.AskLongRun] = longRun
}

// gap gives the gap to leave at each end of a run, and the movement that it is to take: 0.15 % of the run at each end,
// or where a swing of humidity was said, the ceiling of what the whole run can move over it.
func gap(in *inputs) (Result, error) {
	run := in.run()
	if err := in.err(); err != nil {
		return Result{}, err
	}
	need := limit.DefaultGap(run, in.tape.System)
	move, lines, err := in.movement(run)
	if err != nil {
		return Result{}, err
	}
	r := Result{
		Values:  []term.Named{{Name: term.Gap, Value: term.Len(need)}, {Name: term.Movement, Value: term.Len(move)}},
		Working: append(in.gapLines(run, need), lines...),
	}
	if _, across, ok := in.sides(); ok && !in.has(term.Run) {
		r.Working = append(r.Working, fmt.Sprintf("the other way, over %s: %s at each edge",
			in.tape.Exact(across), in.tape.Exact(limit.DefaultGap(across, in.tape.System))))
	}
	if left, ok := in.length(term.Gap); ok {
		r.Values = append(r.Values, term.Named{Name: term.Passes, Value: term.Pass(left >= need)})
		r.Working = append(r.Working, fmt.Sprintf("the gap of %s said against %s", in.tape.Exact(left), in.tape.Exact(need)))
	}
	return r, nil
}

// run is the length of floor asked about: as said, or the longer side of the room.
func (in *inputs) run() length.Length {
	if !in.has(term.Run) {
		if along, _, ok := in.sides(); ok {
			return along
		}
	}
	return in.needLength(term.Run)
}

func (in *inputs) gapLines(run, need length.Length) []string {
	s := in.tape.System
	byRun, least := limit.ByRun(run), limit.GapLeast.In(s)
	lines := []string{fmt.Sprintf("1.5 mm a metre (0.15 %%) x %s = %s (%s)", in.tape.Exact(run), in.mark(byRun), limit.GapPerMetre.Source)}
	return append(lines, fmt.Sprintf("the larger of that and %s, up to the next %s = %s at each edge; the flooring's own sheet rules",
		in.tape.Exact(least), length.Tape{System: s}.Text(length.Tape{System: s}.Division()), in.tape.Exact(need)))
}

func (in *inputs) movement(run length.Length) (length.Length, []string, error) {
	if !in.has(term.HumiditySwing) {
		move := limit.ByRun(run)
		return move, []string{fmt.Sprintf("movement allowed for at each edge: 0.15 %% of the run = %s", in.mark(move))}, nil
	}
	points := in.amount(term.HumiditySwing)
	if points != nil && (points.Sign() < 0 || points.Cmp(big.NewRat(100, 1)) > 0) {
		in.refuse("a humidity swing of %s points is out of bounds: 0 to 100", points.FloatString(1))
	}
	if err := in.err(); err != nil {
		return 0, nil, err
	}
	move := subfloor.Movement(run, points)
	return move, []string{fmt.Sprintf("at most 0.11 mm a metre a point x %s x %s points = %s in all, half at each end if it is free (%s)",
		in.tape.Exact(run), decimal(points), in.mark(move), limit.MoveCeiling.Source)}, nil
}

// amount is a figure that may come as a percentage or as a plain number. It is nil where it is neither, which is refused.
func (in *inputs) amount(n term.Name) *big.Rat {
	g, ok := in.peek(n)
	if !ok {
		in.lack(n)
		return nil
	}
	var q *big.Rat
	switch v := g.Value.(type) {
	case term.Percent:
		q = big.NewRat(int64(v), 1000)
	case term.Number:
		q = v.Rat
	case term.Count:
		q = big.NewRat(int64(v), 1)
	default:
		in.refuse("%s can't be that: it is a number", n)
		return nil
	}
	in.use(g)
	return q
}

// decimal shows q to three places, without zeros at the end.
func decimal(q *big.Rat) string {
	f, _ := q.Float64()
	return fmt.Sprintf("%.6g", f)
}

// longRun says whether a floor may run so far in one piece, and into how many fields it must be parted where not.
func longRun(in *inputs) (Result, error) {
	run := in.run()
	if err := in.err(); err != nil {
		return Result{}, err
	}
	most := in.lengthOr(term.Limit, limit.LongRun.In(in.tape.System))
	if most <= 0 {
		in.refuse("a limit of %s leaves no floor", in.tape.Exact(most))
		return Result{}, in.err()
	}
	fields, kept := subfloor.Run(run, most)
	return Result{
		Values: []term.Named{
			{Name: term.Limit, Value: term.Len(most)},
			{Name: term.Passes, Value: term.Pass(kept)},
			{Name: term.Fields, Value: term.Count(fields)},
		},
		Working: in.runLines(run, most, fields),
	}, nil
}

func (in *inputs) runLines(run, most length.Length, fields int64) []string {
	r := in.tape.Room
	lines := []string{fmt.Sprintf("%s against %s in one piece (%s; the flooring's own sheet rules)", r(run), r(most), limit.LongRun.Source)}
	if fields > 1 {
		lines = append(lines, fmt.Sprintf("%s / %s, up to the next whole number = %d fields of %s or less", r(run), r(most), fields, r(most)),
			fmt.Sprintf("part them by about %s under a t-molding, at a doorway where there is one", in.tape.Text(limit.FieldJoint.Inch)))
	}
	return lines
}
