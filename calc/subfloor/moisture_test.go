package subfloor

import (
	"math/big"
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
	"lastrow/calc/limit"
)

func rat(s string) *big.Rat {
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		panic(s)
	}
	return r
}

func sqft(n int64) length.Area  { return length.Number{Num: n, Den: 1}.OfArea(length.SquareFoot) }
func sqm(n int64) length.Area   { return length.Number{Num: n, Den: 1}.OfArea(length.SquareMetre) }
func pick[T any](v T, _ bool) T { return v }

// ASTM F710: 75 % RH, 3 lb. ERFMI installation page: 2.0 and 1.8, 0.5 and 0.3 CM-%. NWFA: 12 %.
func TestDryness(t *testing.T) {
	for _, c := range []struct {
		test      Test
		screed    Screed
		last, wet string
	}{
		{RH, Screed{}, "75", "75.1"},
		{MVER, Screed{}, "3", "3.001"},
		{Carbide, Screed{}, "2", "2.01"},
		{Carbide, Screed{Heated: true}, "1.8", "1.81"},
		{Carbide, Screed{Sulfate: true}, "0.5", "0.51"},
		{Carbide, Screed{Sulfate: true, Heated: true}, "0.3", "0.31"},
		{Wood, Screed{}, "12", "12.1"},
	} {
		l, ok := Dryness(c.test, c.screed)
		require.True(t, ok)
		require.True(t, Dry(rat(c.last), l.Rat()), c)
		require.False(t, Dry(rat(c.wet), l.Rat()), c)
	}
	_, ok := Dryness(Sheet, Screed{})
	require.False(t, ok, "ASTM D4263 is a yes or no")
}

// 2.5 % by mass, 75 % RH and 2.0 CM-% are three scales: each test has its own limit, in its own unit.
func TestScalesAreKeptApart(t *testing.T) {
	units := map[string]bool{}
	for _, test := range []Test{RH, MVER, Carbide, Wood} {
		units[pick(Dryness(test, Screed{})).Unit] = true
	}
	require.Len(t, units, 4)
}

// ASTM F2170-19a 10.1: 3 for the first 1000 sq ft, one more for each further 1000 or part of it.
func TestTests(t *testing.T) {
	for area, want := range map[int64]int64{1: 3, 150: 3, 1000: 3, 1001: 4, 1500: 4, 2000: 4, 2001: 5, 2500: 5, 5000: 7} {
		require.Equal(t, want, Tests(RH, sqft(area)), area)
		require.Equal(t, want, Tests(MVER, sqft(area)), area)
	}
	over := sqft(1000).Plus(length.AreaOf(big.NewInt(1)))
	require.Equal(t, int64(4), Tests(RH, over))
}

// 95 m² is 1022.6 sq ft: 3 tests by the standard's metric figure, 4 by the inch-pound one, which it calls governing.
func TestInchPoundGoverns(t *testing.T) {
	require.Equal(t, int64(3), Tests(RH, sqm(60)))
	require.Equal(t, int64(3), Tests(RH, sqm(92)))
	require.Equal(t, int64(4), Tests(RH, sqm(95)))
	require.Equal(t, int64(4), Tests(RH, sqm(150)))
	require.Equal(t, int64(4), Tests(RH, sqm(100)))
}

// NWFA: 20 readings for 1000 sq ft. ASTM D4263: one for 500, from memory.
func TestOtherTests(t *testing.T) {
	for area, want := range map[int64]int64{180: 4, 350: 7, 1000: 20, 1001: 21} {
		require.Equal(t, want, Tests(Wood, sqft(area)), area)
	}
	for area, want := range map[int64]int64{180: 1, 500: 1, 501: 2, 1200: 3} {
		require.Equal(t, want, Tests(Sheet, sqft(area)), area)
	}
	require.Zero(t, Tests(Carbide, sqft(1000)))
}

// ASTM F2170-19a 10.2: 40 % drying from the top, 20 % drying both sides.
func TestProbeDepth(t *testing.T) {
	for _, c := range []struct{ slab, top, both length.Length }{
		{4 * in, 8 * in / 5, 4 * in / 5}, {5 * in, 2 * in, in}, {6 * in, 12 * in / 5, 6 * in / 5}, {100 * mm, 40 * mm, 20 * mm},
	} {
		require.Equal(t, c.top, ProbeDepth(c.slab, false))
		require.Equal(t, c.both, ProbeDepth(c.slab, true))
	}
}

// NWFA example: subfloor 11 %, 5 in plank at 8 %: 3 points where 2 are allowed, so wait.
func TestWoodAgainstPlank(t *testing.T) {
	require.False(t, Match(rat("11"), rat("8"), 5*in))
	require.True(t, Match(rat("11"), rat("8"), 5*in/2))
	require.True(t, Match(rat("10"), rat("8"), 3*in))
	require.False(t, Match(rat("10.1"), rat("8"), 3*in))
	require.True(t, Match(rat("12"), rat("8"), 3*in-nm))
	require.False(t, Match(rat("12.1"), rat("10"), 3*in-nm))
	require.Same(t, limit.WoodStrip, Apart(3*in-nm))
	require.Same(t, limit.WoodPlank, Apart(3*in))
}

func TestPlausible(t *testing.T) {
	require.NoError(t, Plausible(RH, rat("100")))
	require.Error(t, Plausible(RH, rat("100.1")))
	require.Error(t, Plausible(RH, rat("-1")))
	require.Error(t, Plausible(Carbide, rat("75")))
	require.Error(t, Plausible(MVER, rat("75")))
	require.NoError(t, Plausible(Sheet, rat("75")))
}

func BenchmarkTests(b *testing.B) {
	area := sqft(12345)
	b.ReportAllocs()
	for b.Loop() {
		Tests(RH, area)
	}
}
