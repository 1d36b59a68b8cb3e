package caution

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc"
	"lastrow/calc/layout"
	"lastrow/calc/length"
	"lastrow/calc/plank"
	"lastrow/calc/room"
	"lastrow/calc/term"
)

func in(f float64) term.Len { return term.Len(f * float64(length.Inch)) }

func about(k term.Kind, pairs ...any) Circumstance {
	c := Circumstance{Job: &calc.Job{}, Question: calc.Question{Kind: k}, Result: calc.Result{Kind: k}}
	for i := 0; i < len(pairs); i += 2 {
		c.Result.Given = append(c.Result.Given, term.Given{Name: pairs[i].(term.Name), Value: pairs[i+1].(term.Value)})
	}
	return c
}

func (c Circumstance) result(n term.Name, v term.Value) Circumstance {
	c.Result.Values = append(c.Result.Values, term.Named{Name: n, Value: v})
	return c
}

func (c Circumstance) on(subfloor string) Circumstance {
	c.Job.Facts = map[term.Name]term.Value{term.Subfloor: term.Word(subfloor)}
	return c
}

func laid(pieces []layout.Piece, broken ...string) Circumstance {
	c := about(term.AskPlan)
	c.Result.Layout = &layout.Layout{Rows: []layout.Row{{N: 1, Runs: []layout.Run{{Pieces: pieces}}}}}
	for _, b := range broken {
		c.Result.Layout.Broken = append(c.Result.Layout.Broken, layout.Broken{Rule: b})
	}
	return c
}

func cut(what string, width float64) []layout.Piece {
	return []layout.Piece{{Cuts: []layout.Cut{{What: what, Near: length.Length(in(width)), Far: length.Length(in(width))}}}}
}

// answered is the circumstance of a question really answered.
func answered(k term.Kind, pairs ...any) Circumstance {
	c := about(k, pairs...)
	c.Question.Given, c.Result.Given = c.Result.Given, nil
	for i := range c.Question.Given {
		c.Question.Given[i].From = term.Message
	}
	r, err := calc.Answer(c.Job, c.Question)
	if err != nil {
		panic(err)
	}
	c.Result = r
	return c
}

// between is a floor of a height beside one of another.
func between(floor, other float64) Circumstance {
	return answered(term.AskTransition, term.FloorHeight, in(floor), term.OtherHeight, in(other))
}

// raised is a question on a height over a floor that comes up by 8 mm of plank and 2 mm of underlay.
func raised(n term.Name, v term.Value) Circumstance {
	return answered(term.AskHeadroom, n, v, term.PlankThickness, term.Len(8*length.Millimetre), term.UnderlayThickness, term.Len(2*length.Millimetre))
}

func door(gap float64) Circumstance {
	return answered(term.AskDoor, term.DoorGap, in(gap), term.PlankThickness, term.Len(8*length.Millimetre), term.UnderlayThickness, term.Len(2*length.Millimetre))
}

func rh(reading term.Percent) Circumstance {
	return answered(term.AskMoisture, term.Test, term.Word("rh"), term.Reading, reading)
}

func dip(inches float64) Circumstance {
	return answered(term.AskFlatness, term.Dip, in(inches), term.Straightedge, term.Len(10*length.Foot))
}

// stated is a circumstance in which a message made one statement, and asked nothing.
func stated(c Circumstance, k term.Kind) Circumstance {
	c.Question.Kind, c.Set = "", []term.Kind{k}
	return c
}

func named(job string, k term.Kind) Circumstance {
	return Circumstance{Job: &calc.Job{Name: job}, Set: []term.Kind{k}}
}

// extent is a floor just stated that reaches so many inches.
func extent(inches float64) Circumstance {
	f, broken := room.Build(room.Plan{Rect: &room.Rect{EastWest: length.Length(in(inches)), NorthSouth: length.Length(in(120))}})
	if broken != nil {
		panic(broken)
	}
	return Circumstance{Job: &calc.Job{}, Set: []term.Kind{term.SetWalls}, Result: calc.Result{Floor: f}}
}

// recorded is a reading put on record in a job.
func recorded(pairs ...any) Circumstance {
	c := set(term.SetReading, 0)
	for i := 0; i < len(pairs); i += 2 {
		c.Job.Facts[pairs[i].(term.Name)] = pairs[i+1].(term.Value)
	}
	return c
}

func signs(id string) Circumstance { return Circumstance{Signs: []string{id}} }

func set(k term.Kind, laid int64) Circumstance {
	return Circumstance{Set: []term.Kind{k}, Job: &calc.Job{Facts: map[term.Name]term.Value{term.Laid: term.Count(laid)}}}
}

func hallOf(long length.Length) Circumstance {
	c := about(term.AskPlan)
	c.Job.Plan.Rect = &room.Rect{EastWest: long, NorthSouth: length.Metre}
	return c
}

