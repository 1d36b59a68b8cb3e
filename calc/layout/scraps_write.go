package layout

import "lastrow/calc/length"

// scraps writes the rows laid, each piece cut from its scrap as that is by then.
func (w *writer) scraps(strips []strip, runs []stretch, rows []scrapRow, have []Scrap) {
	stock, over := map[int]int{}, map[int]length.Length{}
	for n, row := range rows {
		s, st := strips[n], &runs[n]
		run := Run{Left: st.left - w.area.left, Right: st.right - w.area.left}
		rest, at := s.parts[0], st.left
		for i, piece := range row.pieces {
			to, here := at+piece.len, rest
			if i+1 < len(row.pieces) {
				here, rest = split(rest, atX, to)
			}
			k, begun := stock[piece.of]
			if !begun {
				k = w.open(have[piece.of])
				stock[piece.of], over[piece.of] = k, have[piece.of].Len
			}
			p := Piece{
				Row: n + 1, N: i + 1, Left: at - w.area.left, Right: to - w.area.left,
				Shape: turned(here, w.frame.out), Plank: k, Offcut: begun || have[piece.of].Len < w.request.Plank.Length,
			}
			w.supply.plank = over[piece.of]
			p.Cuts = w.cuts(here, s, st, at, to)
			p.Whole = have[piece.of].Len == w.request.Plank.Length && whole(p.Cuts)
			over[piece.of] -= piece.len + w.supply.kerf
			w.layout.Stock[k].Pieces = append(w.layout.Stock[k].Pieces, Ref{p.Row, p.N})
			run.Pieces = append(run.Pieces, p)
			at = to
		}
		w.layout.Rows = append(w.layout.Rows, Row{N: n + 1, Near: s.near - w.area.near, Width: s.far - s.near, Runs: []Run{run}})
	}
	for of, k := range stock {
		if over[of] > 0 {
			w.layout.Stock[k].Left = []length.Length{over[of]}
		}
	}
	w.layout.Planks = len(w.layout.Stock)
}

// open takes a scrap, and gives its place in the stock.
func (w *writer) open(s Scrap) int {
	stock := Stock{Scrap: s.Len}
	if s.Len == w.request.Plank.Length {
		stock.Scrap = 0
	}
	w.layout.Stock = append(w.layout.Stock, stock)
	return len(w.layout.Stock) - 1
}

// Scraps are the offcuts that a layout leaves, at least so long, each with the locks that its pieces have left it.
func (l *Layout) Scraps(least length.Length) []Scrap {
	taken := make([]lock, len(l.Stock))
	for _, row := range l.Rows {
		for _, run := range row.Runs {
			for i, p := range run.Pieces {
				switch first, last := i == 0, i == len(run.Pieces)-1; {
				case first && last: // cut off at its right end: it may have been the left end's lock that went
					taken[p.Plank] |= leftEnd
				case first:
					taken[p.Plank] |= rightEnd
				case last:
					taken[p.Plank] |= leftEnd
				default:
					taken[p.Plank] |= leftEnd | rightEnd
				}
			}
		}
	}
	var out []Scrap
	for i, s := range l.Stock {
		for _, left := range s.Left {
			if left >= least {
				out = append(out, Scrap{Len: left, Left: taken[i]&leftEnd == 0, Right: taken[i]&rightEnd == 0})
			}
		}
	}
	return out
}
