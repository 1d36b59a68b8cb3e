package geom

import (
	"math"
	"math/big"
	"math/bits"

	"lastrow/calc/length"
)

// Orient is +1 where a, b, c turn left, -1 where they turn right, 0 where they lie on one line. It is exact.
func Orient(a, b, c Point) int {
	return cmpProducts(int64(b.X-a.X), int64(c.Y-a.Y), int64(b.Y-a.Y), int64(c.X-a.X))
}

// cmpProducts compares a*b with c*d in 128 bits.
func cmpProducts(a, b, c, d int64) int {
	h1, l1 := mul(a, b)
	h2, l2 := mul(c, d)
	switch {
	case h1 != h2 && h1 < h2, h1 == h2 && l1 < l2:
		return -1
	case h1 == h2 && l1 == l2:
		return 0
	}
	return 1
}

// mul is the signed product in 128 bits, two's complement.
func mul(a, b int64) (int64, uint64) {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	h := int64(hi)
	if a < 0 {
		h -= b
	}
	if b < 0 {
		h -= a
	}
	return h, lo
}

// Area is the area that the rings bound: holes, which run clockwise, count against it. Half a square nanometre is dropped.
func (r Region) Area() length.Area {
	sum := new(big.Int)
	for _, ring := range r {
		sum.Add(sum, ring.twice())
	}
	return length.AreaOf(sum.Rsh(sum, 1))
}

// twice is twice the signed area: positive for a ring that runs anticlockwise.
func (r Ring) twice() *big.Int {
	sum, one, two := new(big.Int), new(big.Int), new(big.Int)
	for i, p := range r {
		q := r[(i+1)%len(r)]
		one.Mul(big.NewInt(int64(p.X)), big.NewInt(int64(q.Y)))
		two.Mul(big.NewInt(int64(q.X)), big.NewInt(int64(p.Y)))
		sum.Add(sum, one.Sub(one, two))
	}
	return sum
}

// Anticlockwise says whether the ring is an outer one.
func (r Ring) Anticlockwise() bool { return r.twice().Sign() > 0 }

// Reversed runs the other way round.
func (r Ring) Reversed() Ring {
	out := make(Ring, len(r))
	for i, p := range r {
		out[len(r)-1-i] = p
	}
	return out
}

// Perimeter is the length of all rings. A slanted edge is rounded to the nanometre.
func (r Region) Perimeter() length.Length {
	var sum length.Length
	for _, ring := range r {
		for i, p := range ring {
			sum += Distance(p, ring[(i+1)%len(ring)])
		}
	}
	return sum
}

// Distance between two points: exact along an axis, else rounded to the nanometre.
func Distance(a, b Point) length.Length {
	dx, dy := b.X-a.X, b.Y-a.Y
	if dx == 0 || dy == 0 {
		return max(dx, -dx) + max(dy, -dy)
	}
	return length.Length(math.Round(math.Hypot(float64(dx), float64(dy))))
}

// Box gives the south-west and the north-east corner of the box round the region.
func (r Region) Box() (sw, ne Point) {
	first := true
	for _, ring := range r {
		for _, p := range ring {
			if first {
				sw, ne, first = p, p, false
			}
			sw = Point{min(sw.X, p.X), min(sw.Y, p.Y)}
			ne = Point{max(ne.X, p.X), max(ne.Y, p.Y)}
		}
	}
	return sw, ne
}

// Tidy drops points that repeat the one before and points in the middle of a straight edge.
func (r Ring) Tidy() Ring {
	out := make(Ring, 0, len(r))
	for i, p := range r {
		before, after := r[(i+len(r)-1)%len(r)], r[(i+1)%len(r)]
		if len(out) > 0 {
			before = out[len(out)-1]
		}
		if p == before || Orient(before, p, after) == 0 && p != after && inside(before, p, after) {
			continue
		}
		out = append(out, p)
	}
	return out
}

// inside says whether p, on the line through a and b, lies between them.
func inside(a, p, b Point) bool {
	return min(a.X, b.X) <= p.X && p.X <= max(a.X, b.X) && min(a.Y, b.Y) <= p.Y && p.Y <= max(a.Y, b.Y)
}
