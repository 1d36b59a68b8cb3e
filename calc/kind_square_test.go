package calc

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
	"lastrow/calc/term"
)

func TestSquare(t *testing.T) {
	sides := func(diagonal length.Length) []any {
		return []any{term.SideA, term.Len(mm(3600)), term.SideB, term.Len(mm(4800)), term.Diagonal, term.Len(diagonal)}
	}
	r := ask(t, term.AskSquare, sides(mm(6020))...)
	require.Equal(t, term.Len(mm(6000)), value(r, term.TrueDiagonal))
	require.InDelta(t, 90.399, float64(value(r, term.Angle).(term.Degrees)), 0.001) // acos((3600² + 4800² - 6020²) / (2 x 3600 x 4800))
	require.InDelta(t, 33.389, length.Length(value(r, term.OutOfSquare).(term.Len)).MM(), 0.001)
	r = ask(t, term.AskSquare, sides(mm(5980))...)
	require.Contains(t, r.Working[1], "tighter")
	require.Positive(t, int64(value(r, term.OutOfSquare).(term.Len)))
	r = ask(t, term.AskSquare, sides(mm(6000))...)
	require.Contains(t, r.Working[1], "is square")
	require.Nil(t, value(ask(t, term.AskSquare, sides(0)[:4]...), term.Angle))
	_, err := Answer(&Job{}, Question{term.AskSquare, given(sides(mm(9000))...)})
	require.ErrorContains(t, err, "no triangle")
	_, err = Answer(&Job{}, Question{term.AskSquare, given(term.SideA, term.Len(0), term.SideB, term.Len(mm(2)))})
	require.Error(t, err)
}

// 1/2 in over 12 ft is 0.199 degrees.
func TestTaper(t *testing.T) {
	for _, widths := range [][2]float64{{4.125, 3.625}, {3.625, 4.125}, {0, .5}} {
		r := ask(t, term.AskTaper, term.WidthHere, term.Len(in(widths[0])), term.WidthThere, term.Len(in(widths[1])), term.Length, term.Len(in(144)))
		require.Equal(t, term.Len(in(.5)), value(r, term.Taper))
		require.InDelta(t, 0.199, float64(value(r, term.Angle).(term.Degrees)), 0.0005)
	}
	_, err := Answer(&Job{}, Question{term.AskTaper, given(term.WidthHere, term.Len(in(5)), term.WidthThere, term.Len(in(9)), term.Length, term.Len(0))})
	require.ErrorContains(t, err, "no length to work with")
}

func TestMiter(t *testing.T) {
	for c, want := range map[float64]float64{88: 46, 90: 45, 92: 44, 120: 30, 135: 22.5, 150: 15, 270: 45, 225: 22.5} {
		require.Equal(t, term.Degrees(want), value(ask(t, term.AskMiter, term.Corner, term.Degrees(c)), term.Miter))
	}
	for _, c := range []float64{-5, 0, 9, 180, 351, 400} {
		_, err := Answer(&Job{}, Question{term.AskMiter, given(term.Corner, term.Degrees(c))})
		require.ErrorContains(t, err, "none that trim goes round", c)
	}
}
