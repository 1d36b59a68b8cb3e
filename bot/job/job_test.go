package job

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc"
	"lastrow/calc/length"
	"lastrow/calc/room"
	"lastrow/calc/term"
	"lastrow/grammar"
)

func TestReplay(t *testing.T) {
	ss, err := Parse([]string{
		"plank 12 mm thick",
		"room 12 ft 4 in x 9 ft 2 in, without 36 in x 30 in at ne",
		"gap 0 in at south",
		"laid 4 rows", "laid 2 more rows", "damaged 3 planks", "damaged less 1 planks",
		"least-end 10 in", "least-end 9 in", Undo,
	})
	require.NoError(t, err)
	j := Replay("Alder", ss)
	require.Equal(t, length.Imperial, j.Tape.System)
	require.Equal(t, 12*length.Millimetre, j.Plank.Thickness)
	require.Equal(t, "NE", j.Plan.Rect.CutOuts[0].Corner)
	require.Equal(t, map[room.Side]length.Length{room.South: 0}, j.Plan.WallGaps)
	require.Equal(t, term.Count(6), j.Facts[term.Laid])
	require.Equal(t, term.Count(2), j.Facts[term.Damaged])
	require.Equal(t, term.Len(10*length.Inch), j.Facts[term.LeastEnd])
}

func TestFirstUnitSettlesTheTape(t *testing.T) {
	for want, texts := range map[length.System][]string{
		length.Metric:   {"room 3450 mm x 2800 mm", "gap 1/4 in"},
		length.Imperial: {"gap 1/4 in", "room 3450 mm x 2800 mm"},
	} {
		ss, err := Parse(texts)
		require.NoError(t, err)
		j := Replay("", ss)
		require.Equal(t, want, j.Tape.System)
		require.Equal(t, want == length.Metric, j.Plan.Metric)
	}
}

func TestStanding(t *testing.T) {
	require.Equal(t, []string{"c"}, Standing([]string{"a", "b", Undo, Undo, Undo, "c"}))
	require.Empty(t, Standing([]string{Undo}))
}

func TestParseNamesWhatIsNoStatement(t *testing.T) {
	_, err := Parse([]string{"rooom 1 x 2"})
	require.ErrorContains(t, err, `"rooom 1 x 2"`)
}

func TestTryListsEveryRuleBroken(t *testing.T) {
	var ss []grammar.Statement
	for _, text := range []string{"room 3 mm x 9999999 mm", "plank 75 ft wide", "laid 99999999 rows"} {
		s, err := grammar.ParseStatement(text)
		require.NoError(t, err)
		ss = append(ss, s)
	}
	err := Try(New(""), ss)
	var refusal *calc.Refusal
	require.ErrorAs(t, err, &refusal)
	require.Len(t, refusal.Reasons, 3, refusal.Reasons)
}

func TestTryRefusesAPlankWiderThanTheRoom(t *testing.T) {
	r, err := grammar.ParseStatement("room 6 in x 10 ft")
	require.NoError(t, err)
	p, err := grammar.ParseStatement("plank 7 5/8 in wide")
	require.NoError(t, err)
	require.ErrorContains(t, Try(New(""), []grammar.Statement{r, p}), "does not fit a room 6 in across")
	require.NoError(t, Try(New(""), []grammar.Statement{p}))
}
