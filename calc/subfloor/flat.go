// Package subfloor judges what lies under a floating floor: how flat it is, how dry, what leveler fills it, and how
// far the floor on it may move. Readings go in with the method they were taken by; figures come from package limit
// and from the tables here.
//
// Flat is not level: none of the flatness rules limits a slope.
package subfloor

import (
	"fmt"

	"lastrow/calc/length"
	"lastrow/calc/limit"
)

// Allowance is the gap that a rule allows under a straightedge.
type Allowance struct {
	Gap  length.Length
	Rule string // the rule and its source, in words
}

// Kept says whether a dip is within the allowance.
func (a Allowance) Kept(dip length.Length) bool { return dip <= a.Gap }

// Allowed gives the allowance under a straightedge by the rules of a system: DIN 18202 row 3 in metric, NWFA's and
// ASTM's two rules in inch. A straightedge of whole feet is judged in inches on a metric job too, one of whole
// centimetres by DIN on an inch job.
func Allowed(edge length.Length, s length.System) (Allowance, error) {
	if edge < limit.StraightedgeLeast.Inch || edge > limit.StraightedgeMost.Inch {
		return Allowance{}, fmt.Errorf("straightedge of %s is out of bounds: 4 in (100 mm) to 60 ft", edge)
	}
	feet, centimetres := edge%length.Foot == 0, edge%length.Centimetre == 0
	if feet != centimetres {
		s = length.Imperial
		if centimetres {
			s = length.Metric
		}
	}
	if s == length.Metric {
		return DIN(3, edge)
	}
	return inchRule(edge), nil
}

// inchRule keeps the two inch rules apart, for they are not one slope. Between and beyond their lengths the figure of
// the shorter rule holds, which is the stricter; under 6 ft the gap shrinks in proportion, which no standard prints.
func inchRule(edge length.Length) Allowance {
	ten, six := limit.FlatTenFeet, limit.FlatSixFeet
	switch {
	case edge >= 10*length.Foot:
		return Allowance{ten.Inch, "3/16 in in 10 ft (" + ten.Source + ")"}
	case edge >= 6*length.Foot:
		return Allowance{six.Inch, "1/8 in in 6 ft (" + six.Source + ")"}
	}
	return Allowance{six.Inch * edge / (6 * length.Foot), "1/8 in in 6 ft, in proportion (" + six.Source + "; the proportion is common practice)"}
}

// Stricter is what the makers' institute asks of floors under floating planks, by its lower figures: 3 mm in the first
// metre and 2 mm for each further one.
func Stricter(edge length.Length) Allowance {
	past := max(0, edge-length.Metre)
	gap := limit.FlatFirstMetre.Metric + length.Length(int64(past/1000)*int64(limit.FlatPerMetre.Metric/length.Millimetre))
	return Allowance{gap, "3 mm in the first metre and 2 mm in each further one (" + limit.FlatPerMetre.Source + ")"}
}
