package layout

import (
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
		if !d.meets(b) {
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
