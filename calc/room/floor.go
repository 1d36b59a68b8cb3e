package room

import (
	"slices"

	"lastrow/calc/geom"
	"lastrow/calc/length"
)

// Edge is one edge of the floor's region, walked with the floor on the left.
type Edge struct {
	A, B   geom.Point
	Wall   string        // what people call it: "south", "wall 3", "closet back", "post"
	Room   string        // the closet or room that it is a wall of; empty is the main room
	Side   Side          // the way that it faces out, for a wall that faces one
	Gap    length.Length // between the floor and it; 0 is tight
	Under  length.Length // how far the floor runs on beneath it: under a door jamb
	Cover  string        // what hides the gap: "trim", "track", ""
	Door   bool          // the line under a door
	Fixed  bool          // of a fixture that the floor goes round
	Hidden bool          // out of sight
	Round  bool          // a side of the box round a pipe
}

// Len is the edge's length.
func (e Edge) Len() length.Length { return geom.Distance(e.A, e.B) }

// Floor is the region to cover.
type Floor struct {
	Region geom.Region // wall to wall, less fixtures
	Laying geom.Region // Region less the gap along every edge, and on under the jambs
	Edges  []Edge      // all edges of Region, in the order of its rings
	Main   []Edge      // the walls of the main room, whole, before anything opens off them
	Notes  []string    // what was spread, or rounded, in joining the parts
	Plan   Plan        // what it was built from
}

// Area is the area wall to wall.
func (f *Floor) Area() length.Area { return f.Region.Area() }

// Wall finds the wall of the main room that people mean by a side; where there is none, it says why.
func (f *Floor) Wall(side Side) (wall Edge, why string) { return wallOf(f.Main, side) }

// Perimeter is the length of every edge, doorways and fixtures too.
func (f *Floor) Perimeter() length.Length { return f.Region.Perimeter() }

// Outline gives the edges round the rooms, without those round fixtures that stand free.
func (f *Floor) Outline() []Edge {
	var out []Edge
	i := 0
	for _, ring := range f.Region {
		edges := f.Edges[i : i+len(ring)]
		if i += len(ring); slices.ContainsFunc(edges, func(e Edge) bool { return !e.Fixed }) {
			out = append(out, edges...)
		}
	}
	return out
}

// Extent gives how far the floor reaches from west to east and from south to north.
func (f *Floor) Extent() (eastWest, northSouth length.Length) {
	sw, ne := f.Region.Box()
	return ne.X - sw.X, ne.Y - sw.Y
}

// Broken is a rule that a plan breaks, with its place.
type Broken struct{ Rule, Where string }

func (b Broken) String() string {
	if b.Where == "" {
		return b.Rule
	}
	return b.Where + ": " + b.Rule
}

// Build joins the parts of a plan into a floor. Where a rule is broken there is no floor, and every broken rule is listed.
func Build(p Plan) (*Floor, []Broken) {
	b := builder{plan: p}
	b.outline()
	if len(b.broken) == 0 {
		b.enter("", b.edges())
		b.closets()
		b.doorways()
		b.openings()
		b.check()
		b.fixtures()
	}
	b.checkGaps()
	if len(b.broken) > 0 {
		return nil, b.broken
	}
	f := &Floor{Main: b.rooms[""], Notes: b.notes, Plan: p}
	b.gaps(f)
	if len(f.Laying) == 0 {
		return nil, []Broken{{"the gaps leave no floor", "gap"}}
	}
	return f, nil
}

// Gaps gives the least and the most gap at the walls that have one.
func (f *Floor) Gaps() (least, most length.Length) {
	for _, e := range f.Edges {
		if e.Gap == 0 {
			continue
		}
		if least == 0 || e.Gap < least {
			least = e.Gap
		}
		most = max(most, e.Gap)
	}
	return least, most
}
