package material

import (
	"math/big"

	"lastrow/calc/length"
)

// Density is that of the core in kg/m³: EN 16354's reference floor is a board of 850 ± 50 kg/m³. Papers, overlay and
// carton add a few percent.
const Density = 850

// Weight is the mass of floor of an area and a thickness at a density in kg/m³, in kilograms.
func Weight(floor length.Area, thick length.Length, density int64) *big.Rat {
	kg := floor.Deep(thick).Over(length.CubicMetre)
	return kg.Mul(kg, big.NewRat(density, 1))
}

// Trips is the trips with a payload in kilograms for so many boxes, which are not split. It is 0 where one box is too much.
func Trips(boxes int64, box, payload *big.Rat) (trips, perTrip int64) {
	if box.Sign() <= 0 || payload.Cmp(box) < 0 {
		return 0, 0
	}
	q := new(big.Rat).Quo(payload, box)
	perTrip = new(big.Int).Quo(q.Num(), q.Denom()).Int64()
	return length.Up(big.NewRat(boxes, perTrip)), perTrip
}
