package job

import (
	"fmt"

	"lastrow/calc"
	"lastrow/calc/layout"
	"lastrow/calc/length"
	"lastrow/calc/room"
	"lastrow/calc/term"
	"lastrow/grammar"
)

// bounds lists what a statement says that no floor has.
func bounds(j *calc.Job, s grammar.Statement) []string {
	tape := j.Tape
	if sys, known := systemOf(s); known {
		tape.System = sys
	}
	var reasons []string
	for _, g := range s.Given() {
		if why := calc.Bound(g.Name, g.Value, tape); why != "" {
			reasons = append(reasons, why)
		}
	}
	if g, ok := s.(grammar.Gap); ok && g.Wall == "" && g.Size.Len == 0 {
		reasons = append(reasons, "a gap of nothing at every wall leaves the floor nowhere to move: one wall can be tight, as \"south wall tight\"")
	}
	if d, ok := s.(grammar.Damaged); ok && d.Back && j.Facts[term.Damaged] == nil {
		reasons = append(reasons, "no planks are down as damaged, so none can be taken back")
	}
	return reasons
}

// broken lists the rules that the job as a whole breaks now.
func broken(j *calc.Job, ss []grammar.Statement) []string {
	var reasons []string
	for _, s := range ss {
		if k := s.Kind(); Shapes(s) || k == term.SetGap || k == term.SetDirection || k == term.SetStart {
			reasons = append(reasons, floorBroken(j)...)
			break
		}
	}
	if r := j.Plan.Rect; r != nil && len(reasons) == 0 {
		across := min(r.EastWest, r.NorthSouth)
		if j.Plank.Width > across {
			reasons = append(reasons, wider(j, across))
		}
	}
	reasons = append(reasons, rowsBroken(j, ss)...)
	return append(reasons, counts(j)...)
}

// rowsBroken lists what the rows can't be: more of them than the floor has room for, or a first one wider than a plank.
func rowsBroken(j *calc.Job, ss []grammar.Statement) []string {
	var reasons []string
	if w := j.Plank.Width; w > 0 && j.FirstRow > w {
		reasons = append(reasons, fmt.Sprintf("a first row of %s is wider than the plank, %s", j.Tape.Exact(j.FirstRow), j.Tape.Exact(w)))
	}
	laid, ok := j.Facts[term.Laid].(term.Count)
	if most := mostRows(j); ok && most > 0 && int64(laid) > most && says(ss, term.SetLaid) {
		reasons = append(reasons, fmt.Sprintf("%d rows are laid, and the floor has room for %d at most", int64(laid), most))
	}
	return reasons
}

// mostRows is the most rows that the floor can have, whichever way they run; 0 where floor or plank is not known.
func mostRows(j *calc.Job) int64 {
	if j.Plank.Width <= 0 || floorBroken(j) != nil || j.Plan.Rect == nil && j.Plan.Quad == nil && len(j.Plan.Walk) == 0 {
		return 0
	}
	f, _ := room.Build(j.Plan)
	a, b := f.Extent()
	if _, along := j.Along.Wall(); along || j.Along == layout.Diagonal {
		a += b
	}
	return int64(max(a, b)/j.Plank.Width) + 2
}

func says(ss []grammar.Statement, kind term.Kind) bool {
	for _, s := range ss {
		if s.Kind() == kind {
			return true
		}
	}
	return false
}

func wider(j *calc.Job, across length.Length) string {
	return fmt.Sprintf("a plank %s wide does not fit a room %s across", j.Tape.Exact(j.Plank.Width), j.Tape.Room(across))
}

// floorBroken lists the rules that the floor breaks, and what is wrong with the way that its rows are to run. Closets and
// doorways may be said before the room they open off.
func floorBroken(j *calc.Job) []string {
	p := j.Plan
	if p.Rect == nil && p.Quad == nil && len(p.Walk) == 0 {
		return nil
	}
	f, broken := room.Build(p)
	var reasons []string
	for _, b := range broken {
		reasons = append(reasons, b.String())
	}
	if f == nil {
		return reasons
	}
	if err := layout.Check(f, j.Along, j.StartWall); err != nil {
		reasons = append(reasons, err.Error())
	}
	return reasons
}

func counts(j *calc.Job) []string {
	var reasons []string
	for _, n := range []term.Name{term.Laid, term.Opened, term.Damaged} {
		if c, ok := j.Facts[n].(term.Count); ok && (c < 0 || c > calc.MostThings) {
			reasons = append(reasons, fmt.Sprintf("%s comes to %d, which cannot be", n, int64(c)))
		}
	}
	return reasons
}
