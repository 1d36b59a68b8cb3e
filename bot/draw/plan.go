package draw

import (
	"fmt"

	"lastrow/bot/draw/sheet"
	"lastrow/calc/layout"
	"lastrow/calc/length"
	"lastrow/calc/room"
)

// Lanes round the floor, in pixels: for labels beside the walls, and beyond them for overall dimensions.
const (
	labelLane = 104
	outerLane = 56
)

// detailPx is the least width of a row, in pixels, that takes lettering.
const detailPx = leastText

// plan is a plan in the making.
type plan struct {
	*page
	layout *layout.Layout
	run    layout.Direction // of the rows as they lie on the sheet; see lie
	floor  *room.Floor
	view   view
	place  *sheet.Placer
	ground sheet.Fill // the floor on the sheet
	rowPx  int
	notes  []string // what had no room on the plan, for under it
	sizes  []string // lengths that had no room in their pieces
	letter int      // the key letters given so far
}

// Plan draws the whole floor to scale. A floor too large for lettering on every row is an overview, which Rows goes with.
func Plan(l *layout.Layout, t Title) *sheet.Sheet {
	p := newPlan("plan", l.Request.Floor, t)
	p.layout, p.run = l, lie(l)
	p.rowPx = p.view.px(l.Request.Plank.Width)
	p.header("floor plan", t.goods())
	p.makeRoom()
	p.wallsUnder()
	p.pieces()
	p.gapsOver()
	p.things()
	p.frame()
	p.startMark()
	p.rowNumbers()
	p.rowWidths()
	p.doorLabels()
	p.lengths()
	p.edgeLabels()
	p.pen = p.view.box.Y1 + labelLane + outerLane
	p.legend()
	p.Alt = p.describe()
	return p.done(sheetWidth)
}

// Crowded says whether a plan is an overview alone, without the lengths of its pieces.
func Crowded(l *layout.Layout) bool {
	p := newPlan("", l.Request.Floor, Title{})
	return p.view.px(l.Request.Plank.Width) < detailPx
}

// level is the sine of the slant up to which rows are drawn and lettered as if they lay level.
const level = 0.05

// lie is how rows lie on the sheet: east-west or north-south, or nearly so, else at a slant.
func lie(l *layout.Layout) layout.Direction {
	switch east, north := l.Heading(); {
	case max(north, -north) < level:
		return layout.EastWest
	case max(east, -east) < level:
		return layout.NorthSouth
	}
	return layout.Diagonal
}

// newPlan chooses the sheet, upright or lying as the floor is, and the scale.
func newPlan(name string, f *room.Floor, t Title) *plan {
	west, south, east, north := bounds(f.Region)
	w, h := int64(east-west), int64(north-south)
	width := sheetWidth
	if w > h*5/4 {
		width = sheetLong
	}
	side := 2*(margin+labelLane) + outerLane
	p := &plan{page: newPage(name, width, t), floor: f}
	p.view = newView(f.Region, sheet.Point{X: margin + labelLane, Y: 0}, width-side, sheetLong-side)
	spare := width - side - p.view.box.W()
	p.view = p.view.moved(spare/2, 0)
	return p
}

// makeRoom puts the floor under the header, and keeps labels off it and off the writing.
func (p *plan) makeRoom() {
	p.view = p.view.moved(0, p.pen+labelLane+outerLane)
	b := p.view.box
	p.ground = sheet.Fill{Rings: p.view.rings(p.floor.Region)}
	p.place = sheet.NewPlacer(sheet.Box{X0: margin / 2, Y0: p.pen, X1: p.W - margin/2, Y1: b.Y1 + labelLane + outerLane})
}

// describe is the plan in words.
func (p *plan) describe() string {
	l := p.layout
	return fmt.Sprintf("Floor plan: %d rows %s from the %s, laid from %s to %s, %d planks; first row %s, last row %s.",
		len(l.Rows), l.Along, l.Start(), l.From, l.To, l.Planks, p.width(0), p.width(len(l.Rows)-1))
}

func (p *plan) width(row int) string {
	if row < 0 || row >= len(p.layout.Rows) {
		return "none"
	}
	return p.title.Tape.Text(p.layout.Rows[row].Width)
}

func abs(l length.Length) length.Length {
	if l < 0 {
		return -l
	}
	return l
}
