package geom

import (
	"cmp"
	"math"

	"lastrow/calc/length"
)

// Inset takes a band off the region along each edge: gaps[k][i] wide along the edge that begins at point i of ring k.
// What is left lies outside every band; at an outside corner the bands meet in a mitre. Along the axes it is exact; a
// slanted edge is rounded to the nanometre. Alcoves narrower than their two bands vanish, and a floor may come apart.
func (r Region) Inset(gaps [][]length.Length) Region {
	if in, ok := r.mitred(gaps); ok {
		return in
	}
	var out Region
	for _, o := range r.Less(r.bands(gaps)) {
		if ring := o.Ring.Tidy(); len(ring) > 2 {
			out = append(out, ring)
		}
	}
	return out
}

// mitred moves each edge and joins them in mitres: the short way for one ring along the axes whose bands stay clear of
// each other.
func (r Region) mitred(gaps [][]length.Length) (in Region, ok bool) {
	if len(r) != 1 || !r.rectilinear() {
		return nil, false
	}
	ring, gap := r[0], gaps[0]
	n := len(ring)
	var out Ring
	for i, b := range ring {
		before, after := (i+n-1)%n, (i+1)%n
		p, q := moved(ring[before], b, b, gap[before]), moved(b, ring[after], b, gap[i])
		switch {
		case Orient(ring[before], b, ring[after]) == 0:
			out = append(out, p, q)
		case ring[before].Y == b.Y:
			out = append(out, Point{q.X, p.Y})
		default:
			out = append(out, Point{p.X, q.Y})
		}
	}
	in = Region{out.Tidy()}
	return in, ring.keeps(out) && len(in.Crossings(1)) == 0 && in[0].Anticlockwise()
}

// keeps says whether the moved ring has every edge still, running the same way.
func (r Ring) keeps(moved Ring) bool {
	at, n := 0, len(r)
	if Orient(r[n-1], r[0], r[1]) == 0 {
		at = 1
	}
	for i, a := range r {
		b, c := r[(i+1)%n], r[(i+2)%n]
		p, q := moved[at], moved[(at+1)%len(moved)]
		if sign(q.X-p.X) != sign(b.X-a.X) || sign(q.Y-p.Y) != sign(b.Y-a.Y) {
			return false
		}
		if at++; Orient(a, b, c) == 0 {
			at++
		}
	}
	return true
}

func sign(l length.Length) int { return cmp.Compare(l, 0) }

// rectilinear says whether every edge lies along an axis.
func (r Region) rectilinear() bool {
	for _, ring := range r {
		for i, a := range ring {
			if b := ring[(i+1)%len(ring)]; a.X != b.X && a.Y != b.Y {
				return false
			}
		}
	}
	return true
}

// bands are the figures that the gaps take along each edge, out to the mitre at an outside corner.
func (r Region) bands(gaps [][]length.Length) []Ring {
	var out []Ring
	for k, ring := range r {
		n := len(ring)
		for i, a := range ring {
			b, c := ring[(i+1)%n], ring[(i+2)%n]
			before, gap, next := gaps[k][(i+n-1)%n], gaps[k][i], gaps[k][(i+1)%n]
			start, _ := mitre(ring[(i+n-1)%n], a, b, before, gap)
			end, bevel := mitre(a, b, c, gap, next)
			if bevel {
				out = append(out, Ring{b, moved(a, b, b, gap), moved(b, c, b, next)})
			}
			if start.after != a || end.before != b {
				out = append(out, Ring{a, b, end.before, start.after})
			}
		}
	}
	return out
}

// corner is where the band before a corner ends and where the one after it begins.
type corner struct{ before, after Point }

// mitre gives the far ends of the bands at corner b. At an outside corner they meet in one point; where unlike gaps meet at
// so flat a corner that the one line does not reach the other, they are bevelled.
func mitre(a, b, c Point, g, h length.Length) (_ corner, bevel bool) {
	square := corner{moved(a, b, b, g), moved(b, c, b, h)}
	if Orient(a, b, c) >= 0 || g == 0 && h == 0 {
		return square, false
	}
	turn := math.Atan2(float64(b.Y-a.Y), float64(b.X-a.X)) - math.Atan2(float64(c.Y-b.Y), float64(c.X-b.X))
	sin, cos := math.Sincos(turn)
	on := (float64(h) - float64(float64(g)*cos)) / sin
	if on < -1 || float64(g)-float64(float64(h)*cos) < -sin {
		return square, g > 0 && h > 0
	}
	p := ahead(a, b, square.before, on)
	return corner{p, p}, false
}

// ahead is so far on from p in the direction from a to b: exact along an axis, else rounded to the nanometre.
func ahead(a, b, p Point, on float64) Point {
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	l := math.Hypot(dx, dy)
	return Point{p.X + length.Length(math.Round(on*dx/l)), p.Y + length.Length(math.Round(on*dy/l))}
}

// moved shifts a point to the left of the edge from a to b, by a gap: exact along an axis, else rounded to the nanometre.
func moved(a, b, p Point, gap length.Length) Point {
	dx, dy := b.X-a.X, b.Y-a.Y
	if dx == 0 || dy == 0 {
		return Point{p.X - gap*length.Length(sign(dy)), p.Y + gap*length.Length(sign(dx))}
	}
	l := math.Hypot(float64(dx), float64(dy))
	return Point{p.X - length.Length(math.Round(float64(gap)*float64(dy)/l)), p.Y + length.Length(math.Round(float64(gap)*float64(dx)/l))}
}
