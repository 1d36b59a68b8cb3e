package calc

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/layout"
	"lastrow/calc/room"
)

// Only where pieces end at an angle does the claim leave slanted cuts between two pieces of one plank out.
func TestFewestPlanksClaim(t *testing.T) {
	for way, angled := range map[layout.Direction]bool{layout.EastWest: false, layout.NorthSouth: false, layout.Diagonal: true} {
		j := alder()
		l, err := layout.Lay(layout.Request{Floor: mustFloor(t, j), Plank: j.Plank, Along: way})
		require.NoError(t, err)
		text := planksText(l)
		require.Contains(t, text, "no layout under these rules")
		if angled {
			require.Contains(t, text, "with square cuts between pieces of one plank")
			continue
		}
		require.NotContains(t, text, "square cuts")
	}
}

func mustFloor(t *testing.T, j *Job) *room.Floor {
	f, broken := room.Build(j.Plan)
	require.Empty(t, broken)
	return f
}
