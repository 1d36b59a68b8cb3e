package draw

import (
	"fmt"
	"strconv"

	"lastrow/bot/draw/sheet"
	"lastrow/bot/list"
	"lastrow/calc/layout"
	"lastrow/calc/length"
)

// How a row is drawn, in pixels: the height of its strip, and the least length of a plank, under which the strip is broken.
const (
	stripPx   = 110
	leastLong = 150
)

// Row draws one row with every piece, and tells where each comes from and what it leaves. There is no such row where ok is false.
func Row(l *layout.Layout, n int, t Title) (s *sheet.Sheet, ok bool) {
	if n < 1 || n > len(l.Rows) {
		return nil, false
	}
	row := &l.Rows[n-1]
	p := &rowPage{page: newPage("row-"+strconv.Itoa(n), sheetWidth, t), layout: l, row: row}
	p.header(fmt.Sprintf("row %d of %d", n, len(l.Rows)), t.goods())
	p.write(p.about(), plainText+2, true)
	p.skip(16)
	p.place = sheet.NewPlacer(sheet.Box{X0: margin / 2, Y0: p.pen, X1: p.W - margin/2, Y1: 1 << 20})
	for i := range row.Runs {
		p.run(&row.Runs[i])
	}
	p.key(rowKey)
	p.write(t.unitNote()+" 13.1 stands for row 13, piece 1.", plainText, false)
	p.skip(10)
	eachIn(row, p.tell)
	p.joints()
	p.Alt = fmt.Sprintf("Row %d of %d, %s wide, drawn with the length of every piece.", n, len(l.Rows), t.Tape.Text(row.Width))
	return p.done(0), true
}

var rowKey = []swatch{
	{sheet.Whole, sheet.Plain, "whole plank"},
	{sheet.Cut, sheet.Rising, "cut from a new plank"},
	{sheet.Spare, sheet.Falling, "cut from an offcut"},
}

type rowPage struct {
	*page
	layout *layout.Layout
	row    *layout.Row
	place  *sheet.Placer
}

func (p *rowPage) about() string {
	s := fmt.Sprintf("%s wide, laid from %s to %s; seen from the %s.",
		p.title.Tape.Text(p.row.Width), p.layout.From, p.layout.To, p.layout.Start())
	if n := len(p.row.Runs); n > 1 {
		s += fmt.Sprintf(" It has %d stretches.", n)
	}
	return s
}

// run draws a stretch of the row, broken between planks into as many strips as keep a plank long enough to read.
func (p *rowPage) run(r *layout.Run) {
	per := max(1, (p.W-2*margin)/leastLong)
	for from := 0; from < len(r.Pieces); from += per {
		to := min(from+per, len(r.Pieces))
		p.strip(r.Pieces[from:to], from == 0, to == len(r.Pieces))
	}
}

// strip draws pieces side by side, with a wall at an end that has one and a break line at one that goes on.
func (p *rowPage) strip(pieces []layout.Piece, first, last bool) {
	p.skip(44)
	left, right := pieces[0].Left, pieces[len(pieces)-1].Right
	widest := p.layout.Request.Plank.Length * length.Length((p.W-2*margin)/leastLong)
	width := p.W - 2*margin - 2*wallPx
	if right-left < widest/3 {
		width = width * 2 / 3
	}
	b := board{box: sheet.Box{X0: margin + wallPx, Y0: p.pen, X1: margin + wallPx + width, Y1: p.pen + stripPx}, left: left, long: right - left}
	for i := range pieces {
		p.piece(&b, &pieces[i])
	}
	p.end(b.box.X0, -1, b.box, first)
	p.end(b.box.X1, 1, b.box, last)
	p.skip(stripPx + 64)
}

