package calc

import (
	"math/big"
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/room"
	"lastrow/calc/term"
)

var metric = length.Tape{System: length.Metric}

func refused(t *testing.T, says string, k term.Kind, pairs ...any) {
	t.Helper()
	_, err := Answer(&Job{}, Question{k, given(pairs...)})
	require.ErrorContains(t, err, says)
}

func sqft(n int64) term.Area {
	return term.Area{Area: length.Number{Num: n, Den: 1}.OfArea(length.SquareFoot)}
}

// 15 x 12 ft in rolls of 4 x 25 ft: two by area, three of whole strips, two with end seams.
func TestUnderlayStrips(t *testing.T) {
	size := []any{term.RollWidth, term.Len(in(48)), term.RollLength, term.Len(in(300))}
	floor := append(size, term.Room, term.Lens{in(144), in(180)})
	r := ask(t, term.AskUnderlay, floor...)
	require.Equal(t, term.Count(3), value(r, term.Strips))
	require.Equal(t, term.Count(3), value(r, term.Rolls))
	require.Equal(t, term.Len(in(360)), value(r, term.Tape))
	require.Contains(t, r.Working, "pieced end to end, 2 rolls would do, with 1 seam across")
	r = ask(t, term.AskUnderlay, append(floor, term.Piecing, term.Word("pieced"))...)
	require.Equal(t, term.Count(2), value(r, term.Rolls))
	r = ask(t, term.AskUnderlay, append(floor, term.Overlap, term.Len(in(8)))...)
	require.Equal(t, term.Count(4), value(r, term.Strips))
	r = ask(t, term.AskUnderlay, append(size, term.FloorArea, sqft(180))...)
	require.Equal(t, term.Count(2), value(r, term.Rolls))
	require.Nil(t, value(r, term.Strips))
	refused(t, "needs area or room", term.AskUnderlay, size...)
	refused(t, "next to nothing", term.AskUnderlay, append(floor, term.Overlap, term.Len(in(40)))...)
	refused(t, "piecing can't be", term.AskUnderlay, append(floor, term.Piecing, term.Word("maybe"))...)
}

func TestUnderlayOfAJobWithACornerCutOut(t *testing.T) {
	job := &Job{Underlay: plank.Roll{Width: in(48), Length: in(300)}, Plan: room.Plan{Rect: &room.Rect{EastWest: in(180), NorthSouth: in(144),
		CutOuts: []room.CutOut{{Corner: "NE", EastWest: in(48), NorthSouth: in(60)}}}}}
	r, err := Answer(job, Question{Kind: term.AskUnderlay})
	require.NoError(t, err)
	require.Equal(t, term.Count(3), value(r, term.Rolls))
	area, ok := newInputs(job, Question{}).floorArea()
	require.True(t, ok)
	require.Equal(t, sqft(160).Area, area) // 15 x 12 less 4 x 5 ft
}

// Strips run east-west here, and so does the closet's: 6 ft of it, from what the third roll leaves.
func TestUnderlayOfAJobWithACloset(t *testing.T) {
	job := bedroom()
	job.Plan.Closets = []room.Closet{{Wall: room.North, Wide: in(72), Deep: in(24)}}
	r, err := Answer(job, Question{Kind: term.AskUnderlay})
	require.NoError(t, err)
	require.Equal(t, term.Count(4), value(r, term.Strips))
	require.Equal(t, term.Count(3), value(r, term.Rolls))
	require.Contains(t, r.Working, "1 strip x 6 ft in the closet = 6 ft")
	job.Plan.Closets[0].Wall = room.East // now it runs 2 ft in, in two strips
	r, err = Answer(job, Question{Kind: term.AskUnderlay})
	require.NoError(t, err)
	require.Equal(t, term.Count(5), value(r, term.Strips))
}

func TestScrews(t *testing.T) {
	r := ask(t, term.AskScrews, term.Track, term.Len(in(32.5)), term.Spacing, term.Len(in(10)))
	require.Equal(t, term.Count(5), value(r, term.Screws))
	require.Equal(t, term.Len(in(7.625)), value(r, term.Spacing))
	require.Equal(t, term.Len(5*length.Inch/32), value(r, term.Bit))
	require.Nil(t, value(r, term.ScrewLength))
	// Trade practice: screw = fixture + embedment, hole = embedment + 1/4 in.
	r = ask(t, term.AskScrews, term.Track, term.Len(in(36)), term.Spacing, term.Len(in(12)), term.Embedment, term.Len(in(1)), term.FixtureThickness, term.Len(in(.125)))
	require.Equal(t, term.Len(in(1.25)), value(r, term.ScrewLength))
	require.Equal(t, term.Len(in(1.25)), value(r, term.HoleDepth))
	r, err := Answer(&Job{Tape: metric}, Question{term.AskScrews, given(term.Track, term.Len(mm(750)), term.Spacing, term.Len(mm(250)),
		term.Embedment, term.Len(mm(25)), term.FixtureThickness, term.Len(mm(3)))})
	require.NoError(t, err)
	require.Equal(t, term.Count(4), value(r, term.Screws))
	require.Equal(t, term.Len(mm(30)), value(r, term.ScrewLength))
	require.Equal(t, term.Len(mm(31)), value(r, term.HoleDepth))
	// Ten diameters apart at least: 1.875 in for a 3/16 in screw.
	ask(t, term.AskScrews, term.Track, term.Len(in(36)), term.Spacing, term.Len(in(1.875)))
	refused(t, "too close", term.AskScrews, term.Track, term.Len(in(36)), term.Spacing, term.Len(in(1.875)-1))
	refused(t, "needs spacing", term.AskScrews, term.Track, term.Len(in(36)))
}

