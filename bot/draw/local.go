package draw

import (
	"lastrow/bot/draw/sheet"
	"lastrow/calc/geom"
	"lastrow/calc/length"
)

// board maps what lies along a row onto a sheet: X to the right, the near edge below, or above where it is turned over.
// Lengths and widths have each their own scale.
type board struct {
	box        sheet.Box
	left, near length.Length
	long, deep length.Length // what the box shows
	turned     bool
}

func (b board) x(l length.Length) int {
	return b.box.X0 + scaled(l-b.left, b.box.W(), b.long)
}

func (b board) y(w length.Length) int {
	d := scaled(w-b.near, b.box.H(), b.deep)
	if b.turned {
		return b.box.Y0 + d
	}
	return b.box.Y1 - d
}

// scaled is l in pixels where whole is px of them.
func scaled(l length.Length, px int, whole length.Length) int {
	return int(floorDiv(2*int64(l)*int64(px)+int64(whole), 2*int64(whole)))
}

func (b board) rings(r geom.Region) [][]sheet.Point {
	out := make([][]sheet.Point, len(r))
	for i, ring := range r {
		for _, p := range ring {
			out[i] = append(out[i], sheet.Point{X: b.x(p.X), Y: b.y(p.Y)})
		}
	}
	return out
}

// shift moves a region.
func shift(r geom.Region, dx, dy length.Length) geom.Region {
	out := make(geom.Region, len(r))
	for i, ring := range r {
		for _, p := range ring {
			out[i] = append(out[i], geom.Point{X: p.X + dx, Y: p.Y + dy})
		}
	}
	return out
}
