package subfloor

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
	"lastrow/calc/limit"
)

// At most 0.33 % over 30 points (ANSI A208.2), as a ceiling. Two edges of 1.5 mm/m hold 27.3 points of it.
func TestMovement(t *testing.T) {
	for _, c := range []struct {
		run    length.Length
		points string
		want   length.Length
	}{
		{m, "1", 110_000 * nm}, {m, "30", 3_300_000 * nm}, {5 * m, "20", 11 * mm}, {8 * m, "20", 17_600_000 * nm}, {8 * m, "30", 26_400_000 * nm},
	} {
		require.Equal(t, c.want, Movement(c.run, rat(c.points)))
	}
	require.InDelta(t, 26.8, Movement(40*ft, rat("20")).MM(), 0.03)
	require.LessOrEqual(t, Movement(m, rat("27.27")), 2*limit.ByRun(m))
	require.Greater(t, Movement(m, rat("27.28")), 2*limit.ByRun(m))
}

// A test result of EN 13329, 0.9 mm, is no coefficient: ten metres move ten times as far as one, not 0.9 mm each.
func TestMovementFollowsLength(t *testing.T) {
	require.Equal(t, 10*Movement(m, rat("20")), Movement(10*m, rat("20")))
}

func TestRun(t *testing.T) {
	for _, c := range []struct {
		run    length.Length
		fields int64
		kept   bool
	}{{8 * m, 1, true}, {8*m + nm, 2, false}, {16 * m, 2, false}, {16*m + nm, 3, false}, {m, 1, true}} {
		fields, kept := Run(c.run, 8*m)
		require.Equal(t, c.fields, fields)
		require.Equal(t, c.kept, kept)
	}
}

// 1 mm a day to 50 mm, half below; a rule of thumb that damp rooms do not keep.
func TestDrying(t *testing.T) {
	for thick, days := range map[length.Length]int64{40: 40, 50: 50, 65: 80, 75: 100, 100: 150} {
		require.Equal(t, days, Drying(thick*mm))
	}
}

// Wood Handbook table of EMC, 70 °F and other rows, as printed to a tenth.
func TestEMC(t *testing.T) {
	for _, c := range []struct{ f, rh, printed float64 }{
		{70, 5, 1.3}, {70, 25, 5.4}, {70, 30, 6.2}, {70, 40, 7.7}, {70, 50, 9.2}, {70, 60, 11.0}, {70, 65, 12.0},
		{70, 70, 13.1}, {70, 80, 16.0}, {70, 90, 20.5}, {30, 50, 9.5}, {50, 50, 9.5}, {60, 50, 9.4}, {80, 50, 9.1}, {90, 50, 8.9},
	} {
		require.InDelta(t, c.printed, EMC(c.f, c.rh), 0.06, c)
	}
	// 4.0 by the formula; one reproduced table prints 3.0. A miscopied coefficient gives 8.73 at 70 °F and 50 %.
	require.InDelta(t, 4.05, EMC(110, 20), 0.05)
	require.Greater(t, EMC(70, 50)-8.73, 0.5)
	require.InDelta(t, 4.798, EMC(70, 60)-EMC(70, 30), 0.001)
}

// Heating texts on EN 1264: 0.15 m²K/W over all layers; 8 mm of HDF 0.0571, with 0.03 passes, 12 mm with 0.06 barely.
func TestHeatedResistance(t *testing.T) {
	hdf := limit.HDFConducts.Rat()
	eight, _ := Through(8*mm, hdf).Float64()
	require.InDelta(t, 0.0571, eight, 0.0001)
	require.True(t, HeatPasses(Through(8*mm, hdf), rat("0.03")))
	require.True(t, HeatPasses(Through(12*mm, hdf), rat("0.06")))
	require.True(t, HeatPasses(Through(12600*mm/1000, hdf), rat("0.06"))) // 0.15 exactly
	require.False(t, HeatPasses(Through(12600*mm/1000+nm, hdf), rat("0.06")))
	require.False(t, HeatPasses(Through(12*mm, hdf), rat("0.075"))) // a warm underlay is a poor one here
}

// EN 1264's basic curve: 9 K gives 100 W/m², 15 K 175.
func TestHeatedSurface(t *testing.T) {
	require.InDelta(t, 100, Output(9), 0.5)
	require.InDelta(t, 175, Output(15), 0.5)
	require.True(t, SurfaceKept(27))
	require.False(t, SurfaceKept(27.1))
}

func TestGround(t *testing.T) {
	for name, want := range map[string]Ground{
		"concrete": Mineral, "Slab": Mineral, "tile over slab": Mineral, "plywood": Timber, "OSB": Timber, "wood": Timber,
		"vinyl": Covered, "": Unknown, "grass": Unknown,
	} {
		require.Equal(t, want, GroundOf(name), name)
	}
	needed, ok := FilmNeeded(Mineral)
	require.True(t, needed && ok)
	needed, ok = FilmNeeded(Timber)
	require.True(t, !needed && ok)
	_, ok = FilmNeeded(Covered)
	require.False(t, ok)
	require.Equal(t, Screed{Sulfate: true, Heated: true}, ScreedOf("heated anhydrite screed"))
	require.Equal(t, Screed{}, ScreedOf("concrete"))
	require.Equal(t, 8*in, Lap(length.Imperial))
	require.Equal(t, 200*mm, Lap(length.Metric))
}
