package layout

import (
	"slices"

	"lastrow/calc/length"
)

// firsts lists the lengths worth trying for the first piece of a run, shortest first: those that use a kept offcut or
// leave one that an earlier piece wanted, those that keep the joints apart, and a few between.
func (s *search) firsts(b *beginning, run int) []length.Length {
	st := &s.runs[run]
	if st.len() <= s.plank {
		return []length.Length{st.len()}
	}
	least := s.rules.LeastEnd
	short, long := starts(st.len(), s.plank, least)
	if short.empty() && long.empty() {
		long = span{max(1, st.len()-s.plank), min(s.plank, st.len()-1)}
	}
	c := choices{spans: [2]span{short, long}, mark: s.mark}
	rho := leftOver(st.len(), s.plank)
	c.offcuts(b.kept, rho, s.plank)
	c.ladder()
	for _, l := range s.cheap(st.len(), c.spans) {
		c.add(l)
	}
	for _, k := range st.before {
		if p := b.at(k); p.right >= p.left {
			c.beside(p.left-st.left, s.plank, s.rules.LeastStagger)
		}
	}
	slices.Sort(c.out)
	return slices.Compact(c.out)
}

// choices gathers lengths that lie in the spans.
type choices struct {
	spans [2]span
	mark  length.Length
	out   []length.Length
}

// add takes the tape's mark not over a length, where the length is allowed.
func (c *choices) add(l length.Length) {
	for _, s := range c.spans {
		if s.lo <= l && l <= s.hi {
			c.out = append(c.out, s.marked(l, c.mark))
			return
		}
	}
}

// addUp takes the tape's mark not under a length.
func (c *choices) addUp(l length.Length) {
	for _, s := range c.spans {
		if s.lo <= l && l <= s.hi {
			c.out = append(c.out, s.markedUp(l, c.mark))
			return
		}
	}
}

// offcuts adds the longest first piece that each offcut gives, and the shortest that makes the last piece fit it.
func (c *choices) offcuts(kept []offcut, rho, plank length.Length) {
	for _, o := range kept {
		if o.width > 0 {
			continue
		}
		for i, s := range c.spans {
			if o.ends&(rightEnd|eitherEnd) != 0 && o.len >= s.lo {
				c.add(min(o.len, s.hi))
			}
			if o.ends&(leftEnd|eitherEnd) != 0 {
				sum := rho + length.Length(i)*plank
				c.addUp(max(sum-o.len, s.lo))
			}
		}
	}
}

// cheap gives the first pieces of a run that cost least under the bound's weights.
func (s *search) cheap(run length.Length, spans [2]span) []length.Length {
	if s.dual == nil {
		return nil
	}
	out, ok := s.tight[run]
	if !ok {
		out = s.dual.tight(kindOf{n: 1, run: run, spans: spans}, mostTight)
		s.tight[run] = out
	}
	return out
}

// mostTight is the number of cheap first pieces tried for a run.
const mostTight = 14

// ladder adds the ends of the spans and even steps between.
func (c *choices) ladder() {
	const rungs = 6
	for _, s := range c.spans {
		for j := range length.Length(rungs + 1) {
			c.add(s.lo + (s.hi-s.lo)*j/rungs)
		}
	}
}

// beside adds the lengths that put the joint a stagger, a third and a half of a plank from a joint of the row before.
func (c *choices) beside(joint, plank, stagger length.Length) {
	for _, d := range [...]length.Length{stagger, plank / 3, plank / 2} {
		after, before := joint+d, joint-d
		c.addUp(after - floorDiv(after-1, plank)*plank)
		c.add(before - floorDiv(before-1, plank)*plank)
	}
}
