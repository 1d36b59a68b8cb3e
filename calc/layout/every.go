package layout

import (
	"math"
	"slices"

	"lastrow/calc/length"
)

// every tries every choice of joints on a grid, run by run in the order of laying, leaving out what can't beat the best.
//
// The grid is the greatest length that divides the plank, the kerf, the rules and the runs. It loses nothing: once it is
// settled which piece comes from which offcut, all that ties first pieces to each other is bounds on their differences,
// whole numbers of the grid, and where such bounds can be kept at all, whole numbers keep them.
type every struct {
	*choosing
	grid length.Length
	left int
}

// The finest grid that is searched, as a part of the plank, the most runs, and the most choices that are weighed.
const (
	mostCells   = 48
	mostRuns    = 8
	mostChoices = 60_000
)

// exhaust looks through every choice, where that is few, and gives whether it came to the end: then the best has the fewest
// planks of all layouts with these rows, and of those the fewest cuts, and the widest stagger on the grid.
func (c *choosing) exhaust() bool {
	e := every{choosing: c, grid: c.commonGrid(), left: mostChoices}
	if c.plank/e.grid > mostCells || len(c.runs) > mostRuns || c.strip > 0 || c.best.broken > 0 {
		return false
	}
	c.aim = aim{planks: math.MaxInt32, stagger: c.rules.LeastStagger}
	c.at = slices.Clone(c.best.at)
	c.profile.reset(c.plank, c.kerf)
	return e.run(0, c.plank)
}

// commonGrid is the greatest length that divides all that ties joints.
func (c *choosing) commonGrid() length.Length {
	g := c.plank
	for _, l := range [...]length.Length{c.kerf, c.rules.LeastEnd, c.rules.LeastStagger} {
		g = divisor(g, l)
	}
	for _, r := range c.runs {
		g = divisor(divisor(g, r.len()), r.left-c.runs[0].left)
	}
	if c.mark > 1 {
		g = divisor(g, c.mark)
	}
	return g
}

func divisor(a, b length.Length) length.Length {
	for b != 0 {
		a, b = b, a%b
	}
	return abs(a)
}

// run tries every place of one run, with those before it placed; stagger is the least distance of their joints.
func (e *every) run(i int, stagger length.Length) bool {
	if i == len(e.runs) {
		e.take()
		return true
	}
	for _, p := range e.places(i) {
		if e.left--; e.left < 0 {
			return false
		}
		apart := min(stagger, e.apart(i, p))
		if apart < e.rules.LeastStagger {
			continue
		}
		a := e.arc(i, p)
		e.at[i] = p
		e.profile.add(i, a)
		e.profile.sort()
		done := e.hopeless(i, apart) || e.run(i+1, apart)
		e.profile.without(i, a)
		if !done {
			return false
		}
	}
	return true
}

// places lists the places of a run on the grid.
func (e *every) places(i int) []place {
	var out []place
	long := e.runs[i].len()
	for from := long; from <= e.plank; from += e.grid {
		out = append(out, place{long, from})
	}
	for _, sp := range e.spans[i] {
		for first := (sp.lo + e.grid - 1) / e.grid * e.grid; first <= sp.hi; first += e.grid {
			out = append(out, place{first: first})
		}
	}
	return out
}

func (e *every) apart(i int, p place) length.Length {
	d := e.plank
	for _, k := range e.runs[i].before {
		d = min(d, e.between(e.runs, i, p.first, k, e.at[k].first))
	}
	return d
}

// hopeless says whether the runs up to one already take more planks than the best; or as many, with cuts and joints that
// can come out no better: every run yet to come saves two cuts at most.
func (e *every) hopeless(i int, apart length.Length) bool {
	planks := e.base() + e.profile.most()
	if planks != e.best.planks {
		return planks > e.best.planks
	}
	cuts := e.leastCuts(i)
	return cuts > e.best.cuts || cuts == e.best.cuts && apart <= e.best.stagger
}

// leastCuts is the fewest cuts that the places up to a run leave possible.
func (e *every) leastCuts(last int) int {
	cuts := 0
	for i := range e.runs {
		if cuts++; e.runs[i].len() > e.plank || i <= last && e.at[i].first < e.runs[i].len() {
			cuts++
		}
	}
	return cuts - e.profile.saved() - 2*(len(e.runs)-1-last)
}
