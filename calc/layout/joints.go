package layout

import (
	"cmp"
	"math"
	"slices"

	"lastrow/calc/length"
)

// joints are the joints chosen for a floor's runs, and what they come to.
type joints struct {
	at      []place
	broken  int // rules not kept
	planks  int
	cuts    int
	stagger length.Length // the least distance of two joints side by side
	regular int           // joints straight above those two rows before, and even steps
}

// compare orders by what is asked first: the rules, the fewest planks, the fewest cuts, the widest stagger, and then what
// pleases.
func (j *joints) compare(k *joints) int {
	return cmp.Or(cmp.Compare(j.broken, k.broken), cmp.Compare(j.planks, k.planks), cmp.Compare(j.cuts, k.cuts), cmp.Compare(k.stagger, j.stagger), cmp.Compare(j.regular, k.regular))
}

// choosing finds the joints of one floor.
type choosing struct {
	*placing
	best *joints
}

// newChoosing begins with the joints of walks, until one takes no more planks than the bound.
func newChoosing(p supply, rules Rules, runs []stretch, bound int) *choosing {
	c := &choosing{placing: newPlacing(p, rules, runs)}
	c.aim = aim{planks: math.MaxInt32, stagger: rules.LeastStagger}
	for i, kinds := range p.groupings(rules.LeastEnd, runs) {
		for j, plan := range p.plans(kinds) {
			if i > 0 && j == mostRough || j > 1 && len(runs) > manyRuns && c.best.broken == 0 {
				break
			}
			c.arrange(kinds, plan)
			if c.take(); c.best.planks <= bound && c.best.broken == 0 {
				return c
			}
		}
	}
	if c.best == nil {
		c.anyhow()
		c.take()
	}
	return c
}

// anyhow sets every run down at the end of what it is allowed.
func (c *choosing) anyhow() {
	for i, r := range c.runs {
		c.at[i] = place{r.len(), c.plank}
		if r.len() > c.plank {
			c.at[i].first = c.spans[i][0].marked(c.spans[i][0].hi, c.mark)
		}
	}
}

// take keeps the places as they are if they are the best so far.
func (c *choosing) take() {
	for _, i := range c.free {
		c.put(i, c.at[i])
	}
	j := joints{at: slices.Clone(c.at), stagger: c.plank}
	for i, r := range c.runs {
		j.broken += c.shortEnds(i)
		for _, k := range r.before {
			d := c.between(c.runs, i, c.at[i].first, k, c.at[k].first)
			j.stagger = min(j.stagger, d)
			if d < c.rules.LeastStagger {
				j.broken++
			}
		}
	}
	j.regular = c.regularAll()
	d := c.deal(c.runs, c.at)
	j.planks, j.cuts = d.count, d.cuts
	if c.best == nil || j.compare(c.best) < 0 {
		c.best = &j
	}
}

// shortEnds is 1 where a run has an end piece shorter than the least.
func (c *choosing) shortEnds(i int) int {
	long, first := c.runs[i].len(), c.at[i].first
	if first < long && min(first, lastPiece(long, c.plank, first)) < c.rules.LeastEnd {
		return 1
	}
	return 0
}

// fewer looks for joints that keep the rules with one plank fewer, again and again, down to the bound; on a floor of very
// many runs with many fewer at first.
func (c *choosing) fewer(bound, turns int) {
	c.mend(turns)
	ahead := 0
	if len(c.runs) > manyRuns {
		ahead = (c.best.planks - bound) / 2
	}
	for c.best.planks > bound {
		was := c.best
		c.at = slices.Clone(c.best.at)
		c.settle(aim{planks: c.planks() - 1 - ahead, stagger: c.rules.LeastStagger}, turns)
		switch c.take(); {
		case c.best != was:
		case ahead == 0:
			return
		}
		ahead /= 2
	}
}

// mend looks for joints that keep the rules, whatever the planks. Where joints lie too near all the same, they are let be.
func (c *choosing) mend(turns int) {
	const tries = 8
	c.at = slices.Clone(c.best.at)
	for range tries {
		if c.best.broken == 0 {
			return
		}
		c.settle(aim{planks: math.MaxInt32, stagger: c.rules.LeastStagger}, turns/2)
		c.take()
	}
	for i := range c.beside {
		c.beside[i] = slices.DeleteFunc(c.beside[i], func(j int) bool {
			return c.between(c.runs, i, c.best.at[i].first, j, c.best.at[j].first) < c.rules.LeastStagger
		})
	}
}
