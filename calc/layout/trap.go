package layout

import (
	"math"

	"lastrow/calc/geom"
	"lastrow/calc/length"
	"lastrow/calc/room"
)

// doorLine is the edge of the laying area under a door, in the frame.
type doorLine struct {
	a, b  geom.Point
	gap   length.Length
	along bool // along the rows
}

// marks notes the lines under doors.
func (w *writer) marks(edges []room.Edge) {
	for _, e := range edges {
		if e.Door {
			a, b := w.frame.in(e.A), w.frame.in(e.B)
			w.doors = append(w.doors, doorLine{a: a, b: b, gap: e.Gap, along: abs(b.X-a.X) >= abs(b.Y-a.Y)})
		}
	}
}

// trapped says why a piece cannot be tilted into its lock, and the way in. The first row is laid flat and slid, so that
// nothing traps it.
func (w *writer) trapped(shape geom.Region, row int) (why, wayIn string) {
	if row == 0 {
		return "", ""
	}
	b, ends := boxOf(shape), 0
	for _, d := range w.doors {
		if !d.meets(b) || d.slants() && !d.near(shape) {
			continue
		}
		if d.along {
			return "it goes under the door jambs", "join the row on the floor first and slide it in, or shave the lock's lip and glue"
		}
		ends++
	}
	switch ends {
	case 0:
		return "", ""
	case 1:
		return "its end goes under a door jamb", "slide it in under the jamb and tap it back along its row, or shave the lock's lip and glue"
	}
	return "it is held at both ends", "shave the lock's lip, lay it flat and glue"
}

// meets says whether a piece reaches the line.
func (d doorLine) meets(b box) bool {
	reach := d.gap + 1
	return min(d.a.X, d.b.X)-reach <= b.right && max(d.a.X, d.b.X)+reach >= b.left &&
		min(d.a.Y, d.b.Y)-reach <= b.far && max(d.a.Y, d.b.Y)+reach >= b.near
}

// slants says whether the line lies neither along the rows nor square to them, so that its box says little.
func (d doorLine) slants() bool { return min(abs(d.a.X-d.b.X), abs(d.a.Y-d.b.Y)) > hair }

// near says whether an edge of a piece comes as near to the line as the gap there.
func (d doorLine) near(shape geom.Region) bool {
	reach := float64(d.gap + hair)
	for _, ring := range shape {
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			if min(fromSegment(p, d.a, d.b), fromSegment(d.a, p, q), fromSegment(d.b, p, q)) <= reach {
				return true
			}
		}
	}
	return false
}

// fromSegment is how far a point lies from the nearest place between two others.
func fromSegment(p, a, b geom.Point) float64 {
	dx, dy, px, py := float64(b.X-a.X), float64(b.Y-a.Y), float64(p.X-a.X), float64(p.Y-a.Y)
	t := 0.0
	if l := float64(dx*dx) + float64(dy*dy); l > 0 {
		t = max(0, min(1, (float64(px*dx)+float64(py*dy))/l))
	}
	return math.Hypot(px-float64(t*dx), py-float64(t*dy))
}
