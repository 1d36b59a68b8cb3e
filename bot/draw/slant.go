package draw

import (
	"math"

	"lastrow/bot/draw/sheet"
	"lastrow/calc/layout"
	"lastrow/calc/room"
)

// way is the direction of the rows on the sheet, to be read from the left.
func (p *plan) way() (x, y float64) {
	east, north := p.layout.Heading()
	if east < 0 {
		return -east, north
	}
	return east, -north
}

// lean writes along a piece of slanting rows, where it has room.
func (p *plan) lean(piece *layout.Piece, shape sheet.Fill, s string) bool {
	x, y := p.way()
	long := float64(p.view.px(piece.Right - piece.Left))
	m := middle(shape.Rings[0])
	for _, part := range []float64{0, -0.12, 0.12, -0.25, 0.25, -0.36, 0.36} {
		t := sheet.Leaning{Middle: step(m, x*long*part, y*long*part), X: x, Y: y, Size: leastText, Tone: tone(piece), S: s}
		if p.room(t, shape) {
			for _, b := range t.Boxes() {
				p.place.Take(b)
			}
			p.Add(t)
			return true
		}
	}
	return false
}

// room says whether slanting letters lie in a shape and on nothing else.
func (p *plan) room(t sheet.Leaning, shape sheet.Fill) bool {
	for _, q := range t.Outline(1) {
		if !shape.Contains(q) {
			return false
		}
	}
	for _, b := range t.Boxes() {
		if !p.place.Free(b) {
			return false
		}
	}
	return true
}

// middle is the middle of a ring's corners.
func middle(ring []sheet.Point) sheet.Point {
	var x, y int
	for _, q := range ring {
		x, y = x+q.X, y+q.Y
	}
	return sheet.Point{X: x / len(ring), Y: y / len(ring)}
}

func step(q sheet.Point, x, y float64) sheet.Point {
	return sheet.Point{X: q.X + int(math.Round(x)), Y: q.Y + int(math.Round(y))}
}

// slantNumbers gives places for a slanting row's number: beyond its ends, outside the walls.
func (p *plan) slantNumbers(t sheet.Text, row *layout.Row) []sheet.Text {
	x, y := p.way()
	var out []sheet.Text
	for _, way := range []float64{-1, 1} {
		at := p.rowEnd(row, x*way, y*way)
		for _, off := range []int{wallPx + 8, wallPx + 24} {
			c := t.Centred(beyond(at, t, x*way, y*way, off))
			if !p.onFloor(c.Box()) {
				out = append(out, c)
			}
		}
	}
	return out
}

// rowEnd is where the middle line of a row leaves the floor, one way.
func (p *plan) rowEnd(row *layout.Row, x, y float64) sheet.Point {
	var last sheet.Fill
	best := math.Inf(-1)
	eachIn(row, func(piece *layout.Piece) {
		f := sheet.Fill{Rings: p.view.rings(piece.Shape)}
		m := middle(f.Rings[0])
		if d := float64(m.X)*x + float64(m.Y)*y; d > best {
			best, last = d, f
		}
	})
	m := middle(last.Rings[0])
	at := m
	for i := 1; last.Contains(at) && i < 4000; i++ {
		at = step(m, x*float64(i), y*float64(i))
	}
	return at
}

// beyond is the middle of a label that lies off a point, so many pixels on the way of (x, y).
func beyond(at sheet.Point, t sheet.Text, x, y float64, off int) sheet.Point {
	b := t.Box()
	half := math.Abs(x)*float64(b.W())/2 + math.Abs(y)*float64(b.H())/2
	return step(at, x*(float64(off)+half), y*(float64(off)+half))
}

// besideWall gives places for a label outside an edge: over or beside it where it lies along an axis, or nearly, else square
// to its slant.
func (p *plan) besideWall(t sheet.Text, e room.Edge, off int) []sheet.Text {
	a, b := p.view.at(e.A), p.view.at(e.B)
	x, y := unit(a, b)
	if math.Min(math.Abs(x), math.Abs(y)) < 0.2 {
		return outsideAt(t, sheet.Bounds(a, b), outward(e), off)
	}
	t.Turned = false
	var out []sheet.Text
	for _, part := range []int{50, 30, 70} {
		out = append(out, t.Centred(beyond(between(a, b, part, 100), t, -y, x, off)))
	}
	return out
}
