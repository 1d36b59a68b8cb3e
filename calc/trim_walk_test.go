package calc

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
	"lastrow/calc/room"
	"lastrow/calc/term"
)

// 12 x 15 ft less a 3 ft door is 51 ft, walked from the door: its wall to the corner, three walls, and back to the door.
func TestTrimRoundAJob(t *testing.T) {
	job := bedroom()
	job.Plan.Doorways[0].From, job.Plan.Doorways[0].FromEnd = in(24), room.West
	r, err := Answer(job, Question{term.AskTrim, given(term.StickLength, term.Len(in(192)))})
	require.NoError(t, err)
	require.Equal(t, term.Len(in(612)), value(r, term.TrimLength))
	require.Equal(t, term.Count(4), value(r, term.Sticks)) // 15, 15, 12 + 2 and 10 ft
	require.Equal(t, "1. south: 10 ft; right end square, left end inside 45°", r.Working[0])
	require.Equal(t, "5. south: 24 in; right end inside 45°, left end square", r.Working[4])
	require.Contains(t, r.Working[5], "4 sticks")
}

// A corner cut out has one outside corner, where the mitre takes the trim's thickness more.
func TestTrimRoundACutOut(t *testing.T) {
	job := &Job{Plan: room.Plan{Rect: &room.Rect{EastWest: in(180), NorthSouth: in(144), CutOuts: []room.CutOut{{Corner: "NE", EastWest: in(48), NorthSouth: in(60)}}}}}
	r, err := Answer(job, Question{Kind: term.AskTrim})
	require.NoError(t, err)
	require.Equal(t, term.Len(in(648)), value(r, term.TrimLength))
	f, _ := newInputs(job, Question{}).jobFloor()
	var outside int
	for _, p := range TrimOf(f) {
		if p.Left.Kind == "outside" {
			outside++
			require.InDelta(t, 45, p.Left.Saw, 1e-9)
			require.Equal(t, p.Length+length.Inch/2, p.Stock(length.Inch/2))
		}
	}
	require.Equal(t, 1, outside)
	job.Plan.Fixtures = []room.Fixture{{What: "post", Wide: in(4), Deep: in(4), FromX: in(36), FromY: in(36), SideX: room.West, SideY: room.South}}
	f, _ = newInputs(job, Question{}).jobFloor()
	require.Len(t, TrimOf(f), 10)
}

// A room out of square has mitres that are not 45°: its four corners still make 360.
func TestTrimRoundAnOutOfSquareRoom(t *testing.T) {
	job := &Job{Plan: room.Plan{Quad: &room.Quad{North: in(148), East: in(110), South: in(145), West: in(110), NWSE: in(183.5)}}}
	f, _ := newInputs(job, Question{}).jobFloor()
	require.NotNil(t, f)
	var sum float64
	for _, p := range TrimOf(f) {
		sum += 180 - 2*p.Left.Saw
	}
	require.InDelta(t, 360, sum, 1e-6)
}

func TestTrimOfABrokenPlanIsRefusedOnce(t *testing.T) {
	job := bedroom()
	job.Plan.Doorways[0].Wide = in(500)
	_, err := Answer(job, Question{Kind: term.AskShopping})
	var refusal *Refusal
	require.ErrorAs(t, err, &refusal)
	require.Len(t, refusal.Reasons, 1)
}
