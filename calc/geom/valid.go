package geom

import "slices"

// Crossing names two edges of a region that meet where they should not, by their first points.
type Crossing struct{ A, B Point }

// segment is an edge, its left end first, with its place in its ring.
type segment struct {
	a, b         Point
	ring, i, n   int
	start        Point
	bottom, high int64
}

// Crossings lists pairs of edges that cross or touch away from a shared corner, at most the first most of them. It sweeps
// from west to east, so that long walks cost little more than sorting.
func (r Region) Crossings(most int) []Crossing {
	segs := segments(r)
	var active []segment
	var out []Crossing
	for _, s := range segs {
		active = slices.DeleteFunc(active, func(t segment) bool { return t.b.X < s.a.X })
		for _, t := range active {
			if t.high < s.bottom || s.high < t.bottom || !meet(s, t) {
				continue
			}
			if out = append(out, Crossing{t.start, s.start}); len(out) >= most {
				return out
			}
		}
		active = append(active, s)
	}
	return out
}

func segments(r Region) []segment {
	var segs []segment
	for k, ring := range r {
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			s := segment{a: p, b: q, ring: k, i: i, n: len(ring), start: p, bottom: int64(min(p.Y, q.Y)), high: int64(max(p.Y, q.Y))}
			if q.X < p.X || q.X == p.X && q.Y < p.Y {
				s.a, s.b = q, p
			}
			segs = append(segs, s)
		}
	}
	slices.SortFunc(segs, func(s, t segment) int {
		switch {
		case s.a.X != t.a.X:
			return int(max(-1, min(1, s.a.X-t.a.X)))
		case s.ring != t.ring:
			return s.ring - t.ring
		}
		return s.i - t.i
	})
	return segs
}

// meet says whether two edges cross or touch. Neighbours in a ring share a corner, and may share no more.
func meet(s, t segment) bool {
	if s.ring == t.ring && s.n > 2 && (next(s, t) || next(t, s)) {
		return overlap(s, t)
	}
	d1, d2 := Orient(s.a, s.b, t.a), Orient(s.a, s.b, t.b)
	d3, d4 := Orient(t.a, t.b, s.a), Orient(t.a, t.b, s.b)
	if d1*d2 < 0 && d3*d4 < 0 {
		return true
	}
	return d1 == 0 && inside(s.a, t.a, s.b) || d2 == 0 && inside(s.a, t.b, s.b) ||
		d3 == 0 && inside(t.a, s.a, t.b) || d4 == 0 && inside(t.a, s.b, t.b)
}

func next(s, t segment) bool { return (s.i+1)%s.n == t.i }

// overlap says whether two edges that share a corner lie on each other.
func overlap(s, t segment) bool {
	if Orient(s.a, s.b, t.a) != 0 || Orient(s.a, s.b, t.b) != 0 {
		return false
	}
	shared := 0
	for _, p := range []Point{t.a, t.b} {
		if inside(s.a, p, s.b) {
			shared++
		}
	}
	for _, p := range []Point{s.a, s.b} {
		if inside(t.a, p, t.b) {
			shared++
		}
	}
	return shared > 2
}

// Contains says whether p lies inside the region, or on its edge.
func (r Region) Contains(p Point) bool {
	in := false
	for _, ring := range r {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if Orient(a, b, p) == 0 && inside(a, p, b) {
				return true
			}
			if (a.Y > p.Y) != (b.Y > p.Y) && (Orient(a, b, p) > 0) == (b.Y > a.Y) {
				in = !in
			}
		}
	}
	return in
}
