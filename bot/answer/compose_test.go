package answer

import (
	"encoding/json"
	"math/big"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc"
	"lastrow/calc/length"
	"lastrow/calc/term"
)

func TestComposeRows(t *testing.T) {
	q := calc.Question{Kind: term.AskRows, Given: []term.Given{
		{Name: term.Across, Value: term.Len(136 * length.Inch), From: term.Message},
		{Name: term.PlankWidth, Value: term.Len(7*length.Inch + 5*length.Inch/8), From: term.Message},
	}}
	r, err := calc.Answer(&calc.Job{}, q)
	require.NoError(t, err)
	a := Compose(r, length.Tape{}, nil)
	require.Equal(t, "18 rows. First row 7 5/8 in, last row 5 7/8 in.", strings.Split(a.Text, "\n")[0])
	require.Contains(t, a.Text, "1/4 in gap at each wall")
	require.Contains(t, a.Text, "11 ft 4 in - 2 x 1/4 in gap = 11 ft 3 1/2 in to cover")
}

func TestValuesMarshal(t *testing.T) {
	for want, v := range map[string]term.Value{
		`{"mm":193.675,"text":"7 5/8 in"}`:                     term.Len(193_675_000),
		`{"mm":[3454.4,12],"text":"11 ft 4 in x 12 mm"}`:       term.Lens{136 * length.Inch, 12 * length.Millimetre},
		`{"m2":9.290304,"text":"100 sq ft"}`:                   term.Area{Area: length.Number{Num: 100, Den: 1}.OfArea(length.SquareFoot)},
		`{"count":18,"text":"18"}`:                             term.Count(18),
		`{"count":17.5,"text":"17.5"}`:                         term.Number{Rat: big.NewRat(35, 2)},
		`{"percent":7.5,"text":"7.5 %"}`:                       term.Percent(7500),
		`{"deg":22.5,"text":"22.5°"}`:                          term.Degrees(22.5),
		`{"kg":10,"text":"22 lb"}`:                             term.Mass(10),
		`{"hours":48,"text":"48 h"}`:                           term.Hours(48),
		`{"amount":31.90,"currency":"GBP","text":"31.90 GBP"}`: term.Money{Minor: 3190, Currency: "GBP"},
		`{"text":"reducer","word":"reducer"}`:                  term.Word("reducer"),
		`{"pass":true,"text":"yes"}`:                           term.Pass(true),
	} {
		got, err := json.Marshal(Show(v, length.Tape{}))
		require.NoError(t, err)
		require.JSONEq(t, want, string(got))
	}
}

func TestSmallSizesAreNotRoundedToAnotherTool(t *testing.T) {
	require.Equal(t, "5/32 in", Length(5*length.Inch/32, length.Tape{}))
	require.Equal(t, "63/64 in", Length(63*length.SixtyFourth, length.Tape{}))
	require.Equal(t, "1 in", Length(length.Inch+length.SixtyFourth, length.Tape{}))
	require.Equal(t, "12 mm", Length(12*length.Millimetre, length.Tape{}))
}

func TestListsAreNeverNull(t *testing.T) {
	b, err := json.Marshal(Answer{})
	require.NoError(t, err)
	require.NotContains(t, string(b), "null")
}

func TestHeadlinesAreWellFormed(t *testing.T) {
	for kind, line := range headlines {
		require.Equal(t, strings.Count(line, "["), strings.Count(line, "]"), kind)
		require.Equal(t, strings.Count(line, "{"), strings.Count(line, "}"), kind)
		_, ok := names{}.fill(line)
		require.False(t, ok, "%s says something of nothing", kind)
	}
}

func TestAsk(t *testing.T) {
	require.Equal(t, "How thick is the plank (12mm), or how high does the new floor end up (14mm)? I also need the other height.",
		Ask([][]term.Name{{term.PlankThickness, term.FloorHeight}, {term.OtherHeight}}))
}

func TestHarmless(t *testing.T) {
	require.Equal(t, "(at)everyone 7 5/8", Harmless("@every\u202eone\b **7** `5/8`"))
	require.Equal(t, "room 11ft", Harmless("r\u0337oom 11ft"))
}

func TestLimit(t *testing.T) {
	s := Limit(strings.Repeat("a line of words\n", 500))
	require.LessOrEqual(t, len(s), MaxText)
	require.True(t, strings.HasSuffix(s, "(cut short)"))
}
