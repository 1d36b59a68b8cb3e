package grammar

import (
	"slices"

	"lastrow/calc/room"
)

// reshaped puts a doorway, a closet or a thing that the floor goes round right: "no, the door is 36 in", "make the closet
// 6 ft wide", "it's in the north wall, not the south". The statement put right no longer stands.
func (r *reader) reshaped() (Reading, bool) {
	if r.ctx.Group || r.marked() || r.whWord() || r.hasAskPair() || slices.ContainsFunc(r.firsts, r.opensAsk) || !r.has("sorry", "no", "not", "make", "instead", "undo") {
		return Reading{}, false
	}
	old := r.shapeMeant()
	if old == nil {
		return Reading{}, false
	}
	now := r.putInShape(old)
	if now == nil || now.String() == old.String() {
		return Reading{}, false
	}
	if w := r.impossible(now.Given()); w != "" {
		return r.refused(now.Kind(), w), true
	}
	return Reading{Statements: []Statement{now}, Instead: old}, true
}

// shapeMeant is the doorway, closet or fixture that the message is of: the one named, or else the one said last. It is nil
// where that is none or more than one.
func (r *reader) shapeMeant() (old Statement) {
	if r.saysMore(shapeWords...) || r.has("door") && r.hasWord("under", "below") {
		return nil
	}
	if r.has("room") && !r.hasWord("annex") {
		return nil
	}
	named := r.has("door", "doorway", "closet", "post", "hearth", "pipe", "island", "hall") || r.hasWord("annex")
	if last := r.ctx.LastSet; last != nil && r.ctx.Told && (!named || r.names(last) && r.inWall(last)) {
		return shapeOf(last)
	}
	if !named {
		return nil
	}
	n := 0
	for _, s := range r.ctx.Statements {
		if r.names(s) && r.inWall(s) {
			old, n = s, n+1
		}
	}
	if n != 1 {
		return nil
	}
	return old
}

// shapeWords are all that a message says which puts a shape right.
var shapeWords = []string{
	"sorry", "no", "not", "make", "instead", "undo", "ok", "wall", "corner", "north", "east", "south", "west", "wide", "deep", "long", "square",
	"door", "doorway", "closet", "post", "hearth", "pipe", "island", "hall", "room", "open", "around", "should",
}

func shapeOf(s Statement) Statement {
	switch s.(type) {
	case Doorway, Closet, Fixture:
		return s
	}
	return nil
}

// inWall says whether a statement is of a thing in the wall that it is named by, if it is named by one: "the south door".
func (r *reader) inWall(s Statement) bool {
	for i := 1; i < len(r.items); i++ {
		side := sides[r.items[i-1].meaning]
		if side == "" || !isOne(r.items[i].meaning, []string{"door", "doorway", "closet"}) {
			continue
		}
		switch v := s.(type) {
		case Doorway:
			return v.Wall == side
		case Closet:
			return v.Wall == side
		}
	}
	return true
}

// names says whether the message names what a statement is of.
func (r *reader) names(s Statement) bool {
	switch v := s.(type) {
	case Doorway:
		return r.has("door", "doorway") && !r.has("closet")
	case Closet:
		switch {
		case v.What == "":
			return r.has("closet") || v.Opening != nil && r.hasWord("opening") && !r.has("door")
		case v.What == "hall":
			return r.has("hall")
		}
		return r.hasWord("annex")
	case Fixture:
		return r.has(v.What) || v.What == "fixture" && r.has("island")
	}
	return false
}

// putInShape changes what the message says of a shape; nil where a size of it has no place.
func (r *reader) putInShape(old Statement) Statement {
	qs := r.stillSaid()
	if len(qs) == 0 {
		return r.movedTo(old, r.wallInstead())
	}
	switch v := old.(type) {
	case Doorway:
		return r.putDoorway(v, qs)
	case Closet:
		return r.putCloset(v, qs)
	case Fixture:
		return r.putFixture(v, qs)
	}
	return nil
}

// stillSaid are the quantities that hold: "36, not 32" says one.
func (r *reader) stillSaid() []int {
	return slices.DeleteFunc(r.quantities(), func(q int) bool {
		return r.notBefore(q) || q > 1 && r.items[q-1].word == "of" && r.items[q-2].meaning == "instead"
	})
}

