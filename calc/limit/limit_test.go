package limit

import (
	"math/big"
	"testing"

	"github.com/bcicen/go-units"
	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
)

func TestEveryRowIsWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, l := range All() {
		require.NotEmpty(t, l.ID)
		require.False(t, seen[l.ID], "%s stands twice", l.ID)
		seen[l.ID] = true
		require.NotEmpty(t, l.What, l.ID)
		require.NotEmpty(t, l.Source, l.ID)
		require.Contains(t, []Sure{Published, Practice, Memory}, l.Sure, l.ID)
		require.Equal(t, l.Sure != Published, l.Overridable(), l.ID)
		if l.IsLength() {
			require.Positive(t, l.Inch, l.ID)
			require.Positive(t, l.Metric, l.ID)
			require.Nil(t, l.Rat(), l.ID)
		} else {
			require.Positive(t, l.Rat().Sign(), l.ID)
			require.NotEmpty(t, l.Unit, l.ID)
		}
		found, ok := Find(l.ID)
		require.True(t, ok)
		require.Same(t, l, found)
	}
	_, ok := Find("no-such")
	require.False(t, ok)
}

// A published figure is never without a source; a figure from memory is never published.
func TestPublishedRowsNameABody(t *testing.T) {
	for _, l := range All() {
		if l.Sure == Published {
			require.NotContains(t, l.Source, none, l.ID)
			require.Regexp(t, `[A-Z]{2,}|institute|Navy`, l.Source, l.ID)
		}
	}
}

// Where the trade rounds a length apart for the two tapes, the two stay within a tenth of each other, but for the
// gap (1/4 in and 8 mm) and the waste of rounding at the finest mark.
func TestMetricLengthsAreNearTheInch(t *testing.T) {
	apart := map[string]bool{"gap-least": true, "tape-precision": true, "undercut-play": true, "film-thickness": true}
	for _, l := range All() {
		if l.IsLength() && !apart[l.ID] {
			require.InEpsilon(t, float64(l.Inch), float64(l.Metric), 0.1, l.ID)
		}
	}
}

// The figures of the codes, in the metric that an independent converter gives; it works in float64.
func TestLengthsAgainstConverter(t *testing.T) {
	for _, c := range []struct {
		l  *Limit
		in float64
	}{
		{StepVertical, 0.25}, {StepBevelled, 0.5}, {ThresholdOld, 0.75}, // 2010 ADA Standards 303, 404.2.5
		{RiserMost, 7.75}, {RiserSpread, 0.375}, {CeilingLeast, 84}, {SillMost, 44}, {SillLeast, 24}, // 2018 IRC
		{EgressDrop, 1.5}, {FireDoor, 0.75}, {FlatTenFeet, 0.1875}, {FlatSixFeet, 0.125},
	} {
		mm := units.NewValue(c.in, units.Inch).MustConvert(units.MilliMeter).Float()
		require.InDelta(t, mm, c.l.Inch.MM(), 1e-9, c.l.ID)
	}
	f := units.NewValue(85, units.Fahrenheit).MustConvert(units.Celsius).Float()
	require.InDelta(t, 29.44, f, 0.005) // ASTM F710 prints 29 for 85 °F
}

// The 6 by 5 m room is a trade guide's worked example of the rule in NF DTU 51.11: 9 mm and 8 mm. 7 m gives 10.5,
// which the tape rounds up.
func TestDefaultGap(t *testing.T) {
	for _, c := range []struct {
		run  length.Length
		want length.Length
	}{
		{3 * length.Metre, 8 * mm}, {5 * length.Metre, 8 * mm}, {6 * length.Metre, 9 * mm},
		{7 * length.Metre, 11 * mm}, {7200 * mm, 11 * mm}, {8 * length.Metre, 12 * mm}, {10 * length.Metre, 15 * mm},
		{6*length.Metre + 1, 10 * mm},
	} {
		require.Equal(t, c.want, DefaultGap(c.run, length.Metric), c.run)
	}
	require.Equal(t, in/4, DefaultGap(13*length.Foot, length.Imperial))
	require.Equal(t, 7*in/16, DefaultGap(22*length.Foot, length.Imperial)) // 10.06 mm is under 7/16 in, over 3/8
	require.Equal(t, 10500*length.Length(1000), ByRun(7*length.Metre))
}

// The gap follows the length of the run; "three times the plank" is a saying that no standard supports.
func TestGapKnowsNoThickness(t *testing.T) {
	require.Less(t, DefaultGap(4*length.Metre, length.Metric), 24*mm)
}

// ANSI A208.2 caps linear expansion at 0.33 % over 30 points of humidity.
func TestMoveCeiling(t *testing.T) {
	points := new(big.Rat).Mul(MoveCeiling.Rat(), big.NewRat(30, 1))
	require.Equal(t, "33/10", points.RatString())
	require.Equal(t, Memory, MoveCeiling.Sure, "the step of humidity is from memory")
}

// 8 m, 10 m, 27 ft, 30 ft and 40 ft all circulate as the longest run: none is a standard's, so a user may set another.
func TestLongRunIsNoStandard(t *testing.T) {
	require.True(t, LongRun.Overridable())
	require.False(t, RiserSpread.Overridable())
}

func TestText(t *testing.T) {
	inch, metric := length.Tape{}, length.Tape{System: length.Metric}
	require.Equal(t, "2 in", LeastRow.Text(inch))
	require.Equal(t, "50 mm", LeastRow.Text(metric))
	require.Equal(t, "75 % RH", MoistureRH.Text(metric))
	require.Equal(t, "1.8 CM-%", CarbideCementWarm.Text(inch))
	require.Equal(t, "largest riser less smallest, in a whole flight: 3/8 in (2018 IRC R311.7.5.1; published)", RiserSpread.Why(inch))
}
