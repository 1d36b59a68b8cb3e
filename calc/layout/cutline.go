package layout

import (
	"lastrow/calc/geom"
	"lastrow/calc/length"
)

// The sides of a piece's box, anticlockwise.
const (
	sideNear = iota
	sideRight
	sideFar
	sideLeft
)

// cutLine is a stretch of a piece's outline that is no side of its box: a cut from one point of the box to another, what
// is cut off lying to its right.
type cutLine struct{ points geom.Ring }

// slight is a cut too shallow to mark: half of the finest mark that a tape is read to.
const slight = length.Inch / 32

// cutLines lists the cut lines of an outline, but for slight ones.
func (m *marking) cutLines(ring geom.Ring) []cutLine {
	n, start := len(ring), -1
	for i, p := range ring {
		if m.touches(p) {
			start = i
			break
		}
	}
	if start < 0 {
		return []cutLine{{ring}}
	}
	var out []cutLine
	line := geom.Ring{ring[start]}
	for i := 1; i <= n; i++ {
		p := ring[(start+i)%n]
		line = append(line, p)
		if !m.touches(p) {
			continue
		}
		if b := boxOf(geom.Region{line}); min(b.right-b.left, b.far-b.near) >= slight {
			out = append(out, cutLine{line})
		}
		line = geom.Ring{p}
	}
	return out
}

func (b box) touches(p geom.Point) bool {
	return p.X == b.left || p.X == b.right || p.Y == b.near || p.Y == b.far
}

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

// sides lists the sides of the box that a cut takes off whole, and the number of its corners that it takes.
func (b box) sides(c cutLine) (whole [4]bool, corners int) {
	wide, deep := b.right-b.left, b.far-b.near
	all := 2 * (wide + deep)
	from, to := b.round(c.points[0]), b.round(c.points[len(c.points)-1])
	if to <= from {
		to += all
	}
	at := [...]length.Length{0, wide, wide + deep, 2*wide + deep, all, all + wide, all + wide + deep, all + 2*wide + deep, 2 * all}
	for i := range 8 {
		if from <= at[i] && at[i+1] <= to {
			whole[i%4] = true
		}
		if from < at[i] && at[i] < to {
			corners++
		}
	}
	return whole, corners
}

// name says what a cut line is and how to mark it.
func (m *marking) name(c cutLine) Cut {
	whole, corners := m.sides(c)
	p, q := c.points[0], c.points[len(c.points)-1]
	if len(c.points) == 2 {
		switch {
		case whole[sideFar]:
			m.angled[sideFar] = true
			return Cut{What: "taper", Edge: "near edge", Near: q.Y - m.plank.near, Far: p.Y - m.plank.near}
		case whole[sideNear]:
			m.angled[sideNear] = true
			return Cut{What: "taper", Edge: "far edge", Near: m.plank.far - p.Y, Far: m.plank.far - q.Y}
		case whole[sideRight]:
			return m.angle(sideRight, p.X, q.X)
		case whole[sideLeft]:
			return m.angle(sideLeft, q.X, p.X)
		}
	}
	cut := m.boxCut("notch", boxOf(geom.Region{c.points}))
	if len(c.points) == 2 && corners > 0 {
		cut.What = "angle"
	}
	if slanted(c.points) {
		for _, p := range c.points {
			cut.Marks = append(cut.Marks, geom.Point{X: p.X - m.left, Y: p.Y - m.plank.near})
		}
	}
	return cut
}

// angle is an angled end, by where it meets the near side and the far side of the piece.
func (m *marking) angle(side int, near, far length.Length) Cut {
	m.angled[side] = true
	if side == sideLeft {
		return Cut{What: "angle", Edge: "right end", Near: m.right - near, Far: m.right - far}
	}
	return Cut{What: "angle", Edge: "left end", Near: near - m.left, Far: far - m.left}
}

func slanted(line geom.Ring) bool {
	for i, p := range line[1:] {
		if q := line[i]; p.X != q.X && p.Y != q.Y {
			return true
		}
	}
	return false
}
