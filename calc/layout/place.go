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
	alike     [][]int // the runs of a length, for each
	at        []place
	profile   profile
	others    int // the cuts saved by all runs but the one that turns
	options   []place
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
	s.match()
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
// first piece each piece is at most as long as the one that its strip is ripped off. The first pieces must suit both.
func (s *placing) follow() {
	for j, r := range s.runs {
		k := slices.IndexFunc(s.runs, func(g stretch) bool {
			return s.strip > 0 && s.shares(g, r) && r.len() <= g.len() && (r.len()-1)/s.plank == (g.len()-1)/s.plank
		})
		if k < 0 || len(s.followers[k]) > 0 || !s.tie(k, j) {
			s.free = append(s.free, j)
		}
	}
}

// tie lets one run follow another, where some first pieces suit both.
func (s *placing) tie(k, j int) bool {
	var both []span
	for _, a := range s.spans[k] {
		for _, b := range s.spans[j] {
			if c := a.and(b); !c.empty() {
				both = append(both, c)
			}
		}
	}
	if len(both) == 0 && s.runs[k].len() > s.plank {
		return false
	}
	s.spans[k], s.followers[k] = both, append(s.followers[k], j)
	return true
}

// match finds the runs that can change places with each: as long, and ended alike.
func (s *placing) match() {
	type end struct {
		long        length.Length
		left, right bool
	}
	groups := map[end][]int{}
	of := func(r stretch) end { return end{r.len(), r.leftSquare, r.rightSquare} }
	for _, i := range s.free {
		groups[of(s.runs[i])] = append(groups[of(s.runs[i])], i)
	}
	s.alike = make([][]int, len(s.runs))
	for i, r := range s.runs {
		s.alike[i] = groups[of(r)]
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
	needs, leaves        length.Length
	extra                int
	cleanNeed, cleanLeft bool // no cut but a square one is made at these ends
}

func (s *placing) arc(i int, p place) arc {
	r := &s.runs[i]
	long := r.len()
	if p.first >= long {
		return arc{needs: p.from, leaves: p.from - long - s.kerf, extra: -1}
	}
	a := arc{needs: p.first, leaves: s.plank - s.kerf - lastPiece(long, s.plank, p.first), cleanNeed: r.leftSquare, cleanLeft: r.rightSquare}
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
	s.profile.reset(s.plank, s.kerf)
	for _, i := range s.free {
		s.profile.add(i, s.arc(i, s.at[i]))
	}
	s.profile.sort()
}
