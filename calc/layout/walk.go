package layout

import "lastrow/calc/length"

// A row's last piece leaves an offcut, and a later row may begin with it. Followed from row to row that is a walk: from a
// first piece s to a next one of at most s - (ρ + kerf), or of at most s + plank - (ρ + kerf) where the row's ends come
// to less than a plank between them, which costs a plank more. A walk that cannot go on costs a plank more too, and
// begins anew with the longest first piece. Longer pieces leave longer walks, so going on with the longest that the
// offcut gives, and for free while that is possible, takes the fewest planks for rows of one length.
//
// The walk need not visit rows in the order of laying. So it only plans which first pieces the rows of each length have;
// which row has which is chosen afterwards, to keep the joints apart.

// planned is the first pieces of each kind of run, in the order of the walk.
type planned [][]length.Length

// groupings sort the runs into kinds, first by their lengths, then more and more roughly: in a room out of square no two
// rows are as long, and a first piece that suits several leaves room to keep joints apart.
func (p *supply) groupings(least length.Length, runs []stretch) [][]kindOf {
	var out [][]kindOf
	for _, some := range [...]length.Length{0, p.plank / 96, p.plank / 48, p.plank / 24, p.plank / 12, p.plank / 6} {
		kinds := kindsOf(*p, least, runs, some)
		if n := len(out); len(kinds) <= mostWalked && (n == 0 || len(kinds) < len(out[n-1])) {
			out = append(out, kinds)
		}
	}
	return out
}

// mostRough is the number of walks tried for kinds of runs that differ.
const mostRough = 4

// stride is how a walk is varied: it begins so much short of the longest first piece, and falls short so much at each step.
type stride struct{ start, step length.Length }

// step is one step that a walk can take.
type step struct {
	kind, cost  int
	first, next length.Length
	lost        length.Length
}

func (s step) better(t step) bool {
	if s.cost != t.cost {
		return s.cost < t.cost
	}
	if s.lost != t.lost {
		return s.lost < t.lost
	}
	return s.next > t.next
}

// walk plans the first pieces of all runs longer than a plank. Cost is the planks beyond the whole ones and one a run.
func (p *supply) walk(kinds []kindOf, by stride) (plan planned, cost int) {
	plan = make(planned, len(kinds))
	left := make([]int64, len(kinds))
	total := int64(0)
	for i, k := range kinds {
		left[i] = k.n
		total += k.n
	}
	offcut := length.Length(-1)
	for ; total > 0; total-- {
		best := step{cost: 99}
		for i, k := range kinds {
			if left[i] == 0 {
				continue
			}
			for _, s := range p.steps(k, offcut, by) {
				if s.kind = i; s.better(best) {
					best = s
				}
			}
		}
		left[best.kind]--
		plan[best.kind] = append(plan[best.kind], best.first)
		cost += best.cost
		offcut = best.next
	}
	return plan, cost
}

// steps lists the ways to lay one more run of a kind: from the offcut, or from a new plank.
func (p *supply) steps(k kindOf, offcut length.Length, by stride) []step {
	fall := leftOver(k.run, p.plank) + p.kerf
	short, long := k.spans[0], k.spans[1]
	out := make([]step, 0, 4)
	add := func(sp span, most, gain length.Length, cost int, lost length.Length) {
		if sp.empty() || most < sp.lo {
			return
		}
		first := sp.marked(max(sp.lo, min(most, sp.hi)), p.mark)
		out = append(out, step{cost: cost, first: first, next: first - fall + gain, lost: lost + max(0, most-first)})
	}
	add(long, offcut-by.step, 0, 0, 0)
	add(short, offcut-by.step, p.plank, 1, 0)
	add(long, max(long.lo, long.hi-by.start), 0, 1, max(0, offcut))
	add(short, max(short.lo, short.hi-by.start), p.plank, 2, max(0, offcut))
	return out
}

// plans plans the walk, which cuts every offcut to just what the next row begins with, and again with the variations that cost no more: the first pieces lie the further apart the more
// each step falls short, and the joints are the easier kept apart.
func (p *supply) plans(kinds []kindOf) []planned {
	if len(kinds) == 0 {
		return nil
	}
	tight, least := p.walk(kinds, stride{})
	fall := p.furthest(kinds, least, func(l length.Length) stride { return stride{step: l} })
	start := p.furthest(kinds, least, func(l length.Length) stride { return stride{start: l} })
	out := []planned{tight}
	for _, by := range []stride{{0, fall}, {0, fall / 2}, {start, 0}, {start / 2, fall / 2}, {0, fall * 3 / 4}, {start / 2, fall / 4}, {0, fall / 4}, {start / 4, fall * 3 / 4}} {
		if plan, cost := p.walk(kinds, by); cost == least {
			out = append(out, plan)
		}
	}
	return out
}

// mostWalked is the number of different run lengths beyond which no walk is planned: rows of a slanted floor.
const mostWalked = 24

// furthest is the largest variation that costs no more, to a hundredth of a plank or so.
func (p *supply) furthest(kinds []kindOf, least int, by func(length.Length) stride) length.Length {
	lo, hi := length.Length(0), p.plank
	for range 9 {
		mid := (lo + hi) / 2
		if _, cost := p.walk(kinds, by(mid)); cost <= least {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}
