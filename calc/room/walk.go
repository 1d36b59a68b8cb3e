package room

import (
	"fmt"
	"math"
	"strings"

	"lastrow/calc/geom"
	"lastrow/calc/length"
)

// tapeError is the most by which one wall is measured wrong: a walk's miss within it for each wall is spread.
const tapeError = length.Inch / 8

// walk goes along the walls. It may run either way round; the floor is inside it.
func (b *builder) walk(legs []Wall) {
	if len(legs) < 4 || len(legs) > mostWalls {
		b.refuse("walls", "%d walls, where a floor has 4 to %d", len(legs), mostWalls)
		return
	}
	for i, l := range legs {
		if l.Len < leastWall || l.Len > mostRoom {
			b.refuse(fmt.Sprintf("wall %d", i+1), "%s is no wall", b.text(l.Len))
		}
		if i > 0 && axis(l.To) == axis(legs[i-1].To) && l.To != legs[i-1].To {
			b.refuse(fmt.Sprintf("walls %d and %d", i, i+1), "the one runs back along the other")
		}
	}
	legs, ok := b.close(legs)
	if !ok || len(b.broken) > 0 {
		return
	}
	var ring geom.Ring
	var at geom.Point
	for _, l := range legs {
		ring = append(ring, at)
		at = ahead(at, l)
	}
	b.take(ring, legs)
}

// take sets the walk's ring, anticlockwise, its south-west corner at the origin.
func (b *builder) take(ring geom.Ring, legs []Wall) {
	sw, _ := geom.Region{ring}.Box()
	n := len(ring)
	back := !ring.Anticlockwise()
	for i := range ring {
		k := i
		if back {
			k = n - 1 - i
		}
		p, leg := ring[k], k
		if back {
			leg = (k + n - 1) % n
		}
		wall := Side(outward[way(p, ringNext(ring, k, back))])
		b.ring = append(b.ring, corner{geom.Point{X: p.X - sw.X, Y: p.Y - sw.Y},
			Edge{Wall: b.wallName(legs, leg, wall), Side: wall, Cover: "trim"}})
	}
}

func ringNext(r geom.Ring, k int, back bool) geom.Point {
	if back {
		return r[(k+len(r)-1)%len(r)]
	}
	return r[(k+1)%len(r)]
}

// wallName is the side where one wall alone faces it, else the wall's number along the walk.
func (b *builder) wallName(legs []Wall, i int, side Side) string {
	same := 0
	for _, l := range legs {
		if l.To == legs[i].To {
			same++
		}
	}
	if same == 1 {
		return string(side)
	}
	return fmt.Sprintf("wall %d", i+1)
}

// outward is the side that a wall faces out to, by the way that it runs with the floor on its left.
var outward = map[Side]Side{East: South, North: East, West: North, South: West}

func way(a, b geom.Point) Side {
	dx, dy := b.X-a.X, b.Y-a.Y
	switch {
	case max(dx, -dx) >= max(dy, -dy) && dx > 0:
		return East
	case max(dx, -dx) >= max(dy, -dy):
		return West
	case dy > 0:
		return North
	}
	return South
}

func axis(s Side) bool { return s == East || s == West }

func ahead(p geom.Point, l Wall) geom.Point {
	switch l.To {
	case East:
		p.X += l.Len
	case West:
		p.X -= l.Len
	case North:
		p.Y += l.Len
	default:
		p.Y -= l.Len
	}
	return p
}

// close spreads a miss within the tape's error over the walls that run the way of it, and refuses a larger one.
func (b *builder) close(legs []Wall) ([]Wall, bool) {
	var end geom.Point
	for _, l := range legs {
		end = ahead(end, l)
	}
	miss := b.missWords(end)
	most := tapeError * length.Length(len(legs))
	if miss == "" {
		return legs, true
	}
	if max(end.X, -end.X) > most || max(end.Y, -end.Y) > most {
		b.refuse("walls", "they miss closing by %s", miss)
		return nil, false
	}
	b.notes = append(b.notes, "walls missed closing by "+miss+"; spread over the walls")
	out := append([]Wall{}, legs...)
	spread(out, end.X, East, West)
	spread(out, end.Y, North, South)
	return out, true
}

func (b *builder) missWords(end geom.Point) string {
	var parts []string
	for _, m := range []struct {
		l        length.Length
		pos, neg Side
	}{{end.X, East, West}, {end.Y, North, South}} {
		if m.l > 0 {
			parts = append(parts, b.text(m.l)+" going "+string(m.neg))
		}
		if m.l < 0 {
			parts = append(parts, b.text(-m.l)+" going "+string(m.pos))
		}
	}
	return strings.Join(parts, " and ")
}

// spread takes a miss off the walls that run one way and adds it to those that run back, in proportion to their lengths.
func spread(legs []Wall, miss length.Length, pos, neg Side) {
	var total float64
	for _, l := range legs {
		if l.To == pos || l.To == neg {
			total += float64(l.Len)
		}
	}
	left, lastWall := miss, -1
	for i, l := range legs {
		if l.To != pos && l.To != neg {
			continue
		}
		part := length.Length(math.Round(float64(miss) * (float64(l.Len) / total)))
		legs[i].Len += sign(l.To == neg) * part
		left -= part
		lastWall = i
	}
	if lastWall >= 0 {
		legs[lastWall].Len += sign(legs[lastWall].To == neg) * left
	}
}

func sign(plus bool) length.Length {
	if plus {
		return 1
	}
	return -1
}
