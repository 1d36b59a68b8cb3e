package draw

import (
	"lastrow/bot/draw/sheet"
	"lastrow/calc/geom"
	"lastrow/calc/length"
)

// view maps the floor onto a sheet: num pixels for den nanometres, west and north at the box's top left corner.
type view struct {
	box         sheet.Box
	west, north length.Length
	num, den    int64
}

// bounds gives a region's outermost places.
func bounds(r geom.Region) (west, south, east, north length.Length) {
	p := r[0][0]
	west, east, south, north = p.X, p.X, p.Y, p.Y
	for _, ring := range r {
		for _, p := range ring {
			west, east = min(west, p.X), max(east, p.X)
			south, north = min(south, p.Y), max(north, p.Y)
		}
	}
	return west, south, east, north
}

// newView fits a region into a width and a height, with its top left corner at a point.
func newView(r geom.Region, at sheet.Point, width, height int) view {
	west, south, east, north := bounds(r)
	v := view{west: west, north: north, num: int64(width), den: int64(east - west)}
	if int64(north-south)/int64(height) > int64(east-west)/int64(width) {
		v.num, v.den = int64(height), int64(north-south)
	}
	v.box = sheet.Box{X0: at.X, Y0: at.Y, X1: at.X + v.px(east-west), Y1: at.Y + v.px(north-south)}
	return v
}

// moved shifts the view.
func (v view) moved(dx, dy int) view {
	v.box = sheet.Box{X0: v.box.X0 + dx, Y0: v.box.Y0 + dy, X1: v.box.X1 + dx, Y1: v.box.Y1 + dy}
	return v
}

// px is a length in pixels, to the nearest.
func (v view) px(l length.Length) int {
	return int(floorDiv(2*int64(l)*v.num+v.den, 2*v.den))
}

// at maps a point.
func (v view) at(p geom.Point) sheet.Point {
	return sheet.Point{X: v.box.X0 + v.px(p.X-v.west), Y: v.box.Y0 + v.px(v.north-p.Y)}
}

// rings maps a region.
func (v view) rings(r geom.Region) [][]sheet.Point {
	out := make([][]sheet.Point, len(r))
	for i, ring := range r {
		out[i] = make([]sheet.Point, len(ring))
		for j, p := range ring {
			out[i][j] = v.at(p)
		}
	}
	return out
}

// boxOf maps a region's bounds.
func (v view) boxOf(r geom.Region) sheet.Box {
	west, south, east, north := bounds(r)
	a, b := v.at(geom.Point{X: west, Y: north}), v.at(geom.Point{X: east, Y: south})
	return sheet.Box{X0: a.X, Y0: a.Y, X1: b.X, Y1: b.Y}
}

func floorDiv(a, b int64) int64 {
	q := a / b
	if a%b != 0 && a < 0 {
		q--
	}
	return q
}
