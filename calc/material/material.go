// Package material counts what a floor takes: boxes, underlay, trim, screws, nails, sealant, weight, hours and money.
//
// Counts of boxes, rolls, sticks and tubes are whole numbers, found by exact arithmetic. Masses, hours and angles are
// float64. It knows no rooms: it is given areas, walls and counts.
package material

import (
	"math/big"

	"lastrow/calc/length"
	"lastrow/calc/term"
)

// With is a quantity with so much added for waste.
func With(q *big.Rat, p term.Percent) *big.Rat {
	return new(big.Rat).Mul(q, big.NewRat(100_000+int64(p), 100_000))
}

// BoxesByArea is the rule of thumb: the area with its waste, in whole boxes. The box must cover something.
func BoxesByArea(floor length.Area, waste term.Percent, box length.Area) int64 {
	return length.Up(With(floor.Over(box), waste))
}

// Planks is the planks for a count with spare added, one at least where any spare is wanted.
func Planks(laid int64, spare term.Percent) int64 {
	if spare <= 0 {
		return laid
	}
	return max(laid+1, length.Up(With(big.NewRat(laid, 1), spare)))
}

// Boxes is the whole boxes that hold the planks.
func Boxes(planks, perBox int64) int64 { return length.Up(big.NewRat(planks, perBox)) }

// Returnable is the boxes that can go back unopened once so many planks are used and so many kept.
func Returnable(bought, used, kept, perBox int64) int64 {
	return max(0, bought-Boxes(used+kept, perBox))
}
