package subfloor

import (
	"math/big"

	"lastrow/calc/length"
	"lastrow/calc/limit"
)

// Shape is how the depth of a layer of leveler varies over its area.
type Shape string

// The shapes. Flat is one depth all over; Slope runs evenly from nothing to the depth; Bowl is a round dip, deepest in
// the middle and level there; Cone is one that falls in a straight line to its middle.
const (
	Flat  Shape = "flat"
	Slope Shape = "slope"
	Bowl  Shape = "bowl"
	Cone  Shape = "cone"
)

// share is the mean depth of a shape as a part of its greatest.
var share = map[Shape]*big.Rat{Flat: big.NewRat(1, 1), Slope: big.NewRat(1, 2), Bowl: big.NewRat(1, 2), Cone: big.NewRat(1, 3)}

// Fill is the volume of leveler over an area whose greatest depth is given, rounded down to the cubic nanometre. A
// shape that is none of the above counts as flat.
func Fill(area length.Area, depth length.Length, s Shape) length.Volume {
	part, ok := share[s]
	if !ok {
		part = share[Flat]
	}
	nm3 := area.Deep(depth).Nm3()
	nm3.Mul(nm3, part.Num())
	return length.VolumeOf(nm3.Div(nm3, part.Denom()))
}

// Bags is how many whole bags of leveler fill a volume, each bag filling the yield.
func Bags(v, yield length.Volume) int64 { return length.Up(v.Over(yield)) }

// Yield is what a bag fills where nobody says: a 50 lb bag on an inch job, a 25 kg bag on a metric one. Powder for a
// litre is not the density of the wet mix.
func Yield(s length.System) length.Volume {
	if s == length.Metric {
		litres := new(big.Rat).Quo(limit.LevelerBag.Rat(), limit.LevelerPowder.Rat()) // 1 m² x 1 mm is 1 L
		return times(length.Litre, litres)
	}
	return times(length.CubicFoot, limit.LevelerYield.Rat())
}

func times(v length.Volume, q *big.Rat) length.Volume {
	nm3 := v.Nm3()
	nm3.Mul(nm3, q.Num())
	return length.VolumeOf(nm3.Div(nm3, q.Denom()))
}
