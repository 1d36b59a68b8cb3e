package layout

import "lastrow/calc/length"

// mostOffered is the number of other arcs that a run is laid beside for a try.
const mostOffered = 48

// offer lists the places worth trying for a run: where its arc ends as another begins or begins as another ends, where
// its joints lie just far enough from those beside it, and the ends of what is allowed with a few between.
func (s *placing) offer(i int) {
	s.options = s.options[:0]
	long := s.runs[i].len()
	if long <= s.plank {
		s.offerWhole(long)
	}
	for _, sp := range s.spans[i] {
		s.ladder(sp)
		s.touching(sp, leftOver(long, s.plank)+s.kerf)
		s.besides(sp, i)
		for _, j := range s.followers[i] {
			s.besides(sp, j)
		}
	}
}

// down offers the tape's mark not over a first piece, where it is allowed.
func (s *placing) down(sp span, first length.Length) {
	if sp.lo <= first && first <= sp.hi {
		s.once(place{first: sp.marked(first, s.mark)})
	}
}

// up offers the tape's mark not under a first piece.
func (s *placing) up(sp span, first length.Length) {
	if sp.lo <= first && first <= sp.hi {
		s.once(place{first: sp.markedUp(first, s.mark)})
	}
}

// once offers a place that is not the one offered last, as runs that are alike offer.
func (s *placing) once(p place) {
	if n := len(s.options); n == 0 || s.options[n-1] != p {
		s.options = append(s.options, p)
	}
}

// ladder offers the ends of the span and even steps between.
func (s *placing) ladder(sp span) {
	const rungs = 8
	for j := range length.Length(rungs + 1) {
		s.down(sp, sp.lo+(sp.hi-sp.lo)*j/rungs)
	}
}

// touching offers what other arcs touch: a first piece as long as an offcut, or one that makes the last piece leave as
// much as a first piece needs.
func (s *placing) touching(sp span, arc length.Length) {
	stride := len(s.profile.steps)/mostOffered + 1
	for k := int(s.random(uint32(stride))); k < len(s.profile.steps); k += stride {
		if t := s.profile.steps[k]; t.by > 0 {
			s.down(sp, t.at)
		} else {
			s.up(sp, (t.at+arc-1)%s.plank+1)
		}
	}
}

func (s *placing) besides(sp span, i int) {
	for _, j := range s.beside[i] {
		s.apartFrom(sp, i, j)
	}
}

// apartFrom offers the first pieces whose joints lie the stagger, a third and a half of a plank from another run's.
func (s *placing) apartFrom(sp span, i, j int) {
	if s.at[j].first >= s.runs[j].len() {
		return
	}
	joint := s.runs[j].left + s.at[j].first - s.runs[i].left
	for _, d := range [...]length.Length{s.aim.stagger, s.plank / 3, s.plank / 2} {
		after, before := joint+d, joint-d
		s.up(sp, after-floorDiv(after-1, s.plank)*s.plank)
		s.down(sp, before-floorDiv(before-1, s.plank)*s.plank)
	}
}

// offerWhole offers the offcuts that a run of one piece may be taken from.
func (s *placing) offerWhole(long length.Length) {
	add := func(from length.Length) {
		if long <= from && from <= s.plank {
			s.options = append(s.options, place{long, from})
		}
	}
	add(s.plank)
	add(long)
	for _, t := range s.profile.steps {
		if t.by > 0 {
			add(t.at)
		} else {
			add(t.at + long + s.kerf)
		}
	}
}
