package draw

import (
	"lastrow/bot/draw/sheet"
	"lastrow/calc/layout"
	"lastrow/calc/room"
)

// led writes beside a piece, in its neighbour in the row or outside the wall, with a line from the piece.
func (p *plan) led(piece *layout.Piece, shape sheet.Fill, s string) bool {
	t := sheet.Text{Size: leastText, Bold: true, Tight: true, S: s, Turned: p.run == layout.NorthSouth}
	sides := []room.Side{room.East, room.West}
	if t.Turned {
		sides = []room.Side{room.North, room.South}
	}
	for _, side := range sides {
		if p.inNeighbour(piece, shape, t, side) {
			return true
		}
	}
	for _, side := range sides {
		if p.overWall(shape, t, side) {
			return true
		}
	}
	return false
}

func (p *plan) inNeighbour(piece *layout.Piece, shape sheet.Fill, t sheet.Text, side room.Side) bool {
	t = outsideAt(t, shape.Area(), side, 18)[0]
	found := false
	eachIn(&p.layout.Rows[piece.Row-1], func(next *layout.Piece) {
		if found || next == piece || !holds(sheet.Fill{Rings: p.view.rings(next.Shape)}, t.Box()) {
			return
		}
		t.Clear, t.Tone = true, tone(next)
		found = p.leader(shape, t)
	})
	return found
}

func (p *plan) overWall(shape sheet.Fill, t sheet.Text, side room.Side) bool {
	for _, off := range []int{wallPx + 8, wallPx + 40} {
		at := outsideAt(t, shape.Area(), side, off)[0]
		if !p.onFloor(at.Box()) && p.leader(shape, at) {
			return true
		}
	}
	return false
}

// leader places a text where it and the line to it are free, and draws both, with a dot on the piece.
func (p *plan) leader(shape sheet.Fill, t sheet.Text) bool {
	from := shape.Area().Centre()
	to := nearest(t.Box(), from)
	if !p.place.Free(t.Box()) || p.cuts(from, to) {
		return false
	}
	p.place.Take(t.Box())
	p.place.Take(sheet.Bounds(from, to).Grow(1))
	p.Add(t, sheet.Line{A: from, B: to, Width: narrowLine}, dot(from))
	return true
}

// cuts says whether a line would run through a label.
func (p *plan) cuts(a, b sheet.Point) bool {
	line := sheet.Bounds(a, b).Grow(1)
	for _, t := range p.Texts() {
		if t.Box().Meets(line) {
			return true
		}
	}
	return false
}

// onFloor says whether a box lies on the floor with a corner.
func (p *plan) onFloor(b sheet.Box) bool {
	for _, q := range append(b.Corners(), b.Centre()) {
		if p.ground.Contains(q) {
			return true
		}
	}
	return false
}

// nearest is a box's place nearest to a point.
func nearest(b sheet.Box, q sheet.Point) sheet.Point {
	return sheet.Point{X: min(max(q.X, b.X0), b.X1), Y: min(max(q.Y, b.Y0), b.Y1)}
}

func dot(q sheet.Point) sheet.Shape {
	b := sheet.Bounds(q, q).Grow(4)
	return sheet.Fill{Rings: [][]sheet.Point{b.Corners()}, Tone: sheet.Black}
}
