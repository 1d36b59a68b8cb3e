package calc

import (
	"math/big"
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
	"lastrow/calc/room"
	"lastrow/calc/term"
)

func l(v length.Length) term.Len { return term.Len(v) }

func layers(plank, underlay length.Length, more ...any) []term.Given {
	return given(append([]any{term.PlankThickness, l(plank), term.UnderlayThickness, l(underlay)}, more...)...)
}

func metricJob() *Job { return &Job{Tape: metric} }

func answer(t *testing.T, job *Job, k term.Kind, g []term.Given) Result {
	t.Helper()
	r, err := Answer(job, Question{k, g})
	require.NoError(t, err)
	require.NotEmpty(t, r.Working)
	return r
}

func refusal(t *testing.T, k term.Kind, g []term.Given, says string) {
	t.Helper()
	r, err := Answer(&Job{}, Question{k, g})
	var why *Refusal
	require.ErrorAs(t, err, &why)
	require.ErrorContains(t, err, says)
	require.Empty(t, r.Values)
}

// Steps beside 3/8 in tile on a 1/8 in bed, 3 mm vinyl and a bare slab; slopes by the 2010 ADA Standards 303 and 405.2.
func TestTransition(t *testing.T) {
	for _, c := range []struct {
		plank, underlay, other length.Length
		floor                  term.Word
		step                   length.Length
		profile                term.Word
		bevel                  length.Length
	}{
		{mm(8), mm(2), in(.5), "tile", mm(10) - in(.5), "t-molding", 0},
		{mm(8), mm(2), mm(3), "vinyl", mm(7), "reducer", mm(14)},
		{mm(12), mm(3), 0, "slab", mm(15), "ramp", mm(180)},
		{mm(12), mm(2), in(.75), "carpet", mm(14) - in(.75), "end-cap", 0},
		{mm(12), mm(2), mm(10), "tile", mm(4), "reducer", 0},
		{in(.5), in(.125), in(.25), "wood", in(.375), "reducer", in(.75)},
	} {
		r := answer(t, &Job{}, term.AskTransition, layers(c.plank, c.underlay, term.OtherHeight, l(c.other), term.OtherFloor, c.floor))
		require.Equal(t, l(c.step), value(r, term.Step), c)
		require.Equal(t, c.profile, value(r, term.Profile), c)
		require.Equal(t, l(c.bevel), value(r, term.Bevel), c)
	}
}

// 1/4 in may stand upright, a nanometre more may not; 1/2 in is the last that a bevel takes.
func TestTransitionEdges(t *testing.T) {
	ask := func(step length.Length) Result {
		return answer(t, &Job{}, term.AskTransition, given(term.FloorHeight, l(step), term.OtherHeight, l(0)))
	}
	require.Equal(t, l(0), value(ask(in(.25)), term.Bevel))
	require.Equal(t, l(in(.5)+2), value(ask(in(.25)+1), term.Bevel))
	require.Equal(t, l(in(1)), value(ask(in(.5)), term.Bevel))
	require.Equal(t, term.Word("reducer"), value(ask(in(.5)), term.Profile))
	require.Equal(t, term.Word("ramp"), value(ask(in(.5)+1), term.Profile))
}

func TestTransitionToBareSlab(t *testing.T) {
	r := answer(t, &Job{}, term.AskTransition, layers(mm(8), mm(2), term.OtherFloor, term.Word("bare slab")))
	require.Equal(t, l(mm(10)), value(r, term.Step))
	require.Equal(t, term.Default, r.Given[len(r.Given)-1].From)
}

func TestImplausibleHeights(t *testing.T) {
	refusal(t, term.AskTransition, given(term.FloorHeight, l(mm(100)), term.OtherHeight, l(0)), "2 in at most")
	refusal(t, term.AskTransition, layers(mm(8), mm(2), term.OtherHeight, l(length.Metre)), "other floor")
	refusal(t, term.AskUndercut, layers(mm(12), in(9)), "underlay of 9 in")
	refusal(t, term.AskUndercut, layers(mm(120), mm(2)), "plank of 120 mm")
	refusal(t, term.AskUndercut, layers(mm(8), mm(2), term.Play, l(in(2))), "play of 2 in")
	refusal(t, term.AskDoor, layers(mm(8), mm(2), term.DoorGap, l(length.Metre)), "under the door")
	refusal(t, term.AskDoor, layers(mm(8), mm(2), term.DoorGap, l(in(.5)), term.WorkingClearance, l(length.Metre)), "under the door")
	refusal(t, term.AskHeadroom, layers(mm(8), mm(2), term.Ceiling, l(in(8))), "ceiling of 8 in")
}

