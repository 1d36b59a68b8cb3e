package height

import (
	"fmt"
	"testing"

	"github.com/bcicen/go-units"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lastrow/calc/length"
	"lastrow/calc/limit"
)

const (
	in = length.Inch
	mm = length.Millimetre
	nm = length.Nanometre
)

func floor(plank, underlay length.Length) Layers { return Layers{Plank: plank, Underlay: underlay} }

func TestBuildUp(t *testing.T) {
	require.Equal(t, 10*mm, floor(8*mm, 2*mm).BuildUp())
	require.Equal(t, 13*mm, Layers{Leveler: 3 * mm, Underlay: 2 * mm, Plank: 8 * mm}.BuildUp())
	inches := units.NewValue(10, units.MilliMeter).MustConvert(units.Inch).Float()
	require.InDelta(t, inches, float64(floor(8*mm, 2*mm).BuildUp())/float64(in), 1e-9)
}

// A 3/4 ft pad, a floor that rises 10 cm: read as said, and not believed.
func TestImplausibleHeights(t *testing.T) {
	require.Empty(t, floor(12*mm, 3*mm).Check())
	require.Empty(t, floor(12*mm, 0).Check())
	require.Empty(t, floor(in, in/2).Check())
	errs := floor(12*mm, 9*in).Check()
	require.Len(t, errs, 1)
	require.EqualError(t, errs[0], "underlay of 9 in is more than is ever laid: 1/2 in at most")
	require.Len(t, floor(120*mm, 80*mm).Check(), 2)
	require.Len(t, Layers{Leveler: 9 * in, Plank: 8 * mm}.Check(), 1)
	require.Len(t, floor(3*mm, 0).Check(), 1)
	require.Error(t, CheckBuildUp(100*mm))
	require.NoError(t, CheckBuildUp(2*in))
	require.Error(t, CheckBuildUp(2*in+1))
	require.Error(t, CheckBuildUp(0))
	require.NoError(t, CheckOther(0))
	require.Error(t, CheckOther(5*in))
	require.NoError(t, CheckDoorGap(4*in))
	require.Error(t, CheckDoorGap(length.Foot))
}

// Runs by the 2010 ADA Standards 303.2, 303.3 with its advisory, 303.4 and 405.2: bevel 1:2 up to 1/2 in, the upright
// 1/4 in included, ramp 1:12 above.
func TestBevel(t *testing.T) {
	for _, c := range []struct{ step, bevel, mixed length.Length }{
		{in / 4, 0, 0},
		{in/4 + nm, in/2 + 2*nm, 2 * nm},
		{3 * in / 8, 3 * in / 4, in / 4},
		{in / 2, in, in / 2},
		{in/2 + nm, 6*in + 12*nm, 0},
		{5 * in / 8, 15 * in / 2, 0},
		{3 * in / 4, 9 * in, 0},
		{in, length.Foot, 0},
	} {
		got := Bridge(c.step, Hard)
		require.Equal(t, c.bevel, got.Bevel, c.step)
		require.Equal(t, c.mixed, got.Mixed, c.step)
		require.Equal(t, c.bevel, Bevel(-c.step), c.step)
	}
}

// 3/4 in belongs to existing or altered thresholds alone (2010 ADA Standards 404.2.5), with 1-1/2 in of bevel a side.
func TestOldThreshold(t *testing.T) {
	bevel, ok := OldThreshold(3 * in / 4)
	require.True(t, ok)
	require.Equal(t, 3*in/2, bevel)
	_, ok = OldThreshold(3*in/4 + nm)
	require.False(t, ok)
}

// Common practice, no source; each boundary from both sides.
func TestProfile(t *testing.T) {
	for _, c := range []struct {
		step length.Length
		edge Edge
		want Profile
	}{
		{0, Hard, TMolding}, {in / 8, Hard, TMolding}, {-in / 8, Hard, TMolding},
		{in/8 + nm, Hard, Reducer}, {-in/8 - nm, Hard, EndCap},
		{in / 2, Hard, Reducer}, {-in / 2, Hard, EndCap},
		{in/2 + nm, Hard, Ramp}, {-in/2 - nm, Hard, Ramp}, {15 * mm, Hard, Ramp},
		{0, Soft, EndCap}, {4 * mm, Soft, EndCap}, {-5 * mm, Soft, EndCap}, {14 * mm, Soft, Ramp},
		{0, Track, EndCap}, {in / 4, Track, EndCap},
	} {
		require.Equal(t, c.want, Bridge(c.step, c.edge).Profile, "%s to %d", c.step, c.edge)
	}
}

// Jamb: 8 + 2 mm with 1/16 in play is 0.456 in; door: 10 mm and 3/8 in is 0.769 in above the subfloor.
func TestUndercutAndCutLine(t *testing.T) {
	require.InDelta(t, 0.456, float64(Undercut(floor(8*mm, 2*mm), in/16))/float64(in), 0.001)
	require.InDelta(t, 0.769, float64(Door{BuildUp: 10 * mm, Working: 3 * in / 8}.CutLine())/float64(in), 0.0005)
}

func TestDoor(t *testing.T) {
	d := Door{Gap: 5 * in / 8, BuildUp: 10 * mm, Working: in / 8}
	require.Equal(t, 5_875_000*nm, d.Clearance())
	require.Zero(t, d.TrimOff())
	d.Working = 3 * in / 8
	require.Equal(t, 3_650_000*nm, d.TrimOff())
	low := Door{Gap: in / 4, BuildUp: 14 * mm, Working: in / 8}
	require.Negative(t, low.Clearance())
	require.Equal(t, 10_825_000*nm, low.TrimOff())
}

// NFPA 80 4.8.4: 3/4 in at most, above the finished floor. A door with 3/4 in now has less over a new floor.
func TestFireDoor(t *testing.T) {
	require.True(t, Door{Gap: 3 * in / 4, BuildUp: 10 * mm}.FireDoorKept())
	require.True(t, Door{Gap: 3*in/4 + 10*mm, BuildUp: 10 * mm}.FireDoorKept())
	require.False(t, Door{Gap: 3*in/4 + 10*mm + nm, BuildUp: 10 * mm}.FireDoorKept())
	require.False(t, Door{Gap: in / 2, BuildUp: 10 * mm, Working: in}.FireDoorKept())
}

func TestRaiseBrackets(t *testing.T) {
	require.Equal(t, 6*mm, RaiseBrackets(10*mm, 4*mm))
	require.Zero(t, RaiseBrackets(10*mm, 12*mm))
}

// A build-up is what its layers are, whatever they are; and a bevel never shrinks as a step grows.
func TestLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := length.Length(rapid.Int64Range(0, int64(2*in)).Draw(t, "a"))
		b := length.Length(rapid.Int64Range(0, int64(2*in)).Draw(t, "b"))
		require.LessOrEqual(t, Bevel(min(a, b)), Bevel(max(a, b)))
		d := Door{Gap: a, BuildUp: b, Working: limit.DoorWorking.Inch}
		require.GreaterOrEqual(t, d.Clearance()+d.TrimOff(), d.Working)
	})
}

func BenchmarkSpread(b *testing.B) {
	for _, n := range []int{14, 140} {
		flight := make([]length.Length, n)
		b.Run(fmt.Sprintf("risers=%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Spread(flight)
			}
		})
	}
}
