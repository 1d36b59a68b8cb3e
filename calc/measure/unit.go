package measure

import (
	"math/big"
	"strings"

	"lastrow/calc/length"
)

// Unit is a unit by its canonical text.
type Unit string

// The units that a sum may be shown in.
const (
	Inches       Unit = "inches"
	Feet         Unit = "feet"
	FeetInches   Unit = "feet and inches"
	Yards        Unit = "yards"
	Millimetres  Unit = "mm"
	Centimetres  Unit = "cm"
	Metres       Unit = "m"
	SquareInches Unit = "sq in"
	SquareFeet   Unit = "sq ft"
	SquareYards  Unit = "sq yd"
	SquareMetres Unit = "sq m"
	CubicFeet    Unit = "cu ft"
	CubicInches  Unit = "cu in"
	CubicMetres  Unit = "cu m"
	Litres       Unit = "litres"
	Gallons      Unit = "gallons"
)

// Dim is the power of a length that a quantity is.
type Dim int

// The dimensions.
const (
	Plain Dim = iota
	Long
	Flat
	Solid
)

func (d Dim) String() string {
	return [...]string{"a number", "a length", "an area", "a volume"}[d]
}

type unitRow struct {
	dim  Dim
	size *big.Int // in nanometres to the power of dim
}

var units = map[Unit]unitRow{
	Inches:       {Long, big.NewInt(int64(length.Inch))},
	Feet:         {Long, big.NewInt(int64(length.Foot))},
	FeetInches:   {Long, big.NewInt(int64(length.Foot))},
	Yards:        {Long, big.NewInt(int64(length.Yard))},
	Millimetres:  {Long, big.NewInt(int64(length.Millimetre))},
	Centimetres:  {Long, big.NewInt(int64(length.Centimetre))},
	Metres:       {Long, big.NewInt(int64(length.Metre))},
	SquareInches: {Flat, length.SquareInch.Nm2()},
	SquareFeet:   {Flat, length.SquareFoot.Nm2()},
	SquareYards:  {Flat, length.Yard.Times(length.Yard).Nm2()},
	SquareMetres: {Flat, length.SquareMetre.Nm2()},
	CubicFeet:    {Solid, length.CubicFoot.Nm3()},
	CubicInches:  {Solid, length.CubicInch.Nm3()},
	CubicMetres:  {Solid, length.CubicMetre.Nm3()},
	Litres:       {Solid, length.Litre.Nm3()},
	Gallons:      {Solid, length.Gallon.Nm3()},
}

// Known says whether u is one of the units above.
func (u Unit) Known() bool { _, ok := units[u]; return ok }

// Dim is what the unit measures; Plain for an unknown one.
func (u Unit) Dim() Dim { return units[u].dim }

// Show is the quantity in the unit, to four decimals, or in feet and inches to 1/16. The unit must be of its dimension.
func (u Unit) Show(q Quantity) string {
	if u == FeetInches {
		return about(length.Tape{System: length.Imperial}, q.Length())
	}
	n := new(big.Rat).Quo(q.Value, new(big.Rat).SetInt(units[u].size))
	text := n.FloatString(4)
	mark := ""
	if exact, ok := new(big.Rat).SetString(text); ok && exact.Cmp(n) != 0 {
		mark = "about "
	}
	return mark + strings.TrimRight(strings.TrimRight(text, "0"), ".") + " " + string(u)
}
