package room

import (
	"fmt"

	"lastrow/calc/geom"
	"lastrow/calc/length"
)

// corner is a corner of the floor and the edge that begins there.
type corner struct {
	p geom.Point
	e Edge
}

// builder joins the parts of a plan. Its rings run with the floor on the left.
type builder struct {
	plan   Plan
	ring   []corner          // round the rooms
	rooms  map[string][]Edge // the walls of each room, by its name, before anything opens off them
	holes  [][]corner        // round the fixtures
	broken []Broken
	notes  []string
}

// enter takes a room into the list of those that others may open off.
func (b *builder) enter(name string, walls []Edge) {
	if b.rooms == nil {
		b.rooms = map[string][]Edge{}
	}
	b.rooms[name] = walls
}

func (b *builder) tape() length.Tape {
	if b.plan.Metric {
		return length.Tape{System: length.Metric}
	}
	return length.Tape{}
}

// text shows a length exactly, in the plan's system where it can.
func (b *builder) text(l length.Length) string { return b.tape().Exact(l) }

func (b *builder) refuse(where, format string, args ...any) {
	b.broken = append(b.broken, Broken{fmt.Sprintf(format, args...), where})
}

// bounds of a wall: shorter is a slip of the thumb, longer is no room.
const (
	leastWall = length.Inch / 4
	leastRoom = 6 * length.Inch
	mostRoom  = 1000 * length.Metre
	mostWalls = 500
)

func (b *builder) outline() {
	switch p := b.plan; {
	case p.Rect != nil:
		b.rect(*p.Rect)
	case p.Quad != nil:
		b.quad(*p.Quad)
	case len(p.Walk) > 0:
		b.walk(p.Walk)
	default:
		b.refuse("room", "no room is given yet")
	}
}

func (b *builder) size(where string, ls ...length.Length) {
	for _, l := range ls {
		if l < leastRoom || l > mostRoom {
			b.refuse(where, "%s is no side of a room (%s to 1 km)", b.text(l), b.text(leastRoom))
		}
	}
}

// rect goes round a rectangle from its south-west corner, in and out of the corners cut out.
func (b *builder) rect(r Rect) {
	b.size("room", r.EastWest, r.NorthSouth)
	cut := map[string]CutOut{}
	for _, c := range r.CutOuts {
		if _, twice := cut[c.Corner]; twice {
			b.refuse(c.Corner+" corner", "two pieces are cut out of it")
		}
		if c.EastWest <= 0 || c.NorthSouth <= 0 || c.EastWest >= r.EastWest || c.NorthSouth >= r.NorthSouth {
			b.refuse(c.Corner+" corner", "a cut-out of %s x %s does not fit the room", b.text(c.EastWest), b.text(c.NorthSouth))
		}
		cut[c.Corner] = c
	}
	b.touching(r, cut)
	w, h := r.EastWest, r.NorthSouth
	sw, se, ne, nw := cut["SW"], cut["SE"], cut["NE"], cut["NW"]
	b.add(sw.EastWest, 0, South)
	b.step(se, w-se.EastWest, 0, w, se.NorthSouth, East, "SE")
	b.step(ne, w, h-ne.NorthSouth, w-ne.EastWest, h, North, "NE")
	b.step(nw, nw.EastWest, h, 0, h-nw.NorthSouth, West, "NW")
	switch {
	case sw.Angled:
		b.add(0, sw.NorthSouth, SouthWest)
	case sw.EastWest > 0:
		b.add(0, sw.NorthSouth, South)
		b.last().e.Wall = "SW cut-out, south side"
		b.add(sw.EastWest, sw.NorthSouth, West)
		b.last().e.Wall = "SW cut-out, west side"
	}
}

// touching refuses cut-outs that together take a whole side.
func (b *builder) touching(r Rect, cut map[string]CutOut) {
	for _, pair := range [][2]string{{"SW", "SE"}, {"NW", "NE"}} {
		if cut[pair[0]].EastWest+cut[pair[1]].EastWest >= r.EastWest && cut[pair[0]].EastWest > 0 && cut[pair[1]].EastWest > 0 {
			b.refuse(pair[0]+" and "+pair[1]+" corners", "the cut-outs meet")
		}
	}
	for _, pair := range [][2]string{{"SW", "NW"}, {"SE", "NE"}} {
		if cut[pair[0]].NorthSouth+cut[pair[1]].NorthSouth >= r.NorthSouth && cut[pair[0]].NorthSouth > 0 && cut[pair[1]].NorthSouth > 0 {
			b.refuse(pair[0]+" and "+pair[1]+" corners", "the cut-outs meet")
		}
	}
}

// step goes round a corner: straight, or in and out of a cut-out. The edge after it is the wall named.
func (b *builder) step(c CutOut, x1, y1, x2, y2 length.Length, wall Side, name string) {
	if c.Angled {
		b.add(x1, y1, corners[c.Corner])
	}
	if c.Angled || c.EastWest == 0 {
		b.add(x2, y2, wall)
		return
	}
	before := b.last().e.Side
	b.add(x1, y1, wall)
	b.last().e.Wall = name + " cut-out, " + string(wall) + " side"
	switch wall {
	case East, West:
		b.add(x1, y2, before)
	default:
		b.add(x2, y1, before)
	}
	b.last().e.Wall = name + " cut-out, " + string(before) + " side"
	b.add(x2, y2, wall)
}

var corners = map[string]Side{"NE": NorthEast, "SE": SouthEast, "SW": SouthWest, "NW": NorthWest}

// add appends a corner whose edge is the wall that faces out to a side.
func (b *builder) add(x, y length.Length, wall Side) {
	b.ring = append(b.ring, corner{geom.Point{X: x, Y: y}, Edge{Wall: string(wall), Side: wall, Cover: "trim"}})
}

func (b *builder) last() *corner { return &b.ring[len(b.ring)-1] }
