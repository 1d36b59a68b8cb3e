package grammar

import (
	"strings"

	"lastrow/calc/length"
	"lastrow/calc/room"
	"lastrow/calc/term"
)

// geometry reads closets, doorways, fixtures and rooms with corners cut out, and takes the quantities that it used out.
func (r *reader) geometry(qs *[]int) []Statement {
	for _, try := range []func([]int) (Statement, []int){r.opening, r.closet, r.fixture, r.doorway, r.cutRoom} {
		if s, used := try(*qs); s != nil {
			*qs = without(*qs, used)
			return []Statement{s}
		}
	}
	return nil
}

// closet reads "closet 5' x 2' off the north wall, 3' from the west corner, opening 4'".
func (r *reader) closet(qs []int) (Statement, []int) {
	if len(qs) == 0 || len(r.items[qs[0]].sizes) != 2 {
		return nil, nil
	}
	what, ok := r.opensOff(qs[0])
	if !ok {
		return nil, nil
	}
	two := share(r.items[qs[0]].sizes)
	c := Closet{What: what, Off: r.roomOfWall(qs[0]), Wall: r.sideAfter(qs[0])}
	if c.Wall == "" {
		c.Wall = r.sideBefore(qs[0])
	}
	var ok1, ok2 bool
	c.Wide, ok1 = r.message.read(two[0], bareNear, r.lean)
	c.Deep, ok2 = r.message.read(two[1], bareNear, r.lean)
	if strings.Contains(r.src[two[0].end:max(two[0].end, two[1].at)], "deep") {
		c.Wide, c.Deep = c.Deep, c.Wide
	}
	if !ok1 || !ok2 || c.Wall == "" || c.Wide.Len > 20*c.Deep.Len || c.Deep.Len > 20*c.Wide.Len {
		return nil, nil
	}
	used := qs[:1]
	for _, q := range qs[1:] {
		size, ok := r.message.read(r.items[q].sizes[0], bareNear, r.lean)
		if !ok || len(r.items[q].sizes) > 1 || r.items[q].vague {
			continue
		}
		switch {
		case r.before(q, "doorway", "open"):
			c.Opening = &size
		case c.Opening != nil && c.OpeningFrom == nil && r.ofItsOwn(q):
			from, ok := c.openingFrom(size, r.sideAfter(q))
			if !ok {
				return nil, nil
			}
			c.OpeningFrom = &from
		case c.From == nil && r.sideAfter(q) != "":
			c.From, c.FromEnd = &size, r.sideAfter(q)
		case c.Opening == nil && r.after(q, "doorway", "open"):
			c.Opening = &size
		default:
			continue
		}
		used = append(used[:len(used):len(used)], q)
	}
	return c, used
}

// opensOff says what a pair of sizes is of: a closet, or a hall or another room that is said to be off or on a wall.
func (r *reader) opensOff(q int) (what string, ok bool) {
	for j := q - 1; j >= 0 && !r.items[j].quantity(); j-- {
		switch r.items[j].meaning {
		case "closet":
			return "", true
		case "hall":
			return "hall", r.offWall(q)
		case "room":
			return "annex", r.offWall(q)
		}
	}
	return "", (r.has("closet") || r.sureOf(term.SetCloset)) && r.roomOfWall(q) == "" && !r.has("post", "hearth", "pipe", "island")
}

// offWall says whether "off", or "on" at once, follows a quantity and leads to a wall.
func (r *reader) offWall(q int) bool {
	for j := q + 1; j < len(r.items) && r.items[j].word != ""; j++ {
		if w := r.items[j].word; w == "off" || w == "on" && j == q+1 {
			return r.sideAfter(j) != ""
		}
	}
	return false
}

// roomOfWall gives the room whose wall is named after item q, where it is not the main one: "the north wall of the hall",
// "the hall's north wall". A door "to the hall" is in no wall of it.
func (r *reader) roomOfWall(q int) string {
	named := map[string]string{"closet": "closet", "hall": "hall"}
	of := false
	for j := q + 1; j < len(r.items) && !r.items[j].quantity(); j++ {
		it := r.items[j]
		name := named[it.meaning]
		if it.word == "annex" {
			name = "annex"
		}
		if name != "" && (of || r.leadsToWall(j)) {
			return name
		}
		of = it.word == "of" || of && it.word == "the"
	}
	return ""
}

