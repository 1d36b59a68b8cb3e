package subfloor

import (
	"math/big"

	"lastrow/calc/length"
	"lastrow/calc/limit"
)

// Movement is the most that a run of floor can grow or shrink over a swing of humidity, in points: a ceiling. Laminate
// moves with humidity, hardly with temperature, and mostly less than this. Half of it shows at each end of a floor
// that is free to move both ways, all of it at one end where the other is pinned.
func Movement(run length.Length, points *big.Rat) length.Length {
	mm := new(big.Rat).Mul(limit.MoveCeiling.Rat(), points)
	mm.Mul(mm, big.NewRat(int64(run), int64(length.Metre)/int64(length.Millimetre)))
	return length.Length(length.Up(mm))
}

// Run is the longest floor in one piece, and into how many a run must be parted.
func Run(run, most length.Length) (fields int64, kept bool) {
	return max(1, int64((run+most-1)/most)), run <= most
}

// Drying estimates the days that a screed takes: a millimetre a day to 50 mm, half of that below. Common practice in
// good conditions only; a measured reading decides.
func Drying(thick length.Length) int64 {
	half := max(0, thick-50*length.Millimetre)
	days := thick + half
	return int64((days + length.Millimetre - 1) / length.Millimetre)
}

// Through is the thermal resistance of a layer of a material, in m²K/W, from its conductivity in W/mK.
func Through(thick length.Length, conducts *big.Rat) *big.Rat {
	metres := big.NewRat(int64(thick), int64(length.Metre))
	return metres.Quo(metres, conducts)
}

// HeatLeft is the thermal resistance that planks of HDF leave for the underlay and the film of a heated floor, in m²K/W.
func HeatLeft(planks length.Length) *big.Rat {
	return new(big.Rat).Sub(limit.HeatedResistance.Rat(), Through(planks, limit.HDFConducts.Rat()))
}
