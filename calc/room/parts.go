package room

import (
	"fmt"
	"math"

	"lastrow/calc/geom"
	"lastrow/calc/length"
)

// What is not measured of an opening. Common practice, no source: a stud wall with board on both sides, and a door hung in
// the middle of it.
const (
	wallThickness = 4*length.Inch + length.Inch/2
	doorDepth     = wallThickness / 2
)

// wall finds the wall of the main room that people mean by a side: the one named so, else the longest that faces so.
func (b *builder) wall(side Side) (wall Edge, ok bool) {
	for _, e := range b.walls {
		if e.Side != side {
			continue
		}
		if e.Wall == string(side) {
			return e, true
		}
		if !ok || e.Len() > wall.Len() {
			wall, ok = e, true
		}
	}
	return wall, ok
}

func (b *builder) edge(k int) Edge {
	e := b.ring[k].e
	e.A, e.B = b.ring[k].p, b.ring[(k+1)%len(b.ring)].p
	return e
}

// opening is a place along a wall.
type opening struct {
	e        Edge
	from, to length.Length // from the edge's A
}

// along places something so wide on a wall, from the named end of it, or in its middle.
func (b *builder) along(what string, side Side, wide, from length.Length, end Side) (o opening, ok bool) {
	o.e, ok = b.wall(side)
	if !ok {
		b.refuse(what, "there is no %s wall", side)
		return o, false
	}
	whole := o.e.Len()
	switch {
	case wide <= 0:
		b.refuse(what, "%s is no width", wide)
		return o, false
	case end == "":
		from = (whole - wide) / 2
	case end == side || axis(end) == axis(side):
		b.refuse(what, "the %s wall has no %s corner", side, end)
		return o, false
	case !begins(o.e, end):
		from = whole - from - wide
	}
	o.from, o.to = from, from+wide
	if o.from < 0 || o.to > whole {
		b.refuse(what, "it lies off the %s wall, which is %s long", side, whole)
		return o, false
	}
	return o, true
}

// begins says whether the edge begins at the end that faces a side.
func begins(e Edge, end Side) bool { return way(e.B, e.A) == end }

// at gives the point so far along the edge and so far out of the floor: exact along an axis, else rounded to the nanometre.
func (o opening) at(along, out length.Length) geom.Point {
	dx, dy, l := o.e.B.X-o.e.A.X, o.e.B.Y-o.e.A.Y, o.e.Len()
	if dx == 0 || dy == 0 {
		ux, uy := dx/max(l, 1), dy/max(l, 1)
		return geom.Point{X: o.e.A.X + ux*along + uy*out, Y: o.e.A.Y + uy*along - ux*out}
	}
	fx, fy, a, n := float64(dx)/float64(l), float64(dy)/float64(l), float64(along), float64(out)
	x := float64(o.e.A.X) + float64(fx*a) + float64(fy*n)
	y := float64(o.e.A.Y) + float64(fy*a) - float64(fx*n)
	return geom.Point{X: length.Length(math.Round(x)), Y: length.Length(math.Round(y))}
}

// splice puts a detour into the edge that holds the opening: each point is the start of an edge, and the last leads back
// onto the wall. It refuses where another opening stands there already.
func (b *builder) splice(what string, o opening, detour []corner) {
	first, last := detour[0].p, detour[len(detour)-1].p
	for k := range b.ring {
		e := b.edge(k)
		if e.Wall != o.e.Wall || !on(e, first) || !on(e, last) {
			continue
		}
		ring := append([]corner{}, b.ring[:k+1]...)
		ring = append(ring, detour...)
		b.ring = append(ring, b.ring[k+1:]...)
		b.ring[k+len(detour)].e = b.ring[k].e // the wall goes on
		b.ring = trim(b.ring)
		return
	}
	b.refuse(what, "it overlaps another opening in the %s wall", o.e.Wall)
}

// on says whether p lies on the edge, within a nanometre of rounding on a slanted one.
func on(e Edge, p geom.Point) bool {
	if e.A.X == e.B.X || e.A.Y == e.B.Y {
		return geom.Orient(e.A, e.B, p) == 0 && within(e, p)
	}
	return geom.Distance(e.A, p)+geom.Distance(p, e.B)-e.Len() <= 2*length.Nanometre && within(e, p)
}

func within(e Edge, p geom.Point) bool {
	return min(e.A.X, e.B.X) <= p.X && p.X <= max(e.A.X, e.B.X) && min(e.A.Y, e.B.Y) <= p.Y && p.Y <= max(e.A.Y, e.B.Y)
}

func (b *builder) closets() {
	for i, c := range b.plan.Closets {
		what := numbered("closet", i, len(b.plan.Closets))
		if c.Deep <= 0 || c.Deep > mostRoom {
			b.refuse(what, "%s is no depth", c.Deep)
			continue
		}
		o, ok := b.along(what, c.Wall, c.Wide, c.From, c.FromEnd)
		if !ok {
			continue
		}
		b.closet(what, c, o)
	}
}

// closet joins a closet through its opening. Without one it is open to the room at its full width.
func (b *builder) closet(what string, c Closet, o opening) {
	name := func(s string) Edge { return Edge{Wall: what + " " + s, Cover: "trim"} }
	if c.Opening == 0 || c.Opening == c.Wide {
		b.splice(what, o, []corner{{o.at(o.from, 0), name("side")}, {o.at(o.from, c.Deep), name("back")},
			{o.at(o.to, c.Deep), name("side")}, {o.at(o.to, 0), Edge{}}})
		return
	}
	left := (c.Wide - c.Opening) / 2
	if c.OpeningFrom > 0 {
		left = c.OpeningFrom
	}
	if c.Opening < 0 || left+c.Opening > c.Wide {
		b.refuse(what, "an opening of %s is wider than the closet", c.Opening)
		return
	}
	in, out, t := o.from+left, o.from+left+c.Opening, wallThickness
	b.notes = append(b.notes, fmt.Sprintf("%s: wall taken as %s thick", what, t))
	b.splice(what, o, []corner{
		{o.at(in, 0), name("jamb")}, {o.at(in, t), name("front")}, {o.at(o.from, t), name("side")}, {o.at(o.from, t+c.Deep), name("back")},
		{o.at(o.to, t+c.Deep), name("side")}, {o.at(o.to, t), name("front")}, {o.at(out, t), name("jamb")}, {o.at(out, 0), Edge{}}})
}

func (b *builder) doorways() {
	for i, d := range b.plan.Doorways {
		what := numbered("doorway", i, len(b.plan.Doorways))
		o, ok := b.along(what, d.Wall, d.Wide, d.From, d.FromEnd)
		if !ok {
			continue
		}
		into := d.Into
		if into == 0 {
			into = doorDepth
		}
		jamb := Edge{Wall: what + " jamb", Cover: "jamb"}
		b.splice(what, o, []corner{{o.at(o.from, 0), jamb},
			{o.at(o.from, into), Edge{Wall: what, Side: d.Wall, Door: true, Cover: "track"}}, {o.at(o.to, into), jamb}, {o.at(o.to, 0), Edge{}}})
	}
}

func numbered(what string, i, of int) string {
	if of == 1 {
		return what
	}
	return fmt.Sprintf("%s %d", what, i+1)
}
