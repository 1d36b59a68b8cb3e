package layout

import (
	"math"
	"slices"

	"lastrow/calc/geom"
	"lastrow/calc/length"
)

// round is how far along the box's outline a point on it lies, anticlockwise from the left near corner. The point that
// ends a cut is taken to lie after its beginning.
func (b box) round(p geom.Point) length.Length {
	wide, deep := b.right-b.left, b.far-b.near
	switch {
	case p.Y == b.near:
		return p.X - b.left
	case p.X == b.right:
		return wide + p.Y - b.near
	case p.Y == b.far:
		return wide + deep + b.right - p.X
	}
	return 2*wide + deep + b.far - p.Y
}

// taken is what a cut takes off a box: sides whole, and corners in the order in which they lie.
type taken struct {
	whole   [4]bool
	corners []int
}

func (b box) takes(c cutLine) (t taken) {
	wide, deep := b.right-b.left, b.far-b.near
	all := 2 * (wide + deep)
	from, to := b.round(c.points[0]), b.round(c.points[len(c.points)-1])
	if to <= from {
		to += all
	}
	at := [...]length.Length{0, wide, wide + deep, 2*wide + deep, all, all + wide, all + wide + deep, all + 2*wide + deep, 2 * all}
	for i := range 8 {
		if from <= at[i] && at[i+1] <= to {
			t.whole[i%4] = true
		}
		if from < at[i] && at[i] < to {
			t.corners = append(t.corners, i%4)
		}
	}
	return t
}

// through is the side that a straight cut takes off whole. Of two, it is an end where the cut is steep.
func (t taken) through(c cutLine) (side int, ok bool) {
	if len(c.points) != 2 {
		return 0, false
	}
	p, q := c.points[0], c.points[1]
	order := [...]int{sideFar, sideNear, sideRight, sideLeft}
	if abs(q.Y-p.Y) >= abs(q.X-p.X) {
		order = [...]int{sideRight, sideLeft, sideFar, sideNear}
	}
	for _, side := range order {
		if t.whole[side] {
			return side, true
		}
	}
	return 0, false
}

// off names what a cut takes off the box.
func (b box) off(c cutLine, t taken) string {
	switch len(t.corners) {
	case 0:
		p, q := c.points[0], c.points[len(c.points)-1]
		switch {
		case p.Y == b.near && q.Y == b.near:
			return sideNames[sideNear]
		case p.X == b.right && q.X == b.right:
			return sideNames[sideRight]
		case p.Y == b.far && q.Y == b.far:
			return sideNames[sideFar]
		}
		return sideNames[sideLeft]
	case 1:
		return cornerNames[t.corners[0]]
	case 2:
		return sideNames[t.corners[0]]
	case 3:
		return sideNames[t.corners[0]] + " and the " + sideNames[t.corners[1]]
	}
	return "whole edge"
}

// boxed says whether what a cut takes off the box is, but for what is slight, a box itself.
func (b box) boxed(c cutLine, t taken) bool {
	o := boxOf(geom.Region{c.points})
	wide, deep := float64(o.right-o.left), float64(o.far-o.near)
	return wide*deep-b.areaOff(c, t) <= float64(slight)*min(wide, deep)
}

// areaOff is the area that a cut takes off the box.
func (b box) areaOff(c cutLine, t taken) float64 {
	corners := b.ring()
	ring := slices.Clone(c.points)
	slices.Reverse(ring)
	for _, k := range t.corners {
		ring = append(ring, corners[k])
	}
	return math.Abs(doubleArea(ring)) / 2
}
