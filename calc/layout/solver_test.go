package layout

import (
	"fmt"
	"math/rand"
	"testing"

	"github.com/crillab/gophersat/solver"
	"github.com/stretchr/testify/require"

	"lastrow/calc/geom"
	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/room"
)

// In these tests lengths are whole units, and so are the plank, the kerf and the rules. All that ties first pieces to
// each other is sums and differences of those, so that some best choice of first pieces is of whole units too: a grid of
// one unit loses nothing, and a model on the grid gives the fewest planks that any layout needs.
const unit = in

// puzzle is a floor of full-width rows that begin at one wall, in units.
type puzzle struct {
	runs                       []int
	plank, end, stagger, kerf  int
	width, deep, corner, shelf int // of the floor; corner x shelf is cut out of it
}

// puzzleOf draws a rectangle or an L. Its rows come out whole, so that its planks are those of its runs.
func puzzleOf(rnd *rand.Rand, rows, plank int) puzzle {
	p := puzzle{plank: plank, end: 2 + rnd.Intn(plank/6), kerf: 1, width: 3}
	p.stagger = 2 + rnd.Intn(plank/4)
	long := plank + 2 + rnd.Intn(3*plank)
	n := 2 + rnd.Intn(rows-1)
	p.deep = n * p.width
	cut := 0
	if n > 2 && rnd.Intn(2) == 0 && long > 2*plank+4 {
		cut = 1 + rnd.Intn(n-1)
		p.corner, p.shelf = 1+rnd.Intn(long-plank-3), cut*p.width
	}
	for i := range n {
		if i < n-cut {
			p.runs = append(p.runs, long)
		} else {
			p.runs = append(p.runs, long-p.corner)
		}
	}
	return p
}

// request is the puzzle as a floor with no gaps, laid from its south wall.
func (p puzzle) request() Request {
	at := func(x, y int) geom.Point { return geom.Point{X: length.Length(x) * unit, Y: length.Length(y) * unit} }
	long := p.runs[0]
	ring := geom.Ring{at(0, 0), at(long, 0), at(long, p.deep), at(0, p.deep)}
	if p.corner > 0 {
		ring = geom.Ring{at(0, 0), at(long, 0), at(long, p.deep-p.shelf), at(long-p.corner, p.deep-p.shelf), at(long-p.corner, p.deep), at(0, p.deep)}
	}
	return Request{
		Floor: tight(ring), Along: EastWest, StartWall: room.South,
		Plank: plank.Plank{Width: length.Length(p.width) * unit, Length: length.Length(p.plank) * unit},
		Rules: Rules{
			LeastRow: unit, LeastEnd: length.Length(p.end) * unit,
			LeastStagger: length.Length(p.stagger) * unit, Kerf: length.Length(p.kerf) * unit,
		},
	}
}

// tight is a floor with no gap at any wall.
func tight(ring geom.Ring) *room.Floor {
	f := &room.Floor{Region: geom.Region{ring}, Laying: geom.Region{ring}}
	for i, p := range ring {
		f.Edges = append(f.Edges, room.Edge{A: p, B: ring[(i+1)%len(ring)], Wall: fmt.Sprint(i + 1)})
	}
	return f
}

// last is the last piece that a first piece leaves in a run, and middle the whole planks between.
func (p puzzle) last(run, first int) (last, middle int) {
	last = (run-first-1)%p.plank + 1
	return last, (run - first - last) / p.plank
}

// choices are the first pieces that keep the ends long enough.
func (p puzzle) choices(run int) []int {
	var out []int
	for s := p.end; s <= p.plank; s++ {
		if last, _ := p.last(run, s); last >= p.end {
			out = append(out, s)
		}
	}
	return out
}

// near says whether two runs' joints come too near: every joint of the one against every joint of the other.
func (p puzzle) near(run, first, other, second int) bool {
	for a := first; a < run; a += p.plank {
		for b := second; b < other; b += p.plank {
			if d := a - b; d < p.stagger && -d < p.stagger {
				return true
			}
		}
	}
	return false
}

// model is the puzzle as a pseudo-boolean problem: one x for each run and first piece, and u_j true for each first piece that gets a
// plank of its own. Its least cost is the planks.
type model struct {
	puzzle
	x         [][]pick
	vars      int
	rules     []solver.PBConstr
	lits      []solver.Lit
	costs     []int
	ownPlanks []int
}

// pick is a run's first piece, and the variable that chooses it.
type pick struct{ first, v int }

func (p puzzle) model() *model {
	m := &model{puzzle: p}
	for _, run := range p.runs {
		var vars []pick
		var any []int
		for _, s := range p.choices(run) {
			m.vars++
			vars = append(vars, pick{s, m.vars})
			any = append(any, m.vars)
			_, middle := p.last(run, s)
			m.cost(m.vars, middle+1)
		}
		m.x = append(m.x, vars)
		m.rules = append(m.rules, solver.AtLeast(any, 1), solver.AtMost(any, 1))
	}
	for range p.runs {
		m.vars++
		m.ownPlanks = append(m.ownPlanks, m.vars)
		m.cost(m.vars, 1)
	}
	m.apart()
	m.hall()
	return m
}