func TestDoorAndUndercut(t *testing.T) {
	r := answer(t, &Job{}, term.AskDoor, layers(mm(8), mm(2), term.DoorGap, l(in(.625))))
	require.Equal(t, l(5_875_000), value(r, term.DoorClearance))
	require.Equal(t, l(0), value(r, term.TrimOff))
	r = answer(t, &Job{}, term.AskDoor, layers(mm(12), mm(2), term.DoorGap, l(in(.25))))
	require.Equal(t, l(in(.25)-mm(14)), value(r, term.DoorClearance))
	require.Equal(t, l(mm(14)-in(.125)), value(r, term.TrimOff))
	r = answer(t, &Job{}, term.AskDoor, layers(mm(8), mm(2), term.DoorGap, l(in(.625)), term.WorkingClearance, l(in(.375))))
	require.InDelta(t, 0.769, float64(value(r, term.CutLine).(term.Len))/float64(length.Inch), 0.0005)
	r = answer(t, &Job{}, term.AskUndercut, layers(mm(8), mm(2)))
	require.Equal(t, l(mm(10)), value(r, term.Undercut))
	require.InDelta(t, 0.456, float64(value(r, term.CutLine).(term.Len))/float64(length.Inch), 0.001)
}

// NFPA 80 4.8.4: 3/4 in at most under a fire door, from the finished floor.
func TestDoorKinds(t *testing.T) {
	ask := func(kind term.Word, gap length.Length) Result {
		return answer(t, &Job{}, term.AskDoor, layers(mm(8), mm(2), term.DoorGap, l(gap), term.DoorKind, kind))
	}
	require.Equal(t, term.Pass(true), value(ask("fire door", in(.75)+mm(10)), term.Passes))
	require.Equal(t, term.Pass(false), value(ask("fire door", in(.75)+mm(10)+1), term.Passes))
	require.Equal(t, l(mm(10)+in(.125)-in(.25)), value(ask("bifold", in(.25)), term.RaiseBy))
	require.Equal(t, l(0), value(ask("sliding", in(.75)), term.RaiseBy))
	require.Nil(t, value(ask("oak", in(.75)), term.RaiseBy))
}

// 2018 IRC R312.1.2 and R311.3.1.
func TestGuardAndThreshold(t *testing.T) {
	for _, c := range []struct {
		name term.Name
		was  length.Length
		pass term.Pass
	}{
		{term.Guard, in(36) + mm(10), true}, {term.Guard, in(36) + mm(10) - 1, false},
		{term.Threshold, in(1.5) + mm(10), true}, {term.Threshold, in(1.5) + mm(10) + 1, false},
		{term.Threshold, mm(10), true}, {term.Threshold, mm(10) - 1, false},
	} {
		r := answer(t, &Job{}, term.AskHeadroom, layers(mm(8), mm(2), c.name, l(c.was)))
		require.Equal(t, l(c.was-mm(10)), value(r, c.name), c)
		require.Equal(t, c.pass, value(r, term.Passes), c)
	}
}

func TestBuildUpFromJob(t *testing.T) {
	job := metricJob()
	job.Plank.Thickness, job.Underlay.Thickness = mm(8), mm(2)
	r := answer(t, job, term.AskUndercut, nil)
	require.Equal(t, l(mm(10)), value(r, term.Undercut))
	require.Equal(t, term.FromJob, r.Given[0].From)
	r = answer(t, job, term.AskUndercut, given(term.FloorHeight, l(mm(13))))
	require.Equal(t, l(mm(13)), value(r, term.Undercut))
	job.Facts = map[term.Name]term.Value{term.FloorHeight: l(mm(13))}
	require.Equal(t, l(mm(13)), value(answer(t, job, term.AskUndercut, nil), term.Undercut))
	require.Equal(t, l(mm(14)), value(answer(t, job, term.AskUndercut, given(term.PlankThickness, l(mm(12)))), term.Undercut))
}

