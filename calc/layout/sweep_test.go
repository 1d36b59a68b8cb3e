package layout

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
)

// On floors whose walls slant the bound holds for every first row that serves as well as the one chosen: told any such
// width, the layout takes no fewer planks.
func TestBoundHoldsForEveryFirstRow(t *testing.T) {
	t.Parallel()
	rnd := rand.New(rand.NewSource(41))
	told := 0
	for _, c := range classes[4:] {
		for range 12 {
			r := c.draw(rnd)
			free, err := Lay(r)
			require.NoError(t, err)
			for range 8 {
				r.FirstRow = 1 + length.Length(rnd.Int63n(int64(r.Plank.Width)))
				if !servesAsWell(r, free) {
					continue
				}
				l, err := Lay(r)
				require.NoError(t, err)
				require.GreaterOrEqual(t, l.Planks, free.Bound, "%s: first row %s", c.name, r.FirstRow)
				told++
			}
		}
	}
	require.Greater(t, told, 100)
}

// servesAsWell says whether a first row told leaves as few narrow rows as the one that a layout chose.
func servesAsWell(r Request, chosen *Layout) bool {
	at, _, _ := r.startWall(chosen.Along)
	area := boxOf(at.frame.floor(r.Floor.Laying))
	fs := faces(r.Floor.Edges, at.frame, area)
	deep := area.far - area.near
	return r.fitOf(r.FirstRow, deep, fs).compare(r.fitOf(chosen.Rows[0].Width, deep, fs)) <= 0
}
