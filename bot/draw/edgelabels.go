package draw

import (
	"lastrow/bot/draw/sheet"
	"lastrow/calc/room"
)

// edgeLabels gives the length of every wall that the overall sizes don't give.
func (p *plan) edgeLabels() {
	west, south, east, north := p.walled()
	for _, e := range p.floor.Outline() {
		l := e.Len()
		if e.Door || l == east-west || l == north-south {
			continue
		}
		p.edgeLabel(e, p.title.Tape.Room(l))
	}
}

// edgeLabel writes outside an edge that is long enough on the sheet.
func (p *plan) edgeLabel(e room.Edge, s string) bool {
	a, b := p.view.at(e.A), p.view.at(e.B)
	side := outward(e)
	t := sheet.Text{Size: leastText, S: s, Turned: side == room.East || side == room.West}
	long := sheet.Bounds(a, b)
	if max(long.W(), long.H()) < 44 {
		return false
	}
	placed, ok := p.place.Place(append(p.besideWall(t, e, wallPx+6), p.besideWall(t, e, wallPx+36)...)...)
	if ok {
		p.Add(placed)
	}
	return ok
}

// outsideAt gives places for a label so far beyond a side of a box.
func outsideAt(t sheet.Text, b sheet.Box, side room.Side, off int) []sheet.Text {
	var out []sheet.Text
	w, h := t.Box().W(), t.Box().H()
	for _, part := range []int{50, 25, 75} {
		at := sheet.Point{X: b.X0 + b.W()*part/100, Y: b.Y0 + b.H()*part/100}
		switch side {
		case room.South:
			at.Y = b.Y1 + off + h/2
		case room.North:
			at.Y = b.Y0 - off - h/2
		case room.East:
			at.X = b.X1 + off + w/2
		default:
			at.X = b.X0 - off - w/2
		}
		out = append(out, t.Centred(at))
	}
	return out
}
