package calc

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/layout"
	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/room"
	"lastrow/calc/term"
)

// alder is a bedroom of 12 ft 6 in by 11 ft 4 in in 7 5/8 x 47 1/2 in planks.
func alder() *Job {
	return &Job{
		Plan:  room.Plan{Rect: &room.Rect{EastWest: in(150), NorthSouth: in(136)}},
		Plank: plank.Plank{Width: in(7.625), Length: in(47.5), PerBox: 8},
		Facts: map[term.Name]term.Value{},
	}
}

func answered(t *testing.T, j *Job, k term.Kind, pairs ...any) Result {
	t.Helper()
	r, err := Answer(j, Question{k, given(pairs...)})
	require.NoError(t, err)
	require.NotEmpty(t, r.Values)
	require.NotEmpty(t, r.Working)
	return r
}

func squareFeet(n int64) term.Area {
	return term.Area{Area: length.Number{Num: n, Den: 10}.OfArea(length.SquareFoot)}
}

// Boxes = area x (1 + waste) / box, rounded up once; 200 sq ft and 10 % in boxes of 20 is 11 exactly (arithmetic).
func TestBoxesByAreaAnswer(t *testing.T) {
	for _, c := range []struct{ area, box, want int64 }{
		{2000, 200, 11}, {2000, 220, 10}, {1800, 200, 10}, {4000, 200, 22}, {3800, 201, 21}, {4250, 201, 24}, {12000, 245, 54},
	} {
		r := answered(t, &Job{}, term.AskBoxes, term.FloorArea, squareFeet(c.area), term.BoxCoverage, squareFeet(c.box))
		require.Equal(t, term.Count(c.want), value(r, term.BoxesByArea))
		require.Equal(t, term.Count(c.want), value(r, term.Boxes))
	}
	r := answered(t, &Job{}, term.AskBoxes, term.Room, term.Lens{in(156), in(180)}, term.BoxCoverage, squareFeet(234))
	require.Equal(t, term.Count(10), value(r, term.BoxesByArea))
}

func TestBoxesByLayout(t *testing.T) {
	r := answered(t, alder(), term.AskBoxes)
	require.NotNil(t, r.Layout)
	planks := int64(r.Layout.Planks)
	spare := max(1, (planks*5+99)/100)
	require.Equal(t, term.Count(planks+spare), value(r, term.Planks))
	require.Equal(t, term.Count((planks+spare+7)/8), value(r, term.Boxes))
	// 150 x 136 in is 141 2/3 sq ft, a box of eight 20.12: 7.75 boxes with 10 %, so 8.
	require.Equal(t, term.Count(8), value(r, term.BoxesByArea))
	require.Equal(t, term.Pass(false), value(answered(t, alder(), term.AskBoxes, term.Boxes, term.Count(2)), term.Passes))
	require.Equal(t, term.Pass(true), value(answered(t, alder(), term.AskBoxes, term.Boxes, term.Count(20)), term.Passes))
}

// The printed area of a box gives the planks in it where it comes to a whole number of them.
func TestPlanksPerBoxFromArea(t *testing.T) {
	j := alder()
	j.Plank.PerBox, j.Plank.BoxArea = 0, squareFeet(201).Area
	require.Equal(t, value(answered(t, alder(), term.AskBoxes), term.Boxes), value(answered(t, j, term.AskBoxes), term.Boxes))
	j.Plank.BoxArea = squareFeet(190).Area
	require.Nil(t, answered(t, j, term.AskBoxes).Layout)
}

func TestStagger(t *testing.T) {
	for _, c := range []struct {
		offcut, before, plank, want length.Length
		pass                        bool
	}{
		{in(27), in(15.75), in(50.5), in(11.25), false},
		{in(31), in(22), in(48), in(9), false},
		{in(40), in(4), in(47.5), in(11.5), false}, // the joint before repeats at 51 1/2, which is nearer
		{in(20), in(8), in(47.5), in(12), true},
		// Run 149.5 in of 47.625 in planks: three whole and 6.625 over, so the 41 in offcut puts the joints 6.625 apart.
		{in(41), in(47.625), in(47.625), in(6.625), false},
		{in(30), in(125), in(47.5), in(0), false},
	} {
		r := answered(t, &Job{}, term.AskStagger, term.Offcut, term.Len(c.offcut), term.PreviousJoint, term.Len(c.before), term.PlankLength, term.Len(c.plank))
		require.Equal(t, term.Len(c.want), value(r, term.Offset))
		require.Equal(t, term.Pass(c.pass), value(r, term.Passes))
	}
	r := answered(t, &Job{}, term.AskStagger, term.Offset, term.Len(mm(265)), term.LeastStagger, term.Len(mm(250)))
	require.Equal(t, term.Pass(true), value(r, term.Passes))
	_, err := Answer(&Job{}, Question{term.AskStagger, given(term.Offcut, term.Len(in(16)))})
	require.EqualError(t, err, "stagger needs previous-joint, plank-length")
}

