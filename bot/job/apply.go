package job

import (
	"lastrow/calc"
	"lastrow/calc/layout"
	"lastrow/calc/length"
	"lastrow/calc/term"
	"lastrow/grammar"
)

// Apply does to the job what a statement says, without asking whether it can be. The first statement with a unit in it
// makes the job an inch or a metric one.
func Apply(j *calc.Job, s grammar.Statement) {
	settle(j, s)
	switch s := s.(type) {
	case grammar.JobName:
		j.Name = s.Name
	case grammar.Note:
		j.Notes = append(j.Notes, s.Text)
	case grammar.Direction:
		if j.Along = layout.Direction(s.Way); s.Wall != "" {
			j.Along = layout.Along(s.Wall)
		}
	case grammar.Start:
		j.StartWall = s.Wall
	case grammar.Limit:
		applyLimit(j, s)
	case grammar.Plank:
		applyPlank(j, s)
	case grammar.Underlay:
		applyUnderlay(j, s)
	case grammar.Laid:
		addTo(j, term.Laid, s.Rows, s.More)
	case grammar.Opened:
		addTo(j, term.Opened, s.Boxes, s.More)
	case grammar.Damaged:
		applyDamaged(j, s)
	default:
		if !applyFloor(j, s) {
			applyFacts(j, s)
		}
	}
}

// Settled marks, among a job's facts, that its system of units is settled.
const Settled term.Name = "units"

func settle(j *calc.Job, s grammar.Statement) {
	if _, done := j.Facts[Settled]; done {
		return
	}
	sys, known := systemOf(s)
	if !known {
		return
	}
	word := term.Word("inch")
	if sys == length.Metric {
		word = "metric"
	}
	j.Tape.System, j.Plan.Metric, j.Facts[Settled] = sys, sys == length.Metric, word
}

func applyLimit(j *calc.Job, l grammar.Limit) {
	if l.Name == term.FirstRow {
		j.FirstRow = l.Size.Len
		return
	}
	j.Facts[l.Name] = term.Len(l.Size.Len)
}

// applyPlank keeps what is not said. A count and an area printed on the box are two ways to say the same thing, so that
// a new one of either drops the other.
func applyPlank(j *calc.Job, p grammar.Plank) {
	set(&j.Plank.Width, p.Width)
	set(&j.Plank.Length, p.Length)
	set(&j.Plank.Thickness, p.Thickness)
	if p.PerBox != nil || p.BoxArea != nil {
		j.Plank.PerBox, j.Plank.BoxArea = 0, length.Area{}
	}
	if p.PerBox != nil {
		j.Plank.PerBox = int(*p.PerBox)
	}
	if p.BoxArea != nil {
		j.Plank.BoxArea = p.BoxArea.Area()
	}
}

func applyUnderlay(j *calc.Job, u grammar.Underlay) {
	set(&j.Underlay.Thickness, u.Thickness)
	set(&j.Underlay.Width, u.RollWidth)
	set(&j.Underlay.Length, u.RollLong)
	set(&j.Underlay.Overlap, u.Overlap)
}

func set(l *length.Length, s *grammar.Size) {
	if s != nil {
		*l = s.Len
	}
}

// Adds says whether a statement adds to a total that earlier ones have made.
func Adds(s grammar.Statement) bool {
	switch s := s.(type) {
	case grammar.Laid:
		return s.More
	case grammar.Opened:
		return s.More
	case grammar.Damaged:
		return true
	}
	return false
}

// addTo sets a total, or adds to it.
func addTo(j *calc.Job, n term.Name, w grammar.Whole, more bool) {
	total := term.Count(w)
	if had, ok := j.Facts[n].(term.Count); ok && more {
		total += had
	}
	j.Facts[n] = total
}

func applyDamaged(j *calc.Job, d grammar.Damaged) {
	if d.Back {
		d.Planks = -d.Planks
	}
	addTo(j, term.Damaged, d.Planks, true)
}

// applyFacts keeps a statement's words under their own names: heights, readings, prices, spares, trim, the subfloor.
func applyFacts(j *calc.Job, s grammar.Statement) {
	for _, g := range s.Given() {
		j.Facts[g.Name] = g.Value
	}
	if sub, ok := s.(grammar.Subfloor); ok && sub.Heated && sub.What != "" {
		j.Facts[term.Subfloor] = term.Word("heated " + sub.What)
	}
}