// leadsToWall says whether a wall's side follows a word, with nothing but "s" between.
func (r *reader) leadsToWall(j int) bool {
	for j++; j < len(r.items) && r.items[j].word == "s"; j++ {
	}
	return j < len(r.items) && r.sideAt(j) != ""
}

// sideAfter gives the wall named after item q, before the next quantity.
func (r *reader) sideAfter(q int) room.Side {
	for j := q + 1; j < len(r.items) && !r.items[j].quantity(); j++ {
		if s := r.sideAt(j); s != "" {
			return s
		}
	}
	return ""
}

func (r *reader) sideBefore(q int) room.Side {
	for j := q - 1; j >= 0 && !r.items[j].quantity(); j-- {
		if s := r.sideAt(j); s != "" {
			return s
		}
	}
	return ""
}

// before says whether one of the meanings stands before item q, with at most one word that says something between.
func (r *reader) before(q int, meanings ...string) bool {
	for j := q - 1; j >= 0 && !r.items[j].quantity() && r.items[j].mark == ""; j-- {
		if isOne(r.items[j].meaning, meanings) {
			return true
		}
	}
	return false
}

func (r *reader) after(q int, meanings ...string) bool {
	for j := q + 1; j < len(r.items) && !r.items[j].quantity() && r.items[j].mark == ""; j++ {
		if isOne(r.items[j].meaning, meanings) {
			return true
		}
	}
	return false
}

func isOne(s string, list []string) bool {
	for _, l := range list {
		if s == l {
			return true
		}
	}
	return false
}

// doorway reads "door 32in in the south wall, 2' from the west corner".
func (r *reader) doorway(qs []int) (Statement, []int) {
	if !r.has("door", "doorway") && !r.sureOf(term.SetDoorway) || len(qs) == 0 || len(qs) > 3 || r.has("gap", "underlay") {
		return nil, nil
	}
	size, ok := r.message.read(r.items[qs[0]].sizes[0], bareInch, r.lean)
	d := Doorway{Wide: size, Off: r.roomOfWall(qs[0]), Wall: r.sideAfter(qs[0])}
	if d.Wall == "" {
		d.Wall = r.sideBefore(qs[0])
	}
	if !ok || d.Wall == "" || len(r.items[qs[0]].sizes) > 1 || r.items[qs[0]].vague {
		return nil, nil
	}
	used := qs[:1]
	for _, q := range qs[1:] {
		size, ok := r.message.read(r.items[q].sizes[0], r.fromCorner(q, size), r.lean)
		if end := r.sideAfter(q); ok && end != "" && d.From == nil {
			d.From, d.FromEnd = &size, end
			used = append(used[:len(used):len(used)], q)
		}
	}
	return d, used
}

// fixtureFrom is how the bare distances of a fixture are read: in inches where one of them is too many for feet.
func (r *reader) fixtureFrom(qs []int, wide Size) bareAs {
	for _, q := range qs {
		if t := r.items[q].sizes[0]; wide.System == length.Imperial && t.class == tNumber && t.num.Float() > 12 {
			return bareInch
		}
	}
	return bareNear
}

// fromCorner is how the bare distance of a door from a corner is read: in inches as the door is, but for a few feet.
func (r *reader) fromCorner(q int, door Size) bareAs {
	if t := r.items[q].sizes[0]; door.System == length.Imperial && t.class == tNumber && t.num.Float() > 6 {
		return bareInch
	}
	return bareNear
}

