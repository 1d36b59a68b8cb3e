package subfloor

import (
	"math"
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

// EMC is the moisture that solid wood settles at, in percent, at a temperature in °F and a relative humidity in percent:
// Simpson's two-hydrate form, Wood Handbook (FPL-GTR-190) eq. 4-5. Fibreboard settles lower; it is not for planks of it.
func EMC(fahrenheit, rh float64) float64 {
	t, h := fahrenheit, rh/100
	w := 330 + 0.452*t + 0.00415*t*t
	k := 0.791 + 4.63e-4*t - 8.44e-7*t*t
	k1 := 6.34 + 7.75e-4*t - 9.35e-5*t*t
	k2 := 1.09 + 2.84e-2*t - 9.04e-5*t*t
	kh := k * h
	return 1800 / w * (kh/(1-kh) + (k1*kh+2*k1*k2*kh*kh)/(1+k1*kh+k1*k2*kh*kh))
}

// Through is the thermal resistance of a layer of a material, in m²K/W, from its conductivity in W/mK.
func Through(thick length.Length, conducts *big.Rat) *big.Rat {
	metres := big.NewRat(int64(thick), int64(length.Metre))
	return metres.Quo(metres, conducts)
}

// HeatPasses says whether the layers' resistances, plank and underlay and film together, let a heated floor work.
func HeatPasses(resistances ...*big.Rat) bool {
	sum := new(big.Rat)
	for _, r := range resistances {
		sum.Add(sum, r)
	}
	return sum.Cmp(limit.HeatedResistance.Rat()) <= 0
}

// SurfaceKept says whether a heated floor's surface is cool enough for wood and laminate, in °C.
func SurfaceKept(celsius float64) bool {
	most, _ := limit.HeatedSurface.Rat().Float64()
	return celsius <= most
}

// Output is the heat that a floor gives off in W/m², so many kelvin above the room (EN 1264, basic curve).
func Output(kelvin float64) float64 { return 8.92 * math.Pow(kelvin, 1.1) }
