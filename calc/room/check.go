package room

import "lastrow/calc/geom"

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
