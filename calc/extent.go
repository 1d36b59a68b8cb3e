package calc

import (
	"lastrow/calc/length"
	"lastrow/calc/room"
	"lastrow/calc/term"
)

// sides gives the longer and the shorter side of a room said or of the job's floor; of a room with corners cut out, those
// of the rectangle round it.
func (in *inputs) sides() (along, across length.Length, ok bool) {
	if in.has(term.Room) {
		s, _ := get[term.Lens](in, term.Room)
		if len(s) != 2 {
			in.refuse("a room is two sides, as 12 ft x 14 ft")
			return 0, 0, false
		}
		return max(s[0], s[1]), min(s[0], s[1]), true
	}
	if r := in.job.Plan.Rect; r != nil {
		in.use(term.Given{Name: term.Room, Value: term.Lens{r.EastWest, r.NorthSouth}, From: term.FromJob})
		return max(r.EastWest, r.NorthSouth), min(r.EastWest, r.NorthSouth), true
	}
	return 0, 0, false
}

// jobFloor gives the floor that the job's statements make, and counts it as used.
func (in *inputs) jobFloor() (*room.Floor, bool) {
	p := in.job.Plan
	if p.Rect == nil && p.Quad == nil && len(p.Walk) == 0 {
		return nil, false
	}
	f, broken := room.Build(p)
	for _, b := range broken {
		in.refuse("%s", b)
	}
	if f == nil {
		return nil, false
	}
	if p.Rect != nil {
		in.use(term.Given{Name: term.Room, Value: term.Lens{p.Rect.EastWest, p.Rect.NorthSouth}, From: term.FromJob})
	} else {
		in.use(term.Given{Name: term.FloorArea, Value: term.Area{Area: f.Region.Area()}, From: term.FromJob})
	}
	return f, true
}

// round is the length of a floor's walls, doorways counted across and fixtures left out.
func round(f *room.Floor) length.Length {
	var sum length.Length
	for _, e := range f.Edges[:len(f.Region[0])] {
		if e.Cover != "jamb" {
			sum += e.Len()
		}
	}
	return sum
}

// floorArea gives the area to cover: as said, or of a room said, or of the job's floor.
func (in *inputs) floorArea() (length.Area, bool) {
	_, saysRoom := in.said[term.Room]
	if a, ok := get[term.Area](in, term.FloorArea); ok && !saysRoom {
		return a.Area, true
	}
	if saysRoom {
		along, across, ok := in.sides()
		return along.Times(across), ok
	}
	f, ok := in.jobFloor()
	if !ok {
		return length.Area{}, false
	}
	return f.Region.Area(), true
}

// needArea is floorArea, noted as missing where nothing gives it.
func (in *inputs) needArea() length.Area {
	a, ok := in.floorArea()
	if !ok && len(in.refused) == 0 {
		in.lack(term.FloorArea, term.Room)
	}
	return a
}

// percentOr is a percentage that may be said, or else is the default.
func (in *inputs) percentOr(n term.Name, usual term.Percent) term.Percent {
	p, ok := get[term.Percent](in, n)
	if !ok {
		in.assume(n, usual)
		return usual
	}
	if p < 0 || p > 100_000 {
		in.refuse("%s of %s is out of bounds: 0 to 100 %%", n, percent(p))
	}
	return p
}

// wordOr is a choice that may be said, or else is the default.
func (in *inputs) wordOr(n term.Name, usual term.Word, others ...term.Word) term.Word {
	w, ok := get[term.Word](in, n)
	if !ok {
		in.assume(n, usual)
		return usual
	}
	for _, o := range append(others, usual) {
		if w == o {
			return w
		}
	}
	in.refuse("%s can't be %q: it is %s or %v", n, string(w), usual, others)
	return w
}

// Extent gives the area and the perimeter of a job's floor so far, or nothing where it has no shape yet.
func Extent(j *Job) []term.Named {
	f, ok := newInputs(j, Question{}).jobFloor()
	if !ok {
		return nil
	}
	return []term.Named{
		{Name: term.FloorArea, Value: term.Area{Area: f.Region.Area()}},
		{Name: term.Perimeter, Value: term.Len(round(f))},
	}
}
