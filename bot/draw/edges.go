package draw

import (
	"lastrow/bot/draw/sheet"
	"lastrow/calc/geom"
	"lastrow/calc/room"
)

// things draws what stands on the floor and names it.
func (p *plan) things() {
	i := 0
	for _, ring := range p.floor.Region {
		if !ring.Anticlockwise() && i < len(p.floor.Edges) && p.floor.Edges[i].Fixed {
			p.thing(ring, p.floor.Edges[i].Wall)
		}
		i += len(ring)
	}
}

func (p *plan) thing(ring geom.Ring, name string) {
	f := sheet.Fill{Rings: p.view.rings(geom.Region{ring}), Tone: sheet.Thing}
	p.Add(f)
	p.Add(sheet.Outline(f.Rings[0], middleLine, sheet.Solid)...)
	b := f.Area()
	p.place.Take(b)
	t := sheet.Text{Size: leastText, S: name, Clear: true, Tone: sheet.Thing}.Centred(b.Centre())
	if t.Box().Grow(4).Within(b) {
		p.Add(t)
		return
	}
	p.Add(sheet.Line{A: sheet.Point{X: b.X0, Y: b.Y0}, B: sheet.Point{X: b.X1, Y: b.Y1}, Width: narrowLine},
		sheet.Line{A: sheet.Point{X: b.X0, Y: b.Y1}, B: sheet.Point{X: b.X1, Y: b.Y0}, Width: narrowLine})
	p.lead(b, name)
}

// lead names a thing from the free ground near it, with a line to it.
func (p *plan) lead(b sheet.Box, name string) {
	t := sheet.Text{Size: leastText, S: name, Clear: true, Tone: sheet.Paper}
	w, h := t.Box().W(), t.Box().H()
	m := b.Centre()
	for _, far := range []int{24, 60, 110} {
		for _, at := range []sheet.Point{
			{X: b.X1 + far + w/2, Y: b.Y0 - far/2 - h/2}, {X: b.X0 - far - w/2, Y: b.Y0 - far/2 - h/2},
			{X: b.X1 + far + w/2, Y: b.Y1 + far/2 + h/2}, {X: b.X0 - far - w/2, Y: b.Y1 + far/2 + h/2},
		} {
			if placed, ok := p.place.Place(t.Centred(at)); ok {
				end := sheet.Point{X: min(max(m.X, placed.Box().X0), placed.Box().X1), Y: placed.Box().Centre().Y}
				p.Add(sheet.Line{A: m, B: end, Width: narrowLine}, placed)
				return
			}
		}
	}
	p.note("Not named on the plan: " + name + ".")
}

// doorLabels says at each doorway how wide it is, what lies beyond and what covers the joint.
func (p *plan) doorLabels() {
	n := 0
	for _, e := range p.floor.Edges {
		if !e.Door {
			continue
		}
		var d Door
		if n < len(p.title.Doors) {
			d = p.title.Doors[n]
		}
		n++
		p.doorLabel(e, d)
	}
}

func (p *plan) doorLabel(e room.Edge, d Door) {
	wide := "door " + p.title.bare(e.Len())
	if d.Profile == "" {
		d.Profile = e.Cover
	}
	side := outward(e)
	lines := some(join(wide, d.Profile), to(d.Beyond))
	off := beyondPx + 4
	for _, s := range lines {
		t := sheet.Text{Size: leastText, S: s, Turned: side == room.East || side == room.West}
		placed, ok := p.place.Place(append(p.besideWall(t, e, off), p.besideWall(t, e, off+30)...)...)
		if !ok {
			p.note(e.Wall + ": " + s + ".")
			continue
		}
		p.Add(placed)
		off += leastText + 10
	}
}

func (p *plan) beyondBox(e room.Edge) sheet.Box {
	return sheet.Bounds(p.beside(e, beyondPx, 0)...)
}

func join(a, b string) string {
	if b == "" {
		return a
	}
	return a + ", " + b
}

func to(beyond string) string {
	if beyond == "" {
		return ""
	}
	return "to " + beyond
}
