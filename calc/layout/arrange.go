package layout

import (
	"cmp"
	"slices"

	"lastrow/calc/length"
)

// arranging gives the planned first pieces to the runs of their length, so that joints of neighbouring rows lie apart. It
// begins with an order and swaps the pieces of two runs while that makes it better.
type arranging struct {
	*search
	firsts []length.Length
	after  [][]int // the runs of the next row that lie against each
	same   [][]int // runs of one kind
	steps  int
}

// arrange tries a few orders of the planned pieces of each kind, and gives the best as a beginning.
func (s *search) arrange(kinds []kindOf, plan planned) *beginning {
	a := arranging{search: s, firsts: make([]length.Length, len(s.runs)), after: make([][]int, len(s.runs)), same: make([][]int, len(kinds))}
	for i, r := range s.runs {
		a.firsts[i] = r.len()
		for _, k := range r.before {
			a.after[k] = append(a.after[k], i)
		}
		if r.len() > s.plank {
			g, _ := slices.BinarySearchFunc(kinds, r.len(), func(k kindOf, l length.Length) int { return cmp.Compare(k.run, l) })
			a.same[g] = append(a.same[g], i)
		}
	}
	var best *beginning
	for _, part := range [...]float64{0.382, 0.29, 0.45, 0.236} {
		for k, g := range a.same {
			a.deal(g, plan[k], part)
		}
		a.improve()
		if b := a.beginning(); best == nil || b.broken < best.broken || b.broken == best.broken && b.taste < best.taste {
			best = b
		}
		if best.broken == 0 {
			break
		}
	}
	s.steps += a.steps
	return best
}

// deal gives the pieces to runs in blocks of the walk, within a block each so far on from the last.
func (a *arranging) deal(runs []int, list []length.Length, part float64) {
	const block = 48
	for from := 0; from < len(runs); from += block {
		n := min(block, len(runs)-from)
		hop := max(1, int(float64(n)*part))
		for gcd(hop, n) != 1 {
			hop++
		}
		for i := range n {
			a.firsts[runs[from+i]] = list[from+i*hop%n]
		}
	}
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// improve swaps pieces of runs near each other while a swap lowers the cost, for a few rounds.
func (a *arranging) improve() {
	const rounds, reach = 8, 32
	for range rounds {
		better := false
		for _, g := range a.same {
			for i := range g {
				if a.costOf(g[i]) == 0 {
					continue
				}
				for j := max(0, i-reach); j < min(len(g), i+reach); j++ {
					better = a.swap(g[i], g[j]) || better
				}
			}
		}
		if !better {
			return
		}
	}
}

// swap swaps the pieces of two runs if that is better.
func (a *arranging) swap(i, j int) bool {
	if a.firsts[i] == a.firsts[j] {
		return false
	}
	a.steps++
	was := a.costOf(i) + a.costOf(j)
	a.firsts[i], a.firsts[j] = a.firsts[j], a.firsts[i]
	if a.costOf(i)+a.costOf(j) < was {
		return true
	}
	a.firsts[i], a.firsts[j] = a.firsts[j], a.firsts[i]
	return false
}

// costOf weighs a run's joints against those of the runs that it lies against: nothing where all are apart.
func (a *arranging) costOf(i int) length.Length {
	sum := length.Length(0)
	for _, k := range a.runs[i].before {
		sum += a.between(k, i)
	}
	for _, k := range a.after[i] {
		sum += a.between(i, k)
	}
	return sum
}

func (a *arranging) between(i, j int) length.Length {
	x, y := &a.runs[i], &a.runs[j]
	if a.firsts[i] >= x.len() || a.firsts[j] >= y.len() {
		return 0
	}
	d := apart(x.left+a.firsts[i], x.right-lastPiece(x.len(), a.plank, a.firsts[i]),
		y.left+a.firsts[j], y.right-lastPiece(y.len(), a.plank, a.firsts[j]), a.plank)
	if d >= a.rules.LeastStagger {
		return 0
	}
	return a.rules.LeastStagger - d + a.plank/16
}

// beginning writes the arrangement as the search does.
func (a *arranging) beginning() *beginning {
	b := &beginning{run: -1}
	for i := range a.runs {
		next := a.judged(b, i, a.firsts[i])
		b = &next
	}
	return b
}
