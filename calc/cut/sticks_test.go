package cut

import (
	"fmt"
	"math/bits"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lastrow/calc/length"
)

// fewestPlain is the least number of sticks by a table over all subsets: slow, and too plain to be wrong. Each entry is
// the fewest sticks, and the least used of the last of them, that hold the subset.
func fewestPlain(pieces []length.Length, stock, kerf length.Length) int {
	type entry struct {
		sticks int
		used   length.Length
	}
	table := make([]entry, 1<<len(pieces))
	table[0] = entry{1, -kerf}
	for set := 1; set < len(table); set++ {
		best := entry{len(pieces) + 1, 0}
		for i, p := range pieces {
			if set&(1<<i) == 0 {
				continue
			}
			e := table[set&^(1<<i)]
			if e.used+kerf+p <= stock {
				e.used += kerf + p
			} else {
				e = entry{e.sticks + 1, p}
			}
			if e.sticks < best.sticks || e.sticks == best.sticks && e.used < best.used {
				best = e
			}
		}
		table[set] = best
	}
	return table[len(table)-1].sticks
}

func TestFewestAgainstAllSubsets(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stock := length.Length(rapid.IntRange(40, 120).Draw(t, "stock")) * length.Inch
		kerf := length.Length(rapid.IntRange(0, 4).Draw(t, "kerf")) * length.Inch / 16
		var pieces []length.Length
		for range rapid.IntRange(1, 11).Draw(t, "n") {
			pieces = append(pieces, length.Length(rapid.Int64Range(1, int64(stock)*16/int64(length.Inch)).Draw(t, "piece"))*length.Inch/16)
		}
		plan, err := Sticks(pieces, stock, kerf)
		require.NoError(t, err)
		require.Equal(t, fewestPlain(pieces, stock, kerf), len(plan.Sticks))
		require.True(t, plan.Proven())
		checkPlan(t, plan, pieces, stock, kerf)
	})
}

// checkPlan adds a plan up again: every piece once, no stick overfull, and what is left is left.
func checkPlan(t require.TestingT, p Plan, pieces []length.Length, stock, kerf length.Length) {
	seen := map[int]bool{}
	for _, s := range p.Sticks {
		used := kerf * length.Length(len(s.Pieces)-1)
		for _, i := range s.Pieces {
			require.False(t, seen[i])
			seen[i] = true
			used += pieces[i]
		}
		require.LessOrEqual(t, used, stock)
		require.Equal(t, stock-used, s.Left)
	}
	require.Len(t, seen, len(pieces))
	require.LessOrEqual(t, p.Bound, len(p.Sticks))
}

func TestSticks(t *testing.T) {
	ft := length.Foot
	for _, c := range []struct {
		pieces      []length.Length
		stock, kerf length.Length
		want        int
	}{
		{nil, 8 * ft, 0, 0},
		{[]length.Length{4 * ft, 4 * ft}, 8 * ft, 0, 1},
		{[]length.Length{4 * ft, 4 * ft}, 8 * ft, length.Inch / 8, 2}, // the saw's cut is what does not fit
		{[]length.Length{8 * ft}, 8 * ft, length.Inch / 8, 1},         // one piece needs no cut
		{[]length.Length{6 * ft, 5 * ft, 4 * ft, 4 * ft, 3 * ft, 2 * ft}, 8 * ft, 0, 3},
		{[]length.Length{5 * ft, 5 * ft, 4 * ft, 4 * ft, 4 * ft, 3 * ft, 3 * ft, 2 * ft}, 10 * ft, 0, 3},
	} {
		p, err := Sticks(c.pieces, c.stock, c.kerf)
		require.NoError(t, err)
		require.Len(t, p.Sticks, c.want)
		require.True(t, p.Proven())
	}
	_, err := Sticks([]length.Length{9 * ft}, 8*ft, 0)
	require.ErrorContains(t, err, "can't be cut")
	_, err = Sticks([]length.Length{0}, 8*ft, 0)
	require.Error(t, err)
	_, err = Sticks([]length.Length{ft}, 8*ft, -1)
	require.ErrorContains(t, err, "kerf")
}

// spread gives pieces of many lengths, the same ones every time.
func spread(n int) []length.Length {
	var out []length.Length
	for i := range n {
		out = append(out, length.Length(12+bits.Reverse8(uint8(i*37))%80)*length.Inch)
	}
	return out
}

func TestManyPiecesStayWithinTheirBound(t *testing.T) {
	pieces := spread(400)
	p, err := Sticks(pieces, 8*length.Foot, length.Inch/8)
	require.NoError(t, err)
	checkPlan(t, p, pieces, 8*length.Foot, length.Inch/8)
	again, _ := Sticks(pieces, 8*length.Foot, length.Inch/8)
	require.Equal(t, p, again)
	require.LessOrEqual(t, len(p.Sticks), p.Bound*11/9+1) // first fit, longest first, is never worse than 11/9 of the best and 6/9
}

func BenchmarkSticks(b *testing.B) {
	for _, n := range []int{10, 100, 1000} {
		b.Run(fmt.Sprintf("pieces=%d", n), func(b *testing.B) {
			b.ReportAllocs()
			pieces := spread(n)
			for b.Loop() {
				if _, err := Sticks(pieces, 8*length.Foot, length.Inch/8); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
