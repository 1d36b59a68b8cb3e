package room

import (
	"cmp"
	"slices"

	"lastrow/calc/geom"
	"lastrow/calc/length"
)

// placed is a fixture on the floor, as a box.
type placed struct {
	what   string
	round  bool
	sw, ne geom.Point
}

func (p placed) ring() geom.Ring {
	return geom.Ring{p.sw, {X: p.ne.X, Y: p.sw.Y}, p.ne, {X: p.sw.X, Y: p.ne.Y}}
}

func (p placed) overlaps(q placed) bool {
	return p.sw.X < q.ne.X && q.sw.X < p.ne.X && p.sw.Y < q.ne.Y && q.sw.Y < p.ne.Y
}

func (b *builder) fixtures() {
	var all []placed
	names := tally(len(b.plan.Fixtures), func(i int) string { return cmp.Or(b.plan.Fixtures[i].What, "fixture") })
	for i, f := range b.plan.Fixtures {
		f.What = names[i]
		p, ok := b.fixture(f)
		if !ok {
			continue
		}
		for _, q := range all {
			if p.overlaps(q) {
				b.refuse(p.what, "it overlaps %s", q.what)
			}
		}
		all = append(all, p)
	}
	if len(all) > 0 && len(b.broken) == 0 {
		b.carve(all)
	}
}

// fixture sizes and places one fixture, and refuses one that does not lie on the floor whole.
func (b *builder) fixture(f Fixture) (p placed, ok bool) {
	wide, deep := f.Wide, f.Deep
	if f.Diameter > 0 {
		wide, deep = f.Diameter, f.Diameter
	}
	if deep == 0 {
		deep = wide
	}
	if wide <= 0 || deep <= 0 || wide > mostRoom || deep > mostRoom {
		b.refuse(f.What, "%s x %s is no size", b.text(wide), b.text(deep))
		return p, false
	}
	if _, known := b.rooms[f.In]; !known {
		b.refuse(f.What, "there is no %s for it: say that one first", f.In)
		return p, false
	}
	if f.In != "" && slices.ContainsFunc(b.rooms[f.In], Edge.slants) {
		b.refuse(f.What, "the %s lies at a slant: place it from the walls of the main room", f.In)
		return p, false
	}
	if max(f.FromX, -f.FromX, f.FromY, -f.FromY) > mostRoom {
		b.refuse(f.What, "it lies outside the floor")
		return p, false
	}
	p = placed{what: f.What, round: f.Diameter > 0, sw: b.stands(f, wide, deep)}
	p.ne = geom.Point{X: p.sw.X + wide, Y: p.sw.Y + deep}
	if box := (geom.Region{p.ring()}); len(box.Less([]geom.Ring{points(b.ring)})) > 0 || box.Cuts(b.region()[1:]) {
		b.refuse(f.What, "it lies outside the floor, or partly so")
		return p, false
	}
	return p, true
}

// stands gives the south-west corner of a fixture.
func (b *builder) stands(f Fixture, wide, deep length.Length) geom.Point {
	sw, ne := b.boxOf(f.In)
	p := geom.Point{X: sw.X + f.FromX, Y: sw.Y + f.FromY}
	if f.SideX == East {
		p.X = ne.X - f.FromX - wide
	}
	if f.SideY == North {
		p.Y = ne.Y - f.FromY - deep
	}
	if f.Diameter > 0 { // a pipe is placed by its centre
		p.X += sign(f.SideX == East) * wide / 2
		p.Y += sign(f.SideY == North) * deep / 2
	}
	return p
}

// carve takes the fixtures off the floor. The floor's edges stay what they were; the new ones are the fixtures'.
func (b *builder) carve(all []placed) {
	var boxes []geom.Ring
	for _, p := range all {
		boxes = append(boxes, p.ring())
	}
	first := b.ring[0].p
	var outer, holes [][]corner
	rings := append([][]corner{b.ring}, b.holes...)
	for _, o := range b.region().Less(boxes) {
		ring := make([]corner, len(o.Ring))
		for i, p := range o.Ring {
			ring[i] = corner{p, source(rings, all, o.From[i])}
		}
		if o.Ring.Anticlockwise() {
			outer = append(outer, begin(ring, first))
		} else {
			holes = append(holes, ring)
		}
	}
	if len(outer) != 1 {
		b.refuse("fixtures", "they part the floor, or leave none: tell each part as a job of its own")
		return
	}
	b.ring, b.holes = outer[0], holes
}

// source is the edge that a piece of outline came from.
func source(rings [][]corner, all []placed, s geom.Source) Edge {
	if s.Ring < len(rings) {
		return rings[s.Ring][s.Edge].e
	}
	p := all[s.Ring-len(rings)]
	return Edge{Wall: p.what, Cover: "trim", Round: p.round, Fixed: true}
}

// begin turns a ring so that it begins at a corner, if it has that corner.
func begin(ring []corner, at geom.Point) []corner {
	k := max(0, slices.IndexFunc(ring, func(c corner) bool { return c.p == at }))
	return append(ring[k:len(ring):len(ring)], ring[:k]...)
}
