package calc

import (
	"lastrow/calc/length"
	"lastrow/calc/room"
	"lastrow/calc/term"
)

// sides gives the longer and the shorter side of a room said or of the job's main room; of one that is no plain rectangle,
// those of the rectangle round it.
func (in *inputs) sides() (along, across length.Length, ok bool) {
	if in.has(term.Room) {
		s, _ := get[term.Lens](in, term.Room)
		if len(s) != 2 || s[0] <= 0 || s[1] <= 0 {
			in.refuse("a room is two sides, as 12 ft x 14 ft")
			return 0, 0, false
		}
		return max(s[0], s[1]), min(s[0], s[1]), true
	}
	w, h, ok := in.mainRoom()
	if !ok {
		return 0, 0, false
	}
	in.use(term.Given{Name: term.Room, Value: term.Lens{w, h}, From: term.FromJob})
	return max(w, h), min(w, h), true
}

// mainRoom gives how far the job's main room reaches from west to east and from south to north, without what opens off it.
func (in *inputs) mainRoom() (eastWest, northSouth length.Length, ok bool) {
	main := *in.job
	main.Plan.Doorways, main.Plan.Closets, main.Plan.Openings, main.Plan.Fixtures = nil, nil, nil, nil
	f, ok := (&inputs{job: &main, tape: in.tape}).jobFloor()
	if !ok {
		return 0, 0, false
	}
	w, h := f.Extent()
	return w, h, true
}

// jobFloor gives the floor that the job's statements make, and counts it as used.
func (in *inputs) jobFloor() (*room.Floor, bool) {
	p := in.job.Plan
	if p.Rect == nil && p.Quad == nil && len(p.Walk) == 0 {
		return nil, false
	}
	f, broken := room.Build(p)
	if len(in.refused) == 0 { // once, however many ask
		for _, b := range broken {
			in.refuse("%s", b)
		}
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
	for _, e := range f.Outline() {
		if e.Cover != "jamb" {
			sum += e.Len()
		}
	}
	return sum
}

// saysRoom says whether the question speaks of a room of its own, not of the job's.
func (in *inputs) saysRoom() bool { _, said := in.said[term.Room]; return said }

// saysArea says whether the question speaks of an area, and not of a room.
func (in *inputs) saysArea() bool {
	_, area := in.said[term.FloorArea]
	return area && !in.saysRoom()
}

// floorArea gives the area to cover: as said, or of a room said, or of the job's floor.
func (in *inputs) floorArea() (length.Area, bool) {
	if in.saysArea() {
		a, ok := get[term.Area](in, term.FloorArea)
		return a.Area, ok
	}
	if in.saysRoom() {
		along, across, ok := in.sides()
		return along.Times(across), ok
	}
	if f, ok := in.jobFloor(); ok {
		return f.Area(), true
	}
	a, ok := get[term.Area](in, term.FloorArea)
	return a.Area, ok && a.Sign() > 0
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

// Taken says what was taken for granted, rounded or spread in making the job's floor of what was measured.
func Taken(j *Job) []string {
	if f, ok := newInputs(j, Question{}).jobFloor(); ok {
		return f.Notes
	}
	return nil
}
