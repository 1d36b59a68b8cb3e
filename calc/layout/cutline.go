package layout

import (
	"math"

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

var sideNames = [...]string{"near edge", "right end", "far edge", "left end"}

// cornerNames are the corners of the box, each at the beginning of a side.
var cornerNames = [...]string{"near left corner", "near right corner", "far right corner", "far left corner"}

// cutLine is a stretch of a piece's outline that is no side of its box: a cut from one point of the box to another, what
// is cut off lying to its right.
type cutLine struct{ points geom.Ring }

// slight is a cut too shallow to mark: half of the finest mark that a tape is read to.
const slight = length.Inch / 32

// cutLines lists the cut lines of an outline, but for slight ones. A line that turns round the piece is as many straight
// cuts as it can be sawn in.
func (m *marking) cutLines(ring geom.Ring) []cutLine {
	ring = m.snapped(ring)
	n, start := len(ring), -1
	for i, p := range ring {
		if m.touches(p) {
			start = i
			break
		}
	}
	if start < 0 {
		return nil
	}
	var out []cutLine
	line := geom.Ring{ring[start]}
	for i := 1; i <= n; i++ {
		p := ring[(start+i)%n]
		line = append(line, p)
		if !m.touches(p) {
			continue
		}
		if line = smooth(line); !m.hugs(line) {
			out = append(out, m.whole(m.straight(line, ring), ring)...)
		}
		line = geom.Ring{p}
	}
	return out
}

// worth is an area too large to lose where a piece hangs together by less than can be marked, in nanometres squared.
const worth = 2 * float64(length.Inch) * float64(length.Inch)

// whole leaves out the straight cuts that would take off most of a piece: it hangs together by less than can be marked, and
// the other part is the one to lose. Where neither may be lost, the piece is in parts.
func (m *marking) whole(cuts []cutLine, piece geom.Ring) []cutLine {
	var out []cutLine
	all := doubleArea(piece) / 2
	for _, c := range cuts {
		if len(c.points) == 2 {
			lost := lostTo(c.points[0], c.points[1], piece)
			m.parted = m.parted || min(lost, all-lost) > worth
			if lost > all/2 {
				continue
			}
		}
		out = append(out, c)
	}
	return out
}

// lostTo is the area of a piece that lies to the right of the line through two points.
func lostTo(a, b geom.Point, piece geom.Ring) float64 {
	var lost geom.Ring
	for i, p := range piece {
		q := piece[(i+1)%len(piece)]
		offP, offQ := offLine(a, b, p), offLine(a, b, q)
		if offP <= 0 {
			lost = append(lost, p)
		}
		if offP < 0 && offQ > 0 || offP > 0 && offQ < 0 {
			t := offP / (offP - offQ)
			lost = append(lost, geom.Point{X: p.X + length.Length(t*float64(q.X-p.X)), Y: p.Y + length.Length(t*float64(q.Y-p.Y))})
		}
	}
	if len(lost) < 3 {
		return 0
	}
	return doubleArea(lost) / 2
}

// hugs says whether a line lies on a side of the box, or slightly off it.
func (b box) hugs(line geom.Ring) bool {
	o := boxOf(geom.Region{line})
	return o.right-b.left < slight || b.right-o.left < slight || o.far-b.near < slight || b.far-o.near < slight
}

// snapped moves the points that lie slightly off the box's sides onto them.
func (b box) snapped(ring geom.Ring) geom.Ring {
	if min(b.right-b.left, b.far-b.near) < 4*slight {
		return ring
	}
	out := make(geom.Ring, len(ring))
	for i, p := range ring {
		out[i] = geom.Point{X: nearer(p.X, b.left, b.right), Y: nearer(p.Y, b.near, b.far)}
	}
	return tidy(out)
}

func nearer(l, least, most length.Length) length.Length {
	switch {
	case l-least < slight:
		return least
	case most-l < slight:
		return most
	}
	return l
}

// smooth drops the points that lie slightly off the line between their neighbours, or that no tape tells from one of them.
func smooth(line geom.Ring) geom.Ring {
	out := geom.Ring{line[0]}
	for i := 1; i+1 < len(line); i++ {
		before, p, after := out[len(out)-1], line[i], line[i+1]
		near := min(geom.Distance(before, p), geom.Distance(p, after)) < 2*slight
		if !near && math.Abs(offLine(before, after, p)) >= float64(slight) {
			out = append(out, line[i])
		}
	}
	return append(out, line[len(line)-1])
}

// offLine is how far a point lies to the left of the line from a to b.
func offLine(a, b, p geom.Point) float64 {
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	long := math.Hypot(dx, dy)
	if long == 0 {
		return math.Hypot(float64(p.X-a.X), float64(p.Y-a.Y))
	}
	return (float64(dx*float64(p.Y-a.Y)) - float64(dy*float64(p.X-a.X))) / long
}

// straight takes the straight cuts off both ends of a line, as long as all that is kept lies to one side of each.
func (m *marking) straight(line, piece geom.Ring) []cutLine {
	var out []cutLine
	for len(line) > 2 {
		n := len(line)
		switch {
		case geom.Orient(line[0], line[1], line[2]) > 0 && keeps(line[0], line[1], piece):
			out = append(out, cutLine{geom.Ring{line[0], m.beyond(line[0], line[1])}})
			line = append(geom.Ring{m.beyond(line[2], line[1])}, line[2:]...)
		case geom.Orient(line[n-3], line[n-2], line[n-1]) > 0 && keeps(line[n-2], line[n-1], piece):
			out = append(out, cutLine{geom.Ring{m.beyond(line[n-1], line[n-2]), line[n-1]}})
			line = append(line[:n-2:n-2], m.beyond(line[n-3], line[n-2]))
		default:
			return append(out, cutLine{line})
		}
	}
	return append(out, cutLine{line})
}

// keeps says whether a cut through two points leaves the piece to its left.
func keeps(a, b geom.Point, piece geom.Ring) bool {
	for _, p := range piece {
		if offLine(a, b, p) < -float64(slight) {
			return false
		}
	}
	return true
}

// beyond is where the line from a through b leaves the box.
func (b box) beyond(from, through geom.Point) geom.Point {
	x, y := b.right, b.far
	if through.X < from.X {
		x = b.left
	}
	if through.Y < from.Y {
		y = b.near
	}
	if from.X != through.X {
		if at := between(from.X, from.Y, through.X, through.Y, x); b.near <= at && at <= b.far {
			return geom.Point{X: x, Y: at}
		}
	}
	return geom.Point{X: between(from.Y, from.X, through.Y, through.X, y), Y: y}
}

func (b box) touches(p geom.Point) bool {
	return p.X == b.left || p.X == b.right || p.Y == b.near || p.Y == b.far
}
