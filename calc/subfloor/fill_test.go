package subfloor

import (
	"math"
	"testing"

	"github.com/bcicen/go-units"
	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
)

// Volume is area by mean depth; 1 m² by 1 mm is 1 L, as an independent converter has it too.
func TestFill(t *testing.T) {
	for _, c := range []struct {
		area  length.Area
		depth length.Length
		cuft  float64
	}{
		{sqft(100), in / 8, 1.0417}, {sqft(200), in / 4, 4.1667}, {sqft(120), 3 * in / 16, 1.875},
	} {
		require.InDelta(t, c.cuft, Fill(c.area, c.depth, Flat).M3()/length.CubicFoot.M3(), 0.0001)
	}
	litres := units.NewValue(Fill(sqm(10), 3*mm, Flat).M3(), cubicMetre).MustConvert(units.Liter).Float()
	require.InDelta(t, 30, litres, 1e-9)
	require.InDelta(t, 0.014158423, Fill(sqft(24), in/4, Flat).M3(), 1e-9)
	require.Equal(t, Fill(sqm(1), mm, Flat), Fill(sqm(1), mm, "heap"))
}

var cubicMetre = func() units.Unit {
	u := units.NewUnit("cubic metre", "m³")
	units.NewRatioConversion(u, units.Liter, 1000)
	return u
}()

// A dip of 2 ft radius and 3/8 in: bowl 0.1963, cone 0.1309, disc 0.3927 cu ft. A slope has half its greatest depth.
func TestFillShapes(t *testing.T) {
	disc := length.Number{Num: int64(math.Round(4e9 * math.Pi)), Den: 1e9}.OfArea(length.SquareFoot)
	for shape, want := range map[Shape]float64{Bowl: 0.1963, Cone: 0.1309, Flat: 0.3927, Slope: 0.1963} {
		got := Fill(disc, 3*in/8, shape).M3() / length.CubicFoot.M3()
		require.InDelta(t, want, got, 0.0001, shape)
	}
}

// 10 m² by 3 mm at 1.7 kg is 51 kg, three bags of 25; 1.875 cu ft at 0.45 is 4.17, five bags. The wet mix weighs 2.0 kg
// a litre, but bags hold powder: at 2.0 the 51 kg would be 60.
func TestBags(t *testing.T) {
	require.Equal(t, int64(3), Bags(Fill(sqm(10), 3*mm, Flat), Yield(length.Metric)))
	require.Equal(t, int64(5), Bags(Fill(sqft(120), 3*in/16, Flat), Yield(length.Imperial)))
	require.InDelta(t, 14.7, Yield(length.Metric).M3()*1000, 0.01)
	exact := Yield(length.Imperial)
	two := exact.Plus(exact)
	require.Equal(t, int64(2), Bags(two, exact))
	require.Equal(t, int64(3), Bags(two.Plus(length.CubicInch), exact))
}
