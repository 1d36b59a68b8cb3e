package room

import (
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
			e.Hidden = e.Room == "" && b.plan.OutOfView[e.Side] && !e.Door
			f.Edges = append(f.Edges, e)
			of = append(of, e.Gap)
		}
		widths = append(widths, of)
	}
	f.Laying = b.underJambs(f).Inset(widths)
}

// mostGap bounds a gap: no trim hides a wider one.
const mostGap = length.Metre

func (b *builder) checkGaps() {
	if b.plan.Gap < 0 || b.plan.Gap > mostGap {
		b.refuse("gap", "%s is no gap", b.text(b.plan.Gap))
	}
	for _, side := range []Side{North, East, South, West} {
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
	if g, own := b.plan.WallGaps[e.Side]; own && e.Side != "" && e.Room == "" {
		return g
	}
	if b.plan.Gap > 0 {
		return b.plan.Gap
	}
	run := eastWest
	if axis(way(e.A, e.B)) { // the edge runs east-west: the floor moves north-south against it
		run = northSouth
	}
	return limit.DefaultGap(run, b.tape().System)
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
