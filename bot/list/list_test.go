package list

import (
	"encoding/csv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/layout"
	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/room"
)

const in = length.Inch

func floor(t *testing.T) *layout.Layout {
	f, broken := room.Build(room.Plan{Rect: &room.Rect{EastWest: 150 * in, NorthSouth: 60 * in}, Gap: in / 4})
	require.Empty(t, broken)
	l, err := layout.Lay(layout.Request{
		Floor: f, Plank: plank.Plank{Width: 7*in + in/2, Length: 47*in + in/2}, Along: layout.EastWest, StartWall: room.South,
		Rules: layout.Rules{LeastRow: 2 * in, LeastEnd: 8 * in, LeastStagger: 12 * in, Kerf: in / 8},
	})
	require.NoError(t, err)
	return l
}

// Every plank adds up: its pieces, the saw cuts and what is left come to the plank, as a tape would have it.
func TestRestAddsUp(t *testing.T) {
	l := floor(t)
	byPlank := map[int][]Line{}
	for _, line := range Lines(l, length.Tape{}) {
		byPlank[line.Plank] = append(byPlank[line.Plank], line)
	}
	require.NotEmpty(t, byPlank)
	for plank, lines := range byPlank {
		used := length.Length(0)
		for _, line := range lines {
			used += line.Length
		}
		require.LessOrEqual(t, used+length.Length(len(lines)-1)*in/8, 47*in+in/2, "plank %d", plank)
		require.Equal(t, "new", lines[0].From)
		for i, line := range lines[1:] {
			require.Equal(t, "offcut of "+lines[i].Name(), line.From)
			require.Contains(t, lines[i].Rest, line.Name())
		}
	}
}

func TestCutsNameEdges(t *testing.T) {
	mm := length.Tape{System: length.Metric}
	for _, c := range []struct {
		cut  layout.Cut
		want string
	}{
		{layout.Cut{What: "crosscut", Edge: "left end", Off: "right end", Near: 8 * in, Far: 8 * in}, "crosscut at 203 mm from the left end"},
		{layout.Cut{What: "rip", Edge: "far edge", Near: 100 * length.Millimetre}, "rip at 100 mm from the far edge"},
		{layout.Cut{What: "notch", Edge: "left end, near edge", Right: 50 * length.Millimetre, Top: 20 * length.Millimetre},
			"notch from 0 mm to 50 mm along and 0 mm to 20 mm across, from the left end and the near edge"},
		{layout.Cut{What: "lip", Edge: "near edge"}, "cut the lip off the near edge"},
	} {
		require.Equal(t, c.want, c.cut.Text(mm))
	}
}

func TestTextAndCSVHoldEveryCutPiece(t *testing.T) {
	lines := Lines(floor(t), length.Tape{})
	require.Equal(t, len(lines)+1, strings.Count(Text(lines), "\n"))
	text, err := CSV(lines)
	require.NoError(t, err)
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, len(lines)+1)
	require.Len(t, rows[0], 11)
	for i, line := range lines {
		require.Equal(t, line.Long, rows[i+1][2])
	}
}
