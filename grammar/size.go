package grammar

import (
	"fmt"
	"math/big"
	"strconv"
	"strings"

	"lastrow/calc/length"
	"lastrow/calc/term"
)

// Size is a length with the system it was said in, which its text keeps: "11 ft 4 in", "3048 mm".
type Size struct {
	Len    length.Length
	System length.System
}

// String gives the size exactly, with its unit: in 1/64 in where that will do, else in decimals of an inch; or in mm.
func (s Size) String() string {
	if s.System == length.Metric || s.Len%length.SixtyFourth == 0 {
		return length.Tape{System: s.System}.Exact(s.Len)
	}
	inches := new(big.Rat).SetFrac64(int64(s.Len), int64(length.Inch)).FloatString(9)
	return strings.TrimRight(inches, "0") + " in"
}

// Capture reads the text of a Length token.
func (s *Size) Capture(values []string) error {
	m, n, err := length.Scan(values[0])
	if err != nil || n != len(values[0]) {
		return fmt.Errorf("%q is no length", values[0])
	}
	*s = Size{m.Len, m.Unit.System()}
	return nil
}

// Whole is a count.
type Whole int64

// Capture reads the text of a Number token.
func (w *Whole) Capture(values []string) error {
	n, err := strconv.ParseInt(values[0], 10, 40)
	*w = Whole(n)
	return err
}

// Thousandths is a percentage, in thousandths of one percent.
type Thousandths int64

func (t Thousandths) String() string { return decimal(int64(t), 1000) + " %" }

// Capture reads the text of a Percent token.
func (t *Thousandths) Capture(values []string) error {
	v, err := scaled(strings.TrimRight(values[0], " %"), 1000)
	*t = Thousandths(v)
	return err
}

// Cents is an amount in hundredths of the currency's unit.
type Cents int64

func (c Cents) String() string { return fmt.Sprintf("%d.%02d", c/100, c%100) }

// Capture reads the text of a Number token, or of a Mass in pounds.
func (c *Cents) Capture(values []string) error {
	v, err := scaled(strings.TrimSuffix(values[0], " lb"), 100)
	*c = Cents(v)
	return err
}

// decimal writes n parts of a whole as a decimal number.
func decimal(n, parts int64) string {
	r := new(big.Rat).SetFrac64(n, parts)
	if r.IsInt() {
		return r.Num().String()
	}
	return strings.TrimRight(r.FloatString(9), "0")
}

// scaled reads a decimal number as a whole number of parts, rounded half up.
func scaled(text string, parts int64) (int64, error) {
	m, n, err := length.Scan(text)
	if err != nil || n != len(text) || m.Unit != length.Bare || m.Form != length.Single {
		return 0, fmt.Errorf("%q is no number", text)
	}
	return scale(m.Amount, parts)
}

// scale gives a number as a whole number of parts, rounded half up.
func scale(n length.Number, parts int64) (int64, error) {
	q := new(big.Int).Mul(big.NewInt(n.Num), big.NewInt(2*parts))
	q.Add(q, big.NewInt(n.Den))
	q.Div(q, big.NewInt(2*n.Den))
	if !q.IsInt64() || q.Int64() > 1e15 {
		return 0, fmt.Errorf("%d is out of all bounds", n.Num)
	}
	return q.Int64(), nil
}

// Flat is an area as so much of a unit, which its text keeps: "20.1 sq ft".
type Flat struct {
	N    length.Number
	Unit string // "sq ft", "sq m"
}

// Area is the area itself.
func (f Flat) Area() length.Area { return f.N.OfArea(areaUnits[f.Unit]) }

var areaUnits = map[string]length.Area{
	"sq ft": length.SquareFoot, "sq m": length.SquareMetre, "sq in": length.SquareInch, "sq yd": length.Yard.Times(length.Yard),
}

func (f Flat) String() string { return decimal(f.N.Num, f.N.Den) + " " + f.Unit }

// Capture reads the text of an Area token.
func (f *Flat) Capture(values []string) error {
	toks, bad := lex(values[0], true)
	if bad != "" || len(toks) != 1 || toks[0].class != tArea {
		return fmt.Errorf("%q is no area", values[0])
	}
	*f = flatOf(toks[0])
	return nil
}

// flatOf is an area in lowest decimal terms, so that equal areas compare equal.
func flatOf(t token) Flat {
	r := new(big.Rat).SetFrac64(t.num.Num, t.num.Den)
	return Flat{length.Number{Num: r.Num().Int64(), Den: r.Denom().Int64()}, t.unit}
}

func given(n term.Name, v term.Value) term.Given {
	return term.Given{Name: n, Value: v, From: term.Message}
}

func lenGiven(n term.Name, s *Size) []term.Given {
	if s == nil {
		return nil
	}
	return []term.Given{given(n, term.Len(s.Len))}
}
