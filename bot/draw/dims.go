package draw

import (
	"lastrow/bot/draw/sheet"
	"lastrow/calc/layout"
	"lastrow/calc/length"
	"lastrow/calc/plank"
)

// dim is a dimension on a plank: along it on the near or the far side, or across it at the left or the right end.
type dim struct {
	from, to length.Length
	at       length.Length // where its extension lines begin, across or along
	far      bool          // of one along: on the far side
	right    bool          // of one across: at the right end
	across   bool
}

type dims []dim

// over and under are the numbers of lanes that dimensions need over and under the plank.
func (d dims) over(turned bool) int  { return d.lanes(!turned) }
func (d dims) under(turned bool) int { return d.lanes(turned) }

func (d dims) lanes(far bool) int {
	n := 0
	for _, x := range d {
		if !x.across && x.far == far {
			n++
		}
	}
	return n
}

// dims are the dimensions of all cuts.
func (p *piecePage) dims() dims {
	var out dims
	board := p.layout.Request.Plank
	for _, c := range p.piece.Cuts {
		switch c.What {
		case "crosscut":
			out = append(out, p.end(c.Near, false))
		case "angle":
			if len(c.Marks) > 0 {
				out = append(out, boxed(c, board)...)
				continue
			}
			out = append(out, p.end(c.Near, false), p.end(c.Far, true))
		case "rip":
			out = append(out, wide(c.Edge, c.Near, board.Width, true))
		case "taper":
			out = append(out, wide(c.Edge, c.Near, board.Width, false), wide(c.Edge, c.Far, board.Width, true))
		case "notch", "hole":
			out = append(out, boxed(c, board)...)
		}
	}
	return out.distinct(p.title.Tape)
}

// distinct leaves out dimensions that the tape can't tell from one there is, and those of nothing.
func (d dims) distinct(t length.Tape) dims {
	var out dims
	seen := map[dim]bool{}
	for _, x := range d {
		key := x
		key.from, key.to, key.at = t.Round(x.from), t.Round(x.to), 0
		if !seen[key] && key.from != key.to {
			seen[key] = true
			out = append(out, x)
		}
	}
	return out
}

// end is a length from the factory end that is kept.
func (p *piecePage) end(l length.Length, far bool) dim {
	plank := p.layout.Request.Plank
	d := dim{to: l, far: far}
	if p.right {
		d.from, d.to = plank.Length-l, plank.Length
	}
	if far {
		d.at = plank.Width
	}
	return d
}

// wide is a width from a named edge.
func wide(edge string, w, plank length.Length, right bool) dim {
	if edge == "far edge" {
		return dim{from: plank - w, to: plank, across: true, right: right}
	}
	return dim{to: w, across: true, right: right}
}

// boxed are the place and the size of a notch or a hole, from the end and the edge that it is measured from.
func boxed(c layout.Cut, p plank.Plank) dims {
	along := func(l length.Length) length.Length {
		if c.FromRight() {
			return p.Length - l
		}
		return l
	}
	across := func(w length.Length) length.Length {
		if c.FromFar() {
			return p.Width - w
		}
		return w
	}
	near, over := min(across(c.Bottom), across(c.Top)), max(across(c.Bottom), across(c.Top))
	at, far := near, near > p.Width-over
	if far {
		at = over
	}
	right := c.FromRight() == (c.Left == 0)
	out := dims{span(along(c.Left), along(c.Right), at, far)}
	if c.Left > 0 {
		out = append(dims{span(along(0), along(c.Left), at, far)}, out...)
	}
	if c.Bottom > 0 {
		out = append(out, dim{from: min(across(0), across(c.Bottom)), to: max(across(0), across(c.Bottom)), across: true, right: right})
	}
	return append(out, dim{from: near, to: over, across: true, right: right})
}

func span(a, b, at length.Length, far bool) dim {
	return dim{from: min(a, b), to: max(a, b), at: at, far: far}
}

// draw draws the dimensions, each in a lane of its own; one across is left to the words where its lane is full.
func (p *piecePage) draw(b board, all dims) {
	over, under := 0, 0
	sides := map[bool]int{}
	for _, d := range all {
		switch {
		case d.across:
			p.across(b, d, sides[d.right])
			sides[d.right]++
		case d.far != b.turned:
			over++
			p.alongside(b, d, b.box.Y0-8-over*dimLane+10)
		default:
			under++
			p.alongside(b, d, b.box.Y1+lipPx+under*dimLane)
		}
	}
}

// alongside draws a dimension along the plank at a height, its figure over the line or beside it.
func (p *piecePage) alongside(b board, d dim, y int) {
	x0, x1 := b.x(d.from), b.x(d.to)
	for _, x := range []int{x0, x1} {
		p.Add(sheet.Line{A: sheet.Point{X: x, Y: b.y(d.at)}, B: sheet.Point{X: x, Y: y + 4*sign(y-b.box.Y0)}, Width: narrowLine})
	}
	p.Add(arrows(sheet.Point{X: x0, Y: y}, sheet.Point{X: x1, Y: y})...)
	t := sheet.Text{Size: plainText, Bold: true, Tight: true, Clear: true, Tone: sheet.Paper, S: p.title.bare(d.to - d.from)}
	w := t.Box().W()
	spots := []sheet.Text{t.Centred(sheet.Point{X: (x0 + x1) / 2, Y: y - 2}), t.Centred(sheet.Point{X: x1 + 36 + w/2, Y: y}), t.Centred(sheet.Point{X: x0 - 36 - w/2, Y: y})}
	if x1-x0 < w+40 {
		spots = spots[1:]
	}
	if placed, ok := p.place.Place(spots...); ok {
		p.Add(placed)
	}
}

func sign(n int) int {
	if n < 0 {
		return -1
	}
	return 1
}

// across draws a dimension across the plank beyond an end, its figure beside the line.
func (p *piecePage) across(b board, d dim, lane int) {
	const step = 66
	if lane > 1 {
		return
	}
	x := b.box.X0 - lipPx - 20 - lane*step
	way := -1
	if d.right {
		x, way = b.box.X1+20+lane*step, 1
	}
	y0, y1 := b.y(d.from), b.y(d.to)
	for _, y := range []int{y0, y1} {
		edge := b.box.X0
		if d.right {
			edge = b.box.X1
		}
		p.Add(sheet.Line{A: sheet.Point{X: edge, Y: y}, B: sheet.Point{X: x + 6*way, Y: y}, Width: narrowLine})
	}
	p.Add(arrows(sheet.Point{X: x, Y: y0}, sheet.Point{X: x, Y: y1})...)
	t := sheet.Text{Size: plainText, Bold: true, Turned: true, Tight: true, Clear: true, Tone: sheet.Paper, S: p.title.bare(d.to - d.from)}
	m := sheet.Point{X: x + way*(t.Box().W()/2+8), Y: (y0 + y1) / 2}
	far := t.Box().H()/2 + 34
	if placed, ok := p.place.Place(t.Centred(m), t.Centred(sheet.Point{X: m.X, Y: min(y0, y1) - far}), t.Centred(sheet.Point{X: m.X, Y: max(y0, y1) + far})); ok {
		p.Add(placed)
	}
}
