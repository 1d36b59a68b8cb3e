package layout

import (
	"math/big"

	"lastrow/calc/geom"
	"lastrow/calc/length"
)

// Where a wall slants the runs grow and shrink with the first row's width, and a bound for the rows as laid says nothing of
// other first rows. Between two widths at which no row's line passes a corner of the floor, the ends of a run lie on the same
// corners and walls: its right end is the greatest of places that stand still or move evenly, its left end the least of such,
// and so its length is a convex function of the first row's width. Of three samples, the middle m and the ends, such a
// function is nowhere under m less the greater of its differences to the ends, and nowhere over the greater end.
//
// A shorter run needs no more planks: with the same first piece and a shorter last one its arc lies within the longer's. So
// the shortest that each run can be, with first pieces as free as the longest allows, bounds all first rows between.

// band is the first rows between two widths, sampled at both and midway.
type band struct {
	span
	near, mid, far []stretch
	bound          int
}

// sweeping looks for the first row of least bound.
type sweeping struct {
	Request
	laying geom.Region
	enough int   // no greater bound is wanted
	area   int   // the bound by area, which holds for any rows
	left   int   // samples left to take
	dual   *dual // the last weights found
}

// mostSamples is the number of first rows sampled for a bound over all of them.
const mostSamples = 64

// sweep is a number of planks that no first row within the spans can do without; it looks no closer than it takes to tell
// whether that is as many as enough.
func (r Request) sweep(laying geom.Region, within []span, enough int) int {
	s := sweeping{Request: r, laying: laying, enough: enough, area: r.byArea(laying), left: mostSamples}
	var bands []band
	for _, sp := range within {
		bands = append(bands, s.band(sp, s.sample(sp.lo), s.sample(sp.hi)))
	}
	for len(bands) > 0 {
		i := lowest(bands)
		b := bands[i]
		if b.bound >= enough || s.left < 2 || b.hi-b.lo < 4 {
			return b.bound
		}
		m := (b.lo + b.hi) / 2
		bands[i] = s.band(span{b.lo, m}, b.near, b.mid)
		bands = append(bands, s.band(span{m, b.hi}, b.mid, b.far))
	}
	return enough
}

func lowest(bands []band) int {
	at := 0
	for i, b := range bands {
		if b.bound < bands[at].bound {
			at = i
		}
	}
	return at
}

// byArea is the floor's area in planks.
func (r Request) byArea(laying geom.Region) int {
	plank := r.Plank.Width.Times(r.Plank.Length).Nm2()
	n := new(big.Int).Add(laying.Area().Nm2(), new(big.Int).Sub(plank, big.NewInt(1)))
	return int(n.Quo(n, plank).Int64())
}

func (s *sweeping) sample(first length.Length) []stretch {
	s.left--
	return stretches(slice(s.laying, s.Plank.Width, first))
}

func (s *sweeping) band(sp span, near, far []stretch) band {
	b := band{span: sp, near: near, mid: s.sample((sp.lo + sp.hi) / 2), far: far, bound: s.area}
	runs, slack := b.shortest()
	p := s.supply(runs)
	n, d := lowerBound(p, s.Rules.LeastEnd, 0, runs, slack, s.dual)
	if n < s.enough && s.dual != nil {
		n, d = lowerBound(p, s.Rules.LeastEnd, 0, runs, slack, nil)
	}
	b.bound, s.dual = max(b.bound, n), d
	return b
}

// shortest gives the runs as short and as narrow as they can be within the band, and by how much any can be longer. A run
// that is not one run in each sample, as where a wall all but along the rows leaves a sliver, is left out, which can only
// make a bound lower.
func (b *band) shortest() (runs []stretch, slack length.Length) {
	near, mid, far := byRow(b.near), byRow(b.mid), byRow(b.far)
	for _, m := range b.mid {
		n, f := across(near, m), across(far, m)
		if n == nil || f == nil || across(mid, *n) == nil || across(mid, *f) == nil {
			continue
		}
		run, longest := least(*n, m, *f)
		runs = append(runs, run)
		slack = max(slack, longest-run.len())
	}
	return runs, slack
}

// across is the one run of a sample that lies where another's does.
func across(rows [][]stretch, s stretch) *stretch {
	var found *stretch
	if s.row >= len(rows) {
		return nil
	}
	for i, o := range rows[s.row] {
		if o.left < s.right && s.left < o.right {
			if found != nil {
				return nil
			}
			found = &rows[s.row][i]
		}
	}
	return found
}

// least is a run as short and as narrow as its samples allow it to be, and the longest that it can be.
func least(near, m, far stretch) (stretch, length.Length) {
	const rounding = 4
	shorter := max(abs(near.len()-m.len()), abs(far.len()-m.len())) + rounding
	narrower := max(abs(near.width()-m.width()), abs(far.width()-m.width())) + rounding
	longest := max(near.len(), m.len(), far.len()) + rounding
	m.right -= min(shorter, m.len()-1)
	m.far -= min(narrower, m.width()-1)
	m.before = nil
	return m, longest
}

// byRow sorts runs by their rows.
func byRow(runs []stretch) [][]stretch {
	var out [][]stretch
	for _, s := range runs {
		for len(out) <= s.row {
			out = append(out, nil)
		}
		out[s.row] = append(out[s.row], s)
	}
	return out
}
