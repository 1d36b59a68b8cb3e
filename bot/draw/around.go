package draw

import (
	"fmt"
	"strconv"

	"lastrow/bot/draw/sheet"
	"lastrow/calc/geom"
	"lastrow/calc/layout"
	"lastrow/calc/length"
	"lastrow/calc/room"
)

// rowNumbers numbers the rows at their left or upper end: all of them, or every second, fifth, tenth where they lie close.
func (p *plan) rowNumbers() {
	step := p.numberStep()
	for i := range p.layout.Rows {
		row := &p.layout.Rows[i]
		if row.N != 1 && row.N != len(p.layout.Rows) && row.N%step != 0 {
			continue
		}
		b, ok := p.endBox(row)
		if !ok {
			continue
		}
		t := sheet.Text{Size: plainText, Bold: true, S: strconv.Itoa(row.N)}
		if placed, ok := p.place.Place(p.numberSpots(t, b)...); ok {
			p.Add(placed)
		}
	}
}

// numberStep gives how many rows go to a number.
func (p *plan) numberStep() int {
	room := plainText + 4
	if p.layout.Along == layout.NorthSouth {
		w, _ := sheet.Measure(strconv.Itoa(len(p.layout.Rows)), plainText, true)
		room = w + 6
	}
	for _, step := range []int{1, 2, 5, 10, 20, 50, 100, 200, 500} {
		if p.rowPx*step >= room {
			return step
		}
	}
	return 1000
}

// endBox is the box of the piece at a row's left end on the sheet, or its upper end.
func (p *plan) endBox(row *layout.Row) (sheet.Box, bool) {
	var out sheet.Box
	found := false
	eachIn(row, func(piece *layout.Piece) {
		b := p.view.boxOf(piece.Shape)
		if !found || b.X0 < out.X0 || b.X0 == out.X0 && b.Y0 < out.Y0 {
			out, found = b, true
		}
	})
	return out, found
}

func (p *plan) numberSpots(t sheet.Text, b sheet.Box) []sheet.Text {
	w, h := t.Box().W(), t.Box().H()
	m := b.Centre()
	if p.layout.Along == layout.EastWest && b.H() < h {
		if m.Y = b.Y0 - 8; b.Y0 > p.view.box.Centre().Y {
			m.Y = b.Y1 + 8
		}
	}
	if p.layout.Along == layout.NorthSouth && b.W() < w {
		if m.X = b.X0 - 8; b.X0 > p.view.box.Centre().X {
			m.X = b.X1 + 8
		}
	}
	if p.layout.Along == layout.NorthSouth {
		m.Y = b.Y0 - wallPx - 6 - h/2
		far := sheet.Point{X: m.X, Y: p.view.box.Y0 - wallPx - 6 - h/2}
		past := sheet.Point{X: m.X, Y: far.Y + wallPx - beyondPx}
		return []sheet.Text{t.Centred(m), t.Centred(far), t.Centred(past)}
	}
	m.X = b.X0 - wallPx - 8 - w/2
	far := sheet.Point{X: p.view.box.X0 - wallPx - 8 - w/2, Y: m.Y}
	past := sheet.Point{X: far.X + wallPx - beyondPx, Y: m.Y}
	return []sheet.Text{t.Centred(m), t.Centred(far), t.Centred(past)}
}

// rowWidths gives the widths of the first row and of the last at their other ends.
func (p *plan) rowWidths() {
	rows := p.layout.Rows
	p.rowWidth(&rows[0])
	if len(rows) > 1 {
		p.rowWidth(&rows[len(rows)-1])
	}
}

func (p *plan) rowWidth(row *layout.Row) {
	if len(row.Runs) == 0 {
		return
	}
	var b sheet.Box
	eachIn(row, func(piece *layout.Piece) {
		if c := p.view.boxOf(piece.Shape); b == (sheet.Box{}) || c.X1 > b.X1 || c.X1 == b.X1 && c.Y1 > b.Y1 {
			b = c
		}
	})
	t := sheet.Text{Size: plainText, S: p.title.bare(row.Width)}
	switch p.layout.Along {
	case layout.NorthSouth:
		p.across(t, b.X0, b.X1, p.view.box.Y1+wallPx)
	case layout.EastWest:
		p.down(t, b.Y0, b.Y1, p.view.box.X1+wallPx)
	default:
		p.note(fmt.Sprintf("Row %d is %s wide.", row.N, p.title.Tape.Text(row.Width)))
	}
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

// edgeLabels gives the length of every wall that the overall sizes don't give.
func (p *plan) edgeLabels() {
	west, south, east, north := p.walled()
	for _, e := range p.outerEdges() {
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
	placed, ok := p.place.Place(outside(t, long, side)...)
	if ok {
		p.Add(placed)
	}
	return ok
}

// outside gives places for a label beyond a side of a box, clear of the wall.
func outside(t sheet.Text, b sheet.Box, side room.Side) []sheet.Text {
	return append(outsideAt(t, b, side, wallPx+6), outsideAt(t, b, side, wallPx+36)...)
}

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
