package layout

import (
	"errors"
	"slices"

	"lastrow/calc/length"
)

// Scrap is a piece of plank at hand, as wide as a plank: a whole one, or an offcut with the factory's locks that it has left.
type Scrap struct {
	Len         length.Length
	Left, Right bool
}

// LayScraps lays a floor of one rectangle with the pieces at hand alone, row by row from the start wall, as far as they go,
// and says how many rows the floor has. A row that one piece spans needs no lock at its ends; a longer one begins with a piece
// that has its right end's lock, goes on with whole planks and ends with a piece that has its left end's. Stock is by the
// scraps used. Of ways to lay as many rows, the one with the most offcuts and the fewest whole planks is sought.
func LayScraps(r Request, have []Scrap) (l *Layout, rows int, err error) {
	whole, err := Lay(r)
	if err != nil {
		return nil, 0, err
	}
	f := whole.start().frame
	laying := f.floor(r.Floor.Laying)
	strips := slice(laying, r.Plank.Width, whole.Rows[0].Width)
	runs := stretches(strips)
	if len(runs) != len(strips) {
		return nil, 0, errors.New("leftovers are laid in a floor of one rectangle")
	}
	s := scrapping{request: r, runs: runs, steps: mostScrapSteps + 2*len(runs)}
	s.try(nil, scrapsOf(r, have), nil)
	l = &Layout{Request: r, Along: whole.Along, StartWall: whole.StartWall, Why: whole.Why, From: whole.From, To: whole.To}
	area := boxOf(laying)
	w := writer{request: r, layout: l, frame: f, area: area, supply: r.supply(runs)}
	w.marks(r.Floor.Edges)
	w.scraps(strips, runs, s.best, have)
	return l, len(strips), nil
}

// mostScrapSteps bounds the search beyond the rows, so that the same scraps always give the same rows.
const mostScrapSteps = 400

// scrap is one at hand, by where it came from.
type scrap struct {
	Scrap
	of int
}

func (s scrap) whole(plank length.Length) bool { return s.Len == plank && s.Left && s.Right }

// scrapPiece is one piece of a row, and the scrap that gives it.
type scrapPiece struct {
	of  int
	len length.Length
}

// scrapRow is one row as it could be laid, what is left after it, and its price: whole planks begun, then what is lost.
type scrapRow struct {
	pieces []scrapPiece
	left   []scrap
	planks int
	lost   length.Length
}

// scrapping searches the rows.
type scrapping struct {
	request Request
	runs    []stretch
	best    []scrapRow
	steps   int
}

// scrapsOf are the scraps at hand, the shortest first.
func scrapsOf(r Request, have []Scrap) []scrap {
	var out []scrap
	for i, h := range have {
		out = append(out, scrap{h, i})
	}
	slices.SortStableFunc(out, func(a, b scrap) int { return int(min(1, max(-1, a.Len-b.Len))) })
	return out
}

// try lays the rows that follow those laid, the cheapest way first. It is true once all rows are laid, or the steps are used up.
func (s *scrapping) try(laid []scrapRow, left []scrap, joints []length.Length) bool {
	if len(laid) > len(s.best) {
		s.best = slices.Clone(laid)
	}
	if s.steps--; s.steps < 0 || len(laid) == len(s.runs) {
		return true
	}
	for _, row := range s.rows(s.runs[len(laid)].len(), left, joints) {
		if s.try(append(laid, row), row.left, row.joints()) {
			return true
		}
	}
	return false
}

func (r scrapRow) joints() []length.Length {
	var out []length.Length
	at := length.Length(0)
	for _, p := range r.pieces[:len(r.pieces)-1] {
		at += p.len
		out = append(out, at)
	}
	return out
}

// mostScrapRows is the number of ways tried for one row.
const mostScrapRows = 6

// rows are the ways to lay a run, the cheapest first.
func (s *scrapping) rows(run length.Length, left []scrap, joints []length.Length) []scrapRow {
	out := s.single(run, left)
	plank, least := s.request.Plank.Length, s.request.Rules.LeastEnd
	for k := length.Length(0); k*plank+2*least <= run; k++ {
		if run-k*plank <= 2*plank {
			out = append(out, s.jointed(run, k, left, joints)...)
		}
	}
	slices.SortStableFunc(out, func(a, b scrapRow) int {
		if a.planks != b.planks {
			return a.planks - b.planks
		}
		return int(min(1, max(-1, a.lost-b.lost)))
	})
	return out[:min(len(out), mostScrapRows)]
}

