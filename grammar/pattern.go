package grammar

import "strings"

// cue is a turn of words that speaks for a kind. Its pattern is meanings in a row. "~" stands for anything between but
// quantities and ".." for anything at all, "|" for either, "#" for a quantity and "#n" for a bare whole number, "#m" for money, "#t" for a time, "#a" for an area, "^" at
// the start for the beginning of the message; "!" before a meaning wants it without a quantity of its own.
type cue struct {
	weight  float64
	pattern string
}

type pattern struct {
	weight float64
	parts  [][]string
	start  bool
	needs  []uint64 // for each part that names meanings alone, the marks of any of them
}

// mark gives a meaning one bit of 64. Two meanings may share one: a mark says that a meaning may be there, never that it is.
func mark(meaning string) uint64 {
	h := uint32(2166136261)
	for i := 0; i < len(meaning); i++ {
		h = (h ^ uint32(meaning[i])) * 16777619
	}
	return 1 << (h >> 26)
}

func marks(seq []said) (m uint64) {
	for _, s := range seq {
		m |= mark(s.is)
	}
	return m
}

// need gives the marks of a part's meanings; false where it takes a gap or a quantity.
func need(part []string) (m uint64, ok bool) {
	for _, a := range part {
		if a == "~" || a == ".." || a[0] == '#' {
			return 0, false
		}
		m |= mark(strings.TrimPrefix(a, "!"))
	}
	return m, true
}

func compile(cues []cue) []pattern {
	out := make([]pattern, len(cues))
	for i, c := range cues {
		text, start := strings.CutPrefix(c.pattern, "^")
		p := pattern{weight: c.weight, start: start}
		for _, f := range strings.Fields(text) {
			part := strings.Split(f, "|")
			p.parts = append(p.parts, part)
			if m, ok := need(part); ok {
				p.needs = append(p.needs, m)
			}
		}
		out[i] = p
	}
	return out
}

// in says whether the pattern is found in the meanings.
func (p *pattern) in(seq []said) bool {
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

func (p *pattern) from(seq []said, i, k int) bool {
	for ; k < len(p.parts); k++ {
		if gap := p.parts[k][0]; gap == "~" || gap == ".." {
			return p.after(seq, i, k+1, gap == "~")
		}
		if i >= len(seq) || !matches(p.parts[k], seq[i]) {
			return false
		}
		i++
	}
	return true
}

// after looks for the rest of the pattern further on.
func (p *pattern) after(seq []said, i, k int, plain bool) bool {
	for j := i; j < len(seq) && j <= i+12; j++ {
		if p.from(seq, j, k) {
			return true
		}
		if plain && seq[j].is[0] == '#' {
			return false
		}
	}
	return false
}

// said is one meaning in a message; tied says that a quantity belongs to it.
type said struct {
	is   string
	tied bool
}

func matches(any []string, s said) bool {
	for _, a := range any {
		if a[0] == '!' {
			if a[1:] == s.is && !s.tied {
				return true
			}
			continue
		}
		if a == s.is || a == "#" && s.is[0] == '#' {
			return true
		}
	}
	return false
}

// score adds up the patterns found.
func score(ps []pattern, seq []said) float64 {
	total, there := 0.0, marks(seq)
	for i := range ps {
		if ps[i].may(there) && ps[i].in(seq) {
			total += ps[i].weight
		}
	}
	return total
}

// may says whether a message of these marks can hold the pattern.
func (p *pattern) may(there uint64) bool {
	for _, n := range p.needs {
		if n&there == 0 {
			return false
		}
	}
	return true
}
