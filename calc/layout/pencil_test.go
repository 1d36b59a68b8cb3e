package layout

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/geom"
	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/room"
)

// In these floors a person can work every cut with a pencil. Planks are 8 in wide, and longer than the rows unless a case
// says so, so that each row is one piece; rows run east-west from the south wall, the first one whole.

// gapless is a floor of four corners without gaps, in inches: south-west, south-east, north-east, north-west.
func gapless(corners ...[2]float64) *room.Floor {
	var ring geom.Ring
	for _, c := range corners {
		ring = append(ring, geom.Point{X: length.Length(c[0] * float64(in)), Y: length.Length(c[1] * float64(in))})
	}
	f := &room.Floor{Region: geom.Region{ring}, Laying: geom.Region{ring}}
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		f.Edges = append(f.Edges, room.Edge{A: p, B: q, Side: outward(q.X-p.X, q.Y-p.Y), Cover: "trim"})
	}
	return f
}

// outward is the side that a wall faces, the floor lying to its left.
func outward(dx, dy length.Length) room.Side {
	switch {
	case abs(dx) >= abs(dy) && dx > 0:
		return room.South
	case abs(dx) >= abs(dy):
		return room.North
	case dy > 0:
		return room.East
	}
	return room.West
}

func pencil(t *testing.T, f *room.Floor, long length.Length) *Layout {
	l, err := Lay(Request{
		Floor: f, Plank: plank.Plank{Width: 8 * in, Length: long}, Along: EastWest, StartWall: room.South, FirstRow: 8 * in,
		Mark: in / 16, Rules: Rules{LeastRow: 2 * in, LeastEnd: 8 * in, LeastStagger: 12 * in, Kerf: in / 8},
	})
	require.NoError(t, err)
	return l
}

func built(t *testing.T, p room.Plan) *room.Floor {
	p.Gap = in / 4
	f, broken := room.Build(p)
	require.Empty(t, broken)
	return f
}

func cutsOf(l *Layout, row int) []string { return said(l.Rows[row-1].Runs[0].Pieces[0], length.Tape{}) }

// The north wall is 18 in up at the west end and 20 in at the east end, 100 in on: row 3, that begins 16 in up, is 2 in wide
// and then 4. With a wall that is 16 in up at the west end it begins at a point.
func TestTaperByPencil(t *testing.T) {
	l := pencil(t, gapless([2]float64{0, 0}, [2]float64{100, 0}, [2]float64{100, 20}, [2]float64{0, 18}), 100*in)
	require.Equal(t, []string{"rip tapered, 2 in at the left end and 4 in at the right end, from the near edge"}, cutsOf(l, 3))
	require.Empty(t, cutsOf(l, 1))

	l = pencil(t, gapless([2]float64{0, 0}, [2]float64{100, 0}, [2]float64{100, 20}, [2]float64{0, 16}), 110*in)
	require.Equal(t, []string{
		"crosscut at 100 in from the left end", "rip tapered, 0 in at the left end and 4 in at the right end, from the near edge",
	}, l.inInches(3))

	// In pieces, with a joint s inches along: the wall is 2 in from the row's line at 0, 4 in at 100, so 2 + 2 s / 100 at s.
	l = pencil(t, gapless([2]float64{0, 0}, [2]float64{100, 0}, [2]float64{100, 20}, [2]float64{0, 18}), 60*in)
	pieces := l.Rows[2].Runs[0].Pieces
	require.Greater(t, len(pieces), 1)
	for _, p := range pieces {
		taper := p.Cuts[len(p.Cuts)-1]
		require.Equal(t, "taper", taper.What)
		require.InDelta(t, int64(2*in+p.Left/50), int64(taper.Near), 1)
		require.InDelta(t, int64(2*in+p.Right/50), int64(taper.Far), 1)
	}
}

// inInches are the cuts of a row's first piece, with every length in inches.
func (l *Layout) inInches(row int) []string {
	out := cutsOf(l, row)
	for i := range out {
		if out[i] == "crosscut at 8 ft 4 in from the left end" {
			out[i] = "crosscut at 100 in from the left end"
		}
	}
	return out
}

