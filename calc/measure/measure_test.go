package measure

import (
	"math"
	"testing"

	"github.com/Knetic/govaluate"
	gounits "github.com/bcicen/go-units"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lastrow/calc/length"
)

var (
	imperial = length.Tape{System: length.Imperial}
	metric   = length.Tape{System: length.Metric}
)

func n(a, b int64) Number { return Num(length.Number{Num: a, Den: b}) }

func l(t *testing.T, text string) Len {
	v, err := length.Parse(text)
	require.NoError(t, err)
	return Len{v, length.Imperial}
}

func TestEval(t *testing.T) {
	for _, c := range []struct {
		e            Expr
		text, result string
		metric       string
	}{
		{Binary{Mul, l(t, "7 5/8"), n(18, 1)}, "7 5/8 in * 18", "11 ft 5 1/4 in", "3486.15 mm"},
		{Part{n(1, 2), l(t, "92 1/2")}, "half of 92 1/2 in", "46 1/4 in", "1174.75 mm"},
		{Convert{l(t, "11ft 4in"), Millimetres}, "11 ft 4 in in mm", "3454.4 mm", "3454.4 mm"},
		{Convert{Len{3450 * length.Millimetre, length.Metric}, FeetInches}, "3450 mm in feet and inches", "about 11 ft 3 13/16 in", "about 11 ft 3 13/16 in"},
		{Binary{Add, Binary{Add, l(t, "12-4"), l(t, "9-8 1/2")}, l(t, "14 ft")}, "12 ft 4 in + 9 ft 8 1/2 in + 14 ft", "36 ft 1/2 in", "10985.5 mm"},
		{Binary{Sub, Binary{Sub, l(t, "47 1/2"), l(t, "18 3/16")}, l(t, "1/8")}, "47 1/2 in - 18 3/16 in - 1/8 in", "29 3/16 in", "741.3625 mm"},
		{Binary{Sub, l(t, "10"), Binary{Sub, l(t, "3"), l(t, "1")}}, "10 in - (3 in - 1 in)", "8 in", "203.2 mm"},
		{Binary{Mul, Binary{Add, l(t, "1 ft"), l(t, "2 ft")}, l(t, "4 ft")}, "(12 in + 24 in) * 48 in", "12 sq ft", "1.11 m²"},
		{Binary{Div, l(t, "12 ft"), l(t, "16")}, "12 ft / 16 in", "9", "9"},
		{Binary{Div, l(t, "10"), n(3, 1)}, "10 in / 3", "about 3 5/16 in", "about 85 mm"},
		{Convert{Of(length.Number{Num: 18, Den: 1}, SquareMetres), SquareFeet}, "18 sq m in sq ft", "about 193.7504 sq ft", "about 193.7504 sq ft"},
		{Part{n(3, 8), Binary{Mul, n(2, 1), l(t, "8")}}, "3/8 of (2 * 8 in)", "6 in", "152.4 mm"},
		{Binary{Mul, Of(length.Number{Num: 100, Den: 1}, SquareFeet), l(t, "1/8")}, "100 sq ft * 1/8 in", "1.04 cu ft", "29.5 L"},
		{Binary{Sub, l(t, "5"), l(t, "9")}, "5 in - 9 in", "-4 in", "-101.6 mm"},
		{Binary{Div, n(1, 1), n(3, 1)}, "1 / 3", "about 0.3333", "about 0.3333"},
	} {
		require.Equal(t, c.text, c.e.String())
		q, err := Eval(c.e)
		require.NoError(t, err)
		require.Equal(t, c.result, q.Text(imperial), c.text)
		require.Equal(t, c.metric, q.Text(metric), c.text)
	}
}