// sideSize reads the one size at item q; false where it is no single size.
func (r *reader) sideSize(q int, as bareAs) (*Size, bool) {
	size, ok := r.message.read(r.items[q].sizes[0], as, r.lean)
	return &size, ok && len(r.items[q].sizes) == 1 && !r.items[q].vague && size.Len > 0
}

// awayFrom says whether a size is how far a thing is from a corner or a wall.
func (r *reader) awayFrom(q int) bool {
	for j := q + 1; j < len(r.items) && !r.items[j].quantity(); j++ {
		if r.items[j].meaning == "corner" || isOne(r.items[j].word, []string{"from", "off"}) {
			return true
		}
	}
	return false
}

func (r *reader) putDoorway(d Doorway, qs []int) Statement {
	for _, q := range qs {
		if !r.awayFrom(q) {
			size, ok := r.sideSize(q, bareInch)
			if !ok {
				return nil
			}
			d.Wide = *size
			continue
		}
		size, ok := r.sideSize(q, r.fromCorner(q, d.Wide))
		if end := r.sideAfter(q); end != "" {
			d.FromEnd = end
		}
		if !ok || d.FromEnd == "" {
			return nil
		}
		d.From = size
	}
	return d
}

func (r *reader) putCloset(c Closet, qs []int) Statement {
	for _, q := range qs {
		if ts := share(r.items[q].sizes); len(ts) == 2 {
			a, ok1 := r.message.read(ts[0], bareNear, r.lean)
			b, ok2 := r.message.read(ts[1], bareNear, r.lean)
			if !ok1 || !ok2 || r.items[q].vague {
				return nil
			}
			c.Wide, c.Deep = a, b
			continue
		}
		size, ok := r.sideSize(q, bareNear)
		end := r.sideAfter(q)
		switch {
		case !ok:
			return nil
		case r.awayFrom(q) && (end != "" || c.FromEnd != ""):
			c.From = size
			if end != "" {
				c.FromEnd = end
			}
		case r.hasWord("opening") && (r.before(q, "doorway") || r.after(q, "doorway")):
			c.Opening = size
		case r.after(q, "deep") || r.before(q, "deep"):
			c.Deep = *size
		case r.after(q, "wide", "long") || r.before(q, "wide", "long"):
			c.Wide = *size
		default:
			return nil
		}
	}
	return c
}

func (r *reader) putFixture(f Fixture, qs []int) Statement {
	for _, q := range qs {
		if ts := share(r.items[q].sizes); len(ts) == 2 && f.Deep != nil {
			a, ok1 := r.message.read(ts[0], bareInch, r.lean)
			b, ok2 := r.message.read(ts[1], bareInch, r.lean)
			if !ok1 || !ok2 || r.items[q].vague {
				return nil
			}
			f.Wide, f.Deep = a, &b
			continue
		}
		size, ok := r.sideSize(q, r.fixtureFrom([]int{q}, f.Wide))
		switch side := r.sideAfter(q); {
		case !ok:
			return nil
		case side == room.West || side == room.East:
			f.FromX, f.SideX = *size, side
		case side == room.South || side == room.North:
			f.FromY, f.SideY = *size, side
		case f.Deep == nil && !r.awayFrom(q):
			wide, ok := r.sideSize(q, bareInch)
			if !ok {
				return nil
			}
			f.Wide = *wide
		default:
			return nil
		}
	}
	return f
}

// wallInstead is the one wall named that is not taken back: "the north wall, not the south".
func (r *reader) wallInstead() (wall room.Side) {
	for i := range r.items {
		side := sides[r.items[i].meaning]
		if side == "" || r.setAside(i) {
			continue
		}
		if wall != "" {
			return ""
		}
		wall = side
	}
	return wall
}

// movedTo puts a doorway or a closet in another wall, where its corner is one of that wall's too.
func (r *reader) movedTo(old Statement, wall room.Side) Statement {
	if wall == "" || !r.has("wall") && !r.hasWord("side") && !r.has("not", "no", "sorry") {
		return nil
	}
	switch v := old.(type) {
	case Doorway:
		if v.From == nil || crossing(wall, v.FromEnd) {
			v.Wall = wall
			return v
		}
	case Closet:
		if v.From == nil || crossing(wall, v.FromEnd) {
			v.Wall = wall
			return v
		}
	}
	return nil
}

// crossing says whether a wall ends in a corner to that side.
func crossing(wall, end room.Side) bool {
	upright := func(s room.Side) bool { return s == room.East || s == room.West }
	return upright(wall) != upright(end)
}
