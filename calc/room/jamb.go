package room

import (
	"slices"

	"lastrow/calc/geom"
	"lastrow/calc/length"
)

// underJamb is how far the floor runs under a jamb that is undercut: half of a 3/4 in jamb, so that it hides the floor's
// end and leaves the floor room to move. Common practice, no source.
func (b *builder) underJamb() length.Length {
	if b.plan.Metric {
		return 10 * length.Millimetre
	}
	return 3 * length.Inch / 8
}

// underJambs is the floor widened under the jambs of its doorways, and notes how far on their edges.
func (b *builder) underJambs(f *Floor) geom.Region {
	var wide geom.Region
	by := b.underJamb()
	var jambs []int
	first := 0
	for _, ring := range f.Region {
		n, edges := len(ring), f.Edges[first:first+len(ring)]
		ring = slices.Clone(ring)
		for i, e := range edges {
			if tucks(edges, i, by) {
				o := opening{e: e}
				ring[i], ring[(i+1)%n] = o.at(0, by), o.at(e.Len(), by)
				jambs = append(jambs, first+i)
			}
		}
		wide, first = append(wide, ring), first+n
	}
	if len(wide.Crossings(1)) > 0 { // something else stands close behind a jamb
		return f.Region
	}
	for _, i := range jambs {
		f.Edges[i].Under = by
	}
	if len(jambs) > 0 {
		f.Notes = append(f.Notes, "the floor runs "+b.text(by)+" on under the door jambs: undercut them")
	}
	return wide
}

// tucks says whether edge i of a ring is a jamb with a wall beside it, square to it and long enough to run under.
func tucks(ring []Edge, i int, by length.Length) bool {
	n := len(ring)
	before, e, after := ring[(i+n-1)%n], ring[i], ring[(i+1)%n]
	wall := before
	if before.Door {
		wall = after
	}
	return e.Cover == "jamb" && before.Door != after.Door && wall.Cover == "trim" && wall.Len() > 2*by && square(e, wall)
}

// square says whether two edges stand square to each other, within what rounding to the nanometre does to short ones.
func square(e, f Edge) bool {
	ex, ey := float64(e.B.X-e.A.X), float64(e.B.Y-e.A.Y)
	fx, fy := float64(f.B.X-f.A.X), float64(f.B.Y-f.A.Y)
	dot := float64(ex*fx) + float64(ey*fy)
	return dot*dot < 1e-12*(float64(ex*ex)+float64(ey*ey))*(float64(fx*fx)+float64(fy*fy))
}
