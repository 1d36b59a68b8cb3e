package layout

import (
	"math"

	"lastrow/calc/length"
)

// aim is what settle turns the arcs for: at most so many planks, at least so many cuts saved, and joints so far apart.
type aim struct {
	planks  int
	saved   int
	stagger length.Length
}

// settle turns one arc after the other to where the least of it lies over the goal and its joints lie the farthest from
// too near, until the aim is reached, or so many turns are used up. It gives whether the aim was reached.
func (s *placing) settle(to aim, turns int) bool {
	s.aim = to
	s.fill()
	s.profile.goal = to.planks - s.base()
	quiet := 0
	for turn := 0; turn < turns && quiet < len(s.free); turn++ {
		if s.turn(s.free[turn%len(s.free)]) {
			quiet++
		} else {
			quiet = 0
		}
	}
	return quiet >= len(s.free)
}

// One turn in so many goes to any place on offer.
const noise = 6

// turn looks for a better place for one run, or as good a one, alone or by changing places with another. It gives whether the
// run stood in no one's way.
func (s *placing) turn(i int) bool {
	s.takeOut(i)
	s.measure()
	now := s.cost(i, s.at[i], never)
	if now == 0 {
		s.profile.with(i, s.arc(i, s.at[i]))
		return true
	}
	s.offer(i)
	best, cost := s.cheapest(i)
	with, gain := s.partner(i)
	switch {
	case with >= 0 && gain >= now-cost:
		s.profile.without(with, s.arc(with, s.at[with]))
		s.exchange(i, with)
		s.profile.with(with, s.arc(with, s.at[with]))
	case cost <= now || s.random(4) == 0:
		s.put(i, best)
	case s.random(noise) == 0:
		s.put(i, s.options[s.random(uint32(len(s.options)))])
	}
	s.profile.with(i, s.arc(i, s.at[i]))
	return false
}

func (s *placing) takeOut(i int) { s.profile.without(i, s.arc(i, s.at[i])) }

// measure takes the profile's measure, and that of the cuts saved where any are wanted.
func (s *placing) measure() {
	s.profile.measure()
	if s.aim.saved > 0 {
		s.others = s.profile.saved()
	}
}

// mostPartners is the number of runs that one may change places with for a try.
const mostPartners = 24

// partner is the run to change places with that brings the most, and what it brings; -1 where none brings anything.
func (s *placing) partner(i int) (with int, gain length.Length) {
	with = -1
	all := s.alike[i]
	stride := len(all)/mostPartners + 1
	for k := int(s.random(uint32(stride))); k < len(all); k += stride {
		j := all[k]
		if s.at[i] == s.at[j] {
			continue
		}
		was := s.closeBoth(i, j)
		s.exchange(i, j)
		if g := was - s.closeBoth(i, j); g > gain {
			with, gain = j, g
		}
		s.exchange(i, j)
	}
	return with, gain
}

// exchange lets two runs as long as each other change places.
func (s *placing) exchange(i, j int) {
	p, q := s.at[i], s.at[j]
	s.put(i, q)
	s.put(j, p)
}

// cheapest is the place on offer that costs least, other than the run's own. Of several it is any one.
func (s *placing) cheapest(i int) (place, length.Length) {
	best, least, alike := s.at[i], never, uint32(0)
	for _, o := range s.options {
		if o == s.at[i] {
			continue
		}
		switch c := s.cost(i, o, least); {
		case c < least:
			best, least, alike = o, c, 1
		case c == least:
			if alike++; s.random(alike) == 0 {
				best = o
			}
		}
	}
	return best, least
}

// random gives the next of a fixed row of numbers, under n.
func (s *placing) random(n uint32) uint32 {
	s.seed = s.seed*1664525 + 1013904223
	return (s.seed >> 8) % n
}

// never is more than any place costs.
const never = length.Length(math.MaxInt64)

// cost is what a run placed so puts over the goal, and its joints too near others, and the cuts that are then too many; the
// whole of it is of no matter once it is over the most.
func (s *placing) cost(i int, p place, most length.Length) length.Length {
	sum := s.close(i, p.first)
	if sum > most {
		return sum
	}
	a := s.arc(i, p)
	if s.aim.saved > 0 {
		sum += length.Length(max(0, s.aim.saved-s.others-s.profile.saves(a))) * s.plank / 16
	}
	return sum + s.profile.over(a)
}

// close is by how much the joints of a run with a first piece, and of those that follow it, lie too near others.
func (s *placing) close(i int, first length.Length) length.Length {
	sum := s.closeTo(i, first)
	for _, j := range s.followers[i] {
		sum += s.closeTo(j, min(first, s.runs[j].len()))
	}
	return sum
}

func (s *placing) closeTo(i int, first length.Length) length.Length {
	sum := length.Length(0)
	for _, j := range s.beside[i] {
		if d := s.between(s.runs, i, first, j, s.at[j].first); d < s.aim.stagger {
			sum += s.aim.stagger - d + s.plank/64
		}
	}
	return sum
}
