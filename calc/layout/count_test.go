package layout

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
)

// Row balancing as handbooks work it. How-to texts on plank floors: 4 in boards that leave 1 in make first and last 2 1/2 in
// each. Texts on ceilings of 12 in tiles: add 12 to the odd inches and halve, so that 10 ft 6 in leaves borders of 9 in.
func TestRowsBalancedAsInHandbooks(t *testing.T) {
	for _, c := range []struct{ across, wide, least, want length.Length }{
		{41 * in, 4 * in, 2 * in, 5 * in / 2},
		{81 * in, 4 * in, 2 * in, 5 * in / 2},
		{126 * in, 12 * in, 7 * in, 9 * in},
	} {
		count := CountRows(c.across, c.wide, 0, c.least)
		require.Equal(t, c.want, count.Balanced)
		require.Equal(t, c.across, 2*count.Balanced+length.Length(count.N-2)*c.wide) // as many rows as before
		require.Equal(t, Count{N: count.N, First: c.want, Last: c.want}, CountRows(c.across, c.wide, c.want, c.least))
	}
}
