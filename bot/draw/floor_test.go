package draw

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"lastrow/calc/layout"
	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/room"
)

const (
	in = length.Inch
	ft = length.Foot
)

var rules = layout.Rules{
	LeastRow: 2 * in, LeastEnd: 8 * in, LeastStagger: 12 * in, Kerf: in / 8, Lip: in / 8,
}

var oak = plank.Plank{Width: 7*in + 5*in/8, Length: 47*in + in/2, Thickness: 12 * length.Millimetre, PerBox: 8}

// alder is an invented bedroom, with a closet, two doorways and a post.
func alder() room.Plan {
	return room.Plan{
		Rect: &room.Rect{EastWest: 12*ft + 6*in, NorthSouth: 11*ft + 4*in},
		Closets: []room.Closet{
			{Wall: room.North, Wide: 5 * ft, Deep: 2 * ft, From: 3 * ft, FromEnd: room.West, Opening: 4 * ft},
		},
		Doorways: []room.Doorway{
			{Wall: room.South, Wide: 32 * in, From: 2 * ft, FromEnd: room.West, Into: 2 * in},
			{Wall: room.East, Wide: 30 * in, From: 3 * ft, FromEnd: room.North, Into: 2 * in},
		},
		Fixtures: []room.Fixture{
			{What: "post", Wide: 4 * in, Deep: 4 * in, FromX: 4 * ft, SideX: room.West, FromY: 5 * ft, SideY: room.South},
		},
	}
}

func alderTitle(l *layout.Layout) Title {
	return Title{
		Job: "Alder basement", Room: "bedroom", Plank: oak, Planks: int64(l.Planks), Boxes: int64(l.Planks+7) / 8,
		Changed: time.Date(2026, 3, 14, 9, 0, 0, 0, time.UTC),
		Doors:   []Door{{Beyond: "hall", Profile: "T-molding"}, {Beyond: "bath", Profile: "reducer"}},
	}
}

func lay(t testing.TB, r layout.Request) *layout.Layout {
	t.Helper()
	l, err := layout.Lay(r)
	require.NoError(t, err)
	return l
}

func build(t testing.TB, p room.Plan) *room.Floor {
	t.Helper()
	f, broken := room.Build(p)
	require.Empty(t, broken)
	return f
}
