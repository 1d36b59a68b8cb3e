package layout

import (
	"slices"

	"lastrow/calc/length"
)

// Fewest planks, seen as arcs. A run's first piece s needs an offcut at least as long, and its last piece c leaves one,
// o = plank - kerf - c, that can start another run. Take any length t: no two of the first pieces longer than t and the last
// pieces that leave no more than t come from one plank. By Hall's condition that count, at the worst t, is also enough:
//
//	planks = whole ones + max over t of #(s > t) + #(o <= t)
//
// As s + c is what the run has over its whole planks, o follows s at a fixed distance: a run is an arc from o to s on a
// circle one plank round, as long as what it has over whole planks and a kerf. To choose joints is to turn the arcs, and the planks
// are those that the runs take anyway and the greatest number of arcs over one point. A run of one piece is an arc too: it
// is taken from an offcut, and leaves the rest of it.

// place is where a run's arc lies: its first piece, and for a run of one piece the offcut that it is taken from.
type place struct{ first, from length.Length }

// placing is the runs of a floor while their arcs are placed.
type placing struct {
	supply
	rules  Rules
	runs   []stretch
	beside [][]int  // the runs that each lies against, on both sides
	spans  [][]span // of first pieces, for the runs that have a joint
	free   []int    // the runs that take planks
	// A narrow run may come whole from the strips ripped off another run's planks, piece by piece, and then follows it.
	followers [][]int
	at        []place
	profile   profile
	options   []place
	steps     int
	aim       aim
	seed      uint32
}

func newPlacing(p supply, rules Rules, runs []stretch) *placing {
	s := &placing{supply: p, rules: rules, runs: runs, beside: make([][]int, len(runs)), followers: make([][]int, len(runs)), at: make([]place, len(runs)), seed: 1}
	for i, r := range runs {
		for _, k := range r.before {
			s.beside[i], s.beside[k] = append(s.beside[i], k), append(s.beside[k], i)
		}
		s.spans = append(s.spans, spansOf(r.len(), p.plank, rules.LeastEnd))
	}
	s.follow()
	return s
}

// spansOf gives the first pieces that a run may have, but for the one piece that is all of it.
func spansOf(run, plank, least length.Length) []span {
	short, long := starts(run, plank, least)
	if run <= plank {
		long = span{1, 0}
	} else if short.empty() && long.empty() {
		long = span{max(1, run-plank), min(plank, run-1)}
	}
	return slices.DeleteFunc([]span{short, long}, span.empty)
}

// follow finds the runs that come whole from another's strips: no longer, and by as many planks, so that with the same
// first piece each piece is at most as long as the one that its strip is ripped off.
func (s *placing) follow() {
	for j, r := range s.runs {
		k := slices.IndexFunc(s.runs, func(g stretch) bool {
			return s.strip > 0 && s.shares(g, r) && r.len() <= g.len() && (r.len()-1)/s.plank == (g.len()-1)/s.plank
		})
		if k >= 0 && len(s.followers[k]) == 0 {
			s.followers[k] = append(s.followers[k], j)
		} else {
			s.free = append(s.free, j)
		}
	}
}

// put places a run, and those that follow it.
func (s *placing) put(i int, p place) {
	s.at[i] = p
	for _, j := range s.followers[i] {
		s.at[j].first = min(p.first, s.runs[j].len())
	}
}

// arc is what a run takes: so many planks beyond the fewest, and an arc from the offcut that it leaves to the one it
// needs. The arc goes round by 0 where it leaves more than it needs.
type arc struct {
	needs, leaves length.Length
	extra         int
}

func (s *placing) arc(i int, p place) arc {
	long := s.runs[i].len()
	if p.first >= long {
		return arc{p.from, p.from - long - s.kerf, -1}
	}
	a := arc{needs: p.first, leaves: s.plank - s.kerf - lastPiece(long, s.plank, p.first)}
	if long > s.plank {
		a.extra = wholes(long, s.plank, p.first) - int((long-1)/s.plank)
	}
	return a
}

// base is the planks that the runs take whatever their places.
func (s *placing) base() int {
	sum := 0
	for _, i := range s.free {
		if long := s.runs[i].len(); long > s.plank {
			sum += int((long - 1) / s.plank)
		}
	}
	return sum
}

// planks is the planks that the places take.
func (s *placing) planks() int {
	s.fill()
	return s.base() + s.profile.most()
}

// fill takes all arcs into the profile.
func (s *placing) fill() {
	s.profile.reset(s.plank)
	for _, i := range s.free {
		s.profile.add(i, s.arc(i, s.at[i]))
	}
	s.profile.sort()
}
