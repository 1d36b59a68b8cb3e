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

// Heating texts on EN 1264: 0.15 m²K/W over all layers; 8 mm of HDF 0.0571, with 0.03 passes, 12 mm with 0.06 barely.
func TestHeatedResistance(t *testing.T) {
	hdf := limit.HDFConducts.Rat()
	eight, _ := Through(8*mm, hdf).Float64()
	require.InDelta(t, 0.0571, eight, 0.0001)
	twelve, _ := HeatLeft(12 * mm).Float64()
	require.InDelta(t, 0.0643, twelve, 0.0001) // 0.06 of underlay passes barely, a warm one of 0.075 does not
	require.Zero(t, HeatLeft(21*mm).Sign())    // 0.15 exactly
	require.Negative(t, HeatLeft(21*mm+nm).Sign())
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
