package grammar

import (
	"lastrow/calc/room"
	"lastrow/calc/term"
)

// floor reads a walk along the walls, which may be very long.
func (r *reader) floor() (Reading, bool) {
	w, n := r.walk()
	if n == 0 {
		return Reading{}, false
	}
	if n < 0 {
		return r.refused(term.SetWalls, "a wall has no length to it"), true
	}
	for _, l := range w.Legs {
		for _, s := range []*Size{&l.Long, l.Across} {
			if s == nil {
				continue
			}
			if why := outside(term.Walls, s.Len); why != "" {
				return r.refused(term.SetWalls, why), true
			}
		}
	}
	return Reading{Statements: []Statement{w}}, true
}

// walk reads "E 12'4, S 9', ..." and its diagonals; n is the number of walls, -1 where one has no length.
func (r *reader) walk() (w Walls, n int) {
	if !r.has("wall", "clockwise", "walk") && r.compassRuns() < 3 {
		return w, 0
	}
	if r.compassRuns() < 3 {
		return w, 0
	}
	if r.sidesAfter() {
		return r.walkAfter()
	}
	var to room.Side
	diagonal := ""
	for i := range r.items {
		it := &r.items[i]
		switch {
		case it.meaning == "diagonal":
			diagonal, to = "nw-se", ""
		case diagonal != "" && corners[it.meaning] != "":
			if it.meaning == "sw" || it.meaning == "ne" {
				diagonal = "sw-ne"
			}
		case eightSides(it.meaning) != "":
			to = eightSides(it.meaning)
		case it.quantity():
			leg, ok := r.leg(it, to)
			switch {
			case !ok || diagonal == "" && to == "":
				return w, -1
			case diagonal != "" && leg.Across == nil:
				w.Diagonals, diagonal = append(w.Diagonals, Diagonal{diagonal, leg.Long}), ""
			default:
				w.Legs, to = append(w.Legs, leg), ""
			}
		}
	}
	return w, len(w.Legs)
}

// leg reads the size of one wall of a walk; a slanted one may have two.
func (r *reader) leg(it *item, to room.Side) (leg Leg, ok bool) {
	if len(it.sizes) > 2 || it.vague || len(it.sizes) == 2 && !to.Slants() {
		return leg, false
	}
	two := share(it.sizes)
	leg.To = to
	if leg.Long, ok = r.message.read(two[0], bareRoom, r.lean); !ok || len(two) < 2 {
		return leg, ok
	}
	across, ok := r.message.read(two[1], bareRoom, r.lean)
	leg.Across = &across
	return leg, ok
}

// compassRuns counts the sizes that follow a compass word, or that one follows.
func (r *reader) compassRuns() int {
	before, after := 0, 0
	for i := 1; i < len(r.seq); i++ {
		if r.seq[i].is[0] == '#' && eightSides(r.seq[i-1].is) != "" {
			before++
		}
	}
	for _, q := range r.quantities() {
		if r.wayAfter(q) != "" {
			after++
		}
	}
	return max(before, after)
}

// sidesAfter says whether each size is followed by its way: "4m east, 3m south".
func (r *reader) sidesAfter() bool {
	qs := r.quantities()
	if len(qs) < 3 || r.has("diagonal") {
		return false
	}
	for _, q := range qs {
		if r.wayAfter(q) == "" {
			return false
		}
	}
	for i := range r.items[:qs[0]] {
		if eightSides(r.items[i].meaning) != "" && !r.leadsTo(i, "corner") {
			return false
		}
	}
	return true
}

// wayAfter gives the way that a size goes: the one named after it with no place between, as "off the north wall" is.
func (r *reader) wayAfter(q int) room.Side {
	for j := q + 1; j < len(r.items) && !r.items[j].quantity() && r.items[j].class != tSep; j++ {
		if isOne(r.items[j].word, []string{"off", "from", "in", "on", "of", "at", "the", "with"}) {
			return ""
		}
		if s := eightSides(r.items[j].meaning); s != "" {
			return s
		}
	}
	return ""
}

// walkAfter reads a walk whose ways stand after the sizes.
func (r *reader) walkAfter() (w Walls, n int) {
	for _, q := range r.quantities() {
		leg, ok := r.leg(&r.items[q], r.wayAfter(q))
		if !ok {
			return w, -1
		}
		w.Legs = append(w.Legs, leg)
	}
	return w, len(w.Legs)
}
