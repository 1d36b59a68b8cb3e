package draw

import (
	"fmt"

	"lastrow/bot/draw/sheet"
	"lastrow/bot/list"
	"lastrow/calc/geom"
	"lastrow/calc/layout"
	"lastrow/calc/length"
)

// How a plank is drawn, in pixels: its height, whatever its width, and the room for dimensions beside it.
const (
	plankPx  = 200
	sideLane = 150
	lipPx    = 12
	dimLane  = 40
)

// Piece draws one plank to cut, face up and face down. There is no such piece where ok is false.
func Piece(l *layout.Layout, row, n int, t Title) (s *sheet.Sheet, ok bool) {
	piece := find(l, row, n)
	if piece == nil {
		return nil, false
	}
	p := &piecePage{page: newPage(fmt.Sprintf("row-%d-piece-%d", row, n), sheetWidth, t), layout: l, piece: piece}
	p.kept, p.right = onPlank(l, piece)
	p.header(fmt.Sprintf("row %d, piece %d", row, n), t.goods())
	p.tell()
	p.place = sheet.NewPlacer(sheet.Box{X0: 4, Y0: p.pen, X1: p.W - 4, Y1: 1 << 20})
	p.side("Face up, near edge towards you", false)
	p.side("Face down, turned over along its length: left end still left, near edge away from you", true)
	p.key([]swatch{{sheet.Whole, sheet.Plain, "keep"}, {sheet.Waste, sheet.Crossed, "cut off"}, {sheet.Layer, sheet.Plain, "lock's lip"}})
	p.write(t.unitNote()+" 13.1 stands for row 13, piece 1. The width is drawn at a larger scale than the length. Let the teeth enter through the face: face down with a jigsaw or a hand-held circular saw, face up with a miter or a table saw.", plainText, false)
	p.Alt = fmt.Sprintf("Row %d piece %d drawn face up and face down, with its cuts and their dimensions.", row, n)
	return p.done(0), true
}

func find(l *layout.Layout, row, n int) *layout.Piece {
	if row < 1 || row > len(l.Rows) {
		return nil
	}
	var out *layout.Piece
	eachIn(&l.Rows[row-1], func(p *layout.Piece) {
		if p.N == n {
			out = p
		}
	})
	return out
}

// onPlank gives what is kept of a plank, X from the plank's left end and Y from its near edge, and whether it is the plank's
// right end that is kept.
func onPlank(l *layout.Layout, piece *layout.Piece) (kept geom.Region, right bool) {
	plank := l.Request.Plank
	shape := l.Local(piece.Shape)
	west, south, east, _ := bounds(shape)
	x, y := length.Length(0), length.Length(0)
	for _, c := range piece.Cuts {
		if c.FromRight() {
			right, x = true, plank.Length-(east-west)
		}
		switch {
		case c.Off != "near edge" || c.What != "rip" && c.What != "taper":
		case c.FromFar():
			y = plank.Width - max(c.Near, c.Far)
		default:
			y = min(c.Near, c.Far)
		}
	}
	return shift(shape, x-west, y-south), right
}

type piecePage struct {
	*page
	layout *layout.Layout
	piece  *layout.Piece
	kept   geom.Region
	right  bool
	place  *sheet.Placer
}

// tell writes the cuts in words, numbered.
func (p *piecePage) tell() {
	line := list.Of(p.layout, p.piece, p.title.Tape)
	p.write(p.source(line), plainText+2, true)
	for i, c := range p.piece.Cuts {
		p.write(fmt.Sprintf("%d. %s", i+1, c.Text(p.title.Tape)), plainText+2, false)
	}
	if len(p.piece.Cuts) == 0 {
		p.write("A whole plank: nothing to cut.", plainText+2, false)
	}
	if p.piece.Trapped != "" {
		p.write("! "+p.piece.Trapped+"; "+p.piece.WayIn+".", plainText+2, true)
	}
}

func (p *piecePage) source(line list.Line) string {
	s := fmt.Sprintf("Plank %d, %s", line.Plank, line.From)
	if line.Rest != "" {
		s += "; rest " + line.Rest
	}
	return s + "."
}

// side draws one side of the plank under a heading.
func (p *piecePage) side(heading string, turned bool) {
	p.skip(18)
	p.write(heading, plainText+2, true)
	top := p.pen
	b := p.board(turned)
	dims := p.dims()
	b.box.Y0 += dims.over(turned)*dimLane + 44
	b.box.Y1 = b.box.Y0 + plankPx
	p.plank(b)
	p.names(b)
	p.draw(b, dims)
	p.pen = b.box.Y1 + dims.under(turned)*dimLane + 56
	p.place.Take(sheet.Box{X0: 0, Y0: top - 1, X1: 1, Y1: top})
}

