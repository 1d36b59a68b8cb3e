package draw

import (
	"fmt"

	"lastrow/bot/draw/sheet"
	"lastrow/calc/geom"
	"lastrow/calc/layout"
	"lastrow/calc/length"
	"lastrow/calc/room"
)

// rowWidths gives the widths of the first row and of the last at their other ends.
func (p *plan) rowWidths() {
	rows := p.layout.Rows
	p.rowWidth(&rows[0])
	if len(rows) > 1 {
		p.rowWidth(&rows[len(rows)-1])
	}
}

func (p *plan) rowWidth(row *layout.Row) {
	end := p.endOf(row)
	if end == nil {
		return
	}
	b := p.view.boxOf(end.Shape)
	t := sheet.Text{Size: plainText, S: p.title.bare(p.widthAt(row, end))}
	switch p.run {
	case layout.NorthSouth:
		p.across(t, b.X0, b.X1, p.view.box.Y1+wallPx)
	case layout.EastWest:
		p.down(t, b.Y0, b.Y1, p.view.box.X1+wallPx)
	default:
		p.note(fmt.Sprintf("Row %d is %s wide.", row.N, p.title.Tape.Text(row.Width)))
	}
}

// endOf gives the piece of a row at which its width is dimensioned: the one nearest the sheet's right, then its bottom.
func (p *plan) endOf(row *layout.Row) (end *layout.Piece) {
	var b sheet.Box
	eachIn(row, func(piece *layout.Piece) {
		if c := p.view.boxOf(piece.Shape); end == nil || c.X1 > b.X1 || c.X1 == b.X1 && c.Y1 > b.Y1 {
			b, end = c, piece
		}
	})
	return end
}

// widthAt is how wide a row is at one of its pieces: less than the row where that reaches into a doorway and this lies
// beside it. Rows at a slant are as wide as they are told.
func (p *plan) widthAt(row *layout.Row, piece *layout.Piece) length.Length {
	sw, ne := piece.Shape.Box()
	switch p.layout.Along {
	case layout.EastWest:
		return ne.Y - sw.Y
	case layout.NorthSouth:
		return ne.X - sw.X
	}
	return row.Width
}

// widthText tells a row's width, and the width dimensioned where that is another.
func (p *plan) widthText(row *layout.Row) string {
	text := p.title.Tape.Text(row.Width) + " wide"
	if end := p.endOf(row); end != nil && p.title.Tape.Text(p.widthAt(row, end)) != p.title.Tape.Text(row.Width) {
		text += ", " + p.title.Tape.Text(p.widthAt(row, end)) + " at the arrows"
	}
	return text
}

// down dimensions a height to the right of x, the figure beside it; across one under y, the figure below.
func (p *plan) down(t sheet.Text, y0, y1, x int) {
	p.ticks(sheet.Point{X: x + 4, Y: y0}, sheet.Point{X: x + 30, Y: y0})
	p.ticks(sheet.Point{X: x + 4, Y: y1}, sheet.Point{X: x + 30, Y: y1})
	p.Add(arrows(sheet.Point{X: x + 20, Y: y0}, sheet.Point{X: x + 20, Y: y1})...)
	p.place.Take(sheet.Box{X0: x, Y0: y0, X1: x + 30, Y1: y1})
	m := sheet.Point{X: x + 36 + t.Box().W()/2, Y: (y0 + y1) / 2}
	p.put(t, m, sheet.Point{X: m.X, Y: m.Y + 20}, sheet.Point{X: m.X, Y: m.Y - 20})
}

func (p *plan) across(t sheet.Text, x0, x1, y int) {
	p.ticks(sheet.Point{X: x0, Y: y + 4}, sheet.Point{X: x0, Y: y + 30})
	p.ticks(sheet.Point{X: x1, Y: y + 4}, sheet.Point{X: x1, Y: y + 30})
	p.Add(arrows(sheet.Point{X: x0, Y: y + 20}, sheet.Point{X: x1, Y: y + 20})...)
	p.place.Take(sheet.Box{X0: x0, Y0: y, X1: x1, Y1: y + 30})
	m := sheet.Point{X: (x0 + x1) / 2, Y: y + 34 + t.Box().H()/2}
	p.put(t, m, sheet.Point{X: m.X + 20, Y: m.Y}, sheet.Point{X: m.X - 20, Y: m.Y})
}

func (p *plan) ticks(a, b sheet.Point) { p.Add(sheet.Line{A: a, B: b, Width: narrowLine}) }

