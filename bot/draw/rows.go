package draw

import (
	"fmt"
	"strconv"

	"lastrow/bot/draw/sheet"
	"lastrow/calc/layout"
)

// rowsOnSheet is the number of rows on one sheet of rows.
const rowsOnSheet = 18

// RowSheets are the sheets that go with a plan that is too crowded for lettering: every row as a strip with its cut pieces
// and their lengths, the whole planks between them told by number, so that a row of any length fits. Not to scale.
func RowSheets(l *layout.Layout, t Title) []*sheet.Sheet {
	var out []*sheet.Sheet
	for from := 0; from < len(l.Rows); from += rowsOnSheet {
		to := min(from+rowsOnSheet, len(l.Rows))
		p := &rowsPage{page: newPage(fmt.Sprintf("rows-%d-%d", from+1, to), sheetWidth, t), layout: l}
		p.header(fmt.Sprintf("rows %d to %d of %d", from+1, to, len(l.Rows)), t.goods())
		p.key(rowKey)
		p.write(fmt.Sprintf("%s Not to scale. Laid from %s to %s.", t.unitNote(), l.From, l.To), plainText, false)
		p.skip(10)
		for i := from; i < to; i++ {
			p.row(&l.Rows[i])
		}
		p.Alt = fmt.Sprintf("Rows %d to %d, each a strip with the lengths of its cut pieces.", from+1, to)
		out = append(out, p.done(sheetWidth))
	}
	return out
}

type rowsPage struct {
	*page
	layout *layout.Layout
}

// How a row's strip is drawn, in pixels: its height, the widths of a cut piece and of a number of whole planks.
const (
	bandPx  = 54
	cutPx   = 108
	wholePx = 190
	bandTab = margin + 190
)

// row draws one row: its number and width, then its pieces, on as many lines as they take.
func (p *rowsPage) row(row *layout.Row) {
	p.Add(sheet.Text{At: sheet.Point{X: margin, Y: p.pen + 12}, Size: headText, Bold: true, S: strconv.Itoa(row.N)})
	p.Add(sheet.Text{At: sheet.Point{X: margin + 76, Y: p.pen + 15}, Size: plainText, S: p.title.bare(row.Width)})
	x := bandTab
	for i := range row.Runs {
		if i > 0 {
			x += 24
		}
		x = p.run(row.Runs[i].Pieces, x)
	}
	p.skip(bandPx + 16)
}

// run draws a stretch, planks of full length between cut ones by their number.
func (p *rowsPage) run(pieces []layout.Piece, x int) int {
	for i := 0; i < len(pieces); i++ {
		t, texture := look(&pieces[i])
		if n := p.full(pieces[i:]); n > 0 {
			what := "whole"
			if t != sheet.Whole {
				what = "full, ripped"
			}
			x = p.cell(x, wholePx, t, texture, fmt.Sprintf("%d %s", n, what), n > 1)
			i += n - 1
			continue
		}
		s := p.title.bare(pieces[i].Right - pieces[i].Left)
		if pieces[i].Trapped != "" {
			s = "! " + s
		}
		x = p.cell(x, cutPx, t, texture, s, false)
	}
	return x
}

// full counts the pieces of a plank's full length at the head of some that look alike and have no cut but rips.
func (p *rowsPage) full(pieces []layout.Piece) int {
	t, texture := look(&pieces[0])
	for i := range pieces {
		q := &pieces[i]
		if t2, texture2 := look(q); t2 != t || texture2 != texture || q.Trapped != "" || !p.ripped(q) {
			return i
		}
	}
	return len(pieces)
}

func (p *rowsPage) ripped(q *layout.Piece) bool {
	for _, c := range q.Cuts {
		if c.What != "lip" && (c.What != "rip" || c.Near != c.Far) {
			return false
		}
	}
	return q.Right-q.Left == p.layout.Request.Plank.Length
}

// cell draws one box of a strip, on the next line where this one is full, and gives where it ends. Broken ends stand for a
// length that is not drawn.
func (p *rowsPage) cell(x, width int, t sheet.Tone, texture sheet.Texture, s string, broken bool) int {
	text := sheet.Text{Size: plainText, Bold: true, Tight: true, Clear: true, Tone: t, S: s}
	width = max(width, text.Box().W()+20)
	if broken {
		width = max(width, text.Box().W()+90)
	}
	if x+width > p.W-margin {
		x = bandTab
		p.skip(bandPx + 6)
	}
	b := sheet.Box{X0: x, Y0: p.pen, X1: x + width, Y1: p.pen + bandPx}
	p.Add(sheet.Fill{Rings: [][]sheet.Point{b.Corners()}, Tone: t, Texture: texture})
	p.Add(sheet.Outline(b.Corners(), middleLine, sheet.Solid)...)
	if broken {
		p.breakMark(b.X0+22, b)
		p.breakMark(b.X1-22, b)
	}
	p.Add(text.Centred(b.Centre()))
	return b.X1
}

// breakMark is a thin zigzag across a strip, the sign of a length left out.
func (p *rowsPage) breakMark(x int, b sheet.Box) {
	m := b.Centre().Y
	zig := []sheet.Point{{X: x, Y: b.Y0}, {X: x, Y: m - 8}, {X: x - 7, Y: m - 3}, {X: x + 7, Y: m + 3}, {X: x, Y: m + 8}, {X: x, Y: b.Y1}}
	for i := range zig[1:] {
		p.Add(sheet.Line{A: zig[i], B: zig[i+1], Width: narrowLine})
	}
}