// A 12 ft wall at 16 in on centre, both ends counted: 10, and 20 in two lines.
func TestNails(t *testing.T) {
	r := ask(t, term.AskNails, term.TrimLength, term.Len(in(144)), term.Spacing, term.Len(in(16)))
	require.Equal(t, term.Count(10), value(r, term.Nails))
	require.Contains(t, r.Working[len(r.Working)-1], "20")
	r = ask(t, term.AskNails, term.TrimLength, term.Len(in(720)), term.Spacing, term.Len(in(16)), term.TrimThickness, term.Len(in(.5)))
	require.Equal(t, term.Count(46), value(r, term.Nails))
	require.Equal(t, term.Len(in(1.75)), value(r, term.NailLength))
	refused(t, "too close", term.AskNails, term.TrimLength, term.Len(in(144)), term.Spacing, term.Len(in(.5)))
	refused(t, "no nail", term.AskNails, term.TrimLength, term.Len(in(144)), term.TrimThickness, term.Len(in(5)))
}

// 12 x 15 ft less one 3 ft door: 51 ft, 56.1 ft with 10 %, eight sticks of 8 ft.
func TestTrim(t *testing.T) {
	r := ask(t, term.AskTrim, term.Room, term.Lens{in(144), in(180)}, term.Doors, term.Len(in(36)))
	require.Equal(t, term.Len(in(612)), value(r, term.TrimLength))
	require.Equal(t, term.Count(8), value(r, term.Sticks))
	r = ask(t, term.AskTrim, term.Room, term.Lens{mm(4000), mm(3500)}, term.Doors, term.Len(mm(760)), term.StickLength, term.Len(mm(2400)))
	require.Equal(t, term.Len(mm(14240)), value(r, term.TrimLength))
	require.Equal(t, term.Count(7), value(r, term.Sticks)) // 15.664 m / 2.4 m
	r = ask(t, term.AskTrim, term.Walls, term.Lens{in(100), in(120), in(100), in(120)}, term.Doors, term.Lens{in(30), in(32)})
	require.Equal(t, term.Len(in(378)), value(r, term.TrimLength))
	r = ask(t, term.AskTrim, term.Perimeter, term.Len(in(440)), term.Doors, term.Count(2))
	require.Equal(t, term.Len(in(440-64)), value(r, term.TrimLength))
	refused(t, "leave no wall", term.AskTrim, term.Perimeter, term.Len(in(40)), term.Doors, term.Len(in(40)))
	refused(t, "needs trim-length or perimeter", term.AskTrim)
	refused(t, "too short", term.AskTrim, term.Perimeter, term.Len(in(400)), term.StickLength, term.Len(in(11)))
	refused(t, "doors can't be", term.AskTrim, term.Perimeter, term.Len(in(400)), term.Doors, term.Word("wide"))
}

// Sticks are not bought for an exact fit that is one too many: 8 sticks of 8 ft are 64 ft to the nanometre.
func TestTrimExactMultiple(t *testing.T) {
	r := ask(t, term.AskTrim, term.TrimLength, term.Len(in(768)), term.TrimSpare, term.Percent(0))
	require.Equal(t, term.Count(8), value(r, term.Sticks))
	r = ask(t, term.AskTrim, term.TrimLength, term.Len(in(768)+1), term.TrimSpare, term.Percent(0))
	require.Equal(t, term.Count(9), value(r, term.Sticks))
}

// A 10.1 fl oz tube fills 30.9 ft of a 1/4 in round bead, 48.6 ft of a 1/4 in fillet and 24.3 ft of a 1/4 x 1/4 joint.
func TestCaulk(t *testing.T) {
	tubes := func(pairs ...any) term.Value {
		return value(ask(t, term.AskCaulk, append(pairs, term.SealantLoss, term.Percent(0))...), term.Tubes)
	}
	quarter := term.Len(in(.25))
	require.Equal(t, term.Count(1), tubes(term.TrimLength, term.Len(in(12*30.9)), term.Bead, quarter))
	require.Equal(t, term.Count(2), tubes(term.TrimLength, term.Len(in(12*31)), term.Bead, quarter))
	require.Equal(t, term.Count(1), tubes(term.TrimLength, term.Len(in(12*48.6)), term.Bead, quarter, term.BeadShape, term.Word("fillet")))
	require.Equal(t, term.Count(1), tubes(term.TrimLength, term.Len(in(12*24.3)), term.Bead, term.Lens{in(.25), in(.25)}))
	require.Equal(t, term.Count(2), tubes(term.TrimLength, term.Len(in(12*24.4)), term.Bead, term.Lens{in(.25), in(.25)}))
	require.Equal(t, term.Count(3), value(ask(t, term.AskCaulk, term.TrimLength, term.Len(in(720)), term.Bead, quarter), term.Tubes))
	refused(t, "needs bead", term.AskCaulk, term.TrimLength, term.Len(in(720)))
	refused(t, "a bead is", term.AskCaulk, term.TrimLength, term.Len(in(720)), term.Bead, term.Lens{in(1)})
}

