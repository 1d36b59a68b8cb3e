package room

import (
	"fmt"
	"math"
	"strings"

	"lastrow/calc/geom"
	"lastrow/calc/length"
)

// wallThickness is that of a wall with an opening in it, which is not measured: a stud wall with board on both sides, and a
// door hung in the middle of it. Common practice, no source.
func (b *builder) wallThickness() length.Length {
	if b.plan.Metric {
		return 115 * length.Millimetre
	}
	return 4*length.Inch + length.Inch/2
}

// wallOf finds the wall that people mean by a side: the one named so, else the longest that faces so. Slanted is the one
// along no axis. Where there is none, it says why.
func wallOf(walls []Edge, side Side) (wall Edge, why string) {
	if side == Slanted {
		return slantedOf(walls)
	}
	for _, e := range walls {
		if e.Wall == string(side) {
			return e, ""
		}
		if e.Side == side && e.Len() > wall.Len() {
			wall = e
		}
	}
	if wall.Wall == "" {
		return wall, fmt.Sprintf("there is no %s wall", side)
	}
	return wall, ""
}

func slantedOf(walls []Edge) (wall Edge, why string) {
	var names []string
	for _, e := range walls {
		if e.slants() {
			wall, names = e, append(names, e.Wall)
		}
	}
	switch len(names) {
	case 0:
		return wall, "there is no slanted wall"
	case 1:
		return wall, ""
	}
	return wall, "there are several slanted walls: name one, " + strings.Join(names, ", ")
}

// slants says whether the edge runs along no axis.
func (e Edge) slants() bool { return e.A.X != e.B.X && e.A.Y != e.B.Y }

func (b *builder) edge(k int) Edge {
	e := b.ring[k].e
	e.A, e.B = b.ring[k].p, b.ring[(k+1)%len(b.ring)].p
	return e
}

func (b *builder) edges() []Edge {
	out := make([]Edge, len(b.ring))
	for k := range b.ring {
		out[k] = b.edge(k)
	}
	return out
}

// opening is a place along a wall.
type opening struct {
	e        Edge
	from, to length.Length // from the edge's A
}

// along places something so wide on a wall, from the named end of it, or in its middle, and refuses what lies off it.
func (b *builder) along(what, room string, side Side, wide, from length.Length, end Side) (o opening, ok bool) {
	o, ok = b.place(what, room, side, wide, from, end)
	return o, ok && b.lies(what, side, o, o.from, o.to)
}

// lies says whether a stretch lies on the opening's wall.
func (b *builder) lies(what string, side Side, o opening, from, to length.Length) bool {
	whole := o.e.Len()
	if from < 0 || to > whole {
		b.refuse(what, "it lies off the %s wall, which is %s long", side, b.said(whole))
		return false
	}
	return true
}

// place is along for what may reach past the wall.
func (b *builder) place(what, room string, side Side, wide, from length.Length, end Side) (o opening, ok bool) {
	if _, known := b.rooms[room]; !known {
		b.refuse(what, "there is no %s for it: say that one first", room)
		return o, false
	}
	var why string
	if o.e, why = wallOf(b.rooms[room], side); why != "" {
		b.refuse(what, "%s", why)
		return o, false
	}
	whole := o.e.Len()
	begins, ok := b.begins(o.e, end)
	switch {
	case wide <= 0 || wide > mostRoom:
		b.refuse(what, "%s is no width", b.text(wide))
		return o, false
	case max(from, -from) > mostRoom:
		b.refuse(what, "%s is no distance along a wall", b.text(from))
		return o, false
	case end == "":
		from = (whole - wide) / 2
	case !ok || end == side:
		b.refuse(what, "the %s wall has no %s corner", side, end)
		return o, false
	case !begins:
		from = whole - from - wide
	}
	o.from, o.to = from, from+wide
	return o, true
}

// begins says whether the edge begins at the end that faces a side; ok is false where it lies square to that side, or nearly.
func (b *builder) begins(e Edge, end Side) (begins, ok bool) {
	const least = 0.38 // the cosine of 67 1/2 degrees, by which a wall's end still faces a side
	x, y := end.vector()
	along := (float64(x*float64(e.A.X-e.B.X)) + float64(y*float64(e.A.Y-e.B.Y))) / float64(max(e.Len(), 1))
	return along > 0, math.Abs(along) > least
}

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

// trim drops edges of no length and edges that run back along the one before.
func trim(ring []corner) []corner {
	for i := 0; i < len(ring) && len(ring) > 3; {
		n := len(ring)
		prev, next := (i+n-1)%n, (i+1)%n
		a, p, q := ring[prev].p, ring[i].p, ring[next].p
		switch {
		case p == q:
			ring = append(ring[:i:i], ring[i+1:]...)
			i = 0
		case geom.Orient(a, p, q) == 0 && back(a, p, q):
			if geom.Distance(p, q) > geom.Distance(a, p) {
				ring[prev].e = ring[i].e
			}
			ring = append(ring[:i:i], ring[i+1:]...)
			i = 0
		default:
			i++
		}
	}
	return ring
}

// back says whether the way from p to q runs back towards a.
func back(a, p, q geom.Point) bool {
	return (p.X-a.X > 0 && q.X-p.X < 0) || (p.X-a.X < 0 && q.X-p.X > 0) || (p.Y-a.Y > 0 && q.Y-p.Y < 0) || (p.Y-a.Y < 0 && q.Y-p.Y > 0)
}
