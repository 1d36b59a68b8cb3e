package draw

import (
	"lastrow/bot/draw/sheet"
	"lastrow/calc/layout"
)

// ways are directions on a sheet, X to the right and Y down.
var ways = map[string]sheet.Point{
	"east": {X: 1}, "west": {X: -1}, "north": {Y: -1}, "south": {Y: 1},
	"north-east": {X: 1, Y: -1}, "south-west": {X: -1, Y: 1}, "north-west": {X: -1, Y: -1}, "south-east": {X: 1, Y: 1},
}

// startMark marks the corner to start in, and the way to lay along the first row, outside the wall.
func (p *plan) startMark() {
	row := &p.layout.Rows[0]
	if len(row.Runs) == 0 || len(row.Runs[0].Pieces) == 0 {
		return
	}
	first := row.Runs[0].Pieces[0].Shape
	b := p.view.boxOf(first)
	if p.run == layout.Diagonal {
		p.startInside(middle(p.view.rings(first)[0]))
		return
	}
	wall, along := ways[string(p.layout.StartWall)], ways[p.layout.To]
	corner := corner(b, wall, along)
	p.cornerMark(corner, wall, along)
	p.startArrow(corner, wall, along)
}

// corner is a box's corner at a wall, where a row begins.
func corner(b sheet.Box, wall, along sheet.Point) sheet.Point {
	c := sheet.Point{X: b.X0, Y: b.Y0}
	if wall.X > 0 || along.X < 0 {
		c.X = b.X1
	}
	if wall.Y > 0 || along.Y < 0 {
		c.Y = b.Y1
	}
	return c
}

// cornerMark is a black triangle in the corner.
func (p *plan) cornerMark(c, wall, along sheet.Point) {
	const leg = 30
	a := sheet.Point{X: c.X + along.X*leg, Y: c.Y + along.Y*leg}
	b := sheet.Point{X: c.X - wall.X*leg, Y: c.Y - wall.Y*leg}
	p.Add(sheet.Fill{Rings: [][]sheet.Point{{c, a, b}}, Tone: sheet.Black})
	p.place.Take(sheet.Bounds(c, a, b))
}

// startArrow is an arrow along the wall, from the corner, in the outer lane, and what it means.
func (p *plan) startArrow(c, wall, along sheet.Point) {
	const long = 120
	off := labelLane - 4
	if along.Y == 0 {
		off = labelLane + 16
	}
	a := sheet.Point{X: c.X + wall.X*off, Y: c.Y + wall.Y*off}
	b := sheet.Point{X: a.X + along.X*long, Y: a.Y + along.Y*long}
	p.arrow(a, b)
	p.Add(sheet.Line{A: sheet.Point{X: c.X + wall.X*(wallPx+2), Y: c.Y + wall.Y*(wallPx+2)}, B: a, Width: middleLine})
	p.place.Take(sheet.Bounds(c, a).Grow(2))
	t := sheet.Text{Size: plainText + 2, Bold: true, S: "Start here, lay " + p.layout.To, Turned: along.Y != 0}
	half := max(t.Box().W(), t.Box().H())/2 + 20
	if placed, ok := p.place.Place(t.Centred(sheet.Point{X: b.X + along.X*half, Y: b.Y + along.Y*half})); ok {
		p.Add(placed)
	}
}

func (p *plan) arrow(a, b sheet.Point) {
	ux, uy := unit(a, b)
	back := sheet.Point{X: b.X - int(ux*22), Y: b.Y - int(uy*22)}
	p.Add(sheet.Line{A: a, B: back, Width: wideLine + 2}, sheet.Head{Tip: b, From: a, Size: 30})
	p.place.Take(sheet.Bounds(a, b).Grow(12))
}

// startInside marks the first piece of slanting rows in the middle.
func (p *plan) startInside(m sheet.Point) {
	east, north := p.layout.Heading()
	run := p.layout.Rows[0].Runs[0]
	long := float64(min(80, max(34, p.view.px(run.Right-run.Left))))
	p.arrow(m, step(m, long*east, -long*north))
	p.lead(sheet.Bounds(m, m).Grow(14), "start here, lay "+p.layout.To)
}