// 8 mm at 850 kg/m³ (EN 16354's reference floor) is 6.80 kg/m²; a box of 2.0 m² is 13.6 kg.
func TestWeight(t *testing.T) {
	two := term.Area{Area: length.Number{Num: 2, Den: 1}.OfArea(length.SquareMetre)}
	r := ask(t, term.AskWeight, term.Boxes, term.Count(30), term.BoxCoverage, two, term.PlankThickness, term.Len(mm(8)))
	require.InDelta(t, 408, float64(value(r, term.Kg).(term.Mass)), 1e-9)
	require.InDelta(t, 13.6, float64(value(r, term.BoxKg).(term.Mass)), 1e-9)
	r = ask(t, term.AskWeight, term.Boxes, term.Count(30), term.BoxCoverage, two, term.PlankThickness, term.Len(mm(8)), term.Payload, term.Mass(200))
	require.Equal(t, term.Count(3), value(r, term.Trips)) // 14 boxes a trip
	r = ask(t, term.AskWeight, term.FloorArea, two, term.PlankThickness, term.Len(mm(12)), term.Density, term.Number{Rat: big.NewRat(900, 1)})
	require.InDelta(t, 21.6, float64(value(r, term.Kg).(term.Mass)), 1e-9)
	refused(t, "needs plank-thickness", term.AskWeight, term.Boxes, term.Count(30))
	refused(t, "covers nothing", term.AskWeight, term.Boxes, term.Count(30), term.BoxCoverage, term.Area{Area: in(.9).Times(in(1))}, term.PlankThickness, term.Len(mm(8)))
	refused(t, "does not carry", term.AskWeight, term.Boxes, term.Count(30), term.BoxCoverage, two, term.PlankThickness, term.Len(mm(8)), term.Payload, term.Mass(10))
}

// Half of 0.11 mm a metre and point (ANSI A208.2's ceiling of 0.33 % over 30 points): 5 m and 20 points are 5.5 mm each
// side, 8 m and 30 points 13.2.
func TestShrinkPerEdge(t *testing.T) {
	require.Equal(t, 5500*length.Length(1000), ShrinkPerEdge(mm(5000), big.NewRat(20, 1)))
	require.Equal(t, 13200*length.Length(1000), ShrinkPerEdge(mm(8000), big.NewRat(30, 1)))
	require.InDelta(t, 13.4, ShrinkPerEdge(40*length.Foot, big.NewRat(20, 1)).MM(), 0.05)
}

func TestTrimCover(t *testing.T) {
	at := func(trim length.Length) Result {
		return ask(t, term.AskTrimCover, term.TrimThickness, term.Len(trim), term.Gap, term.Len(mm(8)), term.Run, term.Len(mm(4000)))
	}
	widest := mm(8) + 3300*length.Length(1000) // 4 m x 0.11 x 15 / 2
	require.Equal(t, term.Len(widest), value(at(widest), term.WidestGap))
	require.Equal(t, term.Pass(false), value(at(widest), term.Passes))
	require.Equal(t, term.Pass(true), value(at(widest+1), term.Passes))
	require.Equal(t, term.Len(1), value(at(widest+1), term.Cover))
	// The whole of 30 points draws back 6.6 mm, more than the 6 mm that the gap's rule allows for on 4 m; a swing that is said is the whole.
	require.Regexp(t, `Laid at the dampest it would draw back 6\.6 mm.*: 0\.4 mm.* of cover left$`, at(mm(15)).Working[1])
	require.Regexp(t, `6\.6 mm.*: 0\.6 mm.* short$`, at(mm(14)).Working[1])
	said := ask(t, term.AskTrimCover, term.TrimThickness, term.Len(mm(15)), term.Gap, term.Len(mm(8)), term.Run, term.Len(mm(4000)), term.HumiditySwing, term.Percent(30_000))
	require.Equal(t, term.Len(mm(8)+6600*length.Length(1000)), value(said, term.WidestGap))
	require.Len(t, said.Working, 4)
	_, err := Answer(&Job{}, Question{Kind: term.AskTrimCover})
	require.ErrorContains(t, err, "needs trim-thickness, run or room, gap")
}
