package draw

import (
	"math"

	"lastrow/bot/draw/sheet"
	"lastrow/calc/room"
)

// How walls are drawn, in pixels: their thickness, the least gap that shows, and how far a doorway is shown beyond its line.
const (
	wallPx   = 14
	leastGap = 4
	beyondPx = 34
)

// wallsUnder draws what lies under the floor: walls, and the floor beyond doorways.
func (p *plan) wallsUnder() {
	first := 0
	for _, ring := range p.floor.Region {
		edges := p.floor.Edges[first:min(first+len(ring), len(p.floor.Edges))]
		first += len(ring)
		for i, e := range edges {
			if !e.Door {
				before, after := edges[(i+len(edges)-1)%len(edges)], edges[(i+1)%len(edges)]
				p.takeWall(e)
				p.Add(sheet.Fill{Rings: [][]sheet.Point{p.strip(e, wallPx, atCorner(before, e), atCorner(e, after))}, Tone: sheet.Wall})
			}
		}
	}
	for _, e := range p.floor.Edges {
		if e.Door {
			p.place.Take(p.beyondBox(e))
			p.Add(sheet.Fill{Rings: [][]sheet.Point{p.beside(e, beyondPx, 0)}, Tone: sheet.Beyond, Texture: sheet.Dotted})
		}
	}
	p.Add(sheet.Fill{Rings: p.view.rings(p.floor.Region), Tone: sheet.Gap})
}

// atCorner is how far past a corner a wall is drawn, in pixels, so that it meets the outside of the next in a mitre.
func atCorner(e, next room.Edge) float64 {
	ax, ay, bx, by := float64(e.B.X-e.A.X), float64(e.B.Y-e.A.Y), float64(next.B.X-next.A.X), float64(next.B.Y-next.A.Y)
	turn := math.Atan2(float64(ax*by)-float64(ay*bx), float64(ax*bx)+float64(ay*by))
	return max(0, min(2*wallPx, wallPx*math.Tan(turn/2)))
}

// takeWall keeps labels off a wall: in steps, so that a slanting one does not take a whole box.
func (p *plan) takeWall(e room.Edge) {
	band := p.beside(e, wallPx, 0)
	const steps = 12
	if b := sheet.Bounds(p.beside(e, wallPx, wallPx)...); min(b.W(), b.H()) <= wallPx+2 {
		p.place.Take(b)
		return
	}
	for i := range steps {
		a, b := between(band[0], band[1], i, steps), between(band[0], band[1], i+1, steps)
		c, d := between(band[3], band[2], i, steps), between(band[3], band[2], i+1, steps)
		p.place.Take(sheet.Bounds(a, b, c, d))
	}
}

// between is the i-th of n steps from one point to another.
func between(a, b sheet.Point, i, n int) sheet.Point {
	return sheet.Point{X: a.X + (b.X-a.X)*i/n, Y: a.Y + (b.Y-a.Y)*i/n}
}

// gapsOver draws the gap along each edge that has one, to scale or as wide as shows.
func (p *plan) gapsOver() {
	for _, e := range p.floor.Edges {
		if e.Gap > 0 {
			p.Add(sheet.Fill{Rings: [][]sheet.Point{p.beside(e, -max(leastGap, p.view.px(e.Gap)), 0)}, Tone: sheet.Gap})
		}
		if e.Door {
			p.Add(sheet.Line{A: p.view.at(e.A), B: p.view.at(e.B), Width: wideLine, Dash: sheet.Dashed})
		}
	}
}

// beside is the band along an edge, out from the floor by some pixels (or in, where negative), and longer at both ends.
func (p *plan) beside(e room.Edge, out, longer int) []sheet.Point {
	return p.strip(e, out, float64(longer), float64(longer))
}

// strip is beside with its ends each so much longer.
func (p *plan) strip(e room.Edge, out int, atA, atB float64) []sheet.Point {
	a, b := p.view.at(e.A), p.view.at(e.B)
	ux, uy := unit(a, b)
	nx, ny := -uy, ux // the floor is on the left of the walk, and Y grows downwards on a sheet
	move := func(q sheet.Point, along, across float64) sheet.Point {
		return sheet.Point{
			X: q.X + int(math.Round(ux*along+nx*across)),
			Y: q.Y + int(math.Round(uy*along+ny*across)),
		}
	}
	o := float64(out)
	return []sheet.Point{move(a, -atA, 0), move(b, atB, 0), move(b, atB, o), move(a, -atA, o)}
}

// unit is the direction from one point to another, of length 1.
func unit(a, b sheet.Point) (x, y float64) {
	x, y = float64(b.X-a.X), float64(b.Y-a.Y)
	d := math.Hypot(x, y)
	if d == 0 {
		return 0, 0
	}
	return x / d, y / d
}

// outward is the way out of the floor over an edge: the larger of its two parts, as a side.
func outward(e room.Edge) room.Side {
	dx, dy := e.B.X-e.A.X, e.B.Y-e.A.Y
	switch {
	case dx >= abs(dy):
		return room.South
	case -dx >= abs(dy):
		return room.North
	case dy > 0:
		return room.East
	}
	return room.West
}
