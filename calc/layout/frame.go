package layout

import (
	"math"
	"slices"

	"lastrow/calc/geom"
	"lastrow/calc/length"
	"lastrow/calc/room"
)

// frame turns the floor so that rows lie along X and are laid towards growing Y: X to the right and Y away from one who
// stands at the start wall. It is a step along the rows by its parts to the east and to the north. A quarter turn, of whole
// steps, is exact; any other rounds to the nanometre, once each way.
type frame struct{ east, north float64 }

// heading is the frame of rows that run the way from one point to another, exact along an axis.
func heading(a, b geom.Point) frame {
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	l := math.Hypot(dx, dy)
	return frame{dx / l, dy / l}
}

// back is the frame from the other side of the floor.
func (f frame) back() frame { return frame{-f.east, -f.north} }

// slanted says whether the turn is no quarter turn.
func (f frame) slanted() bool { return f.east != 0 && f.north != 0 }

// in turns a point of the floor into the frame.
func (f frame) in(p geom.Point) geom.Point { return f.turn(p, f.north) }

// out turns a point of the frame back onto the floor.
func (f frame) out(p geom.Point) geom.Point { return f.turn(p, -f.north) }

func (f frame) turn(p geom.Point, north float64) geom.Point {
	if f.slanted() {
		x, y := float64(p.X), float64(p.Y)
		return geom.Point{
			X: length.Length(math.Round(float64(f.east*x) + float64(north*y))),
			Y: length.Length(math.Round(float64(f.east*y) - float64(north*x))),
		}
	}
	e, n := length.Length(f.east), length.Length(north)
	return geom.Point{X: e*p.X + n*p.Y, Y: e*p.Y - n*p.X}
}

// ends names the left-hand and the right-hand end of a row.
func (f frame) ends() (from, to string) {
	right := f.side()
	return string(right.Opposite()), string(right)
}

// side is the side that rows run towards.
func (f frame) side() room.Side {
	return room.Toward(geom.Point{}, f.out(geom.Point{X: length.Metre}))
}

// floor turns a floor into the frame. What a turn and the gaps have bent by a few nanometres lies straight again.
func (f frame) floor(r geom.Region) geom.Region {
	out := turned(r, f.in)
	if f.slanted() {
		straighten(out)
	}
	return out
}

func turned(r geom.Region, by func(geom.Point) geom.Point) geom.Region {
	out := make(geom.Region, len(r))
	for i, ring := range r {
		out[i] = make(geom.Ring, len(ring))
		for j, p := range ring {
			out[i][j] = by(p)
		}
	}
	return out
}

// hair is the most by which rounding bends a wall that lies along the rows or square to them: a nanometre each for its
// ends, its gap and the turn.
const hair = 4 * length.Nanometre

// straighten puts the ends of edges that lie along an axis but for a hair on one line.
func straighten(r geom.Region) {
	var xs, ys []length.Length
	for _, ring := range r {
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			if abs(p.X-q.X) <= hair {
				xs = append(xs, p.X, q.X)
			}
			if abs(p.Y-q.Y) <= hair {
				ys = append(ys, p.Y, q.Y)
			}
		}
	}
	toX, toY := lines(xs), lines(ys)
	for _, ring := range r {
		for i, p := range ring {
			ring[i] = geom.Point{X: snapped(p.X, toX), Y: snapped(p.Y, toY)}
		}
	}
}

// lines maps values that follow each other by no more than a hair to the first of them.
func lines(values []length.Length) map[length.Length]length.Length {
	slices.Sort(values)
	to := make(map[length.Length]length.Length, len(values))
	for i, v := range values {
		if to[v] = v; i > 0 && v-values[i-1] <= hair {
			to[v] = to[values[i-1]]
		}
	}
	return to
}

func snapped(l length.Length, to map[length.Length]length.Length) length.Length {
	if v, ok := to[l]; ok {
		return v
	}
	return l
}
