package layout

import (
	"math/rand"
	"testing"

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
	rnd := rand.New(rand.NewSource(17))
	for solved := 0; solved < 300; {
		p := puzzleOf(rnd, 5, 11)
		want, ok := p.best()
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
