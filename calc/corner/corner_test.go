package corner

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/spatial/r2"
	"pgregory.net/rapid"

	"lastrow/calc/length"
)

func ft(f float64) length.Length { return length.Length(f * float64(length.Foot)) }
func in(f float64) length.Length { return length.Length(f * float64(length.Inch)) }

// 3-4-5 and its multiples, 15-20-25 among them, are in framing textbooks; 60 x 100 ft is 116.62 ft in a published example,
// where tenths of a foot were once taken for inches: it is 116 ft 7 7/16 in. The others by the root.
func TestDiagonal(t *testing.T) {
	tape := length.Tape{System: length.Imperial}
	for _, c := range []struct {
		a, b float64
		want string
	}{
		{3, 4, "60 in"}, {6, 8, "10 ft"}, {15, 20, "25 ft"}, {60, 100, "116 ft 7 7/16 in"}, {12, 15, "19 ft 2 1/2 in"},
		{10, 12, "15 ft 7 7/16 in"}, {12.5, 14.25, "18 ft 11 7/16 in"}, {11.25, 13.5, "17 ft 6 7/8 in"},
	} {
		require.Equal(t, c.want, tape.Text(Diagonal(ft(c.a), ft(c.b))))
	}
	require.Equal(t, 6*length.Metre, Diagonal(3600*length.Millimetre, 4800*length.Millimetre))
	require.InDelta(t, 6403.1, Diagonal(4*length.Metre, 5*length.Metre).MM(), 0.05)
}

// The law of cosines.
func TestAngle(t *testing.T) {
	for _, c := range []struct{ a, b, c, want float64 }{
		{36, 48, 60.5, 90.999}, {36, 48, 59.5, 89.009}, {6, 8, 10.05, 90.598}, {3, 4, 5, 90},
	} {
		got, err := Angle(in(c.a), in(c.b), in(c.c))
		require.NoError(t, err)
		require.InDelta(t, c.want, got, 0.0005)
	}
	for _, bad := range [][3]float64{{3, 4, 7}, {3, 4, 9}, {9, 4, 3}, {4, 9, 3}, {0, 4, 4}} {
		_, err := Angle(in(bad[0]), in(bad[1]), in(bad[2]))
		require.ErrorIs(t, err, ErrNoTriangle)
	}
}

// gonum's plane vectors are an independent geometry: a corner is laid out and measured back.
func TestCornersLaidOutWithGonum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.Float64Range(200, 20000).Draw(t, "a")
		b := rapid.Float64Range(200, 20000).Draw(t, "b")
		turn := rapid.Float64Range(60, 120).Draw(t, "corner")
		end := r2.Rotate(r2.Vec{X: b}, turn*math.Pi/180, r2.Vec{})
		c := r2.Norm(r2.Sub(r2.Vec{X: a}, end))
		mm := func(f float64) length.Length { return length.Length(math.Round(f * float64(length.Millimetre))) }
		got, err := Angle(mm(a), mm(b), mm(c))
		require.NoError(t, err)
		require.InDelta(t, turn, got, 1e-4)
		require.InDelta(t, -end.X, OutOfSquare(mm(a), mm(b), mm(c)).MM(), 0.01)
	})
}

// 1 degree over 12 ft is 2.5135 in, 1/2 in over 12 ft is 0.199 degrees; 1/2 in of taper in 12 ft is 0.1667 in at 4 ft.
func TestTaper(t *testing.T) {
	require.InDelta(t, 0.199, Taper(in(.5), ft(12)), 0.0005)
	require.InDelta(t, 1, Taper(in(2.5135), ft(12)), 0.0005)
	require.InDelta(t, in(3+1.0/6).MM(), WidthAt(in(3), in(3.5), ft(12), ft(4)).MM(), 1e-5)
	require.InDelta(t, 4.76, Taper(in(2), in(24)), 0.005) // 1:12, the gauge for ramps of 2 in in 24: 4.76 degrees (2010 ADA Standards, 405.2)
	require.Equal(t, in(3.5), WidthAt(in(3), in(3.5), ft(12), ft(12)))
	require.Equal(t, in(3.25), WidthAt(in(3.5), in(3), ft(12), ft(6)))
}

func TestMitre(t *testing.T) {
	for corner, want := range map[float64]float64{88: 46, 90: 45, 92: 44, 120: 30, 135: 22.5, 150: 15} {
		require.Equal(t, want, Mitre(corner))
	}
	require.InDelta(t, in(0.0218).MM(), Opening(in(.625), 92, 90).MM(), 0.005)
	require.Zero(t, Opening(in(.625), 90, 90))
}
