package layout

import (
	"cmp"
	"slices"

	"lastrow/calc/geom"
	"lastrow/calc/length"
)

// box is the smallest upright rectangle about something.
type box struct{ left, right, near, far length.Length }

func boxOf(r geom.Region) box {
	p := r[0][0]
	b := box{p.X, p.X, p.Y, p.Y}
	for _, ring := range r {
		for _, p := range ring {
			b.left, b.right = min(b.left, p.X), max(b.right, p.X)
			b.near, b.far = min(b.near, p.Y), max(b.far, p.Y)
		}
	}
	return b
}

func (b box) ring() geom.Ring {
	return geom.Ring{{X: b.left, Y: b.near}, {X: b.right, Y: b.near}, {X: b.right, Y: b.far}, {X: b.left, Y: b.far}}
}

// doubleArea is twice the signed area of a ring, good for its sign.
func doubleArea(r geom.Ring) float64 {
	sum := 0.0
	for i := 1; i+1 < len(r); i++ {
		sum += float64(r[i].X-r[0].X)*float64(r[i+1].Y-r[0].Y) - float64(r[i+1].X-r[0].X)*float64(r[i].Y-r[0].Y)
	}
	return sum
}

// parts takes a region apart into its connected parts, each with its holes, from left to right.
func parts(r geom.Region) []geom.Region {
	if len(r) == 1 {
		return []geom.Region{r}
	}
	var out []geom.Region
	var holes []geom.Ring
	for _, ring := range r {
		if doubleArea(ring) > 0 {
			out = append(out, geom.Region{ring})
		} else {
			holes = append(holes, ring)
		}
	}
	for _, h := range holes {
		for i := range out {
			if inside(h[0], out[i][0]) {
				out[i] = append(out[i], h)
				break
			}
		}
	}
	slices.SortStableFunc(out, func(a, b geom.Region) int {
		p, q := boxOf(a), boxOf(b)
		return cmp.Or(cmp.Compare(p.left, q.left), cmp.Compare(p.near, q.near))
	})
	return out
}

// inside says whether a ring goes round a point.
func inside(p geom.Point, ring geom.Ring) bool {
	in := false
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < between(a.Y, a.X, b.Y, b.X, p.Y) {
			in = !in
		}
	}
	return in
}
