package layout

import (
	"fmt"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/room"
)

// ring is a ring of rooms round a core.
func ring(size func(least, most int) length.Length) room.Plan {
	h, deep := size(170, 260), size(60, 110)
	hall := func(end room.Side) room.Closet {
		return room.Closet{What: "hall", Wall: room.East, Wide: 48 * in, Deep: deep, From: 12 * in, FromEnd: end, Opening: 36 * in}
	}
	return room.Plan{
		Rect: &room.Rect{EastWest: size(60, 120), NorthSouth: h},
		Closets: []room.Closet{hall(room.South),
			{What: "annex", Off: "hall", Wall: room.East, Wide: h, Deep: size(60, 120), Opening: 36 * in, OpeningFrom: 18 * in}, hall(room.North)},
		Openings: []room.Opening{{Off: "hall", Wall: room.East, Wide: 36 * in, To: "annex"}},
	}
}

// The laws hold on floors with a hole in the middle.
func TestLawsOfLoops(t *testing.T) {
	t.Parallel()
	rnd := rand.New(rand.NewSource(5))
	size := func(least, most int) length.Length {
		return length.Length(16*least+rnd.Intn(16*(most-least))) * in / 16
	}
	for i := range 120 {
		f, broken := room.Build(ring(size))
		require.Empty(t, broken)
		l, err := Lay(Request{Floor: f, Along: anyWay(rnd, f), Plank: plank.Plank{Width: size(5, 9), Length: size(30, 60)}, Rules: usual})
		require.NoError(t, err)
		check(t, l, fmt.Sprintf("loop %d: %+v along %s, plank %s x %s", i, f.Plan, l.Along, l.Request.Plank.Width, l.Request.Plank.Length))
	}
}
