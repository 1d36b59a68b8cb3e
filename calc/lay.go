package calc

import (
	"lastrow/calc/layout"
	"lastrow/calc/length"
	"lastrow/calc/limit"
	"lastrow/calc/plank"
	"lastrow/calc/room"
	"lastrow/calc/term"
)

// laid lays the floor that was said or that the job has, and gives it with its floor. Where something stands in the way
// it is noted, and the layout is nil.
func (in *inputs) laid() *layout.Layout {
	floor := in.floor()
	p := plank.Plank{Width: in.needLength(term.PlankWidth), Length: in.needLength(term.PlankLength)}
	if in.err() != nil {
		return nil
	}
	return in.lay(floor, p)
}

func (in *inputs) lay(floor *room.Floor, p plank.Plank) *layout.Layout {
	wall := in.startWall(floor)
	r := layout.Request{Floor: floor, Plank: p, Along: in.direction(floor, wall), StartWall: wall, Mark: in.tape.Division(), Rules: in.rules()}
	r.FirstRow, _ = in.length(term.FirstRow)
	l, err := layout.Lay(r)
	if err != nil {
		in.refuse("%v", err)
		return nil
	}
	in.assumeChosen(r, l)
	return l
}

// floor is the floor to lay: a room said, else the job's.
func (in *inputs) floor() *room.Floor {
	g, said := in.said[term.Room]
	if !said {
		f, ok := in.jobFloor()
		if !ok && len(in.refused) == 0 {
			in.lack(term.Room)
		}
		if ok {
			in.gap(min(f.Extent()))
		}
		return f
	}
	sides, ok := g.Value.(term.Lens)
	if !ok || len(sides) != 2 {
		in.refuse("a room is two sides, as 12 ft x 14 ft")
		return nil
	}
	in.use(g)
	return in.rectangle(sides[0], sides[1])
}

// rectangle is a floor of two sides with the gap said, or the default.
func (in *inputs) rectangle(eastWest, northSouth length.Length) *room.Floor {
	gap := in.gap(min(eastWest, northSouth))
	plan := room.Plan{Rect: &room.Rect{EastWest: eastWest, NorthSouth: northSouth}, Metric: in.tape.System == length.Metric}
	if in.has(term.Gap) {
		plan.Gap = gap
	}
	f, broken := room.Build(plan)
	for _, b := range broken {
		in.refuse("%s", b)
	}
	return f
}

func (in *inputs) rules() layout.Rules {
	s := in.tape.System
	return layout.Rules{
		LeastRow:     in.lengthOr(term.LeastRow, limit.LeastRow.In(s)),
		LeastEnd:     in.lengthOr(term.LeastEnd, limit.LeastEnd.In(s)),
		LeastStagger: in.lengthOr(term.LeastStagger, limit.LeastStagger.In(s)),
		Kerf:         in.lengthOr(term.Kerf, limit.Kerf.In(s)),
		Lip:          limit.LockLip.In(s),
	}
}

// direction is the way of the rows: as said, else the job's, else along the start wall told or the longer side.
func (in *inputs) direction(f *room.Floor, wall room.Side) layout.Direction {
	if w, ok := get[term.Word](in, term.Direction); ok {
		return layout.Direction(w)
	}
	if in.job.Along != "" {
		in.use(term.Given{Name: term.Direction, Value: term.Word(in.job.Along), From: term.FromJob})
		return in.job.Along
	}
	if f == nil {
		return ""
	}
	along := layout.Way(f, wall)
	in.assume(term.Direction, term.Word(along))
	return along
}

// startWall is the wall to start at: as said, else the job's, but not one that rows of a direction said here can't start at.
func (in *inputs) startWall(f *room.Floor) room.Side {
	if w, ok := get[term.Word](in, term.Start); ok {
		return room.Side(w)
	}
	if w, ok := get[term.Word](in, term.Direction); ok && f != nil && layout.Check(f, layout.Direction(w), in.job.StartWall) != nil {
		return ""
	}
	if in.job.StartWall != "" {
		in.use(term.Given{Name: term.Start, Value: term.Word(in.job.StartWall), From: term.FromJob})
	}
	return in.job.StartWall
}

// assumeChosen lists what the layout chose by itself.
func (in *inputs) assumeChosen(r layout.Request, l *layout.Layout) {
	if r.StartWall == "" {
		in.assume(term.Start, term.Word(l.StartWall))
	}
	if r.FirstRow == 0 {
		in.assume(term.FirstRow, term.Len(l.Rows[0].Width))
	}
}
