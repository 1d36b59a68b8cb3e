package length

import (
	"testing"

	"github.com/bcicen/go-units"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The fraction table: aeronautical engineer's data book, table 2.11, with its misprints of 19/64, 5/16 and 31/32 put
// right by 25.4 mm to the inch (NIST SP 811, appendix B). In nanometres.
var fractionTable = []struct {
	text string
	nm   Length
}{
	{"1/64", 396_875}, {"1/32", 793_750}, {"3/64", 1_190_625}, {"1/16", 1_587_500}, {"3/32", 2_381_250},
	{"1/8", 3_175_000}, {"3/16", 4_762_500}, {"1/4", 6_350_000}, {"5/16", 7_937_500}, {"3/8", 9_525_000},
	{"7/16", 11_112_500}, {"1/2", 12_700_000}, {"9/16", 14_287_500}, {"5/8", 15_875_000}, {"3/4", 19_050_000},
	{"7/8", 22_225_000}, {"63/64", 25_003_125}, {"1", 25_400_000}, {"19/64", 7_540_625}, {"31/32", 24_606_250},
}

func TestFractionTable(t *testing.T) {
	for _, row := range fractionTable {
		l, err := Parse(row.text + " in")
		require.NoError(t, err)
		require.Equal(t, row.nm, l, row.text)
		require.Equal(t, row.text+" in", l.String())
	}
}

// Arithmetic: mm = (12 ft + in) x 25.4.
func TestFeetInches(t *testing.T) {
	for text, nm := range map[string]Length{
		"12 ft 7-1/2 in": 3_848_100_000, "10 ft 3-3/8 in": 3_133_725_000,
		"13 ft 11-11/16 in": 4_259_262_500, "47-5/8 in": 1_209_675_000,
	} {
		l, err := Parse(text)
		require.NoError(t, err)
		require.Equal(t, nm, l, text)
	}
	a := must(t, "12'7-1/2\"").Times(must(t, "10'3-3/8\""))
	require.InDelta(t, 129.80078125, a.SqFt(), 1e-12)
	require.InDelta(t, 12.0588871725, a.M2(), 1e-12)
}

func TestParseForms(t *testing.T) {
	const ft, in, mm = Foot, Inch, Millimetre
	for text, want := range map[string]Length{
		"11ft 4in": 11*ft + 4*in, `11' 4 1/2"`: 11*ft + 4*in + in/2, "11’4”": 11*ft + 4*in, "11′ 4″": 11*ft + 4*in,
		"11 foot 4": 11*ft + 4*in, "11-4": 11*ft + 4*in, "12'6": 12*ft + 6*in, "7-5/8": 7*in + 5*in/8,
		`7 5/8"`: 7*in + 5*in/8, "7⅝": 7*in + 5*in/8, "7.625": 7*in + 5*in/8, "136 in": 136 * in,
		"3.45 m": 3450 * mm, "3,45 m": 3450 * mm, "3450mm": 3450 * mm, "3m45": 3450 * mm, "345cm": 3450 * mm,
		"3m450": 3450 * mm, "3 m 45 cm": 3450 * mm, "１１ft ４in": 11*ft + 4*in, "٣٤٥٠ mm": 3450 * mm,
		"11ft-4": 11*ft + 4*in, "12-inch": 12 * in, "11ft., 4 in.": 11*ft + 4*in, "1,200 mm": 1200 * mm, "3,450 m": 3450 * mm,
		"4''": 4 * in, "10 ft 3/8": 10*ft + 3*in/8, ".5 in": in / 2, "9-8 1/2": 9*ft + 8*in + in/2, "7⁄8": 7 * in / 8,
		"7 and 5/8 in": 7*in + 5*in/8, "6 ft 0 in": 6 * ft, "1 yd": 3 * ft, "7½″": 7*in + in/2, "11 FT 4 IN": 11*ft + 4*in,
		"5-3": 5*ft + 3*in, "1200.5 millimeters": 1200*mm + mm/2,
	} {
		l, err := Parse(text)
		require.NoError(t, err, text)
		require.Equal(t, want, l, text)
	}
}

func TestParseRefuses(t *testing.T) {
	for text, at := range map[string]int{
		"": 0, "plank": 0, "11ft 4in and": 8, "1e30 ft": 1, "5/0": 0, "7 5/8 5/8": 5, "1²ft": 1, "11½⅝ft": 2,
		"99999999999999999999 mm": 20, "11:04": 2, "12 sq ft": 2, "20 ft2": 2, "3 m²": 1, "3/4/26": 1, "12 in a box": 2,
		"11 ft 14": 5, "r̷": 0,
	} {
		_, err := Parse(text)
		var bad *ParseError
		require.ErrorAs(t, err, &bad, text)
		require.Equal(t, at, bad.At, text)
	}
}

func TestHeadOfBarePair(t *testing.T) {
	m, n, err := Scan("11 ft 4 planks")
	require.NoError(t, err)
	require.Equal(t, "11 ft 4", "11 ft 4 planks"[:n])
	require.Equal(t, "11 ft", "11 ft 4 planks"[:m.Head])
	require.Equal(t, 11*Foot, m.HeadLen)
}

func TestTwoLengthsAreNotJoined(t *testing.T) {
	for text, want := range map[string]string{"2 m and 8 mm deep": "2 m", "3 m and 45 cm": "3 m and 45 cm", "11 ft and 4 in": "11 ft and 4 in", "6 ft and 8 ft": "6 ft"} {
		_, n, err := Scan(text)
		require.NoError(t, err)
		require.Equal(t, want, text[:n])
	}
}

func TestPrintParses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := Length(rapid.Int64Range(0, 1e13).Draw(t, "nm"))
		if rapid.Bool().Draw(t, "on an inch mark") {
			l -= l % SixtyFourth
		}
		for _, tape := range []Tape{{Imperial, 64}, {Metric, 1}} {
			back, err := Parse(tape.Exact(l))
			if err != nil || back != l {
				t.Fatalf("%s reads back as %d, not %d: %v", tape.Exact(l), back, l, err)
			}
		}
	})
}