// atDoor is a floor of planks 7 1/2 in wide, the first row whole, that goes into a doorway so far and ends there in a row so
// wide: ten rows, and 1/4 in of gap at either end.
func atDoor(last, into float64) Circumstance {
	deep := 10*7.5 + last + .25 - into + .25
	j := &calc.Job{
		Plan: room.Plan{
			Rect:     &room.Rect{EastWest: length.Length(in(90)), NorthSouth: length.Length(in(deep))},
			Doorways: []room.Doorway{{Wall: room.North, Wide: length.Length(in(32)), From: length.Length(in(20)), FromEnd: room.West, Into: length.Length(in(into))}},
			Gap:      length.Inch / 4,
		},
		Plank: plank.Plank{Width: length.Length(in(7.5)), Length: length.Length(in(47.5))}, Along: layout.EastWest, StartWall: room.South,
		FirstRow: length.Length(in(7.5)),
	}
	q := calc.Question{Kind: term.AskPlan}
	r, err := calc.Answer(j, q)
	if err != nil {
		panic(err)
	}
	return Circumstance{Job: j, Question: q, Result: r}
}

// examples holds, for each id, circumstances that raise it and ones that just do not.
var examples = []struct {
	id        string
	does, not Circumstance
}{
	{"narrow-row", about(term.AskRows).result(term.LastRowWidth, in(2)-1), about(term.AskRows).result(term.LastRowWidth, in(2))},
	{"narrow-row", about(term.AskRows, term.LeastRow, in(3)).result(term.FirstRowWidth, in(2.5)), about(term.AskRows, term.LeastRow, in(1)).result(term.FirstRowWidth, in(1))},
	{"narrow-row", laid(nil, "narrow-row"), laid(nil, "short-end")},
	{"narrow-row", atDoor(2.5-1.0/16, .25), atDoor(2.5, .25)}, // a third of a plank of 7 1/2 in, at the doorway
	{"narrow-row", atDoor(3, 1+1.0/16), atDoor(3, 1)},         // 2 in along the wall beside it
	{"short-end", about(term.AskStagger, term.Offcut, in(8)-1), about(term.AskStagger, term.Offcut, in(8))},
	{"short-end", laid(nil, "short-end"), laid(nil)},
	{"close-joints", about(term.AskStagger).result(term.Passes, term.Pass(false)), about(term.AskStagger).result(term.Passes, term.Pass(true))},
	{"close-joints", laid(nil, "close-joints"), laid(nil)},
	{"uncovered-gap", about(term.AskTrimCover).result(term.Passes, term.Pass(false)), about(term.AskTrimCover).result(term.Passes, term.Pass(true))},
	{"long-run", answered(term.AskLongRun, term.Run, in(325)), answered(term.AskLongRun, term.Run, in(324))},
	{"long-run", hallOf(27*length.Foot + 1), hallOf(27 * length.Foot)},
	{"long-run", about(term.AskGap, term.Run, in(325)), about(term.AskGap, term.Run, in(324))},
	{"slab-moisture", rh(75_001), rh(74_999)},
	{"slab-moisture", about(term.AskMoisture, term.Test, term.Word("rh")).result(term.Passes, term.Pass(false)),
		about(term.AskMoisture, term.Test, term.Word("wood")).result(term.Passes, term.Pass(false))},
	{"slab-moisture", about(term.AskVaporBarrier).on("concrete slab"), about(term.AskVaporBarrier).on("plywood")},
	{"slab-moisture", about(term.AskStart).on("screed"), about(term.AskStart, term.Reading, term.Percent(70_000)).on("screed")},
	{"not-flat", dip(.1876), dip(.1875)},
	{"not-flat", about(term.AskMoisture), about(term.AskMoisture, term.Dip, in(.125))},
	{"acclimate", set(term.SetOpened, 0), set(term.SetOpened, 1)},
	{"acclimate", set(term.SetOpened, 0), set(term.SetLaid, 0)},
	{"trip-edge", between(.75, .4999), between(.75, .5)},
	{"trip-edge", between(.1, .7), between(.5, .3)},
	{"stair-riser", raised(term.Riser, in(7.5)), raised(term.Ceiling, in(84))},
	{"headroom", raised(term.Ceiling, in(84)), raised(term.Riser, in(7.5))},
	{"headroom", raised(term.Sill, in(44)), door(2)},
	{"door-swing", door(.4), door(1)},
	{"silica-dust", about(term.AskScrews), about(term.AskScrews).on("plywood")},
	{"silica-dust", signs("silica-dust"), Circumstance{}},
	{"wood-dust", laid(cut("crosscut", 20)), laid([]layout.Piece{{Whole: true}})},
	{"wood-dust", door(.4), door(1)},
	{"saw-safety", laid(cut("rip", 3.9)), laid(cut("rip", 4))},
	{"saw-safety", laid(cut("notch", 0)), laid(cut("crosscut", 1))},
	{"saw-safety", about(term.AskRows, term.PlankWidth, in(7.5)).result(term.LastRowWidth, in(3.9)), about(term.AskRows, term.PlankWidth, in(3)).result(term.LastRowWidth, in(3))},
	{"saw-safety", about(term.AskTaper, term.WidthHere, in(5), term.WidthThere, in(3.5)), about(term.AskTaper, term.WidthHere, in(5), term.WidthThere, in(4.5))},
	{"old-coatings", signs("old-coatings"), signs("wet-room")},
	{"heated-floor", about(term.AskUnderlay).on("heated screed"), about(term.AskUnderlay).on("unheated screed")},
	{"heated-floor", signs("heated-floor"), about(term.AskUnderlay).on("screed")},
	{"wet-room", named("Upstairs bathroom", term.SetRoom), named("Upstairs bedroom", term.SetRoom)},
	{"wet-room", named("Laundry", term.SetJob), named("Laundry", term.SetPrice)},
	{"long-run", stated(hallOf(27*length.Foot+1), term.SetRoom), stated(hallOf(27*length.Foot), term.SetRoom)},
	{"long-run", extent(325), extent(324)},
	{"slab-moisture", stated(about("").on("slab"), term.SetSubfloor), stated(about("").on("osb"), term.SetSubfloor)},
	{"slab-moisture", recorded(term.Test, term.Word("rh"), term.Reading, term.Percent(76_000)), recorded(term.Test, term.Word("rh"), term.Reading, term.Percent(74_000))},
	{"not-flat", recorded(term.Dip, in(.25), term.Straightedge, in(120)), recorded(term.Dip, in(.125), term.Straightedge, in(120))},
	{"heated-floor", stated(about("").on("heated slab"), term.SetSubfloor), stated(about("").on("heated slab"), term.SetPrice)},
	{"wet-room", signs("wet-room"), signs("heated-floor")},
	{"buried-lines", about(term.AskScrews).on("slab"), about(term.AskScrews).on("osb")},
	{"combustion-air", signs("combustion-air"), door(.4)},
	{"trapped-plank", laid([]layout.Piece{{Trapped: "under a jamb"}}), laid([]layout.Piece{{}})},
}

