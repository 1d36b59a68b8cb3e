package layout

import (
	"cmp"
	"math/big"
	"slices"

	"lastrow/calc/geom"
	"lastrow/calc/length"
)

// axis is the coordinate that a cutting line fixes.
type axis int

const (
	atX axis = iota // a line square to the rows, at one X
	atY             // a line along the rows, at one Y
)

func (a axis) of(p geom.Point) (at, along length.Length) {
	if a == atX {
		return p.X, p.Y
	}
	return p.Y, p.X
}

// split cuts a region along a line: what lies under it, and what lies over it. Both parts have the same points on the line,
// so that they fit with no hole; a crossing is rounded to the nanometre.
func split(r geom.Region, a axis, at length.Length) (under, over geom.Region) {
	return half(r, a, at, false), half(r, a, at, true)
}

// chain is a stretch of ring on the wanted side of the line, from the point where it enters to the point where it leaves.
type chain struct {
	points      geom.Ring
	enter, exit int // the crossings
	done        bool
}

// crossing is where a ring passes the line: how far along it, and how steeply it goes from there into the wanted side.
type crossing struct {
	along      length.Length
	rise, away length.Length
	chain      int
	enters     bool
}

// half keeps what lies on one side of the line. Points on the line count as beyond it, so that the line may be taken to
// lie a hair to the wanted side, where it meets no corner and crosses each ring an even number of times.
func half(r geom.Region, a axis, at length.Length, over bool) geom.Region {
	var kept geom.Region
	var chains []chain
	var cross []crossing
	for _, ring := range r {
		switch in := countIn(ring, a, at, over); in {
		case 0:
		case len(ring):
			kept = append(kept, ring)
		default:
			chains, cross = chop(ring, a, at, over, chains, cross)
		}
	}
	if len(chains) == 0 {
		return kept
	}
	return append(kept, link(chains, cross)...)
}

func within(p geom.Point, a axis, at length.Length, over bool) bool {
	v, _ := a.of(p)
	if over {
		return v > at
	}
	return v < at
}

func countIn(ring geom.Ring, a axis, at length.Length, over bool) int {
	n := 0
	for _, p := range ring {
		if within(p, a, at, over) {
			n++
		}
	}
	return n
}

// chop takes the stretches of one ring that lie on the wanted side.
func chop(ring geom.Ring, a axis, at length.Length, over bool, chains []chain, cross []crossing) ([]chain, []crossing) {
	n := len(ring)
	first := 0
	for within(ring[first], a, at, over) || !within(ring[(first+1)%n], a, at, over) {
		first++
	}
	for i := range n {
		p, q := ring[(first+i)%n], ring[(first+i+1)%n]
		pin, qin := within(p, a, at, over), within(q, a, at, over)
		switch {
		case !pin && qin:
			chains = append(chains, chain{points: make(geom.Ring, 0, 4), enter: len(cross)})
			c, x := meet(p, q, a, at)
			c.chain, c.enters = len(chains)-1, true
			cross = append(cross, c)
			chains[len(chains)-1].points = append(chains[len(chains)-1].points, x, q)
		case pin && qin:
			chains[len(chains)-1].points = append(chains[len(chains)-1].points, q)
		case pin:
			c, x := meet(q, p, a, at)
			c.chain = len(chains) - 1
			chains[c.chain].exit = len(cross)
			cross = append(cross, c)
			chains[c.chain].points = append(chains[c.chain].points, x)
		}
	}
	return chains, cross
}

// meet gives the crossing of the line with the edge from a point beyond it, or on it, to one within.
func meet(beyond, in geom.Point, a axis, at length.Length) (crossing, geom.Point) {
	bv, bu := a.of(beyond)
	iv, iu := a.of(in)
	away := iv - bv
	if away < 0 {
		away = -away
	}
	c := crossing{along: between(bv, bu, iv, iu, at), rise: iu - bu, away: away}
	if a == atX {
		return c, geom.Point{X: at, Y: c.along}
	}
	return c, geom.Point{X: c.along, Y: at}
}

// between gives the second coordinate at a value of the first, on the line through two points. It is the same from either end.
func between(v0, u0, v1, u1, v length.Length) length.Length {
	if v0 > v1 {
		v0, u0, v1, u1 = v1, u1, v0, u0
	}
	if u0 == u1 || v == v0 {
		return u0
	}
	if v == v1 {
		return u1
	}
	num := new(big.Int).Mul(big.NewInt(int64(v-v0)), big.NewInt(int64(u1-u0)))
	den := big.NewInt(int64(v1 - v0))
	num.Add(num.Lsh(num, 1), den)
	return u0 + length.Length(num.Div(num, den.Lsh(den, 1)).Int64())
}

// link joins the chains along the line into rings: between a crossing and the next, by pairs, the line runs inside.
func link(chains []chain, cross []crossing) geom.Region {
	order := make([]int, len(cross))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int { return cross[i].compare(cross[j]) })
	pair := make([]int, len(cross))
	for i := 0; i+1 < len(order); i += 2 {
		pair[order[i]], pair[order[i+1]] = order[i+1], order[i]
	}
	var out geom.Region
	for i := range chains {
		if chains[i].done {
			continue
		}
		var ring geom.Ring
		for j := i; !chains[j].done; j = cross[pair[chains[j].exit]].chain {
			chains[j].done = true
			ring = append(ring, chains[j].points...)
		}
		if ring = tidy(ring); len(ring) > 2 {
			out = append(out, ring)
		}
	}
	return out
}

// compare orders crossings along the line, and those at one point by where they are a hair into the wanted side.
func (c crossing) compare(d crossing) int {
	if c.along != d.along {
		return cmp.Compare(c.along, d.along)
	}
	if c.rise == 0 && d.rise == 0 {
		return 0
	}
	l := new(big.Int).Mul(big.NewInt(int64(c.rise)), big.NewInt(int64(d.away)))
	return l.Cmp(new(big.Int).Mul(big.NewInt(int64(d.rise)), big.NewInt(int64(c.away))))
}

// tidy drops points that repeat the one before.
func tidy(ring geom.Ring) geom.Ring {
	out := ring[:0]
	for i, p := range ring {
		if p != ring[(i+len(ring)-1)%len(ring)] {
			out = append(out, p)
		}
	}
	return out
}
