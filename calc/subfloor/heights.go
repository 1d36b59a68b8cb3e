package subfloor

import (
	"fmt"

	"lastrow/calc/length"
)

// Worst is the largest deviation found in a row of heights, and where.
type Worst struct {
	At        int           // the point that stands off, from 0
	Deviation length.Length // from the line between the points Reach to either side; never negative
	Reach     int           // points to either side
	Base      length.Length // distance between those points
	Allowance Allowance
	Kept      bool
}

// Grid judges heights taken at equal spacing along a line, by DIN 18202:2013 Table 3: the deviation of a point is its
// height less the mean of the points to either side, and the base is the distance between those. It looks at every
// base that fits and gives the point that breaks the row's allowance most, or comes nearest to it.
func Grid(heights []length.Length, spacing length.Length, row int) (Worst, error) {
	if len(heights) < 3 {
		return Worst{}, fmt.Errorf("%d heights make no row: 3 at least", len(heights))
	}
	var worst Worst
	for reach := 1; 2*reach < len(heights); reach++ {
		base := 2 * length.Length(reach) * spacing
		allow, err := DIN(row, base)
		if err != nil {
			return Worst{}, err
		}
		for i := reach; i+reach < len(heights); i++ {
			d := deviation(heights[i-reach], heights[i], heights[i+reach])
			if w := (Worst{i, d, reach, base, allow, allow.Kept(d)}); reach == 1 && i == 1 || worse(w, worst) {
				worst = w
			}
		}
	}
	return worst, nil
}

// deviation is rounded up to the nanometre.
func deviation(a, mid, b length.Length) length.Length {
	twice := 2*mid - a - b
	return (max(twice, -twice) + 1) / 2
}

// worse compares how much of its allowance each uses.
func worse(a, b Worst) bool {
	return float64(a.Deviation)/float64(a.Allowance.Gap) > float64(b.Deviation)/float64(b.Allowance.Gap)
}