func TestEvalRefuses(t *testing.T) {
	foot, area := l(t, "1 ft"), Of(length.Number{Num: 2, Den: 1}, SquareFeet)
	for _, c := range []struct {
		e    Expr
		says string
	}{
		{Binary{Div, foot, n(0, 1)}, "divided by zero"},
		{Binary{Div, foot, Binary{Sub, foot, foot}}, "divided by zero"},
		{Binary{Add, foot, area}, "a length and an area can't be added"},
		{Binary{Sub, foot, area}, "an area can't be taken from a length"},
		{Binary{Mul, area, area}, "nothing that can be measured"},
		{Binary{Div, n(1, 1), foot}, "a number can't be divided by a length"},
		{Convert{foot, SquareFeet}, "can't be shown in sq ft"},
		{Convert{foot, "furlongs"}, "no unit"},
		{Amount{n(1, 1), "acres"}, "no unit"},
		{Binary{'^', foot, foot}, "no operation"},
		{Binary{Mul, l(t, "900 m"), n(1_000_000_000, 1)}, "out of all bounds"},
		{nil, "nothing"},
		{Binary{Add, foot, nil}, "nothing"},
	} {
		_, err := Eval(c.e)
		require.ErrorContains(t, err, c.says)
	}
}

// 490 halvings are exact on the way and nothing on a tape; a chain beyond MaxSize is refused and not walked.
func TestDeepSums(t *testing.T) {
	var e Expr = l(t, "92 1/2")
	for range 490 {
		e = Part{n(1, 2), e}
	}
	q, err := Eval(e)
	require.NoError(t, err)
	require.Equal(t, 1, q.Value.Sign())
	require.Zero(t, q.Length())
	require.Len(t, Steps(e, imperial), maxSteps+1)
	for range MaxSize {
		e = Part{n(1, 2), e}
	}
	_, err = Eval(e)
	require.ErrorIs(t, err, ErrSize)
	e = n(999_999_999_999, 1)
	for range 200 {
		e = Binary{Mul, e, n(999_999_999_999, 1)}
	}
	_, err = Eval(e)
	require.ErrorIs(t, err, ErrBounds)
}

func TestSteps(t *testing.T) {
	e := Binary{Sub, Binary{Mul, l(t, "7 5/8"), n(3, 1)}, Part{n(1, 2), l(t, "3")}}
	require.Equal(t, []string{"7 5/8 in x 3 = 22 7/8 in", "half of 3 in = 1 1/2 in", "22 7/8 in - 1 1/2 in = 21 3/8 in"}, Steps(e, imperial))
}

// go-units is an independent table of conversion factors.
func TestUnitsAgreeWithGoUnits(t *testing.T) {
	for u, theirs := range map[Unit]gounits.Unit{
		Inches: gounits.Inch, Feet: gounits.Foot, Yards: gounits.Yard, Centimetres: gounits.CentiMeter, Metres: gounits.Meter,
	} {
		want := gounits.MustConvertFloat(1, theirs, gounits.MilliMeter).Float()
		q, err := Eval(Of(length.Number{Num: 1, Den: 1}, u))
		require.NoError(t, err)
		require.InEpsilon(t, want, q.Length().MM(), 1e-12, u)
	}
	gallon, err := Eval(Convert{Of(length.Number{Num: 1, Den: 1}, Gallons), Litres})
	require.NoError(t, err)
	require.InEpsilon(t, gounits.MustConvertFloat(1, gounits.FluidGallon, gounits.Liter).Float(), gallon.Volume().M3()*1000, 1e-6)
}

// NIST SP 811 appendix B.8: 1 sq ft is 0.09290304 m² exactly, 1 yd 0.9144 m; Handbook 44 appendix C: 1 gallon is 231 cu in.
func TestUnitsPublished(t *testing.T) {
	one := length.Number{Num: 1, Den: 1}
	for u, want := range map[Unit]float64{SquareFeet: 0.09290304, SquareInches: 0.00064516, SquareYards: 0.83612736, SquareMetres: 1} {
		q, _ := Eval(Of(one, u))
		require.InDelta(t, want, q.Area().M2(), 1e-12, u)
	}
	q, err := Eval(Convert{Of(one, Gallons), CubicInches})
	require.NoError(t, err)
	require.Equal(t, "231 cu in", q.Text(imperial))
	q, _ = Eval(Convert{Of(length.Number{Num: 1, Den: 1}, CubicMetres), CubicFeet})
	require.Equal(t, "about 35.3147 cu ft", q.Text(metric))
}