func (p *piecePage) board(turned bool) board {
	plank := p.layout.Request.Plank
	return board{
		box:  sheet.Box{X0: margin + sideLane, Y0: p.pen, X1: p.W - margin - sideLane, Y1: p.pen + plankPx},
		long: plank.Length, deep: plank.Width, turned: turned,
	}
}

// plank draws the plank, what is cut off it hatched, and its lock's lip on the near edge and the left end.
func (p *piecePage) plank(b board) {
	p.lip(b, "near edge", sheet.Bounds(sheet.Point{X: b.box.X0, Y: b.y(0)}, sheet.Point{X: b.box.X1, Y: b.y(0) + p.down(b)*lipPx}))
	p.lip(b, "left end", sheet.Bounds(sheet.Point{X: b.box.X0 - lipPx, Y: b.box.Y0}, sheet.Point{X: b.box.X0, Y: b.box.Y1}))
	p.Add(sheet.Fill{Rings: [][]sheet.Point{b.box.Corners()}, Tone: sheet.Waste, Texture: sheet.Crossed})
	p.Add(sheet.Outline(b.box.Corners(), middleLine, sheet.Solid)...)
	rings := b.rings(p.kept)
	p.Add(sheet.Fill{Rings: rings, Tone: sheet.Whole})
	for _, ring := range rings {
		p.Add(sheet.Outline(ring, wideLine, sheet.Solid)...)
	}
}

func (p *piecePage) down(b board) int {
	if b.turned {
		return -1
	}
	return 1
}

// lip draws a lip: in its tone, or hatched where it is cut off.
func (p *piecePage) lip(b board, edge string, box sheet.Box) {
	f := sheet.Fill{Rings: [][]sheet.Point{box.Corners()}, Tone: sheet.Layer}
	for _, c := range p.piece.Cuts {
		if c.What == "lip" && c.Edge == edge {
			f.Tone, f.Texture = sheet.Waste, sheet.Crossed
		}
	}
	p.Add(f)
	p.Add(sheet.Outline(box.Corners(), narrowLine, sheet.Solid)...)
}

// names names the edges, inside them, off the cut lines where there is room.
func (p *piecePage) names(b board) {
	near, far := b.box.Y1-26, b.box.Y0+26
	if b.turned {
		near, far = far, near
	}
	p.name(b, "near edge", false, []int{50, 25, 75, 12, 88}, func(part int) sheet.Point {
		return sheet.Point{X: b.box.X0 + b.box.W()*part/100, Y: near}
	})
	p.name(b, "far edge", false, []int{50, 25, 75, 12, 88}, func(part int) sheet.Point {
		return sheet.Point{X: b.box.X0 + b.box.W()*part/100, Y: far}
	})
	p.name(b, "left end", true, []int{50, 40, 60, 30, 70}, func(part int) sheet.Point {
		return sheet.Point{X: b.box.X0 + 26, Y: b.box.Y0 + b.box.H()*part/100}
	})
	p.name(b, "right end", true, []int{50, 40, 60, 30, 70}, func(part int) sheet.Point {
		return sheet.Point{X: b.box.X1 - 26, Y: b.box.Y0 + b.box.H()*part/100}
	})
}

// name writes an edge's name at the first of some parts of the edge where it lies wholly on what is kept, or wholly off it.
func (p *piecePage) name(b board, s string, turned bool, parts []int, at func(int) sheet.Point) {
	kept := sheet.Fill{Rings: b.rings(p.kept)}
	t := sheet.Text{Size: leastText, S: s, Turned: turned, Clear: true}
	for _, part := range parts {
		t = t.Centred(at(part))
		box := t.Box().Grow(3)
		on := holds(kept, box)
		if !p.place.Free(t.Box()) || !on && touches(kept, box) {
			continue
		}
		if t.Tone = sheet.Waste; on {
			t.Tone = sheet.Whole
		}
		p.place.Take(t.Box())
		p.Add(t)
		return
	}
}

// touches says whether a shape and a box have a corner or the middle of the box, or a corner of the shape, in common.
func touches(f sheet.Fill, b sheet.Box) bool {
	for _, q := range append(b.Corners(), b.Centre()) {
		if f.Contains(q) {
			return true
		}
	}
	for _, ring := range f.Rings {
		for _, q := range ring {
			if sheet.Bounds(q, q).Grow(1).Meets(b) {
				return true
			}
		}
	}
	return false
}