// The east wall leans out 6 in over the 16 in of two rows: 3 in a row. The west wall leaning out the same is measured from
// the right end, which stays; both leaning, the left end's slope is marked from the left end.
func TestAngledEndsByPencil(t *testing.T) {
	l := pencil(t, gapless([2]float64{0, 0}, [2]float64{80, 0}, [2]float64{86, 16}, [2]float64{0, 16}), 90*in)
	require.Equal(t, []string{"cut the right end at an angle, 80 in on the near edge and 83 in on the far, from the left end"}, cutsOf(l, 1))
	require.Equal(t, []string{"cut the right end at an angle, 83 in on the near edge and 86 in on the far, from the left end"}, cutsOf(l, 2))

	l = pencil(t, gapless([2]float64{6, 0}, [2]float64{86, 0}, [2]float64{86, 16}, [2]float64{0, 16}), 90*in)
	require.Equal(t, []string{"cut the left end at an angle, 80 in on the near edge and 83 in on the far, from the right end"}, cutsOf(l, 1))
	require.Equal(t, []string{"cut the left end at an angle, 83 in on the near edge and 86 in on the far, from the right end"}, cutsOf(l, 2))

	l = pencil(t, gapless([2]float64{6, 0}, [2]float64{80, 0}, [2]float64{86, 16}, [2]float64{0, 16}), 90*in)
	require.ElementsMatch(t, []string{
		"cut the right end at an angle, 77 in on the near edge and 80 in on the far, from the left end",
		"cut the left end at an angle, 3 in on the near edge and 0 in on the far, from the left end",
	}, cutsOf(l, 1))
}

// Two walls that are both out of line take two straight cuts, not one along three points. The north wall falls from 16 in up
// at the west end to 14 in up 78 in on; the east wall leans in 2 in over those 14. Row 2 begins 8 in up, where the east wall is
// at 80 - 2 x 8/14 = 78 6/7 in; the row's far line, 16 in up, it would meet at 80 - 2 x 16/14 = 77 5/7 in. The last row's
// width falls 2 in over 78 in, and so by 2 x (78 6/7) / 78 to where the row is longest.
func TestTaperMeetsAngleByPencil(t *testing.T) {
	l := pencil(t, gapless([2]float64{0, 0}, [2]float64{80, 0}, [2]float64{78, 14}, [2]float64{0, 16}), 90*in)
	cuts := l.Rows[1].Runs[0].Pieces[0].Cuts
	require.Len(t, cuts, 2)
	require.Equal(t, "angle", cuts[0].What)
	near := 78 + 6.0/7
	require.InDelta(t, near, float64(cuts[0].Near)/float64(in), 1e-6)
	require.InDelta(t, 77+5.0/7, float64(cuts[0].Far)/float64(in), 1e-6)
	require.Equal(t, "taper", cuts[1].What)
	require.Equal(t, 8*in, cuts[1].Near)
	require.InDelta(t, 8-2*near/78, float64(cuts[1].Far)/float64(in), 1e-6)
	require.InDelta(t, near, float64(cuts[1].Right)/float64(in), 1e-6)
}

// A post of 4 x 4 in, 30 in from the west wall and 6 in from the south one. The floor begins 1/4 in from each wall and keeps
// 1/4 in off the post: along, 30 - 1/4 - 1/4 = 29 1/2 to 34 + 1/4 - 1/4 = 34. Row 1 ends 8 1/4 in from the wall, the post's
// gap begins at 5 3/4: across, 5 1/2 to 8. In row 2 the gap ends at 10 1/4: 2 in.
func TestPostByPencil(t *testing.T) {
	f := built(t, room.Plan{
		Rect:     &room.Rect{EastWest: 96 * in, NorthSouth: 24*in + in/2},
		Fixtures: []room.Fixture{{What: "post", Wide: 4 * in, Deep: 4 * in, FromX: 30 * in, FromY: 6 * in, SideX: room.West, SideY: room.South}},
	})
	l := pencil(t, f, 95*in+in/2)
	require.Equal(t, []string{"notch from 29 1/2 in to 34 in along and 5 1/2 in to 8 in across, from the left end and the near edge"}, cutsOf(l, 1))
	require.Equal(t, []string{"notch from 29 1/2 in to 34 in along and 0 in to 2 in across, from the left end and the near edge"}, cutsOf(l, 2))
	require.Empty(t, cutsOf(l, 3))

	// On planks of 60 in it falls in the first or the second piece of row 1, and as far from that piece's own end.
	l = pencil(t, f, 60*in)
	found := 0
	for _, p := range l.Rows[0].Runs[0].Pieces {
		for _, c := range p.Cuts {
			if c.What != "notch" {
				continue
			}
			found++
			left, right := p.Left+c.Left, p.Left+c.Right
			if c.FromRight() {
				left, right = p.Right-c.Right, p.Right-c.Left
			}
			require.Equal(t, max(29*in+in/2, p.Left), left)
			require.Equal(t, min(34*in, p.Right), right)
		}
	}
	require.Positive(t, found)
}

