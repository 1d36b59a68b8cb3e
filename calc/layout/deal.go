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
	left   [][]length.Length // by plank: what is left over
}

// share is one piece to be dealt: of which run, where in it, and which ends need the factory's locks.
type share struct {
	run, piece int
	len        length.Length
	ends       lock
	bin        *bin
}

// bin is a plank while pieces are dealt, or a strip ripped off one: what is left of it, and the ends not yet taken.
type bin struct {
	room length.Length
	ends lock
	of   *bin // a strip's plank
	n    int  // the plank's number, from 1
}

// deal gives every piece a plank, whatever the order of laying: of two pieces of one plank, the one laid first is cut
// first and what is left is kept for the other. First and last pieces are matched as many as can be: taking the longest
// last pieces first, any first piece that fits one also fits the shorter, so that no choice spoils another, and the one
// in the nearest row is taken.
func (p *supply) deal(runs []stretch, firsts []length.Length) dealt {
	d := &dealing{supply: p, runs: runs}
	for i := range runs {
		d.cut(i, firsts[i])
	}
	d.strips()
	d.match()
	d.rest()
	return d.number()
}

type dealing struct {
	*supply
	runs   []stretch
	shares []share
	byRun  []int // where each run's shares begin
}

// cut lists the pieces of a run.
func (d *dealing) cut(run int, first length.Length) {
	d.byRun = append(d.byRun, len(d.shares))
	long, n := d.runs[run].len(), 0
	add := func(l length.Length, ends lock) {
		d.shares = append(d.shares, share{run: run, piece: n, len: l, ends: ends})
		n++
	}
	if first >= long {
		add(long, 0)
		return
	}
	add(first, rightEnd)
	for range wholes(long, d.plank, first) {
		add(d.plank, leftEnd|rightEnd)
	}
	add(lastPiece(long, d.plank, first), leftEnd)
}

// strips deals pieces of narrow runs from the strips ripped off other narrow runs' planks, the longest pieces first.
func (d *dealing) strips() {
	if d.strip == 0 {
		return
	}
	for i := range d.runs {
		for j := range d.runs {
			if i != j && d.shares2(i, j) {
				d.stripsOf(i, j)
			}
		}
	}
}

func (d *dealing) shares2(i, j int) bool { return d.supply.shares(d.runs[i], d.runs[j]) }

func (d *dealing) of(run int) []share {
	end := len(d.shares)
	if run+1 < len(d.byRun) {
		end = d.byRun[run+1]
	}
	return d.shares[d.byRun[run]:end]
}

// stripsOf deals what it can of run j from the strips of run i. Each strip gives one run's pieces only, at full width.
func (d *dealing) stripsOf(i, j int) {
	givers, takers := d.of(i), d.of(j)
	var strips []*bin
	for g := range givers {
		if givers[g].bin == nil {
			givers[g].bin = &bin{room: d.plank, ends: leftEnd | rightEnd}
			d.takeFrom(givers[g].bin, &givers[g])
		}
		strips = append(strips, &bin{room: givers[g].len, ends: givers[g].ends, of: givers[g].bin})
	}
	for t := range takers {
		if takers[t].bin != nil {
			continue
		}
		if s := d.fit(strips, takers[t]); s != nil {
			takers[t].bin = s
			d.takeFrom(s, &takers[t])
		}
	}
}

// takeFrom takes a piece and the cut beside it off a bin.
func (d *dealing) takeFrom(b *bin, s *share) {
	b.room -= s.len + d.kerf
	b.ends &^= s.ends
}

// fit is the bin that a piece fits most closely.
func (d *dealing) fit(bins []*bin, s share) *bin {
	var best *bin
	for _, b := range bins {
		if b.room >= s.len && b.ends&s.ends == s.ends && (best == nil || b.room < best.room) {
			best = b
		}
	}
	return best
}

// match pairs first pieces with last pieces that share a plank.
func (d *dealing) match() {
	var lasts, firsts []*share
	for i := range d.shares {
		switch s := &d.shares[i]; {
		case s.ends == leftEnd && s.bin == nil:
			lasts = append(lasts, s)
		case s.ends == rightEnd && (s.bin == nil || s.bin.of == nil):
			firsts = append(firsts, s)
		}
	}
	inOrder := slices.Clone(lasts)
	slices.SortStableFunc(inOrder, func(a, b *share) int { return cmp.Compare(b.len, a.len) })
	for _, c := range inOrder {
		if s := d.nearest(firsts, c); s != nil {
			if s.bin == nil {
				s.bin = &bin{room: d.plank, ends: leftEnd | rightEnd}
				d.takeFrom(s.bin, s)
			}
			c.bin = s.bin
			d.takeFrom(c.bin, c)
		}
	}
}

// nearest is the first piece in the nearest run that can share a plank with a last piece.
func (d *dealing) nearest(firsts []*share, c *share) *share {
	at, _ := slices.BinarySearchFunc(firsts, c.run, func(s *share, run int) int { return cmp.Compare(s.run, run) })
	fits := func(i int) bool {
		if i < 0 || i >= len(firsts) {
			return false
		}
		s := firsts[i]
		return s.len+c.len+d.kerf <= d.plank && (s.bin == nil || s.bin.ends&leftEnd != 0)
	}
	for away := 0; at-away >= 0 || at+away < len(firsts); away++ {
		if fits(at + away) {
			return firsts[at+away]
		}
		if fits(at - away) {
			return firsts[at-away]
		}
	}
	return nil
}

// rest deals the pieces that share with none, then those that need no lock, the longest first, wherever there is room.
func (d *dealing) rest() {
	var loose []*share
	var bins []*bin
	seen := map[*bin]bool{}
	for i := range d.shares {
		s := &d.shares[i]
		if s.ends == 0 && s.bin == nil {
			loose = append(loose, s)
			continue
		}
		if s.bin == nil {
			s.bin = &bin{room: d.plank, ends: leftEnd | rightEnd}
			d.takeFrom(s.bin, s)
		}
		if s.bin.of == nil && !seen[s.bin] {
			seen[s.bin] = true
			bins = append(bins, s.bin)
		}
	}
	if len(loose) == 0 {
		return
	}
	slices.SortStableFunc(loose, func(a, b *share) int { return cmp.Compare(b.len, a.len) })
	bins = slices.DeleteFunc(bins, func(b *bin) bool { return b.room < loose[len(loose)-1].len })
	for _, s := range loose {
		b := d.fit(bins, *s)
		if b == nil {
			b = &bin{room: d.plank}
			bins = append(bins, b)
		}
		s.bin = b
		d.takeFrom(b, s)
	}
}

// number counts the planks in the order of laying.
func (d *dealing) number() dealt {
	out := dealt{planks: make([][]int, len(d.runs))}
	var planks []*bin
	for i := range d.runs {
		for _, s := range d.of(i) {
			b := s.bin
			if b.of != nil {
				b = b.of
			}
			if b.n == 0 {
				planks = append(planks, b)
				b.n = len(planks)
			}
			out.planks[i] = append(out.planks[i], b.n-1)
		}
	}
	out.count = len(planks)
	out.left = make([][]length.Length, len(planks))
	for i, b := range planks {
		if b.room > 0 {
			out.left[i] = []length.Length{b.room}
		}
	}
	return out
}
