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

// step is how far a leg goes to the east and to the north.
type step struct{ x, y length.Length }

// step is exact along an axis and for a wall told by its two ways; else it is rounded to the nanometre.
func (w Wall) step() step {
	x, y := w.To.vector()
	if w.Across > 0 {
		return step{sign(x > 0) * w.Len, sign(y > 0) * w.Across}
	}
	return step{length.Length(math.Round(x * float64(w.Len))), length.Length(math.Round(y * float64(w.Len)))}
}

func (s step) len() length.Length { return geom.Distance(geom.Point{}, geom.Point{X: s.x, Y: s.y}) }

func (s step) plain() bool { return s.x == 0 || s.y == 0 }

// back says whether one step runs straight back along another.
func (s step) back(t step) bool {
	o, p := geom.Point{X: s.x, Y: s.y}, geom.Point{X: -t.x, Y: -t.y}
	return geom.Orient(geom.Point{}, o, p) == 0 && (s.x > 0) == (p.X > 0) && (s.y > 0) == (p.Y > 0)
}

// walk goes along the walls. It may run either way round; the floor is inside it.
func (b *builder) walk(legs []Wall) {
	steps := make([]step, len(legs))
	least := 4
	for i, l := range legs {
		steps[i] = l.step()
		if !steps[i].plain() {
			least = 3
		}
	}
	if len(legs) < least || len(legs) > mostWalls {
		b.refuse("walls", "%d walls, where a floor has %d to %d", len(legs), least, mostWalls)
		return
	}
	if b.checkLegs(legs, steps); len(b.broken) > 0 || !b.close(steps) {
		return
	}
	var ring geom.Ring
	var at geom.Point
	for _, s := range steps {
		ring = append(ring, at)
		at = geom.Point{X: at.X + s.x, Y: at.Y + s.y}
	}
	b.take(ring)
}

func (b *builder) checkLegs(legs []Wall, steps []step) {
	for i, s := range steps {
		if l := legs[i]; min(l.Len, l.Across) < 0 || max(l.Len, l.Across) > mostRoom || s.len() < leastWall {
			b.refuse(fmt.Sprintf("wall %d", i+1), "%s is no wall", b.text(l.Len))
		}
		if legs[i].Across > 0 && !legs[i].To.Slants() {
			b.refuse(fmt.Sprintf("wall %d", i+1), "a wall that runs %s goes one way alone", legs[i].To)
		}
		if i > 0 && s.back(steps[i-1]) {
			b.refuse(fmt.Sprintf("walls %d and %d", i, i+1), "the one runs back along the other")
		}
	}
}

// take sets the walk's ring, anticlockwise, its south-west corner at the origin.
func (b *builder) take(ring geom.Ring) {
	sw, _ := geom.Region{ring}.Box()
	n := len(ring)
	back := !ring.Anticlockwise()
	facing := map[Side]int{}
	for i := range ring {
		facing[b.facing(ring, i, back)]++
	}
	for i := range ring {
		k, leg := i, i
		if back {
			k = n - 1 - i
			leg = (k + n - 1) % n
		}
		p, side := ring[k], b.facing(ring, leg, back)
		b.ring = append(b.ring, corner{geom.Point{X: p.X - sw.X, Y: p.Y - sw.Y},
			Edge{Wall: wallName(side, facing[side], leg), Side: side, Cover: "trim"}})
	}
}

// facing is the side that a leg of a walk faces out to.
func (b *builder) facing(ring geom.Ring, leg int, back bool) Side {
	p, q := ring[leg], ring[(leg+1)%len(ring)]
	if back {
		p, q = q, p
	}
	return Toward(p, q).outward()
}

// wallName is the side where one wall alone faces it, else the wall's number along the walk.
func wallName(side Side, facing, leg int) string {
	if facing == 1 {
		return string(side)
	}
	return fmt.Sprintf("wall %d", leg+1)
}

// close spreads a miss within the tape's error over the walls that run the way of it, and refuses a larger one.
func (b *builder) close(steps []step) bool {
	var end step
	for _, s := range steps {
		end.x, end.y = end.x+s.x, end.y+s.y
	}
	most := tapeError * length.Length(len(steps))
	if end == (step{}) {
		return true
	}
	miss := b.missWords(end)
	if max(end.x, -end.x) > most || max(end.y, -end.y) > most {
		b.refuse("walls", "they miss closing by %s", miss)
		return false
	}
	if miss != "" {
		b.notes = append(b.notes, "walls missed closing by "+miss+"; spread over the walls")
	}
	spread(steps, end.x, func(s *step) (of, other *length.Length) { return &s.x, &s.y })
	spread(steps, end.y, func(s *step) (of, other *length.Length) { return &s.y, &s.x })
	return true
}

// missWords tells a miss, but for what no tape shows.
func (b *builder) missWords(end step) string {
	var parts []string
	for _, m := range []struct {
		l        length.Length
		pos, neg Side
	}{{end.x, East, West}, {end.y, North, South}} {
		l, back := m.l, m.neg
		if l < 0 {
			l, back = -l, m.pos
		}
		if l > shown {
			parts = append(parts, b.said(l)+" going "+string(back))
		}
	}
	return strings.Join(parts, " and ")
}

// shown is the least length that a tape shows: half of 1/64 in. What is less comes of reckoning, as with the side of a
// corner cut at 45 degrees.
const shown = length.SixtyFourth / 2

// said tells a length: exactly where a tape could show it, else to the nearest mark.
func (b *builder) said(l length.Length) string {
	if l%length.SixtyFourth == 0 || l%(length.Millimetre/10) == 0 {
		return b.text(l)
	}
	return b.tape().Text(l)
}

// spread takes a miss off the walls that run the way of it, in proportion to how far they do: those square to it where
// there are any, so that the others keep their slant.
func spread(steps []step, miss length.Length, parts func(*step) (of, other *length.Length)) {
	var square, all []*length.Length
	for i := range steps {
		of, other := parts(&steps[i])
		if *of == 0 {
			continue
		}
		if all = append(all, of); *other == 0 {
			square = append(square, of)
		}
	}
	if len(square) > 0 {
		all = square
	}
	var total float64
	for _, l := range all {
		total += math.Abs(float64(*l))
	}
	left := miss
	for i, l := range all {
		part := length.Length(math.Round(float64(miss) * (math.Abs(float64(*l)) / total)))
		if i == len(all)-1 {
			part = left
		}
		*l -= part
		left -= part
	}
}

func sign(plus bool) length.Length {
	if plus {
		return 1
	}
	return -1
}
