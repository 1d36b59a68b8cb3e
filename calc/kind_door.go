package calc

import (
	"fmt"

	"lastrow/calc/height"
	"lastrow/calc/length"
	"lastrow/calc/limit"
	"lastrow/calc/term"
)

func init() {
	handlers[term.AskDoor] = door
	handlers[term.AskUndercut] = undercut
}

// door gives what is left under a door over the new floor, and what to take off it to swing.
func door(in *inputs) (Result, error) {
	gap := length.Length(need[term.Len](in, term.DoorGap))
	up := in.buildUp()
	in.check(height.CheckDoorGap(gap))
	if err := in.err(); err != nil {
		return Result{}, err
	}
	d := height.Door{Gap: gap, BuildUp: up, Working: in.lengthOr(term.WorkingClearance, limit.DoorWorking.In(in.tape.System))}
	in.check(height.CheckDoorGap(d.Working))
	if err := in.err(); err != nil {
		return Result{}, err
	}
	r := Result{
		Values: []term.Named{
			{Name: term.DoorClearance, Value: term.Len(d.Clearance())},
			{Name: term.TrimOff, Value: term.Len(d.TrimOff())},
			{Name: term.CutLine, Value: term.Len(d.CutLine())},
		},
		Working: append(in.layerLines(up), in.doorLines(d)...),
	}
	in.doorKind(&r, d)
	return r, in.err()
}

// doorKind adds what holds for some doors alone: the limit of a fire door, and the hangers of one that slides or folds,
// which can be raised in place of trimming it.
func (in *inputs) doorKind(r *Result, d height.Door) {
	if !in.has(term.DoorKind) {
		return
	}
	switch kind, _ := get[term.Word](in, term.DoorKind); {
	case names(kind, "fire"):
		r.Values = append(r.Values, term.Named{Name: term.Passes, Value: term.Pass(d.FireDoorKept())})
		r.Working = append(r.Working, limit.FireDoor.Why(in.tape))
	case names(kind, "slid", "fold", "closet", "bypass"):
		raise := height.RaiseBrackets(d.BuildUp, d.Gap-d.Working)
		r.Values = append(r.Values, term.Named{Name: term.RaiseBy, Value: term.Len(raise)})
		r.Working = append(r.Working, fmt.Sprintf("or raise its hangers and brackets by %s, and take nothing off", in.mark(raise)))
	}
}

func (in *inputs) doorLines(d height.Door) []string {
	e := in.told
	lines := []string{fmt.Sprintf("%s under the door - %s build-up = %s clearance", e(d.Gap), e(d.BuildUp), in.mark(d.Clearance()))}
	if d.TrimOff() == 0 {
		return append(lines, fmt.Sprintf("%s or more swings: nothing to take off", e(d.Working)))
	}
	return append(lines, in.trimLine(d),
		fmt.Sprintf("cut line %s + %s = %s above the subfloor", e(d.BuildUp), e(d.Working), in.mark(d.CutLine())))
}

func (in *inputs) trimLine(d height.Door) string {
	e, left := in.told, d.Clearance()
	if left < 0 {
		return fmt.Sprintf("%s that the door stands in the floor + %s working clearance = %s to take off", e(-left), e(d.Working), in.mark(d.TrimOff()))
	}
	return fmt.Sprintf("%s working clearance - %s = %s to take off", e(d.Working), e(left), in.mark(d.TrimOff()))
}

// undercut gives what has to pass under jambs and casings, and the line to cut them at: that and some play.
func undercut(in *inputs) (Result, error) {
	up := in.buildUp()
	if err := in.err(); err != nil {
		return Result{}, err
	}
	play := in.lengthOr(term.Play, limit.UndercutPlay.In(in.tape.System))
	in.between(term.Play, play, 0, length.Inch)
	if err := in.err(); err != nil {
		return Result{}, err
	}
	cut := height.Undercut(height.Layers{Plank: up}, play)
	return Result{
		Values: []term.Named{{Name: term.Undercut, Value: term.Len(up)}, {Name: term.CutLine, Value: term.Len(cut)}},
		Working: append(in.layerLines(up),
			fmt.Sprintf("%s + %s play = %s, the line to cut at above the subfloor", in.told(up), in.told(play), in.mark(cut))),
	}, nil
}
