package layout

import (
	"math"

	"lastrow/calc/length"
)

// aim is what settle turns the arcs for.
type aim struct {
	planks  int
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

// turn looks for a better place for one run, or as good a one. It gives whether the run stood in no one's way.
func (s *placing) turn(i int) bool {
	s.profile.without(i, s.arc(i, s.at[i]))
	s.profile.measure()
	now := s.cost(i, s.at[i], never)
	if now > 0 {
		s.steps++
		s.offer(i)
		if best, cost := s.cheapest(i); cost <= now || s.random(4) == 0 {
			s.put(i, best)
		} else if s.random(noise) == 0 {
			s.put(i, s.options[s.random(uint32(len(s.options)))])
		}
	}
	s.profile.with(i, s.arc(i, s.at[i]))
	return now == 0
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

// cost is what a run placed so puts over the goal, and its joints too near others; the whole of it is of no matter once it
// is over the most.
func (s *placing) cost(i int, p place, most length.Length) length.Length {
	sum := s.close(i, p.first)
	if sum > most {
		return sum
	}
	sum += s.profile.over(s.arc(i, p))
	for _, j := range s.followers[i] {
		sum += s.close(j, min(p.first, s.runs[j].len()))
	}
	return sum
}

// close is by how much a run's joints, with a first piece, lie too near those of the runs beside it.
func (s *placing) close(i int, first length.Length) length.Length {
	sum := length.Length(0)
	for _, j := range s.beside[i] {
		if d := s.between(s.runs, i, first, j, s.at[j].first); d < s.aim.stagger {
			sum += s.aim.stagger - d + s.plank/64
		}
	}
	return sum
}
