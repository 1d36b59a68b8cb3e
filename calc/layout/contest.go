package layout

import (
	"cmp"
	"slices"

	"lastrow/calc/geom"
)

// How many turns a first row's search takes for every run, first and later.
var efforts = [...]int{8, 24}

// contenders is how many first rows are searched: of a floor of very many runs one, as what one row more or less costs is
// little there.
func contenders(runs []stretch) int {
	if len(runs) > manyRuns {
		return 1
	}
	return 4
}

// contest searches the joints for one first row after the other, and with more turns, until no layout can use fewer planks
// or the turns are used up. The bound is the least of all first rows that serve as well: those searched, and those within
// the spans between them where walls slant. Elsewhere runs are alike within a span, and one of it was among the fits.
func (r Request) contest(fits []fit, within []span, laying geom.Region) fit {
	for i := range fits {
		f := &fits[i]
		f.order = i
		f.strips = slice(laying, r.Plank.Width, f.first)
		f.runs = stretches(f.strips)
	}
	r.bounds(fits)
	best := r.search(fits[:min(len(fits), contenders(fits[0].runs))], fits[0].bound)
	best.search.refine()
	best.chosen = best.search.best
	for _, f := range fits {
		best.bound = min(best.bound, f.bound)
	}
	if !plain(laying) {
		best.bound = min(best.bound, r.sweep(laying, within, best.bound))
	}
	return best
}

// search searches the contenders until one meets the least bound, each a little, then each further.
func (r Request) search(fits []fit, least int) fit {
	best := &fits[0]
	for _, effort := range efforts {
		if len(fits[0].runs) > manyRuns && best.chosen != nil {
			break
		}
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

// bounds finds the bounds of all fits and sorts them, the least first. The first's weights do for the others, but for
// those that would then have the least bound of all.
func (r Request) bounds(fits []fit) {
	for i := range fits {
		r.bound(&fits[i], fits[0].dual)
	}
	for {
		slices.SortStableFunc(fits, func(a, b fit) int { return a.bound - b.bound })
		if !fits[0].borrowed {
			return
		}
		r.bound(&fits[0], nil)
	}
}

// bound finds the bound of a first row, by the weights given or its own.
func (r Request) bound(f *fit, d *dual) {
	f.borrowed = d != nil
	f.bound, f.dual = lowerBound(r.supply(f.runs), r.Rules.LeastEnd, r.Rules.LeastStagger, f.runs, 0, d)
}
