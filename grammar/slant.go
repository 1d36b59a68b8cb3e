package grammar

import "lastrow/calc/room"

var corners = map[string]room.Side{"ne": room.NorthEast, "nw": room.NorthWest, "se": room.SouthEast, "sw": room.SouthWest}

// eightSides is the side that a meaning stands for, of the four and those between.
func eightSides(meaning string) room.Side {
	if s := sides[meaning]; s != "" {
		return s
	}
	return corners[meaning]
}

// meaningOf is the meaning that stands for a side.
func meaningOf(side room.Side) string {
	for meaning, s := range corners {
		if s == side {
			return meaning
		}
	}
	return string(side)
}

// sideAt gives the side named at item i. A slanted wall is one by itself.
func (r *reader) sideAt(i int) room.Side {
	if slanting(r.items[i].meaning) && r.leadsTo(i, "wall") {
		return room.Slanted
	}
	return eightSides(r.items[i].meaning)
}

func slanting(meaning string) bool { return meaning == "slanted" || meaning == "diagonal" }

// wallAt gives the wall named at place i of the meanings: a corner's name is one where "wall" follows.
func (r *reader) wallAt(i int) room.Side {
	if s := sides[r.seq[i].is]; s != "" {
		return s
	}
	if i+1 == len(r.seq) || r.seq[i+1].is != "wall" {
		return ""
	}
	if slanting(r.seq[i].is) {
		return room.Slanted
	}
	return corners[r.seq[i].is]
}

// leadsTo says whether one of some meanings follows item i, with no quantity between and no more than a word.
func (r *reader) leadsTo(i int, meanings ...string) bool {
	for j := i + 1; j < len(r.items) && j <= i+2 && !r.items[j].quantity(); j++ {
		if isOne(r.items[j].meaning, meanings) {
			return true
		}
	}
	return false
}

// alongWall gives the wall that the rows are said to run along: "along the west wall", "parallel to the north wall".
func (r *reader) alongWall() room.Side {
	if !r.has("row", "lay", "run", "direction", "plank") || r.has("start", "firstrow", "tight", "gap") || len(r.quantities()) > 0 {
		return ""
	}
	for i := range r.seq {
		wall := r.wallAt(i)
		if wall == "" || i+1 == len(r.seq) || r.seq[i+1].is != "wall" {
			continue
		}
		for j := r.seqAt[i] - 1; j >= max(0, r.seqAt[i]-3); j-- {
			if isOne(r.items[j].word, []string{"along", "parallel", "with", "follow", "following", "alongside"}) {
				return wall
			}
		}
	}
	return ""
}

// inside gives the closet or room that a thing stands in: "post 4in x 4in in the hall".
func (r *reader) inside(q int) string {
	in := false
	for j := q + 1; j < len(r.items) && !r.items[j].quantity(); j++ {
		it := &r.items[j]
		switch {
		case in && it.word == "annex":
			return "annex"
		case in && (it.meaning == "closet" || it.meaning == "hall"):
			return it.meaning
		}
		in = it.word == "in" || it.word == "inside" || in && it.word == "the"
	}
	return ""
}

// angled says whether a corner is cut off straight across: "an angled corner, 2' x 2'", "2' x 2' at an angle", "at 45 degrees".
func (r *reader) angled(q int) bool {
	for j := q - 1; j >= 0 && !r.items[j].quantity() && r.items[j].word != "and"; j-- {
		if r.crossCut(j) {
			return true
		}
	}
	for j := q + 1; j < len(r.items) && (!r.items[j].quantity() || half(r.items[j].sizes)); j++ {
		if isOne(r.items[j].meaning, []string{"angle", "diagonal", "diagonally"}) || half(r.items[j].sizes) {
			return true
		}
		if r.items[j].word == "and" {
			break
		}
		if r.crossCut(j) {
			return true
		}
	}
	return false
}

// crossCut says whether a word tells a corner that is cut off straight across.
func (r *reader) crossCut(i int) bool {
	return r.items[i].meaning == "slanted" || isOne(r.items[i].word, []string{"clipped", "chamfered", "chamfer", "bevelled", "beveled", "snipped"})
}

// half says whether a quantity is half a right angle.
func half(sizes []token) bool {
	return len(sizes) == 1 && sizes[0].class == tAngle && sizes[0].num.Float() == 45
}
