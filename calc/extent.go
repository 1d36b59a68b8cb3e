package calc

import (
	"lastrow/calc/length"
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

// floorArea gives the area to cover: as said, or of a room said, or of the job's floor.
func (in *inputs) floorArea() (length.Area, bool) {
	_, saysRoom := in.said[term.Room]
	if a, ok := get[term.Area](in, term.FloorArea); ok && !saysRoom {
		return a.Area, true
	}
	along, across, ok := in.sides()
	if !ok {
		return length.Area{}, false
	}
	a := along.Times(across)
	if r := in.job.Plan.Rect; r != nil && !saysRoom {
		for _, c := range r.CutOuts {
			a = a.Minus(c.EastWest.Times(c.NorthSouth))
		}
	}
	return a, a.Sign() > 0
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
