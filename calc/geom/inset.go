package geom

import (
	"math"

	"lastrow/calc/length"
)

// Inset takes a band off the region along each edge: gaps[k][i] wide along the edge that begins at point i of ring k.
// At an outside corner the bands meet in a mitre. Along the axes it is exact; a slanted edge is rounded to the nanometre
// once. Alcoves narrower than their two bands vanish, and a floor may come apart. A ring that vanishes whole is left out.
func (r Region) Inset(gaps [][]length.Length) Region {
	var out Region
	clean := true
	for k, ring := range r {
		in, mitred := ring.inset(gaps[k])
		if len(in) > 2 && in.Anticlockwise() == ring.Anticlockwise() {
			out = append(out, in)
		}
		clean = clean && mitred && len(in) > 2
	}
	if r.rectilinear() && (!clean || len(out.Crossings(1)) > 0) {
		return r.lessBands(gaps)
	}
	return out
}

// offset is an edge moved to its left.
type offset struct {
	a, b     Point // before moving
	gap      length.Length
	px, py   float64 // a point of the moved line, exact along the axes
	dx, dy   float64
	straight bool // along an axis
}

func newOffset(a, b Point, gap length.Length) offset {
	o := offset{a: a, b: b, gap: gap, dx: float64(b.X - a.X), dy: float64(b.Y - a.Y)}
	o.straight = a.X == b.X || a.Y == b.Y
	l := math.Hypot(o.dx, o.dy)
	o.px = float64(a.X) - float64(float64(gap)*o.dy/l)
	o.py = float64(a.Y) + float64(float64(gap)*o.dx/l)
	return o
}

// inset moves the edges of a ring and joins them in mitres; mitred says that no edge was lost on the way.
func (r Ring) inset(gaps []length.Length) (in Ring, mitred bool) {
	var edges []offset
	for i, p := range r {
		edges = append(edges, newOffset(p, r[(i+1)%len(r)], gaps[i]))
	}
	for {
		ring, flipped := corners(edges)
		if flipped < 0 {
			return ring.Tidy(), len(edges) == len(r)
		}
		if len(edges) < 4 {
			return nil, false
		}
		edges = without(edges, flipped)
	}
}

// corners meets each moved edge with the next; flipped is an edge that now runs backwards, or -1.
func corners(edges []offset) (ring Ring, flipped int) {
	n := len(edges)
	ends := make([][2]Point, n) // where edge i ends, and where edge i+1 begins
	for i := range edges {
		ends[i] = meeting(edges[i], edges[(i+1)%n])
	}
	flipped = -1
	worst := 0.0
	for i, e := range edges {
		from, to := ends[(i+n-1)%n][1], ends[i][0]
		if along := float64(to.X-from.X)*e.dx + float64(to.Y-from.Y)*e.dy; along < worst {
			worst, flipped = along, i
		}
		ring = append(ring, ends[i][0])
		if ends[i][1] != ends[i][0] {
			ring = append(ring, ends[i][1])
		}
	}
	return ring, flipped
}

// without drops an edge, and with it the neighbours that only led to it and back.
func without(edges []offset, i int) []offset {
	n := len(edges)
	before, after := edges[(i+n-1)%n], edges[(i+1)%n]
	drop := map[int]bool{i: true}
	if cross := before.dx*after.dy - before.dy*after.dx; cross == 0 && before.dx*after.dx+before.dy*after.dy < 0 {
		drop[(i+n-1)%n], drop[(i+1)%n] = true, true
	}
	var out []offset
	for j, e := range edges {
		if !drop[j] {
			out = append(out, e)
		}
	}
	return out
}

// meeting gives where two moved edges meet. Edges on one line with unlike gaps meet in a step.
func meeting(e, f offset) [2]Point {
	cross := e.dx*f.dy - e.dy*f.dx
	if cross == 0 {
		return [2]Point{e.moved(e.b), f.moved(f.a)}
	}
	if e.straight && f.straight {
		p := Point{e.moved(e.b).X, f.moved(f.a).Y}
		if e.a.Y == e.b.Y {
			p = Point{f.moved(f.a).X, e.moved(e.b).Y}
		}
		return [2]Point{p, p}
	}
	t := ((f.px-e.px)*f.dy - (f.py-e.py)*f.dx) / cross
	p := Point{length.Length(math.Round(e.px + float64(t*e.dx))), length.Length(math.Round(e.py + float64(t*e.dy)))}
	return [2]Point{p, p}
}

// moved shifts a point of the edge by its gap, exactly along an axis.
func (o offset) moved(p Point) Point {
	switch {
	case o.a.Y == o.b.Y && o.b.X > o.a.X:
		return Point{p.X, p.Y + o.gap}
	case o.a.Y == o.b.Y:
		return Point{p.X, p.Y - o.gap}
	case o.a.X == o.b.X && o.b.Y > o.a.Y:
		return Point{p.X - o.gap, p.Y}
	case o.a.X == o.b.X:
		return Point{p.X + o.gap, p.Y}
	}
	l := math.Hypot(o.dx, o.dy)
	return Point{p.X - length.Length(math.Round(float64(o.gap)*o.dy/l)), p.Y + length.Length(math.Round(float64(o.gap)*o.dx/l))}
}
