package calc

import (
	"fmt"

	"lastrow/calc/length"
	"lastrow/calc/material"
	"lastrow/calc/plank"
	"lastrow/calc/term"
)

func init() { handlers[term.AskUnderlay] = underlay }

// Whether a strip of underlay may be pieced from two rolls.
const (
	wholeStrips  term.Word = "whole"
	piecedStrips term.Word = "pieced"
)

// underlay counts the strips, the rolls and the tape; of an area alone, the rolls.
func underlay(in *inputs) (Result, error) {
	roll := plank.Roll{Width: in.needLength(term.RollWidth), Length: in.needLength(term.RollLength)}
	along, across, known := in.stripSides()
	if !known {
		in.needArea()
	}
	if err := in.err(); err != nil {
		return Result{}, err
	}
	roll.Overlap = in.lengthOr(term.Overlap, 0)
	if err := material.CheckRoll(roll); err != nil {
		in.refuse("%v", err)
		return Result{}, in.err()
	}
	if !known {
		return in.rollsByArea(roll), nil
	}
	return in.strips(along, across, roll)
}

// stripSides gives the sides that strips run along and across, unless an area alone was said.
func (in *inputs) stripSides() (along, across length.Length, ok bool) {
	_, area := in.said[term.FloorArea]
	_, room := in.said[term.Room]
	if area && !room {
		return 0, 0, false
	}
	return in.sides()
}

func (in *inputs) rollsByArea(roll plank.Roll) Result {
	floor, _ := in.floorArea()
	n := material.RollsByArea(floor, roll)
	one := (roll.Width - roll.Overlap).Times(roll.Length)
	return Result{
		Values: []term.Named{{Name: term.Rolls, Value: term.Count(n)}},
		Working: []string{
			fmt.Sprintf("%s / %s a roll = %s rolls, so %d", in.tape.Area(floor), in.tape.Area(one), floor.Over(one).FloatString(2), n),
			"by area alone: strips that may not be pieced can take more; the room's two sides tell",
		},
	}
}

func (in *inputs) strips(along, across length.Length, roll plank.Roll) (Result, error) {
	may := in.wordOr(term.Piecing, wholeStrips, piecedStrips)
	if err := in.err(); err != nil {
		return Result{}, err
	}
	s := material.Underlay(along, across, roll, may == piecedStrips)
	lines := append([]string{in.acrossLine(across, roll, s.N)}, in.rollLines(s, roll)...)
	if p := material.Underlay(along, across, roll, true); p.Rolls < s.Rolls {
		lines = append(lines, fmt.Sprintf("pieced end to end, %d rolls would do, with %d seams across", p.Rolls, p.Joins))
	}
	return Result{
		Values: []term.Named{
			{Name: term.Strips, Value: term.Count(s.N)},
			{Name: term.Rolls, Value: term.Count(s.Rolls)},
			{Name: term.Tape, Value: term.Len(s.Tape())},
		},
		Working: lines,
	}, nil
}

func (in *inputs) acrossLine(across length.Length, roll plank.Roll, n int64) string {
	t := in.text
	if roll.Overlap == 0 || n == 1 {
		return fmt.Sprintf("%s across / %s roll = %d strips, rounded up", t(across), t(roll.Width), n)
	}
	return fmt.Sprintf("1 + (%s across - %s) / (%s - %s lap) = %d strips, rounded up", t(across), t(roll.Width), t(roll.Width), t(roll.Overlap), n)
}

func (in *inputs) rollLines(s material.Strips, roll plank.Roll) []string {
	t := in.tape.Room
	lines := []string{fmt.Sprintf("%d strips x %s along the longer side = %s", s.N, t(s.Length), t(s.Run()))}
	if s.Pieced {
		lines = append(lines, fmt.Sprintf("pieced end to end from rolls of %s: %d rolls, %d seams across", t(roll.Length), s.Rolls, s.Joins))
	} else {
		per := roll.Length / s.Length
		lines = append(lines, fmt.Sprintf("a roll of %s holds %d whole strips: %d rolls, no strip pieced", t(roll.Length), per, s.Rolls))
	}
	return append(lines, fmt.Sprintf("tape on %d long seams: %s", s.N-1, t(s.Tape())))
}