// fixture reads "post 4in x 4in, 3' from west, 5' from south", and "lally column, 4 inch square, 6 ft off the west wall".
func (r *reader) fixture(qs []int) (Statement, []int) {
	what := ""
	for word, name := range map[string]string{"post": "post", "hearth": "hearth", "pipe": "pipe", "island": "fixture"} {
		if r.has(word) {
			what = name
		}
	}
	against, likely := r.against(), r.sureOf(term.SetFixture)
	likely = likely && len(qs) > 0 && r.sizedThing(qs[0])
	if what == "" && likely {
		what = "fixture"
	}
	if against == "" && likely && len(qs) == 2 {
		against = r.sideAfter(qs[0])
	}
	corner := r.cornerSaid()
	if what == "" || len(qs) != 3 && !(len(qs) == 2 && against != "") && !(len(qs) == 1 && likely && corner != "") {
		return nil, nil
	}
	f := Fixture{What: what, In: r.inside(qs[0])}
	first := share(r.items[qs[0]].sizes)
	wide, ok := r.message.read(first[0], bareInch, r.lean)
	f.Wide = wide
	switch {
	case !ok:
		return nil, nil
	case len(first) == 2:
		deep, ok := r.message.read(first[1], bareInch, r.lean)
		if !ok {
			return nil, nil
		}
		f.Deep = &deep
	case what != "pipe":
		f.Deep = &wide
	}
	as := r.fixtureFrom(qs[1:], wide)
	for _, q := range qs[1:] {
		size, ok := r.message.read(r.items[q].sizes[0], as, r.lean)
		side := r.sideAfter(q)
		switch {
		case !ok || r.items[q].vague, likely && what == "fixture" && as == bareNear && r.items[q].sizes[0].class == tNumber:
			return nil, nil
		case side == room.West || side == room.East:
			f.FromX, f.SideX = size, side
		case side == room.South || side == room.North:
			f.FromY, f.SideY = size, side
		}
	}
	switch {
	case f.SideX == "" && (against == room.West || against == room.East):
		f.SideX = against
	case f.SideY == "" && (against == room.South || against == room.North):
		f.SideY = against
	}
	if len(qs) == 1 {
		f.SideX, f.SideY = sides[eastOrWest[corner[1]]], sides[northOrSouth[corner[0]]]
	}
	if f.SideX == "" || f.SideY == "" {
		return nil, nil
	}
	return f, qs
}

var (
	eastOrWest   = map[byte]string{'e': "east", 'w': "west"}
	northOrSouth = map[byte]string{'n': "north", 's': "south"}
)

// sizedThing says whether a quantity is the two sides of a thing: bare numbers as small as 2 x 2 may be feet or inches.
func (r *reader) sizedThing(q int) bool {
	two := r.items[q].sizes
	if len(two) != 2 {
		return false
	}
	a, b := two[0], two[1]
	return a.class == tLength || b.class == tLength || max(a.num.Float(), b.num.Float()) > 8
}

// against gives the wall that a thing stands against.
func (r *reader) against() room.Side {
	for i := range r.items {
		if r.items[i].word != "against" && r.items[i].word != "on" {
			continue
		}
		for j := i + 1; j < len(r.items) && j <= i+3; j++ {
			if s := sides[r.items[j].meaning]; s != "" {
				return s
			}
		}
	}
	return ""
}

// cutRoom reads "room 12'4" x 9'2" with 3' x 2'6" out of the NE corner".
func (r *reader) cutRoom(qs []int) (Statement, []int) {
	corner := r.cornerSaid()
	if corner == "" || len(qs) < 2 || len(r.items[qs[0]].sizes) != 2 || len(r.items[qs[1]].sizes) != 2 {
		return nil, nil
	}
	out := Room{}
	var used []int
	for k, q := range qs {
		ts := share(r.items[q].sizes)
		if half(ts) && k > 0 {
			used = append(used, q)
			continue
		}
		if len(ts) != 2 || r.items[q].vague {
			return nil, nil
		}
		l := r.together(ts, r.lean)
		a, ok1 := r.message.read(ts[0], bareRoom, l)
		b, ok2 := r.message.read(ts[1], bareRoom, l)
		if !ok1 || !ok2 {
			return nil, nil
		}
		if used = append(used, q); k == 0 {
			out.EastWest, out.NorthSouth = a, b
			continue
		}
		c := r.cornerNear(q)
		if c == "" {
			return nil, nil
		}
		out.CutOuts = append(out.CutOuts, CutOut{a, b, c, r.angled(q)})
	}
	return out, used
}

func (r *reader) cornerSaid() string {
	for i := range r.items {
		if c := r.cornerAt(i); c != "" {
			return c
		}
	}
	return ""
}

// cornerAt reads a corner at item i: "NE", "north east".
func (r *reader) cornerAt(i int) string {
	if corners[r.items[i].meaning] != "" {
		return r.items[i].meaning
	}
	if i+1 < len(r.items) && sides[r.items[i].meaning] != "" && sides[r.items[i+1].meaning] != "" {
		c := r.items[i].meaning[:1] + r.items[i+1].meaning[:1]
		if corners[c] != "" {
			return c
		}
	}
	return ""
}

// cornerNear gives the corner named after a size, or else before it.
func (r *reader) cornerNear(q int) string {
	for j := q + 1; j < len(r.items) && !r.items[j].quantity(); j++ {
		if c := r.cornerAt(j); c != "" {
			return c
		}
	}
	for j := q - 1; j >= 0 && !r.items[j].quantity(); j-- {
		if c := r.cornerAt(j); c != "" {
			return c
		}
	}
	return ""
}
