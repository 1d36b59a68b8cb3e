package layout

import "lastrow/calc/length"

// Count is how rows of one face width fill a distance: N rows, the first and last as wide as said, the others whole.
// Balanced, where not 0, is the width of first and last row ripped alike, for a last row that would be under the least.
type Count struct {
	N                     int
	First, Last, Balanced length.Length
}

// CountRows fills a distance of at least one nanometre with rows of a face width, the first row ripped to first where
// that is not 0. A last row that would be exactly nothing is none: 112 1/2 in of 7 1/2 in planks is 15 whole rows.
func CountRows(distance, width, first, least length.Length) Count {
	c := Count{First: width}
	if first > 0 {
		c.First = min(first, width)
	}
	if c.First >= distance {
		return Count{N: 1, First: distance, Last: distance}
	}
	rest := distance - c.First
	whole := (rest + width - 1) / width
	c.N = int(whole) + 1
	c.Last = rest - (whole-1)*width
	if c.Last < least && first == 0 {
		c.Balanced = (width + c.Last) / 2
	}
	return c
}
