package calc

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/room"
	"lastrow/calc/term"
)

// Each closet can be worked on paper. The default gap is 1/4 in: 60 in of wall takes 59 1/2 in of floor, 24 in 23 1/2, 15 in
// 14 1/2. Planks are 7 5/8 x 47 1/2 in.
func TestLeftover(t *testing.T) {
	for _, c := range []struct {
		left      term.Value
		wide      float64
		deep      float64
		rows      int64
		pass      bool
		direction string
	}{
		// No offcut ends a row of 59 1/2; across, 8 rows of 23 1/2 are wanted, and 31 and 40 in give one each (40 leaves 16 3/8).
		{term.Lens{in(31), in(22.5), in(40)}, 24, 60, 2, false, "east-west"},
		// Seven rows of 23 1/2 across or four of 47 1/2 along: 47 1/2 = 2 x 23 1/2 + 1/8 and 3/8 over.
		{term.Lens{in(40), in(33), in(28.5), in(22)}, 48, 24, 3, false, "north-south"},
		{term.Count(4), 48, 24, 4, true, "east-west"},
		{term.Count(3), 48, 24, 6, false, "north-south"},
		{term.Count(0), 48, 24, 0, false, "east-west"},
		// Two rows of 59 1/2: 32 and 27 1/2, 14 and 45 1/2, joints 18 in apart. With 20 in for the 32 they come 8 in apart at most,
		// and 8 rows of 14 1/2 across get 3 + 3 + 1.
		{term.Lens{in(47.5), in(32), in(14), in(47.5)}, 60, 15, 2, true, "east-west"},
		{term.Lens{in(47.5), in(20), in(14), in(47.5)}, 60, 15, 7, false, "north-south"},
	} {
		r := answered(t, &Job{}, term.AskLeftover, term.PlankWidth, term.Len(in(7.625)), term.PlankLength, term.Len(in(47.5)),
			term.Leftover, c.left, term.Closet, term.Lens{in(c.wide), in(c.deep)})
		require.Equal(t, term.Count(c.rows), value(r, term.Rows), "%v", c)
		require.Equal(t, term.Pass(c.pass), value(r, term.Passes), "%v", c)
		if c.rows > 0 {
			require.Len(t, r.Layout.Rows, int(c.rows))
			require.Equal(t, c.direction, string(r.Layout.Along), "%v", c)
		}
	}
	_, err := Answer(&Job{}, Question{term.AskLeftover, nil})
	require.EqualError(t, err, "leftover needs leftover, closet or area")
	_, err = Answer(&Job{}, Question{term.AskLeftover, given(term.Leftover, term.Lens{in(50)}, term.PlankWidth, term.Len(in(7.625)), term.PlankLength, term.Len(in(47.5)), term.Closet, term.Lens{in(40), in(20)})})
	require.ErrorContains(t, err, "no piece of a plank")
}

// The bedroom of 150 x 136 in and nine boxes of eight: the whole planks left are what its layout does not take, the offcuts are
// its layout's own, and the closet is laid from nothing else.
func TestLeftoverOfTheJob(t *testing.T) {
	j := &Job{
		Plan:  room.Plan{Rect: &room.Rect{EastWest: in(150), NorthSouth: in(136)}},
		Plank: plank.Plank{Width: in(7.625), Length: in(47.5), PerBox: 8},
		Facts: map[term.Name]term.Value{term.Boxes: term.Count(9)},
	}
	_, err := Answer(j, Question{Kind: term.AskLeftover})
	require.EqualError(t, err, "leftover needs closet or area")
	room1 := answered(t, j, term.AskPlan).Layout
	j.Plan.Closets = []room.Closet{{Wall: room.North, Wide: in(60), Deep: in(24), From: in(36), FromEnd: room.West}}
	r := answered(t, j, term.AskLeftover)
	wholes := 9*8 - room1.Planks
	require.Positive(t, wholes)
	left := takenFrom(r, term.Leftover).(term.Lens)
	for i, l := range left {
		require.Equal(t, i < wholes, l == in(47.5))
		require.GreaterOrEqual(t, l, in(8))
	}
	require.NotNil(t, r.Layout)
	used := map[length.Length]int{}
	for _, s := range r.Layout.Stock {
		of := s.Scrap
		if of == 0 {
			of = in(47.5)
		}
		used[of]++
	}
	for _, l := range left {
		used[l]--
	}
	for l, n := range used {
		require.LessOrEqual(t, n, 0, l)
	}
	// A closet told in the question is another one: the job's floor keeps its own.
	other := answered(t, j, term.AskLeftover, term.Closet, term.Lens{in(48), in(24)})
	require.NotEqual(t, left, takenFrom(other, term.Leftover))
}

func takenFrom(r Result, n term.Name) term.Value {
	for _, g := range r.Given {
		if g.Name == n {
			return g.Value
		}
	}
	return nil
}
