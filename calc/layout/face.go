package layout

import (
	"cmp"
	"slices"

	"lastrow/calc/geom"
	"lastrow/calc/length"
	"lastrow/calc/room"
)

// face is an edge of the floor that runs along the rows, so that the row at it is ripped to what is left.
type face struct {
	at           length.Length // of the laying area's edge, from the start line; of a leaning one where the row is narrow
	lean         length.Length // how much nearer or farther the other end lies
	far          bool          // the floor ends there; else it begins
	outer        bool          // at the first row or the last
	door, hidden bool
	wall         string
	trimmed      bool // a wall of a room, not of something that stands in it
	length       length.Length
}

// mostLean is the part of its length by which a wall may lean and still be taken for one along the rows, which they are
// tapered to: walls are more out of square than 1 in 20 by design alone.
const mostLean = 20

// faces lists the edges that run along the rows, in the frame, or lean a little.
func faces(edges []room.Edge, f frame, area box) []face {
	var out []face
	for _, e := range edges {
		a, b := f.in(e.A), f.in(e.B)
		lean := abs(a.Y - b.Y)
		if lean > hair && lean*mostLean > abs(a.X-b.X) || abs(a.X-b.X) <= hair {
			continue
		}
		c := face{far: b.X < a.X, door: e.Door, hidden: e.Hidden, wall: e.Wall, trimmed: e.Side != "" && e.Cover == "trim", length: abs(b.X - a.X)}
		if lean > hair {
			c.lean = lean
		}
		if c.far {
			c.at = min(a.Y, b.Y) - e.Gap - area.near
			c.outer = abs(c.at-(area.far-area.near)) <= hair
		} else {
			c.at = max(a.Y, b.Y) + e.Gap - area.near
			c.outer = abs(c.at) <= hair
		}
		out = append(out, c)
	}
	return out
}

// left is the width of the row at the face, for a first row: where the wall leans, at the narrow end, and nothing where the
// row runs out on the way.
func (f face) left(width, first length.Length) length.Length {
	narrow := f.leftAt(f.at, width, first)
	if f.lean == 0 {
		return narrow
	}
	wide := f.at + f.lean
	if !f.far {
		wide = f.at - f.lean
	}
	if f.leftAt(wide, width, first) < narrow {
		return 0
	}
	return narrow
}

func (f face) leftAt(at, width, first length.Length) length.Length {
	if f.far && at <= first {
		return at
	}
	if !f.far && at < first {
		return first - at
	}
	over := rowsOver(leftOver(at-first+width, width), width)
	if f.far {
		return over
	}
	return width - over%width
}

// rowsOver is what is over whole rows, where a hair is nothing.
func rowsOver(over, width length.Length) length.Length {
	if over <= hair {
		return width
	}
	return over
}

// fit is how well a first row suits the floor: fewer is better, in this order.
type fit struct {
	first                     length.Length
	rows, doors, seen, unseen int // narrow: first and last rows, rows in sight at a doorway, others in sight, others
	least                     length.Length
	lastRow                   length.Length
	order                     int // of preference
	bound                     int
	chosen                    *joints
	search                    *choosing
	exhausted                 bool // every choice of joints was weighed
	dual                      *dual
	strips                    []strip
	runs                      []stretch
	borrowed                  bool // its bound is by another's weights
}

func (r Request) fitOf(first, deep length.Length, fs []face) fit {
	w := r.Plank.Width
	out := fit{first: first, least: w, lastRow: min(deep, rowsOver(leftOver(max(hair+1, deep-first), w), w))}
	if deep <= first {
		out.lastRow = deep
	} else if out.lastRow < r.Rules.LeastRow {
		out.rows++
	}
	if min(first, deep) < r.Rules.LeastRow {
		out.rows++
	}
	for _, f := range fs {
		left := f.left(w, first)
		narrow := left < r.Rules.LeastRow
		switch {
		case f.door && !f.hidden && 3*left < w && f.length > w:
			out.doors++
		case narrow && !f.outer && !f.hidden:
			out.seen++
		case narrow && !f.outer:
			out.unseen++
		}
		if !f.hidden {
			out.least = min(out.least, left)
		}
	}
	return out
}

// compare orders by what the rules and the eye ask.
func (f fit) compare(g fit) int {
	return cmp.Or(cmp.Compare(f.rows, g.rows), cmp.Compare(f.doors, g.doors), cmp.Compare(f.seen, g.seen), cmp.Compare(f.unseen, g.unseen))
}

// mostMarks bounds the first rows that are told apart on a floor of very many corners.
const mostMarks = 256

// firstRows lists the widths worth trying for the first row: those at which a row's line falls on a corner of the floor or
// a row at a face comes out just as narrow as is minded, one between each two, a whole plank, and rows ripped alike. The
// spans are what lies between: within each the row lines fall alike among the corners, and the rows are narrow alike.
func (r Request) firstRows(laying geom.Region, area box, fs []face) (widths []length.Length, between []span) {
	w, deep := r.Plank.Width, area.far-area.near
	if r.FirstRow > 0 {
		return []length.Length{min(r.FirstRow, w)}, nil
	}
	marks := r.marks(laying, area, fs)
	widths = []length.Length{(w + leftOver(deep, w)) / 2}
	last := length.Length(0)
	for _, m := range marks {
		if m-last > 4*hair {
			widths = append(widths, (last+m)/2)
			between = append(between, span{last + 2*hair, m - 2*hair})
		}
		widths, last = append(widths, m), m
	}
	slices.Sort(widths)
	return slices.Compact(widths), between
}

// marks lists the first rows' widths at which something changes, the least first; the last is a whole plank.
func (r Request) marks(laying geom.Region, area box, fs []face) []length.Length {
	w, least := r.Plank.Width, r.Rules.LeastRow
	marks := []length.Length{w, min(least, w)}
	add := func(at length.Length) {
		if len(marks) < mostMarks {
			marks = append(marks, at-floorDiv(at-1, w)*w)
		}
	}
	for _, ring := range laying {
		for _, p := range ring {
			add(p.Y - area.near)
		}
	}
	add(area.far - area.near - least)
	for _, f := range fs {
		for _, narrow := range [...]length.Length{least, w / 3} {
			if f.far {
				narrow = -narrow
			}
			add(f.at + narrow)
		}
	}
	slices.Sort(marks)
	return slices.Compact(marks)
}
