// Package draw makes the drawings of a job: the floor's plan, a row, a plank to cut, the underlay and the trim, each a
// sheet of shapes in the job's units.
//
// Line widths and dimensions follow ISO 128 and ISO 129-1: wide lines for what is cut or stands, narrow ones for
// dimensions, filled arrowheads, the figure over its line, read from below or from the right. North is up.
package draw

import (
	"strings"
	"time"

	"lastrow/bot/draw/sheet"
	"lastrow/calc/length"
	"lastrow/calc/plank"
)

// Title is what a drawing says of its job. A zero field is left out.
type Title struct {
	Job, Room     string
	Tape          length.Tape
	Plank         plank.Plank
	Planks, Boxes int64
	Changed       time.Time // when the job last changed
	Doors         []Door    // in the order of the doors round the floor
}

// Door is what a doorway leads to, and the profile that covers the joint there.
type Door struct{ Beyond, Profile string }

// The sizes of lettering, in pixels: none is under leastText.
const (
	leastText  = 22
	plainText  = 24
	headText   = 30
	titleText  = 38
	narrowLine = 1
	middleLine = 2
	wideLine   = 4
)

// The sheet: at least sheetWidth wide and high, with a margin all round.
const (
	sheetWidth = 1080
	sheetLong  = 1560
	margin     = 28
)

// bare gives a length as the tape reads without its unit, which the sheet states once.
func (t Title) bare(l length.Length) string {
	return strings.TrimSuffix(t.Tape.Text(l), " "+t.unit())
}

func (t Title) unit() string {
	if t.Tape.System == length.Metric {
		return "mm"
	}
	return "in"
}

func (t Title) unitNote() string {
	if t.Tape.System == length.Metric {
		return "Lengths are in millimetres unless marked."
	}
	return "Lengths are in inches unless marked."
}

// page is a sheet in the making: the pen is the next free line.
type page struct {
	*sheet.Sheet
	title Title
	pen   int
}

func newPage(name string, width int, t Title) *page {
	return &page{Sheet: &sheet.Sheet{Name: name, W: width}, title: t, pen: margin}
}

// write puts a paragraph at the pen, broken to the sheet's width, and moves the pen under it.
func (p *page) write(s string, size int, bold bool) {
	p.writeAt(margin, s, size, bold)
}

func (p *page) writeAt(x int, s string, size int, bold bool) {
	for _, line := range sheet.Wrap(s, size, bold, p.W-margin-x) {
		line = sheet.Fit(line, size, bold, p.W-margin-x)
		p.Add(sheet.Text{At: sheet.Point{X: x, Y: p.pen}, Size: size, Bold: bold, S: line})
		p.pen += size * 5 / 4
	}
}

// skip leaves room on the sheet.
func (p *page) skip(by int) { p.pen += by }

// done closes the sheet under the pen, at least so high.
func (p *page) done(least int) *sheet.Sheet {
	p.H = max(p.pen+margin, least)
	return p.Sheet
}
