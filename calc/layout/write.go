package layout

import (
	"lastrow/calc/geom"
	"lastrow/calc/length"
)

// write lays the chosen joints out in full: every piece with its shape, its plank and its cuts.
func (r Request) write(l *Layout, f frame, area box, best fit) {
	firsts := make([]length.Length, len(best.runs))
	for b := best.chosen; b.parent != nil; b = b.parent {
		firsts[b.run] = b.first
	}
	w := writer{request: r, layout: l, frame: f, area: area, supply: r.supply(best.runs), stock: stock{write: true}}
	w.marks(r.Floor.Edges)
	i := 0
	for n, strip := range best.strips {
		row := Row{N: n + 1, Near: strip.near - area.near, Width: strip.far - strip.near}
		for j := range strip.parts {
			row.Runs = append(row.Runs, w.run(strip, &best.runs[i], firsts[i], j, len(row.pieces())))
			i++
		}
		l.Rows = append(l.Rows, row)
	}
	l.Planks = w.stock.planks
	for _, o := range append(w.stock.gone, w.stock.kept...) {
		if o.width == 0 {
			l.Stock[o.plank].Left = append(l.Stock[o.plank].Left, o.len)
		}
	}
	l.Broken = w.broken(best)
}

// writer writes a layout out.
type writer struct {
	supply
	request Request
	layout  *Layout
	frame   frame
	area    box
	stock   stock
	doors   []doorLine
}

// pieces lists the pieces of a row from the left.
func (r Row) pieces() []Piece {
	var out []Piece
	for _, run := range r.Runs {
		out = append(out, run.Pieces...)
	}
	return out
}

func (w *writer) run(s strip, st *stretch, first length.Length, part, before int) Run {
	out := Run{Left: st.left - w.area.left, Right: st.right - w.area.left}
	rest, at := s.parts[part], st.left
	w.supply.run(&w.stock, st, first, func(long length.Length, plank int, used bool) {
		var here geom.Region
		if at+long < st.right {
			here, rest = split(rest, atX, at+long)
		} else {
			here, long = rest, st.right-at
		}
		p := Piece{
			Row: st.row + 1, N: before + len(out.Pieces) + 1, Left: at - w.area.left, Right: at + long - w.area.left,
			Shape: turned(here, w.frame.out), Plank: plank, Offcut: used,
		}
		p.Cuts = w.cuts(here, s, st, at, at+long)
		p.Whole = len(p.Cuts) == 0
		p.Trapped, p.WayIn = w.trapped(here, st.row)
		w.take(plank, Ref{Row: p.Row, N: p.N})
		out.Pieces = append(out.Pieces, p)
		at += long
	})
	return out
}

func (w *writer) take(plank int, ref Ref) {
	for len(w.layout.Stock) <= plank {
		w.layout.Stock = append(w.layout.Stock, Stock{})
	}
	w.layout.Stock[plank].Pieces = append(w.layout.Stock[plank].Pieces, ref)
}
