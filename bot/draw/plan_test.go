package draw

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/bot/draw/sheet"
	"lastrow/calc/layout"
	"lastrow/calc/room"
)

// sound checks a sheet's lettering: on the sheet, apart, and large enough.
func sound(t testing.TB, s *sheet.Sheet) {
	t.Helper()
	all := sheet.Box{X1: s.W, Y1: s.H}
	require.GreaterOrEqual(t, s.W, 1080)
	var boxes []sheet.Box
	for _, text := range s.Texts() {
		require.GreaterOrEqual(t, text.Size, 20, text.S)
		box := text.Box()
		if !box.Within(all) {
			t.Fatalf("%s: %q leaves the sheet: %v", s.Name, text.S, box)
		}
		for i, other := range boxes {
			if box.Meets(other) {
				t.Fatalf("%s: %q lies over %q", s.Name, text.S, s.Texts()[i].S)
			}
		}
		boxes = append(boxes, box)
	}
	leaning(t, s, boxes)
}

// leaning holds that slanting letters lie on the sheet, and over no others.
func leaning(t testing.TB, s *sheet.Sheet, taken []sheet.Box) {
	for _, shape := range s.Shapes {
		l, ok := shape.(sheet.Leaning)
		if !ok {
			continue
		}
		boxes := l.Boxes()
		for _, box := range boxes {
			require.True(t, box.Within(sheet.Box{X1: s.W, Y1: s.H}), "%s leaves the sheet", l)
			for _, other := range taken {
				require.False(t, box.Meets(other), "%s: %s lies over another label", s.Name, l)
			}
		}
		taken = append(taken, boxes...)
	}
}

func TestPlanLetteringIsApart(t *testing.T) {
	for _, along := range []layout.Direction{layout.EastWest, layout.NorthSouth, layout.Diagonal} {
		l := lay(t, layout.Request{Floor: build(t, alder()), Plank: oak, Rules: rules, Along: along})
		sound(t, Plan(l, alderTitle(l)))
	}
}

func TestPlanTellsRowsAndStart(t *testing.T) {
	plain := room.Plan{Rect: &room.Rect{EastWest: 12*ft + 6*in, NorthSouth: 11*ft + 4*in}}
	l := lay(t, layout.Request{Floor: build(t, plain), Plank: oak, Rules: rules, StartWall: room.South, FirstRow: oak.Width})
	text := Plan(l, alderTitle(l)).String()
	for _, want := range []string{
		`"Alder basement, bedroom"`, `"14 Mar 2026"`, `"12 ft 6 in"`, `"11 ft 4 in"`, `"Start here, lay east"`, `"7 5/8"`, `"18"`,
		`"5 7/8"`, // 135 1/2 - 17 x 7 5/8, by hand
	} {
		require.Contains(t, text, want)
	}
}

// A first row that reaches 2 in into a doorway, with the same gap there as at the wall, is 2 in narrower beside it, by hand.
func TestPlanTellsTheWidthBesideADoorway(t *testing.T) {
	p := room.Plan{
		Rect:     &room.Rect{EastWest: 12*ft + 6*in, NorthSouth: 11*ft + 4*in},
		Doorways: []room.Doorway{{Wall: room.South, Wide: 32 * in, From: 20 * in, FromEnd: room.West, Into: 2 * in}},
	}
	l := lay(t, layout.Request{Floor: build(t, p), Plank: oak, Rules: rules, Along: layout.EastWest, StartWall: room.South, FirstRow: oak.Width})
	text := Plan(l, alderTitle(l)).String()
	require.Contains(t, text, `"5 5/8"`)
	require.Contains(t, text, "Row 1: 7 5/8 in wide, 5 5/8 in at the arrows, at the south wall.")
}