// 2018 IRC R305.1, R310.2.2, R312.2, R311.7.5.1. 10 mm is 0.3937 in, over the 3/8 in that risers may differ.
func TestHeadroom(t *testing.T) {
	up := func(h length.Length, n term.Name, v term.Value, more ...any) Result {
		return answer(t, &Job{}, term.AskHeadroom, given(append([]any{term.FloorHeight, l(h), n, v}, more...)...))
	}
	for _, c := range []struct {
		up   length.Length
		name term.Name
		was  length.Length
		pass term.Pass
	}{
		{mm(10), term.Ceiling, in(84.25), false},
		{mm(10), term.Ceiling, in(84) + mm(10), true},
		{in(.39), term.Sill, in(44.25), true},
		{in(.39), term.Sill, in(24.25), false},
		{in(.375), term.Riser, in(7), true},
		{mm(10), term.Riser, in(7), false},
	} {
		r := up(c.up, c.name, l(c.was))
		require.Equal(t, l(c.was-c.up), value(r, c.name), c)
		require.Equal(t, c.pass, value(r, term.Passes), c)
	}
	top := up(in(.375), term.Riser, l(in(7.375)), term.Landing, term.Word("upper"))
	require.Equal(t, l(in(7.75)), value(top, term.Riser))
	require.Equal(t, term.Pass(true), value(top, term.Passes))
	top = up(in(.5), term.Riser, l(in(7.5)), term.Landing, term.Word("upper"))
	require.Equal(t, l(in(8)), value(top, term.Riser))
	require.Equal(t, term.Pass(false), value(top, term.Passes))
	drift := up(mm(4), term.Riser, term.Lens{in(7.5), in(7.5), in(7.25)})
	require.Equal(t, term.Pass(true), value(drift, term.Passes), "the low first riser is 7.343 in, the last 7.25")
	refusal(t, term.AskHeadroom, layers(mm(8), mm(2), term.Riser, term.Lens{in(7)}), "two risers")
	refusal(t, term.AskHeadroom, layers(mm(8), mm(2), term.Riser, l(in(7)), term.Landing, term.Word("sideways")), "lower or upper")
	_, err := Answer(&Job{}, Question{Kind: term.AskHeadroom})
	require.ErrorContains(t, err, "ceiling or sill or riser")
}

// Published: 6 x 5 m room, 9 mm on the 6 m and 8 mm on the 5 m (a trade guide to NF DTU 51.11).
func TestGap(t *testing.T) {
	for run, want := range map[length.Length]length.Length{mm(6000): mm(9), mm(5000): mm(8), mm(7200): mm(11)} {
		require.Equal(t, l(want), value(answer(t, metricJob(), term.AskGap, given(term.Run, l(run))), term.Gap))
	}
	r := answer(t, &Job{}, term.AskGap, given(term.Run, l(13*length.Foot)))
	require.Equal(t, l(in(.25)), value(r, term.Gap))
	require.Equal(t, l(5_943_600), value(r, term.Movement))
	swing := term.Number{Rat: big.NewRat(20, 1)}
	r = answer(t, metricJob(), term.AskGap, given(term.Run, l(mm(5000)), term.HumiditySwing, swing))
	require.Equal(t, l(mm(11)), value(r, term.Movement)) // ANSI A208.2, as a ceiling
	refusal(t, term.AskGap, given(term.Run, l(mm(5000)), term.HumiditySwing, term.Percent(120_000)), "points")
	refusal(t, term.AskGap, given(term.Run, l(mm(5000)), term.HumiditySwing, term.Word("a lot")), "number")
}

func TestGapOfTheJob(t *testing.T) {
	job := metricJob()
	job.Plan.Rect = &room.Rect{EastWest: mm(3000), NorthSouth: mm(7200)}
	require.Equal(t, l(mm(11)), value(answer(t, job, term.AskGap, nil), term.Gap))
	job.Plan.Gap = mm(10)
	require.Equal(t, term.Pass(false), value(answer(t, job, term.AskGap, nil), term.Passes))
	job.Plan.Gap = mm(11)
	require.Equal(t, term.Pass(true), value(answer(t, job, term.AskGap, nil), term.Passes))
}

// Practice, no standard: 8 m, or 27 ft; the user's own sheet in its place.
func TestLongRun(t *testing.T) {
	for _, c := range []struct {
		job    *Job
		run    length.Length
		pass   term.Pass
		fields term.Count
	}{
		{metricJob(), mm(8000), true, 1}, {metricJob(), mm(8000) + 1, false, 2}, {metricJob(), mm(16001), false, 3},
		{&Job{}, 27 * length.Foot, true, 1}, {&Job{}, 27*length.Foot + in(.0625), false, 2},
	} {
		r := answer(t, c.job, term.AskLongRun, given(term.Run, l(c.run)))
		require.Equal(t, c.pass, value(r, term.Passes))
		require.Equal(t, c.fields, value(r, term.Fields))
	}
	r := answer(t, metricJob(), term.AskLongRun, given(term.Run, l(mm(12000)), term.Limit, l(mm(13000))))
	require.Equal(t, term.Pass(true), value(r, term.Passes))
	refusal(t, term.AskLongRun, given(term.Run, l(mm(12000)), term.Limit, l(0)), "no floor")
}
