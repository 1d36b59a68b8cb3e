package calc

import (
	"cmp"
	"fmt"

	"lastrow/calc/length"
	"lastrow/calc/limit"
	"lastrow/calc/material"
	"lastrow/calc/plank"
	"lastrow/calc/room"
	"lastrow/calc/subfloor"
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
	r, err := in.strips(along, across, roll)
	r.Working = append(r.Working, in.heatLines()...)
	return r, err
}

// heatLines tells what the planks leave for the underlay over a heated subfloor.
func (in *inputs) heatLines() []string {
	w, ok := in.peek(term.Subfloor)
	if !ok || !names(w.Value, "heated", "radiant") || names(w.Value, "unheated") || !in.has(term.PlankThickness) {
		return nil
	}
	in.use(w)
	thick := in.needLength(term.PlankThickness)
	through, _ := subfloor.Through(thick, limit.HDFConducts.Rat()).Float64()
	left, _ := subfloor.HeatLeft(thick).Float64()
	return []string{fmt.Sprintf("heated: %s of HDF / %s = %.3f of the %s allowed (%s): %.3f left for the underlay, as its sheet tells it",
		in.told(thick), limit.HDFConducts.Text(in.tape), through, limit.HeatedResistance.Text(in.tape), limit.HeatedResistance.Source, max(0, left))}
}

// stripSides gives the sides that strips run along and across, unless an area alone was said.
func (in *inputs) stripSides() (along, across length.Length, ok bool) {
	if in.saysArea() {
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
	parts := append([]material.Part{{Along: along, Across: across}}, in.closetParts()...)
	s := material.Underlay(parts, roll, may == piecedStrips)
	lines := append(in.partLines(parts, roll), in.rollLines(s, roll)...)
	if p := material.Underlay(parts, roll, true); p.Rolls < s.Rolls {
		lines = append(lines, fmt.Sprintf("pieced end to end, %s would do, with %s across", some(p.Rolls, "roll"), some(p.Joins, "seam")))
	}
	var floor *room.Floor
	if !in.saysRoom() {
		floor, _ = in.jobFloor()
	}
	return Result{
		Floor: floor,
		Values: []term.Named{
			{Name: term.Strips, Value: term.Count(s.N)},
			{Name: term.Rolls, Value: term.Count(s.Rolls)},
			{Name: term.Tape, Value: term.Len(s.Tape)},
		},
		Working: lines,
	}, nil
}

// closetParts are the closets off the job's room, with strips the same way as in the room.
func (in *inputs) closetParts() []material.Part {
	if in.saysRoom() {
		return nil
	}
	w, h, ok := in.mainRoom()
	if !ok {
		return nil
	}
	var parts []material.Part
	for _, c := range in.job.Plan.Closets {
		p := material.Part{Along: c.Wide, Across: c.Deep}
		if onEnd := c.Wall == room.East || c.Wall == room.West; onEnd == (w >= h) {
			p = material.Part{Along: c.Deep, Across: c.Wide}
		}
		parts = append(parts, p)
	}
	return parts
}

func (in *inputs) partLines(parts []material.Part, roll plank.Roll) []string {
	var lines []string
	for i, p := range parts {
		where := "along the longer side"
		if i > 0 {
			where = "in the " + cmp.Or(in.job.Plan.Closets[i-1].What, "closet")
		}
		n := material.StripCount(p.Across, roll.Width, roll.Overlap)
		t := in.tape.Room
		lines = append(lines, in.acrossLine(p.Across, roll, n), fmt.Sprintf("%s x %s %s = %s", some(n, "strip"), t(p.Along), where, t(length.Length(n)*p.Along)))
	}
	return lines
}

func (in *inputs) acrossLine(across length.Length, roll plank.Roll, n int64) string {
	t := in.text
	if roll.Overlap == 0 || n == 1 {
		return fmt.Sprintf("%s across / %s roll = %s, rounded up", t(across), t(roll.Width), some(n, "strip"))
	}
	return fmt.Sprintf("1 + (%s across - %s) / (%s - %s lap) = %s, rounded up", t(across), t(roll.Width), t(roll.Width), t(roll.Overlap), some(n, "strip"))
}

func (in *inputs) rollLines(s material.Strips, roll plank.Roll) []string {
	t := in.tape.Room
	line := fmt.Sprintf("%s of %s, no strip pieced", some(s.Rolls, "roll"), t(roll.Length))
	if s.Pieced {
		line = fmt.Sprintf("pieced end to end from rolls of %s: %s, %s across", t(roll.Length), some(s.Rolls, "roll"), some(s.Joins, "seam"))
	}
	return []string{line, fmt.Sprintf("tape on the seams: %s", t(s.Tape))}
}