func (p *plan) extension(a, b sheet.Point) {
	p.ticks(a, b)
	p.place.Take(sheet.Bounds(a, b).Grow(1))
}

// put places a text with its middle at the first of some points that is free.
func (p *plan) put(t sheet.Text, at ...sheet.Point) bool {
	for _, q := range at {
		if placed, ok := p.place.Place(t.Centred(q)); ok {
			p.Add(placed)
			return true
		}
	}
	return false
}

// arrows is a dimension line with a head at each end, or heads from outside where it is short.
func arrows(a, b sheet.Point) []sheet.Shape {
	const size = 14
	if d := sheet.Bounds(a, b); max(d.W(), d.H()) < 3*size {
		ux, uy := unit(a, b)
		far := func(q sheet.Point, by float64) sheet.Point {
			return sheet.Point{X: q.X + int(ux*by), Y: q.Y + int(uy*by)}
		}
		return []sheet.Shape{
			sheet.Line{A: far(a, -2*size), B: far(b, 2*size), Width: narrowLine},
			sheet.Head{Tip: a, From: far(a, -2*size), Size: size}, sheet.Head{Tip: b, From: far(b, 2*size), Size: size},
		}
	}
	return []sheet.Shape{
		sheet.Line{A: a, B: b, Width: narrowLine},
		sheet.Head{Tip: a, From: b, Size: size}, sheet.Head{Tip: b, From: a, Size: size},
	}
}

// frame gives the floor's overall sizes over it and to its right.
func (p *plan) frame() {
	west, south, east, north := p.walled()
	sw, ne := p.view.at(geom.Point{X: west, Y: south}), p.view.at(geom.Point{X: east, Y: north})
	b := sheet.Box{X0: sw.X, Y0: ne.Y, X1: ne.X, Y1: sw.Y}
	y, x := b.Y0-labelLane+18, b.X1+labelLane+outerLane
	if p.layout != nil && p.layout.StartWall == room.North {
		y = p.view.box.Y1 + labelLane
	}
	p.overall(sheet.Point{X: b.X0, Y: y}, sheet.Point{X: b.X1, Y: y}, east-west)
	p.overall(sheet.Point{X: x, Y: b.Y1}, sheet.Point{X: x, Y: b.Y0}, north-south)
}

// walled gives the outermost places of the walls, without the floor that runs into doorways.
func (p *plan) walled() (west, south, east, north length.Length) {
	doors := map[geom.Point]bool{}
	for _, e := range p.floor.Edges {
		if e.Door {
			doors[e.A], doors[e.B] = true, true
		}
	}
	var ring geom.Ring
	for _, e := range p.floor.Edges {
		if !doors[e.A] {
			ring = append(ring, e.A)
		}
	}
	if len(ring) < 3 {
		return bounds(p.floor.Region)
	}
	return bounds(geom.Region{ring})
}

func (p *plan) overall(a, c sheet.Point, l length.Length) {
	t := sheet.Text{Size: plainText + 2, Bold: true, S: p.title.Tape.Room(l)}
	m := sheet.Bounds(a, c).Centre()
	if a.Y == c.Y {
		p.put(t, sheet.Point{X: m.X, Y: a.Y - t.Box().H()/2 - 4})
	} else {
		t.Turned = true
		p.put(t, sheet.Point{X: a.X - t.Box().W()/2 - 4, Y: m.Y})
	}
	p.Add(arrows(a, c)...)
	p.place.Take(sheet.Bounds(a, c).Grow(4))
	for _, q := range []sheet.Point{a, c} {
		if a.Y == c.Y {
			p.extension(sheet.Point{X: q.X, Y: p.beyond(q.Y)}, sheet.Point{X: q.X, Y: p.wallNear(a.Y)})
		} else {
			p.extension(sheet.Point{X: p.view.box.X1 + wallPx + 4, Y: q.Y}, sheet.Point{X: q.X + 8, Y: q.Y})
		}
	}
}

// wallNear is where the extension lines of a dimension over the floor, or under it, begin; beyond is where they end.
func (p *plan) wallNear(y int) int {
	if y > p.view.box.Y1 {
		return p.view.box.Y1 + wallPx + 4
	}
	return p.view.box.Y0 - wallPx - 4
}

func (p *plan) beyond(y int) int {
	if y > p.view.box.Y1 {
		return y + 8
	}
	return y - 8
}
