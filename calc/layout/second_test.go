package layout

import (
	"math/rand"
	"testing"

	"github.com/crillab/gophersat/solver"
	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
)

// score is what a layout is asked for, in this order: few planks, few crosscuts, a wide stagger.
type score struct{ planks, cuts, stagger int }

func (s score) better(t score) bool {
	switch {
	case s.planks != t.planks:
		return s.planks < t.planks
	case s.cuts != t.cuts:
		return s.cuts < t.cuts
	}
	return s.stagger > t.stagger
}

// scoreOf reads a layout's score off its pieces and its stock: a plank is cut once for each piece taken from it, but for
// the last where pieces and kerfs make up the plank.
func scoreOf(l *Layout) score {
	s := score{planks: l.Planks, stagger: int(l.Request.Plank.Length / unit)}
	long := map[Ref]length.Length{}
	for i, row := range l.Rows {
		for _, p := range row.pieces() {
			long[Ref{p.Row, p.N}] = p.Right - p.Left
			if p.Left == row.Runs[0].Left || i == 0 {
				continue
			}
			for _, q := range l.Rows[i-1].pieces()[1:] {
				s.stagger = min(s.stagger, int(abs(p.Left-q.Left)/unit))
			}
		}
	}
	for _, stock := range l.Stock {
		sum := -l.Request.Rules.Kerf
		for _, ref := range stock.Pieces {
			sum += long[ref] + l.Request.Rules.Kerf
		}
		s.cuts += len(stock.Pieces)
		if sum == l.Request.Plank.Length {
			s.cuts--
		}
	}
	return s
}

// best is the best score by trying every choice of first pieces on the grid; false where none keeps the rules. Slow.
func (p puzzle) best() (score, bool) {
	best, found := score{}, false
	firsts := make([]int, len(p.runs))
	var try func(i int, s score)
	try = func(i int, s score) {
		if i == len(p.runs) {
			pairs, saved := p.paired(firsts)
			s.planks -= pairs
			if s.cuts -= saved; !found || s.better(best) {
				best, found = s, true
			}
			return
		}
		for _, f := range p.choices(p.runs[i]) {
			next := s
			if i > 0 {
				if next.stagger = min(s.stagger, p.nearest(p.runs[i-1], firsts[i-1], p.runs[i], f)); next.stagger < p.stagger {
					continue
				}
			}
			firsts[i] = f
			_, middle := p.last(p.runs[i], f)
			next.planks += middle + 2
			next.cuts += 2
			try(i+1, next)
		}
	}
	try(0, score{stagger: p.plank})
	return best, found
}

// nearest is the least distance of two runs' joints, each against each.
func (p puzzle) nearest(run, first, other, second int) int {
	least := p.plank
	for a := first; a < run; a += p.plank {
		for b := second; b < other; b += p.plank {
			least = min(least, max(a-b, b-a))
		}
	}
	return least
}

// paired tries every pairing of first pieces with last pieces: the most pairs that share a plank, and among those the most
// cuts saved, one for each pair that makes up its plank and each piece that is a whole one.
func (p puzzle) paired(firsts []int) (pairs, saved int) {
	type count struct{ pairs, saved int }
	memo := map[[2]int]count{}
	var from func(i, used int) count
	from = func(i, used int) count {
		if i == len(firsts) {
			return count{}
		}
		if c, ok := memo[[2]int{i, used}]; ok {
			return c
		}
		best := from(i+1, used)
		for j := range firsts {
			last, _ := p.last(p.runs[j], firsts[j])
			if used>>j&1 == 1 || firsts[i]+last+p.kerf > p.plank {
				continue
			}
			c := from(i+1, used|1<<j)
			c.pairs++
			if firsts[i]+last+p.kerf == p.plank {
				c.saved++
			}
			if c.pairs > best.pairs || c.pairs == best.pairs && c.saved > best.saved {
				best = c
			}
		}
		memo[[2]int{i, used}] = best
		return best
	}
	c := from(0, 0)
	for i, f := range firsts {
		last, _ := p.last(p.runs[i], f)
		for _, piece := range [...]int{f, last} {
			if piece == p.plank {
				c.saved++
			}
		}
	}
	return c.pairs, c.saved
}

