package room

import (
	"cmp"
	"fmt"

	"lastrow/calc/geom"
)

func (b *builder) closets() {
	names := tally(len(b.plan.Closets), func(i int) string { return b.plan.Closets[i].name() })
	for i, c := range b.plan.Closets {
		what := names[i]
		if c.Deep <= 0 || c.Deep > mostRoom {
			b.refuse(what, "%s is no depth", b.text(c.Deep))
			continue
		}
		if o, ok := b.place(what, c.Off, c.Wall, c.Wide, c.From, c.FromEnd); ok {
			b.closet(what, c, o)
		}
	}
}

func (c Closet) name() string { return cmp.Or(c.What, "closet") }

// closet joins a closet or a room through its opening. Without one it is open at its full width. With one a room may be wider
// than the wall that it opens off; where then its opening is placed in it, and it nowhere, the opening is in the wall's middle.
func (b *builder) closet(what string, c Closet, o opening) {
	part := func(s string) Edge { return Edge{Wall: what + " " + s, Room: what, Cover: "trim"} }
	whole := c.Opening == 0 || c.Opening == c.Wide
	if (whole || c.What == "") && !b.lies(what, c.Wall, o, o.from, o.to) {
		return
	}
	if whole {
		b.join(what, c, o, []corner{{o.at(o.from, 0), part("side")}, {o.at(o.from, c.Deep), part("back")},
			{o.at(o.to, c.Deep), part("side")}, {o.at(o.to, 0), Edge{}}})
		return
	}
	left := (c.Wide - c.Opening) / 2
	if c.OpeningFrom > 0 {
		left = c.OpeningFrom
	}
	if c.Opening < 0 || left < 0 || left > c.Wide || c.Opening > c.Wide-left {
		b.refuse(what, "an opening of %s does not fit its %s", b.text(c.Opening), b.text(c.Wide))
		return
	}
	if c.Wide > o.e.Len() && c.FromEnd == "" {
		o.from = (o.e.Len()-c.Opening)/2 - left
		o.to = o.from + c.Wide
	}
	in, out, t := o.from+left, o.from+left+c.Opening, b.wallThickness()
	if !b.lies(what, c.Wall, o, in, out) {
		return
	}
	b.notes = append(b.notes, fmt.Sprintf("%s: wall taken as %s thick", what, b.text(t)))
	b.join(what, c, o, []corner{
		{o.at(in, 0), part("jamb")}, {o.at(in, t), part("front")}, {o.at(o.from, t), part("side")}, {o.at(o.from, t+c.Deep), part("back")},
		{o.at(o.to, t+c.Deep), part("side")}, {o.at(o.to, t), part("front")}, {o.at(out, t), part("jamb")}, {o.at(out, 0), Edge{}}})
}

// join splices a closet or a room in, and enters its walls, so that others may open off it. A room's walls go by the side
// that they face.
func (b *builder) join(what string, c Closet, o opening, ring []corner) {
	var walls []Edge
	for i := range ring[:len(ring)-1] {
		e := &ring[i].e
		if e.Wall == what+" jamb" {
			continue
		}
		if e.Side = Toward(ring[i].p, ring[i+1].p).outward(); c.What != "" {
			e.Wall = what + " " + string(e.Side)
		}
		wall := *e
		wall.A, wall.B = ring[i].p, ring[i+1].p
		walls = append(walls, wall)
	}
	b.enter(what, walls)
	b.enter(c.name(), walls) // of several alike, the one told last goes by the bare name
	b.splice(what, o, ring)
}

func (b *builder) doorways() {
	names := tally(len(b.plan.Doorways), func(int) string { return "doorway" })
	for i, d := range b.plan.Doorways {
		what := names[i]
		o, ok := b.along(what, d.Off, d.Wall, d.Wide, d.From, d.FromEnd)
		if !ok {
			continue
		}
		into := d.Into
		if into == 0 {
			into = b.wallThickness() / 2
		}
		if into < 0 || into > mostRoom {
			b.refuse(what, "%s is no depth", b.text(into))
			continue
		}
		jamb := Edge{Wall: what + " jamb", Room: d.Off, Cover: "jamb"}
		line := Edge{Wall: what, Room: d.Off, Side: o.e.Side, Door: true, Cover: "track"}
		b.splice(what, o, []corner{{o.at(o.from, 0), jamb}, {o.at(o.from, into), line}, {o.at(o.to, into), jamb}, {o.at(o.to, 0), Edge{}}})
	}
}

// tally names things by what they are, and numbers those that are alike.
func tally(n int, what func(i int) string) []string {
	of, count := map[string]int{}, map[string]int{}
	for i := range n {
		of[what(i)]++
	}
	out := make([]string, n)
	for i := range out {
		w := what(i)
		count[w]++
		if out[i] = w; of[w] > 1 {
			out[i] = fmt.Sprintf("%s %d", w, count[w])
		}
	}
	return out
}

// boxOf is the box round a room's walls.
func (b *builder) boxOf(room string) (sw, ne geom.Point) {
	var r geom.Ring
	for _, e := range b.rooms[room] {
		r = append(r, e.A, e.B)
	}
	return geom.Region{r}.Box()
}
