package layout

import (
	"cmp"
	"slices"

	"lastrow/calc/length"
)

// dealt says which plank each piece of each run comes from, by run and by piece. Planks are numbered as they are first cut.
type dealt struct {
	planks [][]int
	count  int
	cuts   int               // crosscuts; the rips are the same however the pieces are dealt
	left   [][]length.Length // by plank: what is left over
}

// share is one piece to be dealt: of which run, which ends need the factory's locks, what it needs of an offcut and what
// it leaves of it.
type share struct {
	run           int
	len           length.Length
	ends          lock
	needs, leaves length.Length
	next          *share // the piece taken from the offcut that this one leaves
	taken         bool   // from the offcut that another left
	strip         *share // the piece that this one's strip is ripped off
	plank         int    // from 1
}

// deal gives every piece a plank, whatever the order of laying: of two pieces of one plank, the one laid first is cut
// first and what is left is kept for the other. Pieces are matched as many as can be with the offcuts of others: taking the
// shortest offcuts first, any piece that fits one also fits the longer, so that no choice spoils another, and the one in
// the nearest row is taken.
func (p *supply) deal(runs []stretch, at []place) dealt {
	d := &dealing{supply: p, runs: runs}
	for i := range runs {
		d.cut(i, at[i])
	}
	d.strips()
	d.match()
	return d.number()
}

type dealing struct {
	*supply
	runs   []stretch
	shares []share
	byRun  []int // where each run's shares begin
}

// cut lists the pieces of a run. A last piece needs a plank, a whole one leaves nothing.
func (d *dealing) cut(run int, at place) {
	d.byRun = append(d.byRun, len(d.shares))
	long := d.runs[run].len()
	if at.first >= long {
		d.shares = append(d.shares, share{run: run, len: long, needs: at.from, leaves: at.from - long - d.kerf})
		return
	}
	d.shares = append(d.shares, share{run: run, len: at.first, ends: rightEnd, needs: at.first})
	for range wholes(long, d.plank, at.first) {
		d.shares = append(d.shares, share{run: run, len: d.plank, ends: leftEnd | rightEnd})
	}
	last := lastPiece(long, d.plank, at.first)
	d.shares = append(d.shares, share{run: run, len: last, ends: leftEnd, leaves: d.plank - d.kerf - last})
}

func (d *dealing) of(run int) []share {
	end := len(d.shares)
	if run+1 < len(d.byRun) {
		end = d.byRun[run+1]
	}
	return d.shares[d.byRun[run]:end]
}

// strips deals pieces of narrow runs from the strips ripped off other narrow runs' planks.
func (d *dealing) strips() {
	if d.strip == 0 {
		return
	}
	gave := make([]bool, len(d.runs))
	for j := range d.runs {
		for i := range d.runs {
			if i != j && !gave[i] && d.supply.shares(d.runs[i], d.runs[j]) {
				gave[i] = d.stripsOf(i, j)
			}
		}
	}
}

// stripsOf deals what it can of run j from the strips of run i, at full width. Each strip gives one piece.
func (d *dealing) stripsOf(i, j int) (any bool) {
	givers, takers := d.of(i), d.of(j)
	used := make([]bool, len(givers))
	for t := range takers {
		if takers[t].strip != nil {
			continue
		}
		best := -1
		for g := range givers {
			if !used[g] && givers[g].len >= takers[t].len && givers[g].ends&takers[t].ends == takers[t].ends && (best < 0 || givers[g].len < givers[best].len) {
				best = g
			}
		}
		if best >= 0 {
			used[best], any = true, true
			takers[t].strip = &givers[best]
		}
	}
	return any
}

// match deals offcuts to the pieces that need one: those of just the length first, as they are cut no more, then the
// shortest offcuts first.
func (d *dealing) match() {
	var need, leave []*share
	for i := range d.shares {
		s := &d.shares[i]
		if s.strip != nil {
			continue
		}
		if s.needs > 0 {
			need = append(need, s)
		}
		if s.leaves > 0 {
			leave = append(leave, s)
		}
	}
	inOrder := slices.Clone(leave)
	slices.SortStableFunc(inOrder, func(a, b *share) int { return cmp.Compare(a.leaves, b.leaves) })
	for _, exact := range [...]bool{true, false} {
		for _, c := range inOrder {
			if c.next != nil {
				continue
			}
			if s := nearest(need, c, exact); s != nil {
				c.next, s.taken = s, true
			}
		}
	}
}

// nearest is the piece in the nearest run that an offcut can give.
func nearest(need []*share, c *share, exact bool) *share {
	at, _ := slices.BinarySearchFunc(need, c.run, func(s *share, run int) int { return cmp.Compare(s.run, run) })
	fits := func(i int) bool {
		if i < 0 || i >= len(need) || need[i].taken {
			return false
		}
		return need[i].needs == c.leaves || !exact && need[i].needs < c.leaves
	}
	for away := 0; at-away >= 0 || at+away < len(need); away++ {
		if fits(at + away) {
			return need[at+away]
		}
		if fits(at - away) {
			return need[at-away]
		}
	}
	return nil
}

// number counts the planks in the order of laying.
func (d *dealing) number() dealt {
	out := dealt{planks: make([][]int, len(d.runs))}
	heads := d.heads()
	for i := range d.shares {
		s := &d.shares[i]
		h := s
		if s.strip != nil {
			h = s.strip
		}
		h = heads[h]
		if h.plank == 0 {
			out.count++
			h.plank = out.count
			out.left = append(out.left, d.over(h))
			out.cuts += d.cuts(h)
		}
		out.planks[s.run] = append(out.planks[s.run], h.plank-1)
	}
	return out
}

// heads gives the first piece of the plank of each piece that is not from a strip.
func (d *dealing) heads() map[*share]*share {
	heads := make(map[*share]*share, len(d.shares))
	for i := range d.shares {
		if s := &d.shares[i]; !s.taken && s.strip == nil {
			for p := s; p != nil; p = p.next {
				heads[p] = s
			}
		}
	}
	return heads
}

// over is what is left of a plank.
func (d *dealing) over(head *share) []length.Length {
	rest := d.plank
	for s := head; s != nil; s = s.next {
		rest -= s.len + d.kerf
	}
	if rest <= 0 {
		return nil
	}
	return []length.Length{rest}
}

// cuts is the crosscuts of a plank: one for each piece, but for the last where the pieces and the cuts between them are just
// the plank. An end that is not square to the row is cut in any case.
func (d *dealing) cuts(head *share) int {
	n, long, square := 0, -d.kerf, true
	for s := head; s != nil; s = s.next {
		n++
		long += s.len + d.kerf
		r := &d.runs[s.run]
		square = square && (s.ends&leftEnd != 0 || r.leftSquare) && (s.ends&rightEnd != 0 || r.rightSquare)
	}
	if square && long == d.plank {
		n--
	}
	return n
}