func (m *model) cost(v, c int) {
	m.lits, m.costs = append(m.lits, solver.IntToLit(int32(v))), append(m.costs, c)
}

// apart forbids neighbours whose joints come too near.
func (m *model) apart() {
	for i := 1; i < len(m.x); i++ {
		for _, a := range m.x[i-1] {
			for _, b := range m.x[i] {
				if m.near(m.runs[i-1], a.first, m.runs[i], b.first) {
					m.rules = append(m.rules, solver.PropClause(-a.v, -b.v))
				}
			}
		}
	}
}

// hall asks, for every length t, that the planks of their own be at least the first pieces longer than t less the last
// pieces that leave more than t.
func (m *model) hall() {
	for t := range m.plank {
		var lits, weights []int
		for i, picks := range m.x {
			for _, c := range picks {
				w := 0
				if c.first > t {
					w--
				}
				if last, _ := m.last(m.runs[i], c.first); m.plank-m.kerf-last > t {
					w++
				}
				if w != 0 {
					lits, weights = append(lits, c.v), append(weights, w)
				}
			}
		}
		for _, v := range m.ownPlanks {
			lits, weights = append(lits, v), append(weights, 1)
		}
		m.rules = append(m.rules, solver.GtEq(lits, weights, 0))
	}
}

// solve gives the fewest planks, or -1 where no layout keeps the rules.
func (m *model) solve() int {
	pb := solver.ParsePBConstrs(m.rules)
	pb.SetCostFunc(m.lits, m.costs)
	return solver.New(pb).Minimize()
}

// plain is the fewest planks by trying every choice of first pieces, -1 where none keeps the rules. Slow.
func (p puzzle) plain() int {
	best := -1
	firsts := make([]int, len(p.runs))
	var try func(i, planks int)
	try = func(i, planks int) {
		if i == len(p.runs) {
			if n := planks + p.own(firsts); best < 0 || n < best {
				best = n
			}
			return
		}
		for _, s := range p.choices(p.runs[i]) {
			if i > 0 && p.near(p.runs[i-1], firsts[i-1], p.runs[i], s) {
				continue
			}
			firsts[i] = s
			_, middle := p.last(p.runs[i], s)
			try(i+1, planks+middle+1)
		}
	}
	try(0, 0)
	return best
}

// own is the first pieces that can share no plank with a last piece, by augmenting a matching path by path.
func (p puzzle) own(firsts []int) int {
	partner := make([]int, len(firsts))
	for i := range partner {
		partner[i] = -1
	}
	fits := func(i, j int) bool {
		last, _ := p.last(p.runs[j], firsts[j])
		return firsts[i]+last+p.kerf <= p.plank
	}
	var seen []bool
	var match func(i int) bool
	match = func(i int) bool {
		for j := range firsts {
			if seen[j] || !fits(i, j) {
				continue
			}
			seen[j] = true
			if partner[j] < 0 || match(partner[j]) {
				partner[j] = i
				return true
			}
		}
		return false
	}
	own := 0
	for i := range firsts {
		if seen = make([]bool, len(firsts)); !match(i) {
			own++
		}
	}
	return own
}

// against holds the engine to the fewest planks that another way of solving gives, on so many puzzles, and says how many
// of them met the bound.
func against(t *testing.T, seed int64, count, rows, plank int, fewest func(puzzle) int) (met int) {
	rnd := rand.New(rand.NewSource(seed))
	for solved := 0; solved < count; {
		p := puzzleOf(rnd, rows, plank)
		least := fewest(p)
		if least < 0 {
			continue
		}
		solved++
		r := p.request()
		r.FirstRow = r.Plank.Width
		l, err := Lay(r)
		require.NoError(t, err)
		require.Empty(t, l.Broken, "%+v", p)
		require.Equal(t, least, l.Planks, "%+v", p)
		require.LessOrEqual(t, l.Bound, least, "%+v", p)
		if l.Planks == l.Bound {
			met++
		}
	}
	return met
}

// A general solver on 200 floors: the engine needs as many planks as it proves to be the fewest, and its bound is met in
// at least 95 of 100.
func TestAgainstIntegerProgram(t *testing.T) {
	t.Parallel()
	met := against(t, 11, 200, 4, 10, func(p puzzle) int { return p.model().solve() })
	t.Logf("bound met in %d of 200", met)
	require.GreaterOrEqual(t, met, 190)
}

// Every choice of first pieces on floors of up to six rows.
func TestAgainstEveryChoice(t *testing.T) {
	t.Parallel()
	met := against(t, 5, 200, 6, 11, puzzle.plain)
	t.Logf("bound met in %d of 200", met)
	require.GreaterOrEqual(t, met, 190)
}
