package calc

import (
	"lastrow/calc/layout"
	"lastrow/calc/length"
	"lastrow/calc/limit"
	"lastrow/calc/room"
	"lastrow/calc/term"
)

// fact gives what the job knows under a name.
func (j *Job) fact(n term.Name) (term.Value, bool) {
	if v, ok := j.Facts[n]; ok {
		return v, true
	}
	if l := j.lengthFact(n); l > 0 {
		return term.Len(l), true
	}
	switch {
	case n == term.PlanksPerBox && j.Plank.PerBox > 0:
		return term.Count(j.Plank.PerBox), true
	case n == term.BoxCoverage && j.Plank.BoxArea.Sign() > 0:
		return term.Area{Area: j.Plank.BoxArea}, true
	case n == term.Room && j.Plan.Rect != nil && len(j.Plan.Rect.CutOuts) == 0:
		return term.Lens{j.Plan.Rect.EastWest, j.Plan.Rect.NorthSouth}, true
	}
	return nil, false
}

func (j *Job) lengthFact(n term.Name) length.Length {
	switch n {
	case term.PlankWidth:
		return j.Plank.Width
	case term.PlankLength:
		return j.Plank.Length
	case term.PlankThickness:
		return j.Plank.Thickness
	case term.UnderlayThickness:
		return j.Underlay.Thickness
	case term.RollWidth:
		return j.Underlay.Width
	case term.RollLength:
		return j.Underlay.Length
	case term.Overlap:
		return j.Underlay.Overlap
	case term.FirstRow:
		return j.FirstRow
	case term.Gap:
		return j.Plan.Gap
	}
	return 0
}

// across gives the dimension of the floor square to the rows: as said, or from a room said, or from the job's floor.
// Rows run along the longer side where nobody said otherwise.
func (in *inputs) across() (length.Length, bool) {
	if l, ok := get[term.Len](in, term.Across); ok {
		return length.Length(l), true
	}
	if sides, ok := get[term.Lens](in, term.Room); ok && len(sides) == 2 {
		return in.squareTo(sides[0], sides[1]), true
	}
	if in.has(term.Room) {
		return 0, false
	}
	f, ok := in.jobFloor()
	if !ok {
		return 0, false
	}
	across, err := layout.Across(f, in.direction(f, in.job.StartWall))
	if err != nil {
		in.refuse("%v", err)
	}
	return across, err == nil
}

// squareTo gives the side of a room said that the rows run across.
func (in *inputs) squareTo(eastWest, northSouth length.Length) length.Length {
	along := in.job.Along
	if w, ok := get[term.Word](in, term.Direction); ok {
		along = layout.Direction(w)
	}
	if wall, ok := along.Wall(); ok {
		along = layout.EastWest
		if wall == room.East || wall == room.West {
			along = layout.NorthSouth
		}
	}
	if along == "" {
		along = layout.Longer(eastWest, northSouth)
		in.assume(term.Direction, term.Word(along))
	}
	if along == layout.EastWest {
		return northSouth
	}
	return eastWest
}

// gap gives the gap at each edge for a run of floor: as said, or the default by the run.
func (in *inputs) gap(run length.Length) length.Length {
	return in.lengthOr(term.Gap, limit.DefaultGap(run, in.tape.System))
}
