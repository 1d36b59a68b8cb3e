package draw

import (
	"strconv"

	"lastrow/bot/draw/sheet"
	"lastrow/calc/layout"
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
		spots := p.numberSpots(t, b)
		if p.run == layout.Diagonal {
			spots = p.slantNumbers(t, row)
		}
		if placed, ok := p.place.Place(spots...); ok {
			if p.run == layout.Diagonal {
				p.place.Take(placed.Box().Grow(16)) // the length of a wall beside it would read as one with it
			}
			p.Add(placed)
		}
	}
}

// numberStep gives how many rows go to a number.
func (p *plan) numberStep() int {
	room := plainText + 4
	if p.run == layout.NorthSouth {
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
	if p.run == layout.EastWest && b.H() < h {
		if m.Y = b.Y0 - 8; b.Y0 > p.view.box.Centre().Y {
			m.Y = b.Y1 + 8
		}
	}
	if p.run == layout.NorthSouth && b.W() < w {
		if m.X = b.X0 - 8; b.X0 > p.view.box.Centre().X {
			m.X = b.X1 + 8
		}
	}
	if p.run == layout.NorthSouth {
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
