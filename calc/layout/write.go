package layout

import (
	"lastrow/calc/geom"
	"lastrow/calc/length"
)

// write lays the chosen joints out in full: every piece with its shape, its plank and its cuts.
func (r Request) write(l *Layout, f frame, area box, best fit) {
	w := writer{request: r, layout: l, frame: f, area: area, supply: r.supply(best.runs)}
	d := w.deal(best.runs, best.chosen.at)
	w.marks(r.Floor.Edges)
	w.pipes = f.pipes(r.Floor.Edges)
	l.Planks, l.Stock = d.count, make([]Stock, d.count)
	for i, left := range d.left {
		l.Stock[i].Left = left
	}
	i := 0
	for n, strip := range best.strips {
		row := Row{N: n + 1, Near: strip.near - area.near, Width: strip.far - strip.near}
		before := 0
		for j := range strip.parts {
			run := w.run(strip, &best.runs[i], best.chosen.at[i].first, j, before, d.planks[i])
			before += len(run.Pieces)
			row.Runs = append(row.Runs, run)
			i++
		}
		l.Rows = append(l.Rows, row)
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
	doors   []doorLine
	pipes   []pipe
}

func (w *writer) run(s strip, st *stretch, first length.Length, part, before int, planks []int) Run {
	out := Run{Left: st.left - w.area.left, Right: st.right - w.area.left, Pieces: make([]Piece, 0, len(planks))}
	rest, at := s.parts[part], st.left
	for i, plank := range planks {
		to := st.left + first + length.Length(i)*w.supply.plank
		here := rest
		if to < st.right {
			here, rest = split(rest, atX, to)
		} else {
			to = st.right
		}
		if len(here) == 0 { // a tip of the floor too sharp to have an area
			here = geom.Region{box{at, to, s.near, s.near + 1}.ring()}
		}
		p := Piece{
			Row: st.row + 1, N: before + i + 1, Left: at - w.area.left, Right: to - w.area.left,
			Shape: turned(here, w.frame.out), Plank: plank, Offcut: len(w.layout.Stock[plank].Pieces) > 0,
		}
		p.Cuts = w.cuts(here, s, st, at, to)
		p.Whole = whole(p.Cuts)
		p.Trapped, p.WayIn = w.trapped(here, st.row)
		stock := &w.layout.Stock[plank]
		stock.Pieces = append(stock.Pieces, Ref{Row: p.Row, N: p.N})
		out.Pieces = append(out.Pieces, p)
		at = to
	}
	return out
}

// whole says whether a piece is a plank that at most loses its lip.
func whole(cuts []Cut) bool {
	for _, c := range cuts {
		if c.What != "lip" {
			return false
		}
	}
	return true
}