func TestTape(t *testing.T) {
	inch, metric := Tape{}, Tape{System: Metric}
	for mm, want := range map[Length]string{ // arithmetic: nearest 1/16 in
		2: "1/16 in", 3: "1/8 in", 6: "1/4 in", 7: "1/4 in", 8: "5/16 in", 10: "3/8 in", 12: "1/2 in", 193: "7 5/8 in",
		244: "9 5/8 in", 1220: "48 1/16 in", 1285: "50 9/16 in", 1380: "54 5/16 in",
	} {
		require.Equal(t, want, inch.Text(mm*Millimetre))
		require.Equal(t, mm*Millimetre, must(t, metric.Text(mm*Millimetre)))
	}
	require.Equal(t, "7 19/32 in", Tape{Parts: 64}.Text(193*Millimetre))
	require.Equal(t, "11 ft 4 in", inch.Text(136*Inch))
	require.Equal(t, "7 ft", inch.Room(7*Foot))
	require.Equal(t, "3.45 m", metric.Room(3450*Millimetre))
	require.Equal(t, "-1/4 in", inch.Text(-Inch/4))
	require.Equal(t, "12 mm", (12 * Millimetre).String())
	require.Equal(t, 5*Inch/16, inch.Up(7*Millimetre))
}

// An independent library of units: bcicen/go-units.
func TestConversionsAgree(t *testing.T) {
	for name, one := range map[string]Length{"inch": Inch, "foot": Foot, "yard": Yard, "millimeter": Millimetre, "centimeter": Centimetre} {
		unit, err := units.Find(name)
		require.NoError(t, err)
		v, err := units.ConvertFloat(1000, unit, units.Meter)
		require.NoError(t, err)
		require.InDelta(t, v.Float(), one.MM(), 1e-9, name)
	}
}

// Whole boxes at exact multiples, where binary floats buy one too many: 200 x 1.10 = 220.00000000000003.
func TestUp(t *testing.T) {
	need := Number{220, 1}.OfArea(SquareFoot)
	require.EqualValues(t, 11, Up(need.Over(Number{20, 1}.OfArea(SquareFoot))))
	require.EqualValues(t, 10, Up(need.Over(Number{22, 1}.OfArea(SquareFoot))))
	require.EqualValues(t, 12, Up(need.Plus(AreaOf(SquareInch.Nm2())).Over(Number{20, 1}.OfArea(SquareFoot))))
}

// 1 m² by 1 mm is 1 L; 100 sq ft by 1/8 in is 1.0417 cu ft; 10.1 US fl oz is 18.2273 cu in (NIST Handbook 44).
func TestVolumes(t *testing.T) {
	require.Zero(t, SquareMetre.Deep(Millimetre).Cmp(Litre))
	v := Number{100, 1}.OfArea(SquareFoot).Deep(Inch / 8)
	require.InDelta(t, 1.0417, ratio(&v.nm3, &CubicFoot.nm3), 5e-5)
	fl := ratio(&Gallon.nm3, &CubicInch.nm3) / 128 * 10.1
	require.InDelta(t, 18.2273, fl, 5e-5)
}

func must(t *testing.T, text string) Length {
	l, err := Parse(text)
	require.NoError(t, err)
	return l
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"11ft 4in", "11’4”", "7⅝", "3m45", "1e30 ft", "٣ m", "11-4", "4''"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		l, err := Parse(s)
		if err != nil || l >= 1_000_000*Metre { // 1000 km in millimetres and nanometres has more digits than are read
			return
		}
		back, err := Parse(l.String())
		require.NoError(t, err)
		require.Equal(t, l, back)
	})
}

func BenchmarkParse(b *testing.B) {
	for _, s := range []string{"7 5/8", "11ft 4 1/2in", "3450mm"} {
		b.Run(s, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				_, _ = Parse(s)
			}
		})
	}
}
