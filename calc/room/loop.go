package room

import (
	"fmt"
	"math"

	"lastrow/calc/geom"
	"lastrow/calc/length"
)

// openings opens rooms that are placed already into each other, so that they lie in a loop. Their places must agree.
func (b *builder) openings() {
	names := tally(len(b.plan.Openings), func(int) string { return "opening" })
	for i, p := range b.plan.Openings {
		what := names[i]
		o, ok := b.along(what, p.Off, p.Wall, p.Wide, p.From, p.FromEnd)
		if !ok {
			continue
		}
		far, ok := b.across(what, o, p.To)
		if !ok || !b.agrees(what, o, far) || !b.placed(what, o, far, p) {
			continue
		}
		b.open(what, o, far)
	}
}

// facing is the wall that an opening leads to: how far off it stands, and its stretch along the opening's own wall.
type facing struct {
	e        Edge
	off      length.Length
	from, to length.Length
}

// across finds the wall of a room that an opening leads to: of those that face it, the one nearest to a wall's thickness off.
func (b *builder) across(what string, o opening, to string) (best facing, ok bool) {
	walls, known := b.rooms[to]
	if !known {
		b.refuse(what, "there is no %s for it: say that one first", to)
		return best, false
	}
	miss := func(f facing) length.Length { return distance(f.off, b.wallThickness()) }
	for _, e := range walls {
		alongA, offA := o.coordinates(e.A)
		alongB, offB := o.coordinates(e.B)
		f := facing{e, offA, alongB, alongA}
		if distance(offA, offB) > 2*length.Nanometre || f.from >= f.to || f.to <= o.from || f.from >= o.to {
			continue
		}
		if !ok || miss(f) < miss(best) {
			best, ok = f, true
		}
	}
	if !ok {
		b.refuse(what, "no wall of the %s faces it", roomName(to))
	}
	return best, ok
}

func roomName(room string) string {
	if room == "" {
		return "main room"
	}
	return room
}

func distance(a, b length.Length) length.Length { return max(a-b, b-a) }

// coordinates are how far a point lies along the opening's wall and out of the floor, rounded to the nanometre.
func (o opening) coordinates(p geom.Point) (along, out length.Length) {
	dx, dy := float64(o.e.B.X-o.e.A.X), float64(o.e.B.Y-o.e.A.Y)
	px, py, l := float64(p.X-o.e.A.X), float64(p.Y-o.e.A.Y), math.Hypot(dx, dy)
	return length.Length(math.Round((float64(px*dx) + float64(py*dy)) / l)), length.Length(math.Round((float64(px*dy) - float64(py*dx)) / l))
}

// agrees says whether the two walls stand a wall's thickness apart, or against each other, within the tape's error for each
// room on the way.
func (b *builder) agrees(what string, o opening, f facing) bool {
	thick, most := b.wallThickness(), b.loopError()
	if distance(f.off, 0) <= most {
		return b.against(what, o, f)
	}
	if miss := f.off - thick; distance(f.off, thick) > most {
		way := o.e.Side
		if miss < 0 {
			miss, way = -miss, way.Opposite()
		}
		b.refuse(what, "its two walls come %s apart, where a wall is taken as %s thick: the rooms miss each other by %s going %s",
			b.said(f.off), b.text(thick), b.said(miss), way)
		return false
	}
	b.notes = append(b.notes, fmt.Sprintf("%s: the wall comes out %s thick", what, b.said(f.off)))
	return true
}

// loopError is the most by which the places of two rooms may disagree.
func (b *builder) loopError() length.Length {
	return tapeError * length.Length(len(b.plan.Closets)+1)
}

// against allows rooms with no wall between them to be open to each other all along what they share, and nothing less.
func (b *builder) against(what string, o opening, f facing) bool {
	from, to := max(f.from, 0), min(f.to, o.e.Len())
	if f.off != 0 {
		b.refuse(what, "its two walls come %s apart: measure again, or leave a wall of %s between them", b.said(f.off), b.text(b.wallThickness()))
		return false
	}
	if o.from > from || o.to < to {
		b.refuse(what, "the rooms have no wall between them: open them all along the %s that they share", b.said(to-from))
		return false
	}
	return true
}

// placed says whether the opening lies on both walls, and, where its place in the far one was measured too, that they agree.
func (b *builder) placed(what string, o opening, f facing, p Opening) bool {
	if o.from < f.from || o.to > f.to {
		b.refuse(what, "it lies off the wall of the %s, which is %s long", roomName(p.To), b.said(f.e.Len()))
		return false
	}
	if p.ToEnd == "" {
		return true
	}
	begins, ok := b.begins(f.e, p.ToEnd)
	if !ok {
		b.refuse(what, "the wall of the %s has no %s corner", roomName(p.To), p.ToEnd)
		return false
	}
	from := f.from + p.ToFrom
	if begins {
		from = f.to - p.ToFrom - p.Wide
	}
	miss := distance(from, o.from)
	if miss > b.loopError() {
		b.refuse(what, "its places in the two walls miss each other by %s", b.said(miss))
		return false
	}
	if miss > shown {
		b.notes = append(b.notes, fmt.Sprintf("%s: its places in the two walls are %s apart; the first stands", what, b.said(miss)))
	}
	return true
}

// open cuts the ring that holds both walls in two at the opening: one round the rooms, and one round what they enclose.
func (b *builder) open(what string, o opening, f facing) {
	near := [2]geom.Point{o.at(o.from, 0), o.at(o.to, 0)}
	far := [2]geom.Point{o.at(o.from, f.off), o.at(o.to, f.off)}
	rings := append([][]corner{b.ring}, b.holes...)
	for k, ring := range rings {
		i, j := holding(ring, o.e.Wall, near), holding(ring, f.e.Wall, far)
		if i < 0 || j < 0 {
			continue
		}
		jamb := Edge{Wall: what + " jamb", Cover: "trim"}
		one := append(stretch(ring, j+1, i), corner{near[0], jamb}, corner{far[0], ring[j].e})
		two := append(stretch(ring, i+1, j), corner{far[1], jamb}, corner{near[1], ring[i].e})
		rings[k] = trim(one)
		b.sort(append(rings, trim(two)))
		return
	}
	b.refuse(what, "it overlaps another opening")
}

// holding is the place of the edge of a wall that two points lie on; -1 where there is none.
func holding(ring []corner, wall string, at [2]geom.Point) int {
	for k := range ring {
		e := ring[k].e
		e.A, e.B = ring[k].p, ring[(k+1)%len(ring)].p
		if e.Wall == wall && on(e, at[0]) && on(e, at[1]) {
			return k
		}
	}
	return -1
}

// stretch copies the corners from one to another, round the end of the ring where need be.
func stretch(ring []corner, from, to int) []corner {
	var out []corner
	for k := from % len(ring); ; k = (k + 1) % len(ring) {
		if out = append(out, ring[k]); k == to {
			return out
		}
	}
}

// sort takes the ring round the rooms first; it begins where it did.
func (b *builder) sort(rings [][]corner) {
	first := b.ring[0].p
	b.holes = nil
	for _, r := range rings {
		if points(r).Anticlockwise() {
			b.ring = begin(r, first)
		} else {
			b.holes = append(b.holes, r)
		}
	}
}