// single lays a run in one piece, from the shortest offcut that spans it and from the shortest whole plank.
func (s *scrapping) single(run length.Length, left []scrap) []scrapRow {
	at := slices.IndexFunc(left, func(c scrap) bool { return c.Len >= run })
	if at < 0 {
		return nil
	}
	return []scrapRow{s.row([]scrapPiece{{left[at].of, run}}, left)}
}

// jointed lays a run with a first piece, k whole planks and a last piece.
func (s *scrapping) jointed(run, k length.Length, left []scrap, joints []length.Length) []scrapRow {
	var out []scrapRow
	wholes := s.wholes(left)
	if len(wholes) < int(k) {
		return nil
	}
	for i, a := range left {
		if !a.Right || i > 0 && a.Scrap == left[i-1].Scrap {
			continue
		}
		for j, b := range left {
			if !b.Left || j > 0 && b.Scrap == left[j-1].Scrap && left[j-1].of != a.of {
				continue
			}
			first, ok := s.first(run, k, a, b, joints)
			if !ok {
				continue
			}
			pieces := []scrapPiece{{a.of, first}}
			for _, w := range wholes {
				if len(pieces) > int(k) {
					break
				}
				if w != a.of && w != b.of {
					pieces = append(pieces, scrapPiece{w, s.request.Plank.Length})
				}
			}
			if len(pieces) > int(k) {
				out = append(out, s.row(append(pieces, scrapPiece{b.of, run - k*s.request.Plank.Length - first}), left))
			}
		}
	}
	return out
}

func (s *scrapping) wholes(left []scrap) []int {
	var out []int
	for _, c := range left {
		if c.whole(s.request.Plank.Length) {
			out = append(out, c.of)
		}
	}
	return out
}

// first is the length of the first piece, the longest that keeps the end pieces and the stagger.
func (s *scrapping) first(run, k length.Length, a, b scrap, joints []length.Length) (length.Length, bool) {
	least, ends := s.request.Rules.LeastEnd, run-k*s.request.Plank.Length
	sp := span{max(least, ends-b.Len), min(a.Len, ends-least)}
	if a.of == b.of && ends+s.request.Rules.Kerf > a.Len || sp.empty() {
		return 0, false
	}
	mark := max(1, s.request.Mark)
	tries := []length.Length{sp.marked(sp.hi, mark)}
	for _, j := range joints {
		for m := range k + 1 {
			at := j - m*s.request.Plank.Length
			tries = append(tries, sp.marked(at-s.request.Rules.LeastStagger, mark), sp.markedUp(at+s.request.Rules.LeastStagger, mark))
		}
	}
	slices.SortFunc(tries, func(a, b length.Length) int { return int(min(1, max(-1, b-a))) })
	for _, first := range tries {
		if sp.lo <= first && first <= sp.hi && s.apart(first, k, joints) {
			return first, true
		}
	}
	return 0, false
}

// apart says whether the row's joints lie a stagger from those of the row before.
func (s *scrapping) apart(first, k length.Length, joints []length.Length) bool {
	for _, j := range joints {
		for m := range k + 1 {
			if abs(first+m*s.request.Plank.Length-j) < s.request.Rules.LeastStagger {
				return false
			}
		}
	}
	return true
}

// row cuts the pieces from the scraps. A first piece is a scrap's right end, so that its left end is over; of any other the
// right end is.
func (s *scrapping) row(pieces []scrapPiece, left []scrap) scrapRow {
	out := scrapRow{pieces: pieces, left: slices.Clone(left)}
	for i, p := range pieces {
		at := slices.IndexFunc(out.left, func(c scrap) bool { return c.of == p.of })
		c := out.left[at]
		if c.whole(s.request.Plank.Length) {
			out.planks++
		}
		out.left = slices.Delete(out.left, at, at+1)
		over := scrap{Scrap{Len: c.Len - p.len - s.request.Rules.Kerf, Right: c.Right}, c.of}
		if i == 0 && len(pieces) > 1 {
			over.Left, over.Right = c.Left, false
		}
		if over.Len < min(s.request.Rules.LeastEnd, s.runs[0].len()) {
			out.lost += max(0, c.Len-p.len)
			continue
		}
		to, _ := slices.BinarySearchFunc(out.left, over, func(a, b scrap) int { return int(min(1, max(-1, a.Len-b.Len))) })
		out.left = slices.Insert(out.left, to, over)
	}
	return out
}
