package layout

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/room"
)

// In a rectangle whose sides and gaps are on the tape every joint is too, and hardly a plank is lost to it.
func TestJointsLieOnTheTape(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(7, 8))
	more, planks := 0, 0
	for range 150 {
		for _, mark := range []length.Length{length.Inch / 16, length.Millimetre} {
			side := func() length.Length { return (80*length.Inch + length.Length(r.Int64N(200))*length.Inch) / mark * mark }
			floor, broken := room.Build(room.Plan{Rect: &room.Rect{EastWest: side(), NorthSouth: side()}, Gap: 4 * mark})
			require.Empty(t, broken)
			request := Request{
				Floor: floor, Plank: plank.Plank{Width: 190 * mark, Length: 1200 * mark}, Mark: mark,
				Rules: Rules{LeastRow: 50 * mark, LeastEnd: 200 * mark, LeastStagger: 300 * mark, Kerf: length.Inch / 8},
			}
			marked, err := Lay(request)
			require.NoError(t, err)
			for _, row := range marked.Rows {
				for _, p := range row.Runs[0].Pieces {
					require.Zero(t, (p.Right-p.Left)%mark, "row %d piece %d is %s long", p.Row, p.N, p.Right-p.Left)
				}
			}
			request.Mark = 0
			free, err := Lay(request)
			require.NoError(t, err)
			more += marked.Planks - free.Planks
			planks += free.Planks
		}
	}
	require.LessOrEqual(t, more*500, planks, "%d more planks of %d", more, planks)
}