func TestRowsAndPieces(t *testing.T) {
	j := alder()
	p := answered(t, j, term.AskPlan)
	require.Equal(t, term.Count(18), value(p, term.Rows))
	require.Equal(t, term.Len(in(5.875)), value(p, term.LastRowWidth))
	row := answered(t, j, term.AskRow, term.Row, term.Count(3))
	sum := length.Length(0)
	for _, l := range value(row, term.Pieces).(term.Lens) {
		sum += l
	}
	require.Equal(t, in(149.5), sum)
	piece := answered(t, j, term.AskPiece, term.Row, term.Count(3), term.Piece, term.Count(1))
	require.Equal(t, term.Len(value(row, term.Pieces).(term.Lens)[0]), value(piece, term.Length))
	cuts := answered(t, j, term.AskCutList)
	require.Contains(t, strings.Join(cuts.Working, "\n"), "row 18")
	for _, bad := range [][]any{{term.Row, term.Count(19)}, {term.Row, term.Count(0)}} {
		_, err := Answer(j, Question{term.AskRow, given(bad...)})
		require.ErrorContains(t, err, "rows are 1 to 18")
	}
	_, err := Answer(j, Question{term.AskPiece, given(term.Row, term.Count(1), term.Piece, term.Count(9))})
	require.ErrorContains(t, err, "has no piece 9")
}

// A door in the north wall: the planks go under its jambs first.
func TestStartAtTheDoor(t *testing.T) {
	j := alder()
	j.Plan.Doorways = []room.Doorway{{Wall: room.North, Wide: in(32), From: in(20), FromEnd: room.West, Into: in(2)}}
	r := answered(t, j, term.AskStart)
	require.Equal(t, term.Word("north"), value(r, term.StartWall))
	j.StartWall = room.South
	require.Equal(t, term.Word("south"), value(answered(t, j, term.AskStart), term.StartWall))
	j.Plank.Length = 0
	require.Equal(t, term.Word("south"), value(answered(t, j, term.AskStart), term.StartWall))
}

// 143 1/4 in of 7 1/2 in planks leave 3/4 in for a twentieth row; first and last are then ripped to 4 1/8 in alike.
func TestStartBalancesNarrowRows(t *testing.T) {
	r := answered(t, &Job{}, term.AskStart, term.Room, term.Lens{in(180), in(144)}, term.Gap, term.Len(in(.375)), term.PlankWidth, term.Len(in(7.5)))
	require.Equal(t, term.Len(in(4.125)), value(r, term.FirstRowWidth))
	require.Equal(t, term.Len(in(4.125)), value(r, term.LastRowWidth))
}

func TestStatus(t *testing.T) {
	j := alder()
	j.Facts[term.Laid], j.Facts[term.Opened] = term.Count(6), term.Count(3)
	r := answered(t, j, term.AskStatus)
	used := value(r, term.Planks).(term.Count)
	require.Equal(t, term.Count(24-int64(used)), value(r, term.Leftover))
	require.Equal(t, term.Pass(true), value(r, term.Passes))
	j.Facts[term.Damaged] = term.Count(2)
	require.Equal(t, used+2, value(answered(t, j, term.AskStatus), term.Planks))
	j.Facts[term.Boxes] = term.Count(4)
	require.Equal(t, term.Pass(false), value(answered(t, j, term.AskStatus), term.Passes))
	j.Facts[term.Laid] = term.Count(30)
	_, err := Answer(j, Question{Kind: term.AskStatus})
	require.ErrorContains(t, err, "more than the floor has, 18")
}

func TestRowsOfAWalk(t *testing.T) {
	j := alder()
	j.Plan = room.Plan{Walk: []room.Wall{{To: room.East, Len: in(150)}, {To: room.South, Len: in(136)}, {To: room.West, Len: in(150)}, {To: room.North, Len: in(136)}}}
	require.Equal(t, term.Count(18), value(answered(t, j, term.AskRows), term.Rows))
	require.Equal(t, layout.EastWest, answered(t, j, term.AskPlan).Layout.Along)
}
