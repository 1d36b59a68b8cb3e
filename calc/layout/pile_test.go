package layout

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"
)

// inOrder lists the pieces in the order they are laid: row by row, each from its left.
func inOrder(l *Layout) []Piece {
	var out []Piece
	for _, row := range l.Rows {
		for _, run := range row.Runs {
			out = append(out, run.Pieces...)
		}
	}
	return out
}

// pile lays a floor and counts the most offcuts that wait to be used at any time, and all that are used. An offcut that is
// laid before the piece it is cut beside would fail the test.
func pile(t *testing.T, l *Layout) (most, used int) {
	left := map[int]int{} // pieces still to come from a plank that is cut
	waiting := 0
	for _, p := range inOrder(l) {
		rest, opened := left[p.Plank]
		require.Equal(t, opened, p.Offcut, "row %d piece %d", p.Row, p.N)
		if !opened {
			rest = len(l.Stock[p.Plank].Pieces)
			if rest > 1 {
				waiting++
			}
		} else {
			used++
		}
		left[p.Plank] = rest - 1
		if opened && rest == 1 {
			waiting--
		}
		most = max(most, waiting)
	}
	require.Zero(t, waiting, "offcuts counted on and never laid")
	return most, used
}

// An offcut is cut before it is used, and few wait at a time: beside keeping each till the floor is done, a table with -v.
func TestPileOfOffcuts(t *testing.T) {
	t.Parallel()
	const floors = 40
	for _, c := range classes[:6] {
		rnd := rand.New(rand.NewSource(37))
		kept, all := 0, 0
		for range floors {
			l, err := Lay(c.draw(rnd))
			require.NoError(t, err)
			most, used := pile(t, l)
			kept, all = kept+most, all+used
		}
		t.Logf("%-36s %.1f offcuts wait at most, of %.1f used", c.name, float64(kept)/floors, float64(all)/floors)
		require.Less(t, kept*10, all*7, c.name)
	}
}
