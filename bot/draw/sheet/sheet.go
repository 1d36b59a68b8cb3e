// Package sheet draws a drawing: a list of flat shapes, in order, on a sheet measured in whole pixels from its top left
// corner. The same list gives the same picture on every machine, and its text is what tests compare.
//
// It knows tones, hatching, lines and text, and keeps labels apart; what they stand for is the caller's matter.
package sheet

import (
	"fmt"
	"strings"
)

// Point is a place on a sheet: X pixels from the left, Y from the top.
type Point struct{ X, Y int }

// Box is an upright rectangle from (X0, Y0) up to, and without, (X1, Y1).
type Box struct{ X0, Y0, X1, Y1 int }

// Sheet is one picture.
type Sheet struct {
	Name   string // of the file, without an ending: "plan", "row-5"
	Alt    string // what it shows, for those who can't see it
	W, H   int
	Shapes []Shape
}

// Shape is one mark on a sheet. Its String is one line, and tells everything about it.
type Shape interface {
	fmt.Stringer
	paint(*canvas)
}

// Add puts shapes over those there are.
func (s *Sheet) Add(shapes ...Shape) { s.Shapes = append(s.Shapes, shapes...) }

// String lists the shapes, one a line, under the size of the sheet.
func (s *Sheet) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "sheet %s %d x %d\nalt %s\n", s.Name, s.W, s.H, s.Alt)
	for _, shape := range s.Shapes {
		b.WriteString(shape.String())
		b.WriteByte('\n')
	}
	return b.String()
}

// Texts are the labels on the sheet, in order.
func (s *Sheet) Texts() []Text {
	var out []Text
	for _, shape := range s.Shapes {
		if t, ok := shape.(Text); ok {
			out = append(out, t)
		}
	}
	return out
}

// Centre is the middle of a box.
func (b Box) Centre() Point { return Point{(b.X0 + b.X1) / 2, (b.Y0 + b.Y1) / 2} }

// W is a box's width.
func (b Box) W() int { return b.X1 - b.X0 }

// H is a box's height.
func (b Box) H() int { return b.Y1 - b.Y0 }

// Grow widens a box by a margin on all sides.
func (b Box) Grow(by int) Box { return Box{b.X0 - by, b.Y0 - by, b.X1 + by, b.Y1 + by} }

// Meets says whether two boxes share a pixel.
func (b Box) Meets(c Box) bool { return b.X0 < c.X1 && c.X0 < b.X1 && b.Y0 < c.Y1 && c.Y0 < b.Y1 }

// Within says whether a box lies wholly in another.
func (b Box) Within(c Box) bool {
	return b.X0 >= c.X0 && b.X1 <= c.X1 && b.Y0 >= c.Y0 && b.Y1 <= c.Y1
}

// Corners gives the box as a polygon.
func (b Box) Corners() []Point {
	return []Point{{b.X0, b.Y0}, {b.X1, b.Y0}, {b.X1, b.Y1}, {b.X0, b.Y1}}
}

// Bounds is the smallest box about points.
func Bounds(points ...Point) Box {
	b := Box{points[0].X, points[0].Y, points[0].X, points[0].Y}
	for _, p := range points {
		b.X0, b.X1 = min(b.X0, p.X), max(b.X1, p.X)
		b.Y0, b.Y1 = min(b.Y0, p.Y), max(b.Y1, p.Y)
	}
	return b
}
