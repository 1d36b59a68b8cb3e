package sheet

import "slices"

func (f Fill) paint(c *canvas) {
	if b, ok := f.upright(); ok && f.Within == (Box{}) {
		for y := b.Y0; y < b.Y1; y++ {
			c.span(b.X0, b.X1, y, f.Tone, f.Texture)
		}
		return
	}
	lo, hi := c.h, 0
	for _, ring := range f.Rings {
		b := Bounds(ring...)
		lo, hi = min(lo, b.Y0), max(hi, b.Y1)
	}
	in := f.Within
	if in == (Box{}) {
		in = Box{0, 0, c.w, c.h}
	}
	for y := max(lo, in.Y0, 0); y < min(hi, in.Y1, c.h); y++ {
		c.runs = c.runs[:0]
		for _, ring := range f.Rings {
			c.runs = cross(c.runs, ring, y)
		}
		slices.Sort(c.runs)
		for i := 0; i+1 < len(c.runs); i += 2 {
			c.span(max(c.runs[i], in.X0), min(c.runs[i+1], in.X1), y, f.Tone, f.Texture)
		}
	}
}

// upright says whether the fill is one upright rectangle, and which.
func (f Fill) upright() (Box, bool) {
	if len(f.Rings) != 1 || len(f.Rings[0]) != 4 {
		return Box{}, false
	}
	r := f.Rings[0]
	b := Bounds(r...)
	across := r[0].Y == r[1].Y && r[1].X == r[2].X && r[2].Y == r[3].Y && r[3].X == r[0].X
	down := r[0].X == r[1].X && r[1].Y == r[2].Y && r[2].X == r[3].X && r[3].Y == r[0].Y
	return b, across || down
}

// cross adds the pixels at which the middle of a scan line passes a ring's edges.
func cross(runs []int, ring []Point, y int) []int {
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		if (p.Y > y) == (q.Y > y) {
			continue
		}
		if p.Y > q.Y {
			p, q = q, p
		}
		den := 2 * (q.Y - p.Y)
		num := (2*(y-p.Y) + 1) * (q.X - p.X)
		runs = append(runs, p.X+floorDiv(2*num+den, 2*den))
	}
	return runs
}

func floorDiv(a, b int) int {
	q := a / b
	if a%b != 0 && (a < 0) != (b < 0) {
		q--
	}
	return q
}

// Contains says whether a point lies in the filled area.
func (f Fill) Contains(p Point) bool {
	in := false
	for _, ring := range f.Rings {
		for _, x := range cross(nil, ring, p.Y) {
			if x <= p.X {
				in = !in
			}
		}
	}
	return in
}
