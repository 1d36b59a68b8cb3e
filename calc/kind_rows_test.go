package calc

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
	"lastrow/calc/term"
)

func in(inches float64) length.Length { return length.Length(inches * float64(length.Inch)) }
func mm(mm int64) length.Length       { return length.Length(mm) * length.Millimetre }

func given(pairs ...any) []term.Given {
	var out []term.Given
	for i := 0; i < len(pairs); i += 2 {
		out = append(out, term.Given{Name: pairs[i].(term.Name), Value: pairs[i+1].(term.Value), From: term.Message})
	}
	return out
}

func value(r Result, n term.Name) term.Value {
	for _, v := range r.Values {
		if v.Name == n {
			return v.Value
		}
	}
	return nil
}

// Arithmetic: available = width - 2 gaps; rows = available / plank rounded up; balanced = (plank + last) / 2.
func TestRows(t *testing.T) {
	for _, c := range []struct {
		across, gap, plank length.Length
		n                  int64
		last, balanced     length.Length
	}{
		{in(144), in(.375), in(7.5), 20, in(.75), in(4.125)},
		{in(144), in(.375), in(7.625), 19, in(6), 0},
		{in(124.5), in(.25), in(7.5), 17, in(4), 0},
		{in(113), in(.25), in(7.5), 15, in(7.5), 0},
		{in(120), in(.5), in(7), 17, in(7), 0},
		{mm(3600), mm(10), mm(193), 19, mm(106), 0},
		{mm(3500), mm(10), mm(193), 19, mm(6), mm(199) / 2},
		{mm(4270), mm(8), mm(244), 18, mm(106), 0},
		{mm(2950), mm(10), mm(195), 16, mm(5), mm(100)},
	} {
		r, err := Answer(&Job{}, Question{term.AskRows, given(term.Across, term.Len(c.across), term.Gap, term.Len(c.gap), term.PlankWidth, term.Len(c.plank))})
		require.NoError(t, err)
		require.Equal(t, term.Count(c.n), value(r, term.Rows))
		require.Equal(t, term.Len(c.last), value(r, term.LastRowWidth))
		if c.balanced > 0 {
			require.Equal(t, term.Len(c.balanced), value(r, term.BalancedRowWidth))
		} else {
			require.Nil(t, value(r, term.BalancedRowWidth))
		}
	}
}

func TestRowsMissingAndRefused(t *testing.T) {
	_, err := Answer(&Job{}, Question{Kind: term.AskRows})
	var missing *Missing
	require.ErrorAs(t, err, &missing)
	require.Len(t, missing.Needs, 2)
	_, err = Answer(&Job{}, Question{term.AskRows, given(term.Across, term.Len(in(12)), term.PlankWidth, term.Len(in(13)))})
	require.ErrorContains(t, err, "does not fit")
	_, err = Answer(&Job{}, Question{term.AskRows, given(term.Across, term.Len(in(120)), term.PlankWidth, term.Len(in(900)))})
	require.EqualError(t, err, "plank-width of 75 ft is out of bounds: 3/8 in to 3 ft 3 3/8 in")
}
