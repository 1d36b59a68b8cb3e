package room

import (
	"math"

	"lastrow/calc/length"
	"lastrow/calc/limit"
)

// gaps gives every edge its gap and takes the gaps off the floor.
func (b *builder) gaps(f *Floor) {
	f.Region = b.region()
	eastWest, northSouth := f.Extent()
	var widths [][]length.Length
	for _, ring := range append([][]corner{b.ring}, b.holes...) {
		var of []length.Length
		for i, c := range ring {
			e := c.e
			e.A, e.B = c.p, ring[(i+1)%len(ring)].p
			e.Gap = b.gap(e, eastWest, northSouth)
			_, hidden := ofWall(b.plan.OutOfView, e)
			e.Hidden = hidden && !e.Door
			f.Edges = append(f.Edges, e)
			of = append(of, e.Gap)
		}
		widths = append(widths, of)
	}
	f.Laying = b.underJambs(f).Inset(widths)
}

// ofWall gives what is said of the wall of the main room that an edge lies in.
func ofWall[T any](said map[Side]T, e Edge) (v T, ok bool) {
	if e.Room != "" || e.Side == "" {
		return v, false
	}
	if v, ok = said[e.Side]; !ok && e.slants() {
		v, ok = said[Slanted]
	}
	return v, ok
}

// mostGap bounds a gap: no trim hides a wider one.
const mostGap = length.Metre

func (b *builder) checkGaps() {
	if b.plan.Gap < 0 || b.plan.Gap > mostGap {
		b.refuse("gap", "%s is no gap", b.text(b.plan.Gap))
	}
	for _, side := range append(compass[:], Slanted) {
		if g := b.plan.WallGaps[side]; g < 0 || g > mostGap {
			b.refuse(string(side)+" wall", "%s is no gap", b.text(g))
		}
	}
}

// gap is the wall's own, the floor's, or the default by the run square to the edge. Under the jambs the floor runs on.
func (b *builder) gap(e Edge, eastWest, northSouth length.Length) length.Length {
	if e.Cover == "jamb" {
		return 0
	}
	if g, own := ofWall(b.plan.WallGaps, e); own {
		return g
	}
	if b.plan.Gap > 0 {
		return b.plan.Gap
	}
	run := eastWest
	switch out := Toward(e.A, e.B).outward(); {
	case out.Slants():
		run = b.reach(e)
	case out == North || out == South:
		run = northSouth
	}
	return limit.DefaultGap(run, b.tape().System)
}

// reach is how far the floor reaches square to an edge, rounded to the nanometre.
func (b *builder) reach(e Edge) length.Length {
	dx, dy := float64(e.B.X-e.A.X), float64(e.B.Y-e.A.Y)
	most := 0.0
	for _, c := range b.ring {
		most = max(most, float64(dx*float64(c.p.Y-e.A.Y))-float64(dy*float64(c.p.X-e.A.X)))
	}
	return length.Length(math.Round(most / math.Hypot(dx, dy)))
}

// Walls gives the edges that trim goes along, in the order of the floor's rings.
func (f *Floor) Walls() []Edge {
	var out []Edge
	for _, e := range f.Edges {
		if e.Cover == "trim" {
			out = append(out, e)
		}
	}
	return out
}

// Doors gives the lines under the doors.
func (f *Floor) Doors() []Edge {
	var out []Edge
	for _, e := range f.Edges {
		if e.Door {
			out = append(out, e)
		}
	}
	return out
}
