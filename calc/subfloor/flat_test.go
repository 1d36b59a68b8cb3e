package subfloor

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lastrow/calc/length"
)

const (
	in = length.Inch
	ft = length.Foot
	mm = length.Millimetre
	m  = length.Metre
	nm = length.Nanometre
)

// Extended table of DIN 18202 in a German building-trades handbook. It prints 12 for row 2 at 3.5 m where the line gives
// 11.33, and 22 and 23 for row 1 at 6 and 8 m.
func TestDINExtended(t *testing.T) {
	over := []length.Length{600 * mm, 1500 * mm, 2 * m, 2500 * mm, 3 * m, 3500 * mm, 6 * m, 8 * m}
	for row, want := range map[int][]length.Length{
		2: {7, 9, 9, 10, 11, 11, 13, 14},
		3: {3, 5, 6, 7, 8, 9, 11, 11},
		4: {2, 4, 5, 6, 7, 8, 10, 11},
	} {
		for i, o := range over {
			a, err := DIN(row, o)
			require.NoError(t, err)
			require.Equal(t, want[i]*mm, a.Gap, "row %d at %s", row, o)
		}
	}
}

// DIN 18202:2013 Table 3 as printed. Row 4 at 1 m is 3 mm; one page in circulation prints 2.
func TestDINPrinted(t *testing.T) {
	over := []length.Length{100 * mm, m, 4 * m, 10 * m, 15 * m, 18 * m}
	for row, want := range map[int][]length.Length{
		1: {10, 15, 20, 25, 30, 30}, 2: {5, 8, 12, 15, 20, 20}, 3: {2, 4, 10, 12, 15, 15}, 4: {1, 3, 9, 12, 15, 15},
	} {
		for i, o := range over {
			a, err := DIN(row, o)
			require.NoError(t, err)
			require.Equal(t, want[i]*mm, a.Gap, "row %d at %s", row, o)
		}
	}
	_, err := DIN(5, m) // walls, whose translations disagree
	require.Error(t, err)
	_, err = DIN(3, 100*mm-nm)
	require.Error(t, err)
}

func TestDINNeverShrinks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		row := rapid.IntRange(1, 4).Draw(t, "row")
		a := length.Length(rapid.Int64Range(int64(100*mm), int64(20*m)).Draw(t, "a"))
		b := length.Length(rapid.Int64Range(int64(100*mm), int64(20*m)).Draw(t, "b"))
		short, _ := DIN(row, min(a, b))
		long, _ := DIN(row, max(a, b))
		require.LessOrEqual(t, short.Gap, long.Gap)
	})
}

// BS 8204: 3, 5 and 10 mm under 2 m in all, not plus or minus.
func TestBS(t *testing.T) {
	for c, gap := range map[Class]length.Length{SR1: 3 * mm, SR2: 5 * mm, SR3: 10 * mm} {
		a, err := BS(c)
		require.NoError(t, err)
		require.True(t, a.Kept(gap))
		require.False(t, a.Kept(gap+nm))
		best, ok := Best(gap)
		require.True(t, ok)
		require.Equal(t, c, best)
	}
	_, ok := Best(10*mm + nm)
	require.False(t, ok)
	_, err := BS("SR4")
	require.Error(t, err)
}

// NWFA: 3/16 in in 10 ft and 1/8 in in 6 ft are two slopes; the second scaled to 10 ft would be 0.2083 in. ASTM F710
// has the first. "10 in" and "10 ft radius" are misprints of it.
func TestInchRules(t *testing.T) {
	for _, c := range []struct{ edge, gap length.Length }{
		{10 * ft, 3 * in / 16}, {12 * ft, 3 * in / 16}, {6 * ft, in / 8}, {8 * ft, in / 8}, {9 * ft, in / 8},
		{3 * ft, in / 16}, {4 * ft, in / 12},
	} {
		a, err := Allowed(c.edge, length.Imperial)
		require.NoError(t, err)
		require.Equal(t, c.gap, a.Gap, c.edge)
		require.True(t, a.Kept(c.gap))
		require.False(t, a.Kept(c.gap+nm))
	}
	require.NotEqual(t, 3*in/16*6, in/8*10)
	ten, _ := Allowed(10*in, length.Imperial)
	require.Less(t, ten.Gap, 3*in/16)
}

