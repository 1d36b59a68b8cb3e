package subfloor

import (
	"fmt"

	"lastrow/calc/length"
)

// point is one printed figure of a table: the gap in millimetres at a distance in decimetres.
type point struct{ dm, mm int64 }

// din is DIN 18202:2013 Table 3, floors. Rows 1 and 2 are unfinished slabs, row 3 finished floors to take coverings,
// row 4 the same with stricter demands. The distances are 0.1, 1, 4, 10 and 15 m; beyond 15 m the last figure holds.
var din = map[int][]point{
	1: {{1, 10}, {10, 15}, {40, 20}, {100, 25}, {150, 30}},
	2: {{1, 5}, {10, 8}, {40, 12}, {100, 15}, {150, 20}},
	3: {{1, 2}, {10, 4}, {40, 10}, {100, 12}, {150, 15}},
	4: {{1, 1}, {10, 3}, {40, 9}, {100, 12}, {150, 15}},
}

// DIN gives the allowance of a row of DIN 18202:2013 Table 3 at a distance, on the straight line between the printed
// figures, to the nearest millimetre as the extended tables print it.
func DIN(row int, over length.Length) (Allowance, error) {
	table, ok := din[row]
	if !ok {
		return Allowance{}, fmt.Errorf("DIN 18202 Table 3 has rows 1 to 4 for floors, not %d", row)
	}
	if over < decimetre {
		return Allowance{}, fmt.Errorf("distance of %s is under the 0.1 m of DIN 18202 Table 3", over)
	}
	return Allowance{
		Gap:  between(table, over),
		Rule: fmt.Sprintf("DIN 18202:2013 Table 3 row %d over %s", row, length.Tape{System: length.Metric}.Room(over)),
	}, nil
}

const decimetre = 10 * length.Centimetre

func between(table []point, over length.Length) length.Length {
	for i := 1; i < len(table); i++ {
		a, b := table[i-1], table[i]
		if over <= length.Length(b.dm)*decimetre {
			return nearest(a, b, over)
		}
	}
	return length.Length(table[len(table)-1].mm) * length.Millimetre
}

func nearest(a, b point, over length.Length) length.Length {
	past := over - length.Length(a.dm)*decimetre
	span := length.Length(b.dm-a.dm) * decimetre
	rise := (2*past*length.Length(b.mm-a.mm) + span) / (2 * span)
	return (length.Length(a.mm) + rise) * length.Millimetre
}

// Class is a surface class of BS 8204.
type Class string

// The classes of BS 8204-1 and -2, under a straightedge of 2 m that rests on the floor (3 m before 2003).
const (
	SR1 Class = "SR1"
	SR2 Class = "SR2"
	SR3 Class = "SR3"
)

var surface = map[Class]length.Length{
	SR1: 3 * length.Millimetre,
	SR2: 5 * length.Millimetre,
	SR3: 10 * length.Millimetre,
}

// BS gives the allowance of a class of BS 8204. It holds for a straightedge of 2 m and no other.
func BS(c Class) (Allowance, error) {
	gap, ok := surface[c]
	if !ok {
		return Allowance{}, fmt.Errorf("BS 8204 has the classes SR1, SR2 and SR3, not %q", c)
	}
	return Allowance{gap, "BS 8204 " + string(c) + " under 2 m"}, nil
}

// Best is the strictest class of BS 8204 that a dip under a 2 m straightedge meets; none where it meets no class.
func Best(dip length.Length) (Class, bool) {
	for _, c := range []Class{SR1, SR2, SR3} {
		if dip <= surface[c] {
			return c, true
		}
	}
	return "", false
}