// Every choice of first pieces on a grid, on floors of up to five rows: the engine's layout has the fewest planks, of those
// the fewest cuts, and of those the widest stagger.
func TestPlanksThenCutsThenStagger(t *testing.T) {
	t.Parallel()
	laidAs(t, 300, rand.New(rand.NewSource(17)), 5, 11, puzzle.best)
}

// laidAs draws puzzles of so many rows and units at most until so many are solved: Lay comes to the same score as the solution.
func laidAs(t *testing.T, floors int, rnd *rand.Rand, rows, units int, solve func(puzzle) (score, bool)) {
	for solved := 0; solved < floors; {
		p := puzzleOf(rnd, rows, units)
		want, ok := solve(p)
		if !ok {
			continue
		}
		solved++
		r := p.request()
		r.FirstRow, r.Mark = r.Plank.Width, unit
		l, err := Lay(r)
		require.NoError(t, err)
		require.Equal(t, want, scoreOf(l), "%+v", p)
	}
}

// saves lets the model count the cuts saved, its planks weighing planksWeigh each: a variable for each first piece that is
// just the offcut of a last piece, as many at each length as there are of both, and less for pieces that are whole planks.
func (m *model) saves() {
	for i := range m.costs {
		m.costs[i] *= planksWeigh
	}
	at := 0
	for i, picks := range m.x {
		for _, c := range picks {
			last, _ := m.last(m.runs[i], c.first)
			for _, piece := range [...]int{c.first, last} {
				if piece == m.plank {
					m.costs[at]--
				}
			}
			at++
		}
	}
	for long := 1; long < m.plank-m.kerf; long++ {
		m.savesAt(long)
	}
}

const planksWeigh = 100

func (m *model) savesAt(long int) {
	var firsts, lasts, weights, lastWeights []int
	for i, picks := range m.x {
		for _, c := range picks {
			if c.first == long {
				firsts, weights = append(firsts, c.v), append(weights, 1)
			}
			if last, _ := m.last(m.runs[i], c.first); m.plank-m.kerf-last == long {
				lasts, lastWeights = append(lasts, c.v), append(lastWeights, 1)
			}
		}
	}
	for range m.runs {
		m.vars++
		m.lits, m.costs = append(m.lits, solver.IntToLit(int32(-m.vars))), append(m.costs, 1)
		firsts, weights = append(firsts, m.vars), append(weights, -1)
		lasts, lastWeights = append(lasts, m.vars), append(lastWeights, -1)
	}
	m.rules = append(m.rules, solver.GtEq(firsts, weights, 0), solver.GtEq(lasts, lastWeights, 0))
}

// solved is the best score that the general solver proves: planks and cuts at once, then the stagger asked for wider and
// wider for as long as they stand; false where nothing keeps the rules.
func (p puzzle) solved() (score, bool) {
	cost := func(stagger int) int {
		p.stagger = stagger
		m := p.model()
		m.saves()
		return m.solve()
	}
	from := p.stagger
	least := cost(from)
	if least < 0 {
		return score{}, false
	}
	wide := from
	for wide < p.plank && cost(wide+1) == least {
		wide++
	}
	p.stagger = from
	s := score{planks: p.model().solve(), stagger: wide}
	lengths := (p.plank - p.kerf - 1) * len(p.runs)
	s.cuts = 2*len(p.runs) + least - planksWeigh*s.planks - lengths
	return s, true
}

// The general solver, told to save cuts after planks and then asked for a wider and wider stagger, comes to the same.
func TestPlanksThenCutsThenStaggerBySolver(t *testing.T) {
	t.Parallel()
	laidAs(t, 60, rand.New(rand.NewSource(23)), 4, 9, puzzle.solved)
}
