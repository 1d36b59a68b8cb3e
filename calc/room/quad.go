package room

import (
	"math"

	"lastrow/calc/geom"
	"lastrow/calc/length"
)

// quad solves four walls and a diagonal by the two triangles that the diagonal parts them into: the south wall lies along X.
func (b *builder) quad(q Quad) {
	b.size("walls", q.North, q.East, q.South, q.West)
	if q.NWSE <= 0 && q.SWNE <= 0 {
		b.refuse("walls", "four walls need a diagonal, north-west to south-east or south-west to north-east")
	}
	if len(b.broken) > 0 {
		return
	}
	var ring geom.Ring
	ok := false
	if q.NWSE > 0 {
		ring, ok = byNWSE(q)
	} else if ring, ok = byNWSE(mirrored(q)); ok {
		ring = mirror(ring, q.South)
	}
	if !ok {
		b.refuse("walls", "no room has these walls and that diagonal: a triangle does not close")
		return
	}
	b.second(q, ring)
	for i, side := range []Side{South, East, North, West} {
		b.add(ring[i].X, ring[i].Y, side)
	}
	b.shift()
}

// byNWSE gives the corners SW, SE, NE, NW.
func byNWSE(q Quad) (geom.Ring, bool) {
	sw, se := geom.Point{}, geom.Point{X: q.South}
	nw, ok1 := apex(sw, se, q.West, q.NWSE)
	ne, ok2 := apex(nw, se, q.North, q.East)
	return geom.Ring{sw, se, ne, nw}, ok1 && ok2
}

// apex is the point to the left of the line from a to b that lies so far from each, rounded to the nanometre.
func apex(a, b geom.Point, fromA, fromB length.Length) (geom.Point, bool) {
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	base := math.Hypot(dx, dy)
	ra, rb := float64(fromA), float64(fromB)
	if base <= 0 || ra+rb <= base || base+ra <= rb || base+rb <= ra {
		return geom.Point{}, false
	}
	along := (float64(base*base) + float64(ra*ra) - float64(rb*rb)) / (2 * base)
	up := math.Sqrt(max(0, float64(ra*ra)-float64(along*along)))
	x := float64(a.X) + float64(along*dx/base) - float64(up*dy/base)
	y := float64(a.Y) + float64(along*dy/base) + float64(up*dx/base)
	return geom.Point{X: length.Length(math.Round(x)), Y: length.Length(math.Round(y))}, true
}

func mirrored(q Quad) Quad {
	return Quad{North: q.North, South: q.South, East: q.West, West: q.East, NWSE: q.SWNE}
}

// mirror turns the corners of a mirrored room back: SW, SE, NE, NW again.
func mirror(r geom.Ring, width length.Length) geom.Ring {
	flip := func(p geom.Point) geom.Point { return geom.Point{X: width - p.X, Y: p.Y} }
	return geom.Ring{flip(r[1]), flip(r[0]), flip(r[3]), flip(r[2])}
}

// second checks the second diagonal where it was measured.
func (b *builder) second(q Quad, ring geom.Ring) {
	if q.NWSE == 0 || q.SWNE == 0 {
		return
	}
	want := geom.Distance(ring[0], ring[2])
	off := max(want-q.SWNE, q.SWNE-want)
	if off > 4*tapeError {
		b.refuse("diagonal SW-NE", "%s does not agree with the walls and the other diagonal, which make it %s", b.text(q.SWNE), b.tape().Text(want))
	} else if off > tapeError {
		b.notes = append(b.notes, "the second diagonal is "+b.tape().Text(off)+" off; the walls and the first one stand")
	}
}

// shift moves the room so that it begins at 0, 0.
func (b *builder) shift() {
	var r geom.Ring
	for _, c := range b.ring {
		r = append(r, c.p)
	}
	sw, _ := geom.Region{r}.Box()
	for i := range b.ring {
		b.ring[i].p.X -= sw.X
		b.ring[i].p.Y -= sw.Y
	}
}
