package layout

import (
	"slices"

	"lastrow/calc/geom"
	"lastrow/calc/length"
)

// strip is a row before it has joints: its part of the laying area, in the frame.
type strip struct {
	near, far length.Length // the row's lines
	parts     []geom.Region
}

// stretch is one run to find joints for.
type stretch struct {
	row, run    int // by index
	left, right length.Length
	near, far   length.Length // of the part itself
	// nearLock and farLock say whether a neighbour meets the near and the far edge.
	nearLock, farLock bool
	// leftSquare and rightSquare say whether the run ends square to the row, at least in part.
	leftSquare, rightSquare bool
	before                  []int // the stretches of the row before that it lies against
}

func (s stretch) len() length.Length   { return s.right - s.left }
func (s stretch) width() length.Length { return s.far - s.near }

// slice cuts the laying area into rows, the first as wide as told.
func slice(laying geom.Region, width, first length.Length) []strip {
	b := boxOf(laying)
	var out []strip
	rest := laying
	near, far := b.near, b.near+first
	for ; b.far-far > hair; near, far = far, far+width {
		var here geom.Region
		here, rest = split(rest, atY, far)
		out = append(out, strip{near: near, far: far, parts: laid(parts(here))})
	}
	if far = min(far, b.far); len(rest) == 0 { // a tip too fine to be there
		return out
	}
	return append(out, strip{near: near, far: far, parts: laid(parts(under(rest, far)))})
}

// under takes a hair off what lies beyond a line.
func under(r geom.Region, far length.Length) geom.Region {
	if boxOf(r).far <= far {
		return r
	}
	return turned(r, func(p geom.Point) geom.Point { return geom.Point{X: p.X, Y: min(p.Y, far)} })
}

// laid leaves out what rounding alone makes of a wall that lies along a row's line: nothing to lay.
func laid(parts []geom.Region) []geom.Region {
	return slices.DeleteFunc(parts, func(r geom.Region) bool {
		b := boxOf(r)
		return min(b.right-b.left, b.far-b.near) <= hair
	})
}

// stretches lists the runs of all rows, row by row from the left, and which of them lie against each other.
func stretches(rows []strip) []stretch {
	var out []stretch
	prev := 0
	for i, row := range rows {
		start := len(out)
		for j, p := range row.parts {
			b := boxOf(p)
			s := stretch{row: i, run: j, left: b.left, right: b.right, near: b.near, far: b.far, leftSquare: squareAt(p, b.left), rightSquare: squareAt(p, b.right)}
			for k := prev; k < start; k++ {
				if out[k].right > s.left && s.right > out[k].left && s.near == row.near && out[k].far == row.near {
					s.before = append(s.before, k)
					s.nearLock, out[k].farLock = true, true
				}
			}
			out = append(out, s)
		}
		prev = start
	}
	return out
}

// squareAt says whether a part has an edge square to the row at one end.
func squareAt(part geom.Region, x length.Length) bool {
	for _, ring := range part {
		for i, p := range ring {
			if p.X == x && ring[(i+1)%len(ring)].X == x {
				return true
			}
		}
	}
	return false
}
