package geom

import (
	"cmp"
	"math/big"
	"slices"

	"lastrow/calc/length"
)

// rounds bounds how often edges are divided anew: a crossing rounded to the nanometre can make an edge cross one that it
// passed by, which the next round divides.
const rounds = 8

// divide cuts edges where they meet, so that after it they meet at their ends alone, or lie on each other from end to end.
func divide(edges []edge) []edge {
	for range rounds {
		slices.SortStableFunc(edges, func(e, f edge) int { return cmp.Compare(e.a.X, f.a.X) })
		cuts := meetings(edges)
		if len(cuts) == 0 {
			break
		}
		edges = cutAt(edges, cuts)
	}
	return edges
}

// meetings lists, by edge, the points inside it where another edge meets it. It sweeps from west to east.
func meetings(edges []edge) map[int][]Point {
	cuts := map[int][]Point{}
	var active []int
	for i, e := range edges {
		live := active[:0]
		for _, j := range active {
			f := edges[j]
			if f.b.X < e.a.X {
				continue
			}
			live = append(live, j)
			for _, p := range meeting(e, f) {
				if p != e.a && p != e.b {
					cuts[i] = append(cuts[i], p)
				}
				if p != f.a && p != f.b {
					cuts[j] = append(cuts[j], p)
				}
			}
		}
		active = append(live, i)
	}
	return cuts
}

// meeting gives the points where two edges meet, if not by an end of each.
func meeting(e, f edge) []Point {
	if min(e.a.Y, e.b.Y) > max(f.a.Y, f.b.Y) || min(f.a.Y, f.b.Y) > max(e.a.Y, e.b.Y) {
		return nil
	}
	d1, d2 := Orient(e.a, e.b, f.a), Orient(e.a, e.b, f.b)
	d3, d4 := Orient(f.a, f.b, e.a), Orient(f.a, f.b, e.b)
	if d1*d2 < 0 && d3*d4 < 0 {
		return []Point{crossing(e.a, e.b, f.a, f.b)}
	}
	var out []Point
	for _, t := range []struct {
		d       int
		a, p, b Point
	}{{d1, e.a, f.a, e.b}, {d2, e.a, f.b, e.b}, {d3, f.a, e.a, f.b}, {d4, f.a, e.b, f.b}} {
		if t.d == 0 && inside(t.a, t.p, t.b) {
			out = append(out, t.p)
		}
	}
	return out
}

// crossing is where the line from a to b crosses that from c to d, rounded to the nanometre.
func crossing(a, b, c, d Point) Point {
	wide := func(l length.Length) *big.Int { return big.NewInt(int64(l)) }
	cross := func(ux, uy, vx, vy length.Length) *big.Int {
		p, q := wide(ux), wide(uy)
		p.Mul(p, wide(vy))
		return p.Sub(p, q.Mul(q, wide(vx)))
	}
	num := cross(c.X-a.X, c.Y-a.Y, d.X-c.X, d.Y-c.Y)
	den := cross(b.X-a.X, b.Y-a.Y, d.X-c.X, d.Y-c.Y)
	return Point{a.X + share(b.X-a.X, num, den), a.Y + share(b.Y-a.Y, num, den)}
}

// share is l times num over den, rounded half up.
func share(l length.Length, num, den *big.Int) length.Length {
	n := big.NewInt(2 * int64(l))
	n.Mul(n, num)
	d := new(big.Int).Lsh(den, 1)
	if d.Sign() < 0 {
		n.Neg(n)
		d.Neg(d)
	}
	n.Add(n, new(big.Int).Rsh(d, 1))
	m := new(big.Int)
	n.DivMod(n, d, m)
	return length.Length(n.Int64())
}

// cutAt divides each edge at its cuts.
func cutAt(edges []edge, cuts map[int][]Point) []edge {
	out := make([]edge, 0, len(edges)+len(cuts))
	for i, e := range edges {
		at := cuts[i]
		slices.SortFunc(at, func(p, q Point) int { return along(e, p, q) })
		for _, p := range append(at, e.b) {
			if piece := (edge{e.a, p, e.way, e.off, e.from}); p != e.a {
				if before(p, e.a) {
					piece.a, piece.b, piece.way = p, e.a, -e.way
				}
				out = append(out, piece)
				e.a = p
			}
		}
	}
	return out
}

// along orders points by how far they lie along an edge.
func along(e edge, p, q Point) int {
	dx, dy := float64(e.b.X-e.a.X), float64(e.b.Y-e.a.Y)
	return cmp.Compare(float64(float64(p.X-q.X)*dx)+float64(float64(p.Y-q.Y)*dy), 0)
}
