package term

import (
	"math/big"

	"lastrow/calc/length"
	"lastrow/calc/measure"
)

// Value is what a name stands for: one of the types below.
type Value interface{ value() }

type (
	// Len is one length.
	Len length.Length
	// Lens is several lengths in order: the sides of a room, a list of offcuts.
	Lens []length.Length
	// Area is an area, exact.
	Area struct{ length.Area }
	// Volume is a volume, exact.
	Volume struct{ length.Volume }
	// Count is a whole number of things.
	Count int64
	// Number is a plain number that need not be whole, exact.
	Number struct{ *big.Rat }
	// Percent is in thousandths of one percent, so that 7.5 % is 7500.
	Percent int64
	// Degrees is an angle.
	Degrees float64
	// Mass is in kilograms.
	Mass float64
	// Hours is a time in hours.
	Hours float64
	// Money is an amount in hundredths of the currency's unit.
	Money struct {
		Minor    int64
		Currency string // ISO 4217 code, or empty when nobody said
	}
	// Expr is a sum to work out.
	Expr struct{ measure.Expr }
	// Word is one of a closed set of choices.
	Word string
	// Pass is whether a limit is kept, or a thing is needed.
	Pass bool
)

func (Len) value()     {}
func (Lens) value()    {}
func (Area) value()    {}
func (Volume) value()  {}
func (Count) value()   {}
func (Number) value()  {}
func (Percent) value() {}
func (Degrees) value() {}
func (Mass) value()    {}
func (Hours) value()   {}
func (Money) value()   {}
func (Expr) value()    {}
func (Word) value()    {}
func (Pass) value()    {}
