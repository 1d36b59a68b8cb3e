package grammar

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lastrow/calc/length"
	"lastrow/calc/room"
	"lastrow/calc/term"
)

// Every form that has ever been stored parses for ever, and prints as it was stored. Lines are added, never changed.
func TestStoredStatementsParseForEver(t *testing.T) {
	stored, err := os.ReadFile("../testdata/statements/v1.txt")
	require.NoError(t, err)
	for _, line := range strings.Split(strings.TrimSpace(string(stored)), "\n") {
		s, err := ParseStatement(line)
		require.NoError(t, err, line)
		require.Equal(t, line, s.String())
		require.NotEmpty(t, s.Kind(), line)
		require.NotEmpty(t, s.Given(), line)
	}
}

func TestGeneratedStatementsParseToThemselves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := aStatement().Draw(t, "statement")
		back, err := ParseStatement(s.String())
		if err != nil {
			t.Fatalf("%s: %v", s, err)
		}
		require.Equal(t, s, back)
	})
}

func aSize() *rapid.Generator[Size] {
	return rapid.Custom(func(t *rapid.T) Size {
		if rapid.Bool().Draw(t, "metric") {
			return Size{length.Length(rapid.Int64Range(1, 20_000_000).Draw(t, "micrometres")) * 1000, length.Metric}
		}
		return Size{length.Length(rapid.Int64Range(1, 64*12*60).Draw(t, "64ths")) * length.SixtyFourth, length.Imperial}
	})
}

func aSide() *rapid.Generator[room.Side] {
	return rapid.SampledFrom([]room.Side{room.North, room.East, room.South, room.West, room.NorthEast, room.SouthEast, room.SouthWest, room.NorthWest, room.Slanted})
}

func aStatement() *rapid.Generator[Statement] {
	return rapid.Custom(func(t *rapid.T) Statement {
		size := func(name string) Size { return aSize().Draw(t, name) }
		maybe := func(name string) *Size {
			if rapid.Bool().Draw(t, name+"?") {
				s := size(name)
				return &s
			}
			return nil
		}
		n := Whole(rapid.Int64Range(1, 500).Draw(t, "n"))
		percent := Thousandths(rapid.Int64Range(1, 90_000).Draw(t, "percent"))
		wall := aSide().Draw(t, "wall")
		a, b, c := size("a"), size("b"), size("c")
		switch rapid.IntRange(0, 15).Draw(t, "kind") {
		case 0:
			return Room{EastWest: a, NorthSouth: b, CutOuts: []CutOut{{c, size("d"), "ne", rapid.Bool().Draw(t, "angled")}}}
		case 1:
			return Walls{Legs: []Leg{{To: room.East, Long: a}, {To: room.South, Long: b}, {To: room.West, Long: c}, {To: room.NorthEast, Long: size("d"), Across: maybe("across")}}, Diagonals: []Diagonal{{"nw-se", size("e")}}}
		case 2:
			what, off := rapid.SampledFrom([]string{"", "hall", "annex"}), rapid.SampledFrom([]string{"", "closet", "hall", "annex"})
			return Closet{What: what.Draw(t, "what"), Wide: a, Deep: b, Off: off.Draw(t, "off"), Wall: wall, From: &c, FromEnd: room.West, Opening: maybe("opening")}
		case 3:
			return Doorway{Wide: a, Off: rapid.SampledFrom([]string{"", "closet", "hall"}).Draw(t, "off"), Wall: wall, From: &b, FromEnd: room.East, Into: maybe("into")}
		case 4:
			return Fixture{What: "post", Wide: a, Deep: maybe("deep"), In: rapid.SampledFrom([]string{"", "closet", "hall", "annex"}).Draw(t, "in"), FromX: b, SideX: room.West, FromY: c, SideY: room.South}
		case 5:
			return Plank{Width: &a, Length: maybe("long"), Thickness: maybe("thick"), PerBox: &n}
		case 6:
			return Underlay{Thickness: maybe("thick"), RollWidth: &a, RollLong: &b, Overlap: maybe("overlap")}
		case 7:
			return Price{Amount: Cents(n) * 7, Currency: "gbp"}
		case 8:
			return Gap{Size: a, Wall: wall}
		case 9:
			return Limit{Name: rapid.SampledFrom([]term.Name{term.FirstRow, term.LeastEnd, term.LeastStagger, term.LeastRow, term.Kerf}).Draw(t, "limit"), Size: a}
		case 10:
			return Laid{Rows: n, More: rapid.Bool().Draw(t, "more")}
		case 11:
			return Measured{Test: "rh", Percent: &percent}
		case 12:
			return Spare{Percent: &percent}
		case 14:
			off, to := rapid.SampledFrom([]string{"", "closet", "hall"}), rapid.SampledFrom([]string{"", "annex", "hall"})
			o := Opening{Wide: a, Off: off.Draw(t, "off"), Wall: wall, To: to.Draw(t, "to")}
			if rapid.Bool().Draw(t, "from") {
				o.From, o.FromEnd, o.ToFrom, o.ToEnd = &b, room.NorthEast, &c, room.South
			}
			return o
		case 13:
			return rapid.SampledFrom([]Statement{Direction{Wall: wall}, Direction{Way: "diagonal"}, Start{wall}, Hidden{wall}}).Draw(t, "way")
		}
		return Measured{Dip: &a, Straightedge: maybe("under")}
	})
}

// FuzzStatement holds that whatever parses prints, and parses back the same.
func FuzzStatement(f *testing.F) {
	stored, err := os.ReadFile("../testdata/statements/v1.txt")
	require.NoError(f, err)
	for _, line := range strings.Split(strings.TrimSpace(string(stored)), "\n") {
		f.Add(line)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s, err := ParseStatement(text)
		if err != nil {
			return
		}
		back, err := ParseStatement(s.String())
		require.NoError(t, err)
		require.Equal(t, s, back)
	})
}

// FuzzRead holds that no message brings the reader down, that what it records prints and parses back, and that what it
// says of trouble is one line with no notation of the parser's.
func FuzzRead(f *testing.F) {
	for _, s := range []string{
		"last row width for 11ft 4in room, plank 7 5/8", "how many boxes", "room 12 x 10, 7 5/8 by 48, 8 to a box", "7 5/8",
		"no make that 11-6", "walls E 12'4, S 9', W 12'4, N 9'", "what's half of 92 1/2", "room 1e30 ft", "@everyone ½ ⅝",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		r := Read(text, Context{})
		for _, s := range r.Statements {
			back, err := ParseStatement(s.String())
			require.NoError(t, err, s.String())
			require.Equal(t, s.String(), back.String())
		}
		if p := r.Problem; p != nil {
			require.NotEmpty(t, p.Outcome)
			require.NotContains(t, p.Not, "unexpected token")
		}
	})
}

func BenchmarkRead(b *testing.B) {
	for name, text := range map[string]string{
		"usual":      "whats my last row on a 11'4 room w 7 5/8 boards",
		"chars=1000": strings.Repeat("some words of no trade and 7 5/8 ", 30),
		"chars=4000": strings.Repeat("some words of no trade and 7 5/8 ", 120),
	} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Read(text, Context{})
			}
		})
	}
}

func BenchmarkParseStatement(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		_, _ = ParseStatement("plank 7 5/8 in wide, 47 1/2 in long, 12 mm thick, 8 per box")
	}
}