func plainExpr(depth int) *rapid.Generator[Expr] {
	return rapid.Custom(func(t *rapid.T) Expr {
		if depth == 0 || rapid.IntRange(0, 3).Draw(t, "leaf") == 0 {
			return n(rapid.Int64Range(0, 500).Draw(t, "num"), rapid.SampledFrom([]int64{1, 1, 2, 4, 10, 16}).Draw(t, "den"))
		}
		op := rapid.SampledFrom([]Op{Add, Sub, Mul, Div}).Draw(t, "op")
		return Binary{op, plainExpr(depth-1).Draw(t, "x"), plainExpr(depth-1).Draw(t, "y")}
	})
}

// govaluate is an independent reader of arithmetic: it reads the canonical text and must come to the same number.
func TestStringMeansWhatEvalComputes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := plainExpr(6).Draw(t, "e")
		q, err := Eval(e)
		if err != nil {
			require.True(t, err == ErrZero || err == ErrBounds || err == ErrSize)
			return
		}
		theirs, err := govaluate.NewEvaluableExpression(e.String())
		require.NoError(t, err)
		v, err := theirs.Evaluate(nil)
		require.NoError(t, err)
		ours, _ := q.Value.Float64()
		require.InDelta(t, v.(float64), ours, 1e-6*math.Max(1, math.Abs(ours)), e.String())
	})
}

func anyExpr(depth int) *rapid.Generator[Expr] {
	return rapid.Custom(func(t *rapid.T) Expr {
		kind := rapid.IntRange(0, 5).Draw(t, "node")
		if depth == 0 {
			kind = rapid.IntRange(0, 2).Draw(t, "leaf")
		}
		some := n(rapid.Int64Range(0, 1<<40).Draw(t, "num"), rapid.Int64Range(1, 1000).Draw(t, "den"))
		unit := rapid.SampledFrom([]Unit{Inches, FeetInches, Millimetres, SquareFeet, SquareMetres, CubicFeet, Litres, "acres"}).Draw(t, "unit")
		switch kind {
		case 0:
			return some
		case 1:
			return Len{length.Length(rapid.Int64Range(0, int64(length.Metre)*1000).Draw(t, "nm")), rapid.SampledFrom([]length.System{length.Imperial, length.Metric}).Draw(t, "system")}
		case 2:
			return Amount{some, unit}
		case 3:
			return Part{some, anyExpr(depth-1).Draw(t, "x")}
		case 4:
			return Convert{anyExpr(depth-1).Draw(t, "x"), unit}
		}
		op := rapid.SampledFrom([]Op{Add, Sub, Mul, Div, 'x'}).Draw(t, "op")
		return Binary{op, anyExpr(depth-1).Draw(t, "x"), anyExpr(depth-1).Draw(t, "y")}
	})
}

// Any tree has a value within bounds, with steps that end in it, or an error: nothing panics.
func TestAnyTree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := anyExpr(5).Draw(t, "e")
		require.NotEmpty(t, e.String())
		q, err := Eval(e)
		if err != nil {
			require.NotEmpty(t, err.Error())
			return
		}
		steps := Steps(e, metric)
		if len(steps) > 0 && len(steps) <= maxSteps {
			require.Contains(t, steps[len(steps)-1], " = "+q.Text(metric))
		}
	})
}

func BenchmarkEval(b *testing.B) {
	for _, size := range []struct {
		name  string
		terms int
	}{{"terms=10", 10}, {"terms=100", 100}, {"terms=900", 900}} {
		b.Run(size.name, func(b *testing.B) {
			b.ReportAllocs()
			var e Expr = n(1, 3)
			for range size.terms {
				e = Binary{Add, e, n(5, 16)}
			}
			for b.Loop() {
				if _, err := Eval(e); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