// A pipe of 1 in, its centre 20 in from the west wall and 4 from the south one: a hole of 1 in and twice 1/4 in of gap, its
// centre 20 - 1/4 and 4 - 1/4 in from the piece's left end and near edge. Measured from the east wall, 76 in, the same.
func TestPipeByPencil(t *testing.T) {
	want := []string{"drill a hole 1 1/2 in wide, its centre 19 3/4 in along and 3 3/4 in across, from the left end and the near edge"}
	for _, pipe := range []room.Fixture{
		{What: "pipe", Diameter: in, FromX: 20 * in, FromY: 4 * in, SideX: room.West, SideY: room.South},
		{What: "pipe", Diameter: in, FromX: 76 * in, FromY: 20*in + in/2, SideX: room.East, SideY: room.North},
	} {
		f := built(t, room.Plan{Rect: &room.Rect{EastWest: 96 * in, NorthSouth: 24*in + in/2}, Fixtures: []room.Fixture{pipe}})
		require.Equal(t, want, cutsOf(pencil(t, f, 95*in+in/2), 1))
	}
}

// A doorway of 32 in, 20 in from the west wall, its track's line 2 in into the south wall. The floor goes to 1/4 in short of
// the line, so row 1 begins 1 3/4 in beyond the wall's face and 2 in before the floor's edge along the wall: that is the
// notch's depth. It runs 3/8 in under each jamb: 20 - 3/8 - 1/4 = 19 3/8 and 52 + 3/8 - 1/4 = 52 1/8 along.
func TestJambsByPencil(t *testing.T) {
	f := built(t, room.Plan{
		Rect:     &room.Rect{EastWest: 96 * in, NorthSouth: 24 * in},
		Doorways: []room.Doorway{{Wall: room.South, Wide: 32 * in, From: 20 * in, FromEnd: room.West, Into: 2 * in}},
	})
	require.ElementsMatch(t, []string{
		"notch from 0 in to 19 3/8 in along and 0 in to 2 in across, from the left end and the near edge",
		"notch from 52 1/8 in to 95 1/2 in along and 0 in to 2 in across, from the left end and the near edge",
	}, cutsOf(pencil(t, f, 95*in+in/2), 1))
}

// A nib of wall 5 in wide stands 6 in out of the north wall, 40 in from the west one. The last row's far edge is at the north
// wall's gap; the nib's gap begins 6 in before it. Row 3 is whole: its notch is 6 in deep, at 8 - 6 = 2 to 8 in across.
func TestNibByPencil(t *testing.T) {
	f := built(t, room.Plan{
		Rect:     &room.Rect{EastWest: 96 * in, NorthSouth: 24*in + in/2},
		Fixtures: []room.Fixture{{What: "nib", Wide: 5 * in, Deep: 6 * in, FromX: 40 * in, FromY: 0, SideX: room.West, SideY: room.North}},
	})
	l := pencil(t, f, 95*in+in/2)
	require.Equal(t, []string{"notch from 39 1/2 in to 45 in along and 2 in to 8 in across, from the left end and the near edge"}, cutsOf(l, 3))
}

// A wall that steps twice, 2 in and 2 in more, is no box: the notch is told by its points, and nothing of the step is lost.
func TestStepsByPencil(t *testing.T) {
	f := gapless([2]float64{0, 0}, [2]float64{90, 0}, [2]float64{90, 12}, [2]float64{80, 12}, [2]float64{80, 14}, [2]float64{70, 14}, [2]float64{70, 16}, [2]float64{0, 16})
	require.Equal(t, []string{
		"notch off the far right corner, joining 90 in along 4 in across, 80 in along 4 in across, 80 in along 6 in across, 70 in along 6 in across, 70 in along 8 in across, from the left end and the near edge",
	}, cutsOf(pencil(t, f, 90*in), 2))
}

// A row ripped to 5 in at the start wall keeps its far edge, the lock's, and is measured from there.
func TestFirstRowRippedByPencil(t *testing.T) {
	f := gapless([2]float64{0, 0}, [2]float64{90, 0}, [2]float64{90, 13}, [2]float64{0, 13})
	l, err := Lay(Request{
		Floor: f, Plank: plank.Plank{Width: 8 * in, Length: 90 * in}, Along: EastWest, StartWall: room.South, FirstRow: 5 * in,
		Rules: Rules{LeastRow: 2 * in, LeastEnd: 8 * in, LeastStagger: 12 * in, Kerf: in / 8, Lip: in / 8},
	})
	require.NoError(t, err)
	require.Equal(t, []string{"rip at 5 in from the far edge", "cut the lip off the left end"}, cutsOf(l, 1))
	require.Equal(t, []string{"cut the lip off the left end"}, cutsOf(l, 2))
}
