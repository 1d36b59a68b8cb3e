package draw

import (
	"fmt"

	"lastrow/bot/draw/sheet"
	"lastrow/calc/layout"
)

// How a piece is shown: whole planks plain and light, cut ones darker with lines rising, those that an offcut gives in
// another tone with lines falling, and those that can't be tilted in crossed.
func look(p *layout.Piece) (sheet.Tone, sheet.Texture) {
	t := tone(p)
	switch {
	case p.Trapped != "":
		return t, sheet.Crossed
	case t == sheet.Cut:
		return t, sheet.Rising
	case t == sheet.Spare:
		return t, sheet.Falling
	}
	return t, sheet.Plain
}

func tone(p *layout.Piece) sheet.Tone {
	switch {
	case whole(p):
		return sheet.Whole
	case p.Offcut:
		return sheet.Spare
	}
	return sheet.Cut
}

// whole says whether a piece's face is a plank's own: a lip cut off leaves it so.
func whole(p *layout.Piece) bool {
	for _, c := range p.Cuts {
		if c.What != "lip" {
			return false
		}
	}
	return p.Whole || len(p.Cuts) > 0
}

// outlinePx is the least width of a row, in pixels, whose joints are drawn.
const outlinePx = 5

// pieces draws every piece and its outline.
func (p *plan) pieces() {
	line := middleLine
	if p.rowPx < detailPx {
		line = narrowLine
	}
	p.each(func(piece *layout.Piece) {
		t, texture := look(piece)
		if p.rowPx < outlinePx {
			texture = sheet.Plain
		}
		p.Add(sheet.Fill{Rings: p.view.rings(piece.Shape), Tone: t, Texture: texture})
	})
	if p.rowPx < outlinePx {
		return
	}
	p.each(func(piece *layout.Piece) {
		for _, ring := range p.view.rings(piece.Shape) {
			p.Add(sheet.Outline(ring, line, sheet.Solid)...)
		}
	})
}

// each goes through all pieces, row by row.
func (p *plan) each(do func(*layout.Piece)) {
	for i := range p.layout.Rows {
		eachIn(&p.layout.Rows[i], do)
	}
}

func eachIn(r *layout.Row, do func(*layout.Piece)) {
	for i := range r.Runs {
		for j := range r.Runs[i].Pieces {
			do(&r.Runs[i].Pieces[j])
		}
	}
}

// lengths writes the length of each cut piece in it, or beside it.
func (p *plan) lengths() {
	if p.rowPx < detailPx {
		return
	}
	p.each(func(piece *layout.Piece) {
		if s := p.mark(piece); s != "" {
			p.inPiece(piece, s)
		}
	})
}

// mark is what is written in a piece: its length, unless it is as long as a plank.
func (p *plan) mark(piece *layout.Piece) string {
	s := ""
	if piece.Right-piece.Left < p.layout.Request.Plank.Length {
		s = p.title.bare(piece.Right - piece.Left)
	}
	if piece.Trapped != "" {
		s = "! " + s
	}
	return s
}

// inPiece writes in a piece, along it or across it; else outside the wall with a line to it; else it gives it a key letter,
// with the writing under the plan.
func (p *plan) inPiece(piece *layout.Piece, s string) {
	shape := sheet.Fill{Rings: p.view.rings(piece.Shape)}
	if p.run == layout.Diagonal && p.lean(piece, shape, s) {
		return
	}
	if p.try(piece, shape, s) || p.led(piece, shape, s) {
		return
	}
	if key := letterOf(p.letter); p.try(piece, shape, key) {
		p.letter++
		p.sizes = append(p.sizes, fmt.Sprintf("%s, row %d piece %d: %s", key, piece.Row, piece.N, s))
		return
	}
	p.sizes = append(p.sizes, fmt.Sprintf("row %d piece %d: %s", piece.Row, piece.N, s))
}

func (p *plan) try(piece *layout.Piece, shape sheet.Fill, s string) bool {
	t := sheet.Text{Size: leastText, Bold: true, Clear: true, Tight: true, Tone: tone(piece), S: s}
	along := p.run == layout.NorthSouth
	for _, turned := range []bool{along, !along} {
		if t.Turned = turned; turned && len(s) == 1 {
			continue // a single letter is hard to read on its side
		}
		for _, at := range spots(shape.Area()) {
			c := t.Centred(at)
			if holds(shape, c.Box()) && p.place.Free(c.Box()) {
				p.place.Take(c.Box())
				p.Add(c)
				return true
			}
		}
	}
	return false
}

// spots are the places in a box where a label may have its middle, the best first.
func spots(b sheet.Box) []sheet.Point {
	m := b.Centre()
	w, h := b.W(), b.H()
	return []sheet.Point{m, {X: b.X0 + w/3, Y: m.Y}, {X: b.X1 - w/3, Y: m.Y}, {X: m.X, Y: b.Y0 + h/3}, {X: m.X, Y: b.Y1 - h/3}}
}

// holds says whether a box lies in a shape: its corners and the middles of its sides do.
func holds(f sheet.Fill, b sheet.Box) bool {
	b = b.Grow(1)
	m := b.Centre()
	for _, q := range append(b.Corners(), sheet.Point{X: m.X, Y: b.Y0}, sheet.Point{X: m.X, Y: b.Y1}, sheet.Point{X: b.X0, Y: m.Y}, sheet.Point{X: b.X1, Y: m.Y}) {
		if !f.Contains(q) {
			return false
		}
	}
	return true
}

func (p *plan) note(s string) { p.notes = append(p.notes, s) }

// letterOf counts a, b ... z, aa, ab.
func letterOf(n int) string {
	if n < 26 {
		return string(rune('a' + n))
	}
	return letterOf(n/26-1) + string(rune('a'+n%26))
}