func ids(c Circumstance) []string {
	var out []string
	for _, x := range For(c) {
		out = append(out, x.ID)
	}
	return out
}

func TestEachCautionAppearsWhereItApplies(t *testing.T) {
	seen := map[string]bool{}
	for _, e := range examples {
		seen[e.id] = true
		require.Contains(t, ids(e.does), e.id)
		require.NotContains(t, ids(e.not), e.id, "%v", e.not.Question)
	}
	for _, id := range IDs() {
		require.True(t, seen[id], "%s has no example", id)
	}
	require.Len(t, IDs(), 21) // every caution of the replies' format
}

func TestHeaviestFirstAndOnce(t *testing.T) {
	c := about(term.AskScrews).on("heated slab")
	c.Signs = []string{"old-coatings", "silica-dust", "no-such"}
	require.Equal(t, []string{"old-coatings", "buried-lines", "silica-dust", "heated-floor"}, ids(c))
	require.Empty(t, For(Circumstance{}))
}

func TestEachCautionSaysWhatToDoAndOnWhatItRests(t *testing.T) {
	for _, r := range table {
		require.NotEmpty(t, r.Source, r.ID)
		require.Regexp(t, `^[A-Z].*\.$`, r.Text)
		require.Less(t, len(r.Text), 330, r.ID)
		require.Positive(t, r.Weight)
	}
}

// 40 CFR 745.83: up to 6 sq ft in a room is minor, and a removed piece counts with its whole face. 14 ft of 5 1/4 in base is
// 6.125 sq ft, 50 ft of 3 1/4 in 13.54; 32 ft of 2 1/4 in is 6 sq ft to the inch, and minor.
func TestDisturbed(t *testing.T) {
	for _, c := range []struct {
		run, height float64
		sqft        float64
		over        bool
	}{
		{14 * 12, 5.25, 6.125, true}, {50 * 12, 3.25, 13.5417, true}, {32 * 12, 2.25, 6, false}, {32*12 + .001, 2.25, 6, true},
	} {
		face, over := Disturbed(length.Length(in(c.run)), length.Length(in(c.height)))
		require.InDelta(t, c.sqft, face.SqFt(), 0.0005)
		require.Equal(t, c.over, over)
	}
}

func TestOldTrimOverSixSquareFeet(t *testing.T) {
	trim := func(height float64) string {
		c := about(term.AskTrim, term.TrimHeight, in(height)).result(term.TrimLength, in(32*12))
		c.Signs = []string{"old-coatings"}
		require.Equal(t, []string{"old-coatings"}, ids(c))
		return For(c)[0].Text
	}
	require.Contains(t, trim(2.3), "6 sq ft")
	require.NotContains(t, trim(2.25), "6 sq ft")
}
