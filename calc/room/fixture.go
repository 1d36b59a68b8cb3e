package room

import (
	"lastrow/calc/geom"
	"lastrow/calc/length"
)

func (b *builder) fixtures() {
	for i, f := range b.plan.Fixtures {
		what := f.What
		if what == "" {
			what = "fixture"
		}
		what = numbered(what, i, len(b.plan.Fixtures))
		wide, deep := f.Wide, f.Deep
		if f.Diameter > 0 {
			wide, deep = f.Diameter, f.Diameter
		}
		if deep == 0 {
			deep = wide
		}
		if wide <= 0 || deep <= 0 || wide > mostRoom || deep > mostRoom {
			b.refuse(what, "%s x %s is no size", wide, deep)
			continue
		}
		b.fixture(what, b.place(f, wide, deep), wide, deep)
	}
}

// place gives the south-west corner of a fixture.
func (b *builder) place(f Fixture, wide, deep length.Length) geom.Point {
	sw, ne := b.main()
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

// main is the box round the main room, without closets and doorways.
func (b *builder) main() (sw, ne geom.Point) {
	var r geom.Ring
	for _, c := range b.ring {
		if c.e.Side != "" && !c.e.Door {
			r = append(r, c.p)
		}
	}
	return geom.Region{r}.Box()
}

// fixture goes round it: as a hole, or as a notch out of the walls that it stands against.
func (b *builder) fixture(what string, p geom.Point, wide, deep length.Length) {
	box := geom.Ring{p, {X: p.X, Y: p.Y + deep}, {X: p.X + wide, Y: p.Y + deep}, {X: p.X + wide, Y: p.Y}} // clockwise
	region := b.region()
	for _, q := range box {
		if !region.Contains(q) {
			b.refuse(what, "it lies outside the floor, or on another fixture")
			return
		}
	}
	ring := make([]corner, 4)
	for i, q := range box {
		ring[i] = corner{q, Edge{Wall: what, Cover: "trim"}}
	}
	for i := range box {
		if b.notch(ring, i) {
			return
		}
	}
	b.holes = append(b.holes, ring)
}

// notch splices the fixture into the wall that its side i stands flush against, if one does.
func (b *builder) notch(box []corner, i int) bool {
	from, to := box[i].p, box[(i+1)%4].p
	for k := range b.ring {
		e := b.edge(k)
		if e.A.X != e.B.X && e.A.Y != e.B.Y || !on(e, from) || !on(e, to) {
			continue
		}
		// Box and wall run opposite ways: the detour runs in along the box's other three sides.
		detour := []corner{box[(i+1)%4], box[(i+2)%4], box[(i+3)%4], {from, e}}
		ring := append([]corner{}, b.ring[:k+1]...)
		ring = append(ring, detour...)
		b.ring = trim(append(ring, b.ring[k+1:]...))
		return true
	}
	return false
}

// trim drops edges of no length and edges that run back along the one before.
func trim(ring []corner) []corner {
	for i := 0; i < len(ring) && len(ring) > 3; {
		n := len(ring)
		prev, next := (i+n-1)%n, (i+1)%n
		a, p, q := ring[prev].p, ring[i].p, ring[next].p
		switch {
		case p == q:
			ring = append(ring[:i:i], ring[i+1:]...)
			i = 0
		case geom.Orient(a, p, q) == 0 && back(a, p, q):
			if geom.Distance(p, q) > geom.Distance(a, p) {
				ring[prev].e = ring[i].e
			}
			ring = append(ring[:i:i], ring[i+1:]...)
			i = 0
		default:
			i++
		}
	}
	return ring
}

// back says whether the way from p to q runs back towards a.
func back(a, p, q geom.Point) bool {
	return (p.X-a.X > 0 && q.X-p.X < 0) || (p.X-a.X < 0 && q.X-p.X > 0) || (p.Y-a.Y > 0 && q.Y-p.Y < 0) || (p.Y-a.Y < 0 && q.Y-p.Y > 0)
}

func (b *builder) region() geom.Region {
	r := geom.Region{points(b.ring)}
	for _, h := range b.holes {
		r = append(r, points(h))
	}
	return r
}

func points(cs []corner) geom.Ring {
	r := make(geom.Ring, len(cs))
	for i, c := range cs {
		r[i] = c.p
	}
	return r
}

// check refuses walls that cross and parts that overlap, each with its place.
func (b *builder) check() {
	for _, x := range b.region().Crossings(3) {
		b.refuse(b.name(x.A)+" and "+b.name(x.B), "they cross or overlap")
	}
}

func (b *builder) name(p geom.Point) string {
	for _, ring := range append([][]corner{b.ring}, b.holes...) {
		for _, c := range ring {
			if c.p == p {
				return c.e.Wall
			}
		}
	}
	return "wall"
}
