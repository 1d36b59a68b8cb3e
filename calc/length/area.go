package length

import "math/big"

// Area is an exact number of square nanometres. The zero Area is none. Areas are values: no method changes its operands.
type Area struct{ nm2 big.Int }

// The square foot and the square metre. 1 sq ft is 0.09290304 m² exactly (NIST SP 811, appendix B).
var (
	SquareFoot  = Foot.Times(Foot)
	SquareMetre = Metre.Times(Metre)
	SquareInch  = Inch.Times(Inch)
)

// Times is the area of a rectangle.
func (l Length) Times(m Length) Area {
	var a Area
	a.nm2.Mul(big.NewInt(int64(l)), big.NewInt(int64(m)))
	return a
}

// AreaOf is an area of so many square nanometres.
func AreaOf(nm2 *big.Int) Area {
	var a Area
	a.nm2.Set(nm2)
	return a
}

// OfArea gives n of the area, rounded half up to the square nanometre.
func (n Number) OfArea(unit Area) Area {
	var a Area
	a.nm2.Mul(&unit.nm2, big.NewInt(n.Num))
	a.nm2.Add(a.nm2.Lsh(&a.nm2, 1), big.NewInt(n.Den))
	a.nm2.Div(&a.nm2, big.NewInt(2*n.Den))
	return a
}

// Nm2 is the number of square nanometres.
func (a Area) Nm2() *big.Int { return new(big.Int).Set(&a.nm2) }

// Plus is the sum.
func (a Area) Plus(b Area) Area { var c Area; c.nm2.Add(&a.nm2, &b.nm2); return c }

// Minus is the difference.
func (a Area) Minus(b Area) Area { var c Area; c.nm2.Sub(&a.nm2, &b.nm2); return c }

// Cmp is -1, 0 or +1 as a is under, equal to or over b.
func (a Area) Cmp(b Area) int { return a.nm2.Cmp(&b.nm2) }

// Sign is -1, 0 or +1.
func (a Area) Sign() int { return a.nm2.Sign() }

// Over is how many times b goes into a, exactly. It panics where b is none.
func (a Area) Over(b Area) *big.Rat { return new(big.Rat).SetFrac(a.Nm2(), b.Nm2()) }

// Deep is the volume of a layer of the area.
func (a Area) Deep(l Length) Volume {
	var v Volume
	v.nm3.Mul(&a.nm2, big.NewInt(int64(l)))
	return v
}

// M2 gives square metres, unrounded as far as a float64 holds them.
func (a Area) M2() float64 { return ratio(&a.nm2, &SquareMetre.nm2) }

// SqFt gives square feet, unrounded as far as a float64 holds them.
func (a Area) SqFt() float64 { return ratio(&a.nm2, &SquareFoot.nm2) }

// Area shows the area to two decimals of a square foot or of a square metre.
func (t Tape) Area(a Area) string {
	if t.System == Metric {
		return trimZeros(a.Over(SquareMetre).FloatString(2)) + " m²"
	}
	return trimZeros(a.Over(SquareFoot).FloatString(2)) + " sq ft"
}

// Volume is an exact number of cubic nanometres.
type Volume struct{ nm3 big.Int }

// The units of volume. The gallon is 231 cubic inches (NIST Handbook 44, appendix C).
var (
	CubicMetre = SquareMetre.Deep(Metre)
	CubicFoot  = SquareFoot.Deep(Foot)
	CubicInch  = SquareInch.Deep(Inch)
	Litre      = SquareMetre.Deep(Millimetre)
	Gallon     = SquareInch.Deep(231 * Inch)
)

// VolumeOf is a volume of so many cubic nanometres.
func VolumeOf(nm3 *big.Int) Volume {
	var v Volume
	v.nm3.Set(nm3)
	return v
}

// Nm3 is the number of cubic nanometres.
func (v Volume) Nm3() *big.Int { return new(big.Int).Set(&v.nm3) }

// Plus is the sum.
func (v Volume) Plus(w Volume) Volume { var s Volume; s.nm3.Add(&v.nm3, &w.nm3); return s }

// Cmp is -1, 0 or +1 as v is under, equal to or over w.
func (v Volume) Cmp(w Volume) int { return v.nm3.Cmp(&w.nm3) }

// Over is how many times w goes into v, exactly. It panics where w is none.
func (v Volume) Over(w Volume) *big.Rat { return new(big.Rat).SetFrac(v.Nm3(), w.Nm3()) }

// M3 gives cubic metres, unrounded as far as a float64 holds them.
func (v Volume) M3() float64 { return ratio(&v.nm3, &CubicMetre.nm3) }

// Volume shows the volume to two decimals of a cubic foot, or to a tenth of a litre.
func (t Tape) Volume(v Volume) string {
	if t.System == Metric {
		return trimZeros(v.Over(Litre).FloatString(1)) + " L"
	}
	return trimZeros(v.Over(CubicFoot).FloatString(2)) + " cu ft"
}

func ratio(a, b *big.Int) float64 {
	f, _ := new(big.Rat).SetFrac(a, b).Float64()
	return f
}

// trimZeros drops the zeros, and the point, that end a decimal.
func trimZeros(s string) string {
	for len(s) > 1 && s[len(s)-1] == '0' {
		s = s[:len(s)-1]
	}
	if s[len(s)-1] == '.' {
		s = s[:len(s)-1]
	}
	return s
}

// Up is the least whole number not under q: whole boxes, rolls, bags.
func Up(q *big.Rat) int64 {
	n := new(big.Int).Add(q.Num(), q.Denom())
	n.Sub(n, big.NewInt(1))
	return n.Div(n, q.Denom()).Int64()
}