// end draws a wall beyond a strip's end, or a zigzag where the row goes on.
func (p *rowPage) end(x, way int, b sheet.Box, wall bool) {
	if wall {
		w := sheet.Bounds(sheet.Point{X: x + 2*way, Y: b.Y0 - 10}, sheet.Point{X: x + wallPx*way, Y: b.Y1 + 10})
		p.Add(sheet.Fill{Rings: [][]sheet.Point{w.Corners()}, Tone: sheet.Wall})
		return
	}
	m := b.Centre().Y
	zig := []sheet.Point{{X: x, Y: b.Y0 - 12}, {X: x, Y: m - 14}, {X: x - 10, Y: m - 5}, {X: x + 10, Y: m + 5}, {X: x, Y: m + 14}, {X: x, Y: b.Y1 + 12}}
	for i := range zig[1:] {
		p.Add(sheet.Line{A: zig[i], B: zig[i+1], Width: middleLine})
	}
}

// piece draws one piece to scale along the row, its number over it and its length in it or under it.
func (p *rowPage) piece(b *board, piece *layout.Piece) {
	shape := p.layout.Local(piece.Shape)
	west, south, _, north := bounds(shape)
	at := *b
	at.near, at.deep = south, max(p.row.Width, north-south)
	shape = shift(shape, piece.Left-west, 0)
	t, texture := look(piece)
	f := sheet.Fill{Rings: at.rings(shape), Tone: t, Texture: texture}
	p.Add(f)
	for _, ring := range f.Rings {
		p.Add(sheet.Outline(ring, middleLine, sheet.Solid)...)
	}
	p.letter(f, piece, t)
}

func (p *rowPage) letter(f sheet.Fill, piece *layout.Piece, t sheet.Tone) {
	box := f.Area()
	m := box.Centre()
	number := sheet.Text{Size: headText, Bold: true, S: strconv.Itoa(piece.N)}
	long := sheet.Text{Size: plainText + 2, Bold: true, Tight: true, Clear: true, Tone: t, S: p.title.bare(piece.Right - piece.Left)}
	p.put(number.Centred(sheet.Point{X: m.X, Y: box.Y0 - 24}), number.Centred(sheet.Point{X: m.X, Y: box.Y0 - 54}))
	inside := long.Centred(m)
	under := sheet.Text{Size: plainText + 2, Bold: true, S: long.S}
	if inside.Box().Grow(4).Within(box) {
		p.put(inside)
		return
	}
	for _, dx := range []int{0, -20, 20, -50, 50, 90, -90} {
		if c := under.Centred(sheet.Point{X: m.X + dx, Y: box.Y1 + 34}); p.place.Free(c.Box()) {
			p.put(c)
			p.Add(sheet.Line{A: m, B: sheet.Point{X: c.Box().Centre().X, Y: c.Box().Y0}, Width: narrowLine}, dot(m))
			return
		}
	}
}

func (p *rowPage) put(candidates ...sheet.Text) {
	if t, ok := p.place.Place(candidates...); ok {
		p.Add(t)
	}
}

// tell writes a piece's cuts, where it comes from, and where the rest goes.
func (p *rowPage) tell(piece *layout.Piece) {
	line := list.Of(p.layout, piece, p.title.Tape)
	number := strconv.Itoa(piece.N)
	p.Add(sheet.Text{At: sheet.Point{X: margin, Y: p.pen}, Size: plainText + 2, Bold: true, S: number})
	x := margin + 56
	p.writeAt(x, sentence(piece, line), plainText+2, false)
	if piece.Trapped != "" {
		p.writeAt(x, "! "+piece.Trapped+"; "+piece.WayIn+".", plainText, true)
	}
	p.skip(8)
}

// sentence tells a piece in one line of words.
func sentence(piece *layout.Piece, line list.Line) string {
	if len(piece.Cuts) == 0 {
		return "Whole plank."
	}
	s := line.Long
	if other := line.Other(); other != "" {
		s += "; " + other
	}
	s += fmt.Sprintf(". Plank %d, %s", line.Plank, line.From)
	if line.Rest != "" {
		s += "; rest " + line.Rest
	}
	return s + "."
}
