package layout

import (
	"slices"

	"lastrow/calc/geom"
	"lastrow/calc/length"
)

// The searches: how many first rows are searched, how many beginnings are kept at each run, and how many may be weighed in all.
const (
	mostContenders = 4
	mostSteps      = 4_000
)

// widths are the numbers of beginnings kept, in the order tried.
var widths = [...]int{4, 16, 64, 256}

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
		best.bound = least
	}
	return best
}

// search searches the contenders until one meets the least bound, each a little, then each further.
func (r Request) search(fits []fit, least int) fit {
	best, steps := &fits[0], 0
	for _, width := range widths {
		for i := range fits {
			f := &fits[i]
			if f.chosen != nil && f.planks == f.bound || steps > mostSteps+40*len(f.runs) {
				continue
			}
			steps += r.joints(f, width)
			if f.better(*best) {
				best = f
			}
			if best.planks == least && best.chosen.broken == 0 {
				return *best
			}
		}
	}
	return *best
}

// better says whether a first row's joints break fewer rules, or take fewer planks, or as many and it was preferred.
func (f fit) better(g fit) bool {
	if f.chosen.better(g.chosen) {
		return true
	}
	return !g.chosen.better(f.chosen) && f.order < g.order
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

func (b *beginning) better(than *beginning) bool {
	if b.broken != than.broken {
		return b.broken < than.broken
	}
	return b.planks < than.planks
}

// joints searches the joints of one first row, and keeps what it finds if it is better. It gives the steps taken.
func (r Request) joints(f *fit, width int) int {
	p := r.supply(f.runs)
	s := search{supply: p, rules: r.Rules, runs: f.runs, fine: r.Plank.Length / 48, dual: f.dual, tight: map[length.Length][]length.Length{}}
	take := func(b *beginning) bool {
		b.planks = p.deal(f.runs, b.firsts(len(f.runs))).count
		if f.chosen == nil || b.better(f.chosen) {
			f.chosen, f.planks = b, b.planks
		}
		return f.planks == f.bound && f.chosen.broken == 0
	}
	if f.chosen == nil {
		for i, kinds := range p.groupings(r.Rules.LeastEnd, f.runs) {
			for j, plan := range p.plans(kinds) {
				if i > 0 && j == mostRough {
					break
				}
				if take(s.arrange(kinds, plan)) {
					return s.steps
				}
			}
		}
	}
	for _, s.taste = range [...]bool{true, false} {
		if take(s.best(width)) {
			break
		}
	}
	return s.steps
}

// supply sets up what pieces come from.
func (r Request) supply(runs []stretch) supply {
	p := supply{plank: r.Plank.Length, width: r.Plank.Width, kerf: r.Rules.Kerf, mark: max(1, r.Mark), most: 12}
	p.shortest = min(r.Rules.LeastEnd, p.plank)
	narrowest := length.Length(0)
	for _, s := range runs {
		if s.len() <= p.plank {
			p.shortest = min(p.shortest, s.len())
		}
		if s.width() < p.width && s.nearLock != s.farLock && (narrowest == 0 || s.width() < narrowest) {
			narrowest = s.width()
		}
	}
	if narrowest > 0 && 2*narrowest+p.kerf <= p.width {
		p.strip = narrowest
		p.most = 64
	}
	return p
}
