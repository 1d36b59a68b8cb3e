package layout

import (
	"fmt"

	"lastrow/calc/length"
)

// broken names the joints and end pieces that break a rule.
func (w *writer) broken(best fit) []Broken {
	var out []Broken
	rules, text := w.request.Rules, w.request.text
	for i := len(best.runs) - 1; i >= 0; i-- {
		st, first := best.runs[i], best.chosen.at[i].first
		if first >= st.len() {
			continue
		}
		where := fmt.Sprintf("row %d", st.row+1)
		if short := min(first, lastPiece(st.len(), w.plank, first)); short < rules.LeastEnd {
			out = append(out, Broken{"short-end", where, fmt.Sprintf("a run of %s by planks of %s leaves an end of %s, whatever the first piece", text(st.len()), text(w.plank), text(short))})
		}
		for _, k := range st.before {
			if d := w.between(best.runs, i, first, k, best.chosen.at[k].first); d < rules.LeastStagger {
				out = append(out, w.close(d, where, best.runs[k].row+1))
			}
		}
	}
	return out
}

func (w *writer) close(d length.Length, where string, row int) Broken {
	text := w.request.text
	why := fmt.Sprintf("%s from the joint of row %d: the end pieces leave no other place", text(d), row)
	if 2*w.request.Rules.LeastStagger > w.plank {
		why = fmt.Sprintf("%s from the joint of row %d: planks of %s can't have joints %s apart", text(d), row, text(w.plank), text(w.request.Rules.LeastStagger))
	}
	return Broken{"close-joints", where, why}
}

// narrow names the rows that come out narrower than the rules ask.
func (r Request) narrow(l *Layout, best fit, fs []face) []Broken {
	var out []Broken
	reason := "no other first row leaves the rows wider"
	if r.FirstRow > 0 {
		reason = "the first row is as told"
	}
	for i, row := range l.Rows {
		if (i == 0 || i == len(l.Rows)-1) && row.Width < r.Rules.LeastRow {
			out = append(out, Broken{"narrow-row", fmt.Sprintf("row %d", row.N), fmt.Sprintf("%s wide: %s", r.text(row.Width), reason)})
		}
	}
	for _, f := range fs {
		left := f.left(r.Plank.Width, best.first)
		switch {
		case f.hidden || f.length <= r.Plank.Width:
		case f.door && 3*left < r.Plank.Width:
			out = append(out, Broken{"narrow-row", f.wall, fmt.Sprintf("%s wide at the doorway: %s", r.text(left), reason)})
		case f.lean > 0 && left == 0:
			out = append(out, Broken{"narrow-row", f.wall, "a row runs out along it, since it leans: " + reason})
		case f.lean > 0 && left < r.Rules.LeastRow:
			out = append(out, Broken{"narrow-row", f.wall, fmt.Sprintf("%s wide at its narrow end, since the wall leans: %s", r.text(left), reason)})
		case f.trimmed && !f.outer && left < r.Rules.LeastRow:
			out = append(out, Broken{"narrow-row", f.wall, fmt.Sprintf("%s wide along it: %s", r.text(left), reason)})
		}
	}
	return out
}

// why says in one sentence why the rows begin where they do.
func (r Request) why(start string, best fit) string {
	return fmt.Sprintf("starts %s, and the first row is %s wide as %s", start, r.text(best.first), r.whyFirst(best))
}

func (r Request) whyFirst(best fit) string {
	switch {
	case r.FirstRow > 0:
		return "told"
	case best.first == r.Plank.Width && best.lastRow == r.Plank.Width:
		return "the rows come out whole"
	case best.first == r.Plank.Width:
		return "a whole first row leaves no narrow row"
	case best.first == best.lastRow:
		return "that makes the first and the last row alike"
	}
	if best.least < r.Rules.LeastRow {
		return "that leaves the fewest narrow rows"
	}
	return "that leaves no row in sight under " + r.text(best.least)
}

// text shows a length as a tape of the floor's system reads it.
func (r Request) text(l length.Length) string {
	if r.Floor.Plan.Metric {
		return length.Tape{System: length.Metric}.Text(l)
	}
	return length.Tape{}.Text(l)
}
