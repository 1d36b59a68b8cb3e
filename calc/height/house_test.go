package height

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
)

func flight(riser length.Length) []length.Length {
	f := make([]length.Length, 14)
	for i := range f {
		f[i] = riser
	}
	return f
}

// 2018 IRC R311.7.5.1: largest less smallest at most 3/8 in, 9.525 mm, on a flight that was uniform. 10 mm is not 3/8 in.
func TestRiserSpread(t *testing.T) {
	for _, c := range []struct {
		buildUp length.Length
		kept    bool
	}{
		{9 * mm, true}, {3 * in / 8, true}, {3*in/8 + nm, false}, {10 * mm, false}, {15 * mm, false},
	} {
		for _, at := range []Landing{Lower, Upper} {
			_, spread := StairKept(Raise(flight(7*in), at, c.buildUp))
			require.Equal(t, c.kept, spread, "%s %s", c.buildUp, at)
		}
	}
}

// R311.7.5.1: 7-3/4 in at most. The second row passes both limits exactly.
func TestRiserHeight(t *testing.T) {
	for _, c := range []struct {
		riser, buildUp, last length.Length
		height, spread       bool
	}{
		{15 * in / 2, in / 2, 8 * in, false, false},
		{59 * in / 8, 3 * in / 8, 31 * in / 4, true, true},
		{59*in/8 + nm, 3 * in / 8, 31*in/4 + nm, false, true},
	} {
		after := Raise(flight(c.riser), Upper, c.buildUp)
		require.Equal(t, c.last, after[13])
		height, spread := StairKept(after)
		require.Equal(t, c.height, height)
		require.Equal(t, c.spread, spread)
	}
}

// The spread is over the flight, so a slow drift of risers fails though no two neighbours differ by much.
func TestSpreadIsNotBetweenNeighbours(t *testing.T) {
	drift := []length.Length{7 * in, 57 * in / 8, 58 * in / 8, 59 * in / 8, 15 * in / 2}
	require.Equal(t, in/2, Spread(drift))
	_, spread := StairKept(drift)
	require.False(t, spread)
}

func TestRaiseLeavesTheFlight(t *testing.T) {
	before := flight(7 * in)
	after := Raise(before, Lower, 10*mm)
	require.Equal(t, flight(7*in), before)
	require.Equal(t, 7*in-10*mm, after[0])
	require.Empty(t, Raise(nil, Upper, 10*mm))
}

// 2018 IRC R305.1: 7 ft. 84.25 in less 10 mm is 83.856 in.
func TestCeiling(t *testing.T) {
	require.True(t, CeilingKept(84*in, false))
	require.False(t, CeilingKept(84*in-nm, false))
	require.False(t, CeilingKept(84*in+in/4-10*mm, false))
	require.True(t, CeilingKept(80*in, true))
	require.False(t, CeilingKept(80*in-nm, true))
}

// 2018 IRC R310.2.2, 44 in, which a raised floor helps; R312.2, 24 in, which it hurts.
func TestSill(t *testing.T) {
	build := 39 * in / 100
	for _, c := range []struct {
		before       length.Length
		escape, fall bool
	}{
		{44*in + in/4, true, true}, {24*in + in/4, true, false}, {44*in + build, true, true},
		{44*in + build + nm, false, true}, {24*in + build, true, true}, {24*in + build - nm, true, false},
	} {
		escape, fall := SillKept(c.before - build)
		require.Equal(t, c.escape, escape, c.before)
		require.Equal(t, c.fall, fall, c.before)
	}
}

func TestEgressAndGuard(t *testing.T) {
	require.True(t, EgressKept(3*in/2)) // 2018 IRC R311.3.1
	require.False(t, EgressKept(3*in/2+nm))
	require.True(t, EgressKept(0))
	require.False(t, EgressKept(-nm))
	require.True(t, GuardKept(36*in+10*mm, 10*mm)) // 2018 IRC R312.1.2
	require.False(t, GuardKept(36*in, 10*mm))
}
