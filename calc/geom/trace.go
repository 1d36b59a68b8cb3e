package geom

import "math"

// side is a directed piece of border with what is kept on its left.
type side struct {
	a, b Point
	from Source
}

// border gives the bundles that part what is kept from what is not.
func border(bs []bundle) []side {
	var out []side
	for i, b := range bs {
		keep, off := right(bs, i)
		was, is := keep > 0 && off <= 0, keep+b.keep > 0 && off+b.off <= 0
		switch {
		case is && !was:
			out = append(out, side{b.a, b.b, b.from})
		case was && !is:
			out = append(out, side{b.b, b.a, b.from})
		}
	}
	return out
}

// right counts how often the place to the right of the middle of a bundle lies within the region and within the figures, by
// the bundles between it and far away: those under it, or those to the east of it where it is upright.
func right(bs []bundle, i int) (keep, off int) {
	mid := Point{bs[i].a.X + bs[i].b.X, bs[i].a.Y + bs[i].b.Y} // twice, to stay whole
	upright := bs[i].a.X == bs[i].b.X
	for k := range bs {
		h := &bs[k]
		if k == i {
			continue
		}
		if way := h.passes(mid, upright); way != 0 {
			keep, off = keep+way*h.keep, off+way*h.off
		}
	}
	return keep, off
}

// passes says whether a bundle is passed on the way from far away to a point, given twice: +1 where the way goes from the
// bundle's right to its left, -1 from its left to its right.
func (h *bundle) passes(mid Point, fromEast bool) int {
	if !fromEast {
		if 2*h.a.X <= mid.X && mid.X < 2*h.b.X && orientTwice(h, mid) > 0 {
			return 1
		}
		return 0
	}
	low, high, up := h.a.Y, h.b.Y, 1
	if low > high {
		low, high, up = high, low, -1
	}
	if 2*low <= mid.Y && mid.Y < 2*high && orientTwice(h, mid)*up > 0 {
		return up
	}
	return 0
}

func orientTwice(h *bundle, mid Point) int {
	return Orient(Point{2 * h.a.X, 2 * h.a.Y}, Point{2 * h.b.X, 2 * h.b.Y}, mid)
}

// trace joins sides into closed outlines. Where it may go on two ways it turns left, so that what touches stays apart.
func trace(sides []side) []Outline {
	from := make(map[Point][]int, len(sides))
	for i, s := range sides {
		from[s.a] = append(from[s.a], i)
	}
	used := make([]bool, len(sides))
	var out []Outline
	for start := range sides {
		if used[start] {
			continue
		}
		var o Outline
		for k := start; k >= 0; {
			used[k] = true
			o.Ring, o.From = append(o.Ring, sides[k].a), append(o.From, sides[k].from)
			if k = leftmost(sides, used, from[sides[k].b], k, start); k == start {
				break
			}
		}
		if o = o.tidy(); len(o.Ring) > 2 {
			out = append(out, o)
		}
	}
	return out
}

// leftmost is the side, of those listed, that turns most to the left after side k: one not used yet, or the start; else -1.
func leftmost(sides []side, used []bool, list []int, k, start int) int {
	best, most := -1, 0.0
	for _, j := range list {
		if used[j] && j != start {
			continue
		}
		if t := turning(sides[k], sides[j]); best < 0 || t > most {
			best, most = j, t
		}
	}
	return best
}

// turning is the angle from one side to the next, positive to the left.
func turning(s, t side) float64 {
	ux, uy := float64(s.b.X-s.a.X), float64(s.b.Y-s.a.Y)
	vx, vy := float64(t.b.X-t.a.X), float64(t.b.Y-t.a.Y)
	return math.Atan2(float64(ux*vy)-float64(uy*vx), float64(ux*vx)+float64(uy*vy))
}

// tidy drops points that merely divide an edge.
func (o Outline) tidy() Outline {
	var t Outline
	n := len(o.Ring)
	for i, p := range o.Ring {
		if o.From[i] != o.From[(i+n-1)%n] {
			t.Ring, t.From = append(t.Ring, p), append(t.From, o.From[i])
		}
	}
	return t
}
