package layout

import (
	"slices"

	"lastrow/calc/length"
)

// How many turns are taken for every run to save one more cut, to lay the joints farther apart, and how often the latter is
// tried. A floor of very many runs is refined less, so that the cost stays in line with the pieces.
const (
	cutTurns     = 4
	staggerTurns = 4
	staggerTries = 5
	manyRuns     = 100
)

// refine looks for joints with as few planks, and then fewer cuts, then a wider stagger, then less regular ones.
func (c *choosing) refine() {
	if c.best.broken > 0 || len(c.free) == 0 {
		return
	}
	tries := staggerTries
	if len(c.runs) > manyRuns {
		tries = 2
	} else {
		c.fewerCuts()
	}
	c.widen(tries)
	c.irregular()
}

// held is what the best joints reach.
func (c *choosing) held() aim {
	c.at = slices.Clone(c.best.at)
	a := aim{planks: c.planks(), stagger: c.best.stagger}
	a.saved = c.profile.saved()
	return a
}

// fewerCuts looks for joints that save one cut more, again and again. Where no end of a run is square, nothing can be saved.
func (c *choosing) fewerCuts() {
	for slices.ContainsFunc(c.runs, func(r stretch) bool { return r.leftSquare && r.len() > c.plank }) {
		was, to := c.best, c.held()
		to.saved++
		to.stagger = c.rules.LeastStagger
		c.settle(to, cutTurns*len(c.free))
		if c.take(); c.best == was {
			return
		}
	}
}

// widen halves the span between the stagger reached and half a plank, which is the widest that joints can keep from both
// neighbours on either side.
func (c *choosing) widen(tries int) {
	most := c.plank / 2
	for range tries {
		to := c.held()
		if most-to.stagger < c.plank/96 || to.stagger < c.rules.LeastStagger {
			return
		}
		was := c.best
		to.stagger = (to.stagger + most) / 2
		c.settle(to, staggerTurns*len(c.free))
		if c.take(); c.best == was {
			most = to.stagger
		}
	}
}

// irregular moves one run after the other to where the joints are less regular and nothing else is worse.
func (c *choosing) irregular() {
	c.aim = c.held()
	c.fill()
	c.profile.goal = c.aim.planks - c.base()
	for _, i := range c.free {
		if c.regular(i) > 0 {
			c.takeOut(i)
			c.measure()
			c.put(i, c.leastRegular(i))
			c.profile.with(i, c.arc(i, c.at[i]))
		}
	}
	c.take()
}

// leastRegular is the place, of those that cost nothing, where a run has part in the fewest regular joints.
func (c *choosing) leastRegular(i int) place {
	best, least := c.at[i], c.regular(i)
	c.offer(i)
	for _, o := range c.options {
		if c.cost(i, o, 0) > 0 {
			continue
		}
		c.put(i, o)
		if n := c.regular(i); n < least {
			best, least = o, n
		}
	}
	return best
}

// regularAll counts, over the floor, the joints straight above those two rows before and the even steps of three rows.
func (s *placing) regularAll() int {
	n := 0
	for i, r := range s.runs {
		for _, j := range r.before {
			n += s.regularOver(i, j)
		}
	}
	return n
}

// regular counts those that a run has a part in.
func (s *placing) regular(i int) int {
	n := 0
	for _, j := range s.runs[i].before {
		n += s.regularOver(i, j)
	}
	for _, k := range s.beside[i] {
		if s.runs[k].row < s.runs[i].row {
			continue
		}
		n += s.regularOver(k, i)
		for _, l := range s.beside[k] {
			if s.runs[l].row > s.runs[k].row {
				n += s.regularOver(l, k)
			}
		}
	}
	return n
}

// regularOver counts, for a run and one before it, the runs before that whose joints lie straight below the first's, or as
// far on from the second's as those are from the first's.
func (s *placing) regularOver(i, j int) int {
	n, fine := 0, s.plank/48
	for _, k := range s.runs[j].before {
		step, before := s.step(i, j), s.step(j, k)
		switch straight := step + before; {
		case s.at[i].first >= s.runs[i].len() || s.at[j].first >= s.runs[j].len() || s.at[k].first >= s.runs[k].len():
		case min(floorMod(straight, s.plank), floorMod(-straight, s.plank)) < fine:
			n++
		case min(floorMod(step-before, s.plank), floorMod(before-step, s.plank)) < fine:
			n++
		}
	}
	return n
}

// step is how far along a run's joints lie from another's.
func (s *placing) step(i, j int) length.Length {
	return s.runs[i].left + s.at[i].first - s.runs[j].left - s.at[j].first
}

func floorMod(a, b length.Length) length.Length { return a - floorDiv(a, b)*b }
