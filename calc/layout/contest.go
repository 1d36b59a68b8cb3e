package layout

import (
	"cmp"
	"slices"

	"lastrow/calc/geom"
)

// The searches: how many first rows are searched, and how many turns each takes for every run, first and later.
const mostContenders = 4

var efforts = [...]int{10, 40}

// contest searches the joints for one first row after the other, and with more beginnings kept, until no layout can use
// fewer planks or the steps are used up.
//
// Where every wall is along the rows or square to them, the fits hold one width for each way that the rows can fall, and
// the bound is the least of theirs: it holds for every first row. Elsewhere it holds for the rows as laid.
func (r Request) contest(fits []fit, laying geom.Region) fit {
	overall := plain(laying)
	if !overall {
		fits = fits[:min(len(fits), mostContenders)]
	}
	for i := range fits {
		f := &fits[i]
		f.order = i
		f.strips = slice(laying, r.Plank.Width, f.first)
		f.runs = stretches(f.strips)
		r.bound(f, fits[:i])
	}
	slices.SortStableFunc(fits, func(a, b fit) int { return a.bound - b.bound })
	least := fits[0].bound
	best := r.search(fits[:min(len(fits), mostContenders)], least)
	if overall {
		for _, f := range fits {
			best.bound = min(best.bound, f.bound)
		}
	}
	return best
}

// search searches the contenders until one meets the least bound, each a little, then each further.
func (r Request) search(fits []fit, least int) fit {
	best := &fits[0]
	for _, effort := range efforts {
		for i := range fits {
			f := &fits[i]
			if f.chosen != nil && f.chosen.planks == f.bound {
				continue
			}
			r.joints(f, effort*(len(f.runs)+16))
			if f.better(*best) {
				best = f
			}
			if best.chosen.planks == least && best.chosen.broken == 0 {
				return *best
			}
		}
	}
	return *best
}

// better says whether a first row's joints break fewer rules, or take fewer planks, or as many and it was preferred.
func (f fit) better(g fit) bool {
	return cmp.Or(cmp.Compare(f.chosen.broken, g.chosen.broken), cmp.Compare(f.chosen.planks, g.chosen.planks), cmp.Compare(f.order, g.order)) < 0
}

// joints searches the joints of one first row.
func (r Request) joints(f *fit, turns int) {
	if f.search == nil {
		f.search = newChoosing(r.supply(f.runs), r.Rules, f.runs, f.bound)
	}
	f.search.fewer(f.bound, turns)
	if !f.exhausted && f.search.exhaust() {
		f.bound, f.exhausted = f.search.best.planks, true
	}
	f.chosen = f.search.best
}

// bound finds the bound of a first row, or takes it from one with the same runs.
func (r Request) bound(f *fit, before []fit) {
	p := r.supply(f.runs)
	f.ripped = p.strip > 0
	for i := range before {
		if b := &before[i]; !f.ripped && !b.ripped && slices.EqualFunc(f.runs, b.runs, stretch.alike) {
			f.bound, f.dual = b.bound, b.dual
			return
		}
	}
	f.bound, f.dual = lowerBound(p, r.Rules.LeastEnd, r.Rules.LeastStagger, f.runs)
}

// alike says whether two runs have the same ends and neighbours.
func (s stretch) alike(t stretch) bool {
	return s.left == t.left && s.right == t.right && slices.Equal(s.before, t.before)
}
