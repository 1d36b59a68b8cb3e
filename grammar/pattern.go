package grammar

import "strings"

// cue is a turn of words that speaks for a kind. Its pattern is meanings in a row; "~" stands for anything between,
// "|" for either, "#" for a quantity, "^" at the start for the beginning of the message.
type cue struct {
	weight  float64
	pattern string
}

type pattern struct {
	weight float64
	parts  [][]string
	start  bool
}

func compile(cues []cue) []pattern {
	out := make([]pattern, len(cues))
	for i, c := range cues {
		text, start := strings.CutPrefix(c.pattern, "^")
		p := pattern{weight: c.weight, start: start}
		for _, f := range strings.Fields(text) {
			p.parts = append(p.parts, strings.Split(f, "|"))
		}
		out[i] = p
	}
	return out
}

// in says whether the pattern is found in the meanings.
func (p *pattern) in(seq []string) bool {
	if p.start {
		return p.from(seq, 0, 0)
	}
	for i := range seq {
		if matches(p.parts[0], seq[i]) && p.from(seq, i, 0) {
			return true
		}
	}
	return false
}

func (p *pattern) from(seq []string, i, k int) bool {
	for ; k < len(p.parts); k++ {
		if p.parts[k][0] == "~" {
			for j := i; j < len(seq) && j <= i+12; j++ {
				if p.from(seq, j, k+1) {
					return true
				}
			}
			return false
		}
		if i >= len(seq) || !matches(p.parts[k], seq[i]) {
			return false
		}
		i++
	}
	return true
}

func matches(any []string, s string) bool {
	for _, a := range any {
		if a == s {
			return true
		}
	}
	return false
}

// score adds up the patterns found.
func score(ps []pattern, seq []string) float64 {
	total := 0.0
	for i := range ps {
		if ps[i].in(seq) {
			total += ps[i].weight
		}
	}
	return total
}
