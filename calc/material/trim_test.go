package material

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lastrow/calc/length"
)

// A room of 12 x 15 ft entered through a door in its south wall, with a chimney breast on the north one.
func TestTrimPieces(t *testing.T) {
	pieces := Trim([]Wall{
		{"south", ft(4), 90}, {"east", ft(15), 90}, {"north", ft(4), 90}, {"breast", ft(1), 270}, {"breast", ft(4), 270},
		{"breast", ft(1), 90}, {"north", ft(4), 90}, {"west", ft(15), 90}, {"south", ft(5), 0},
	})
	require.Len(t, pieces, 9)
	require.Equal(t, End{Kind: AtCasing}, pieces[0].Right)
	require.Equal(t, End{Inside, 45}, pieces[0].Left)
	require.Equal(t, End{Outside, 45}, pieces[4].Right)
	require.Equal(t, End{Outside, 45}, pieces[4].Left)
	require.Equal(t, End{Kind: AtCasing}, pieces[8].Left)
	require.Equal(t, ft(4)+in(1), pieces[4].Stock(in(.5)))
	require.Equal(t, ft(15), pieces[1].Stock(in(.5)))
}

// Each piece takes half of the corner: 88° is 46 on the saw, 92° 44, 135° 22.5; a 225° outside corner is 22.5.
func TestTrimMitres(t *testing.T) {
	for corner, want := range map[float64]End{88: {Inside, 46}, 92: {Inside, 44}, 135: {Inside, 22.5}, 225: {Outside, 22.5}, 268: {Outside, 44}} {
		require.Equal(t, want, Trim([]Wall{{"a", ft(3), corner}, {"b", ft(3), 0}})[0].Left)
	}
	require.Len(t, Trim([]Wall{{"a", ft(3), 180}, {"a", ft(2), 0}}), 1)
	require.Empty(t, Trim(nil))
}

// Nothing of the walls is lost in the pieces, and a closed walk has no square ends.
func TestTrimKeepsTheWalls(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var walls []Wall
		var sum length.Length
		for i := range rapid.IntRange(3, 12).Draw(t, "walls") {
			w := Wall{fmt.Sprint(i), ft(float64(rapid.IntRange(1, 30).Draw(t, "ft"))), rapid.SampledFrom([]float64{45, 90, 135, 270}).Draw(t, "corner")}
			walls, sum = append(walls, w), sum+w.Length
		}
		for _, p := range Trim(walls) {
			sum -= p.Length
			require.NotEqual(t, AtCasing, p.Right.Kind)
			require.NotEqual(t, AtCasing, p.Left.Kind)
		}
		require.Zero(t, sum)
	})
}

func TestTrimSticks(t *testing.T) {
	p, joints, err := Sticks([]length.Length{ft(15), ft(12), ft(15), ft(9)}, ft(8), 0)
	require.NoError(t, err)
	require.Equal(t, 4, joints)
	require.Len(t, p.Sticks, 7) // four whole; 7, 7, 4 and 1 ft: 7 + 1, 7, 4
	require.True(t, p.Proven())
	_, _, err = Sticks([]length.Length{ft(3)}, 0, 0)
	require.ErrorContains(t, err, "too short")
	_, _, err = Sticks([]length.Length{0}, ft(8), 0)
	require.Error(t, err)
}

func BenchmarkTrimSticks(b *testing.B) {
	for _, n := range []int{10, 100, 1000} {
		b.Run(fmt.Sprintf("walls=%d", n), func(b *testing.B) {
			b.ReportAllocs()
			var walls []length.Length
			for i := range n {
				walls = append(walls, in(float64(20+(i*37)%140)))
			}
			for b.Loop() {
				if _, _, err := Sticks(walls, ft(8), in(.125)); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