// The straightedge picks the rule where it is plainly of one system, the job where it is not.
func TestRuleByStraightedge(t *testing.T) {
	a, err := Allowed(2*m, length.Imperial)
	require.NoError(t, err)
	require.Contains(t, a.Rule, "DIN 18202")
	require.Equal(t, 6*mm, a.Gap)
	a, _ = Allowed(6*ft, length.Metric)
	require.Contains(t, a.Rule, "NWFA")
	a, _ = Allowed(25*ft, length.Metric) // 7.62 m, whole in both
	require.Contains(t, a.Rule, "DIN")
	a, _ = Allowed(25*ft, length.Imperial)
	require.Contains(t, a.Rule, "10 ft")
	_, err = Allowed(in, length.Imperial)
	require.Error(t, err)
	_, err = Allowed(100*m, length.Metric)
	require.Error(t, err)
}

// European resilient flooring makers' institute: 3 mm in the first metre and 2 mm further, 7 mm at 3 m where DIN 18202
// row 3 allows 8.
func TestStricter(t *testing.T) {
	for edge, gap := range map[length.Length]length.Length{m / 2: 3 * mm, m: 3 * mm, 2 * m: 5 * mm, 3 * m: 7 * mm, 2500 * mm: 6 * mm} {
		require.Equal(t, gap, Stricter(edge).Gap, edge)
	}
	din, _ := DIN(3, 3*m)
	require.False(t, Stricter(3*m).Kept(din.Gap))
}

// Heights 0, 5 and 2 mm a metre apart: the middle stands 5 - 1 = 4 mm off over a base of 2 m; 6 allowed by row 3, 5 by 4.
func TestGrid(t *testing.T) {
	w, err := Grid([]length.Length{0, 5 * mm, 2 * mm}, m, 3)
	require.NoError(t, err)
	require.Equal(t, 4*mm, w.Deviation)
	require.Equal(t, 6*mm, w.Allowance.Gap)
	require.True(t, w.Kept)
	w, _ = Grid([]length.Length{0, 5 * mm, 2 * mm}, m, 4)
	require.Equal(t, 5*mm, w.Allowance.Gap)
	require.True(t, w.Kept)
	w, _ = Grid([]length.Length{0, 0, 20 * mm, 0, 0}, m, 3)
	require.Equal(t, 2, w.At)
	require.Equal(t, 1, w.Reach)
	require.False(t, w.Kept)
	_, err = Grid([]length.Length{0, 0}, m, 3)
	require.Error(t, err)
	_, err = Grid([]length.Length{0, 0, 0}, m, 9)
	require.Error(t, err)
}

// Flat is not level (Concrete Society): a floor that slopes evenly has no deviation, whatever its slope.
func TestSlopeIsFlat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 40).Draw(t, "points")
		fall := length.Length(rapid.Int64Range(-int64(50*mm), int64(50*mm)).Draw(t, "fall"))
		heights := make([]length.Length, n)
		for i := range heights {
			heights[i] = fall * length.Length(i)
		}
		w, err := Grid(heights, m, 4)
		require.NoError(t, err)
		require.Zero(t, w.Deviation)
		require.True(t, w.Kept)
	})
}

func BenchmarkGrid(b *testing.B) {
	for _, n := range []int{10, 100, 1000} {
		heights := make([]length.Length, n)
		for i := range heights {
			heights[i] = length.Length(i*i%7) * mm
		}
		b.Run(fmt.Sprintf("points=%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				_, _ = Grid(heights, m, 3)
			}
		})
	}
}
