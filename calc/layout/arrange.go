package layout

import (
	"cmp"
	"slices"

	"lastrow/calc/length"
)

// arrange gives the planned first pieces to the runs of their kind, so that joints of neighbouring rows lie apart: it
// begins with a few orders, swaps the pieces of two runs while that is better, and keeps the best.
func (s *placing) arrange(kinds []kindOf, plan planned) {
	same := s.sorted(kinds)
	var best []place
	least := length.Length(-1)
	for _, part := range [...]float64{0.382, 0.29, 0.45, 0.236} {
		for k, g := range same {
			s.hand(g, plan[k], part)
		}
		s.improve(same)
		if c := s.closeAll(); least < 0 || c < least {
			best, least = slices.Clone(s.at), c
		}
		if least == 0 {
			break
		}
	}
	s.at = best
}

// sorted lists the runs of each kind, and sets down those of one piece.
func (s *placing) sorted(kinds []kindOf) [][]int {
	same := make([][]int, len(kinds))
	for i, r := range s.runs {
		if r.len() <= s.plank {
			s.at[i] = place{r.len(), s.plank}
			continue
		}
		g, _ := slices.BinarySearchFunc(kinds, r.len(), func(k kindOf, l length.Length) int { return cmp.Compare(k.run, l) })
		same[g] = append(same[g], i)
	}
	return same
}

// hand gives the pieces to runs in blocks of the walk, within a block each so far on from the last.
func (s *placing) hand(runs []int, list []length.Length, part float64) {
	const block = 48
	for from := 0; from < len(runs); from += block {
		n := min(block, len(runs)-from)
		hop := max(1, int(float64(n)*part))
		for gcd(hop, n) != 1 {
			hop++
		}
		for i := range n {
			s.at[runs[from+i]].first = list[from+i*hop%n]
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
func (s *placing) improve(same [][]int) {
	const rounds, reach = 8, 32
	for range rounds {
		better := false
		for _, g := range same {
			for i := range g {
				if s.close(g[i], s.at[g[i]].first) == 0 {
					continue
				}
				for j := max(0, i-reach); j < min(len(g), i+reach); j++ {
					better = s.swap(g[i], g[j]) || better
				}
			}
		}
		if !better {
			return
		}
	}
}

// swap swaps the pieces of two runs if that is better.
func (s *placing) swap(i, j int) bool {
	if s.at[i] == s.at[j] {
		return false
	}
	was := s.closeBoth(i, j)
	s.at[i], s.at[j] = s.at[j], s.at[i]
	if s.closeBoth(i, j) < was {
		return true
	}
	s.at[i], s.at[j] = s.at[j], s.at[i]
	return false
}

func (s *placing) closeBoth(i, j int) length.Length {
	return s.close(i, s.at[i].first) + s.close(j, s.at[j].first)
}

func (s *placing) closeAll() length.Length {
	sum := length.Length(0)
	for i, p := range s.at {
		sum += s.close(i, p.first)
	}
	return sum
}
