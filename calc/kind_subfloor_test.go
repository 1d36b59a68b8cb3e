package calc

import (
	"math/big"
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
	"lastrow/calc/term"
)

func ratio(num, den int64) term.Number { return term.Number{Rat: big.NewRat(num, den)} }

// NWFA and ASTM F710 in inches, DIN 18202:2013 Table 3 row 3 in metres; each named in the working.
func TestFlatness(t *testing.T) {
	for _, c := range []struct {
		job              *Job
		dip, edge, allow length.Length
		pass             term.Pass
		rule             string
	}{
		{&Job{}, in(.1875), 10 * length.Foot, in(.1875), true, "F710"},
		{&Job{}, in(.1875) + 1, 10 * length.Foot, in(.1875), false, "F710"},
		{&Job{}, in(.1875), 6 * length.Foot, in(.125), false, "NWFA"},
		{&Job{}, in(.625), 6 * length.Foot, in(.125), false, "NWFA"},
		{&Job{}, in(.375), 10 * length.Foot, in(.1875), false, "F710"},
		{metricJob(), mm(6), mm(2000), mm(6), true, "DIN 18202:2013 Table 3 row 3"},
		{metricJob(), mm(6) + 1, mm(2000), mm(6), false, "DIN"},
		{metricJob(), mm(8), mm(3000), mm(8), true, "DIN"},
	} {
		r := answer(t, c.job, term.AskFlatness, given(term.Dip, l(c.dip), term.Straightedge, l(c.edge)))
		require.Equal(t, l(c.allow), value(r, term.Allowed), c)
		require.Equal(t, c.pass, value(r, term.Passes), c)
		require.Contains(t, r.Working[0], c.rule)
	}
	r := answer(t, metricJob(), term.AskFlatness, given(term.Dip, l(mm(6)), term.Straightedge, l(mm(2000))))
	require.Contains(t, r.Working, "6 mm is over 5 mm")
	r = answer(t, metricJob(), term.AskFlatness, given(term.Dip, l(mm(11)), term.Straightedge, l(mm(2000))))
	require.Contains(t, r.Working, "it meets no class of BS 8204")
	r = answer(t, metricJob(), term.AskFlatness, given(term.Dip, l(mm(4)), term.Straightedge, l(mm(2000))))
	require.Contains(t, r.Working, "by BS 8204 it is class SR2")
	r = answer(t, metricJob(), term.AskFlatness, given(term.Dip, l(mm(3)), term.Straightedge, l(mm(2000)), term.Allowed, l(mm(2))))
	require.Equal(t, term.Pass(false), value(r, term.Passes))
}

// DIN 18202:2013 Table 3 and BS 8204, by class.
func TestFlatnessByClass(t *testing.T) {
	ask := func(class term.Word, edge length.Length) []term.Given {
		return given(term.Dip, l(mm(4)), term.Straightedge, l(edge), term.Tolerance, class)
	}
	for class, allow := range map[term.Word]length.Length{"SR1": mm(3), "BS 8204 SR2": mm(5), "row 4": mm(5), "DIN 18202 row 2": mm(9)} {
		r := answer(t, metricJob(), term.AskFlatness, ask(class, mm(2000)))
		require.Equal(t, l(allow), value(r, term.Allowed), class)
		require.Equal(t, term.Pass(allow >= mm(4)), value(r, term.Passes), class)
	}
	refusal(t, term.AskFlatness, ask("SR2", mm(3000)), "under 2 m, not 3000 mm")
	refusal(t, term.AskFlatness, ask("row 7", mm(2000)), "rows 1 to 4")
	refusal(t, term.AskFlatness, ask("smooth", mm(2000)), "SR1, SR2 and SR3")
}

func TestFlatnessOfHeights(t *testing.T) {
	heights := term.Lens{0, mm(5), mm(2)}
	r := answer(t, metricJob(), term.AskFlatness, given(term.Heights, heights, term.Spacing, l(mm(1000))))
	require.Equal(t, l(mm(6)), value(r, term.Allowed))
	require.Equal(t, term.Pass(true), value(r, term.Passes))
	refusal(t, term.AskFlatness, given(term.Heights, term.Lens{0, 0}, term.Spacing, l(mm(1000))), "3 at least")
}

func TestFlatnessRefused(t *testing.T) {
	refusal(t, term.AskFlatness, given(term.Dip, l(mm(3)), term.Straightedge, l(mm(10))), "straightedge of 10 mm")
	refusal(t, term.AskFlatness, given(term.Dip, l(length.Foot), term.Straightedge, l(6*length.Foot)), "no flatness reading")
}

// 24 sq ft, 1/4 in deep, is 0.5 cu ft. 1 m² x 1 mm is 1 L; powder at 1.7 kg fills it: 51 kg for 10 m² x 3 mm, 3 bags.
func TestLeveler(t *testing.T) {
	r := answer(t, &Job{}, term.AskLeveler, given(term.FloorArea, sqft(24), term.Depth, l(in(.25))))
	require.InDelta(t, 0.014158423, value(r, term.VolumeNeeded).(term.Volume).M3(), 1e-9)
	require.Equal(t, term.Count(2), value(r, term.Bags))
	ten := term.Area{Area: length.Number{Num: 10, Den: 1}.OfArea(length.SquareMetre)}
	r = answer(t, metricJob(), term.AskLeveler, given(term.FloorArea, ten, term.Depth, l(mm(3))))
	require.InDelta(t, 0.030, value(r, term.VolumeNeeded).(term.Volume).M3(), 1e-12)
	require.Equal(t, term.Count(3), value(r, term.Bags))
	r = answer(t, metricJob(), term.AskLeveler, given(term.FloorArea, ten, term.Depth, l(mm(3)), term.Shape, term.Word("slope")))
	require.InDelta(t, 0.015, value(r, term.VolumeNeeded).(term.Volume).M3(), 1e-12)
	half := term.Volume{Volume: length.SquareFoot.Deep(length.Foot / 2)}
	r = answer(t, &Job{}, term.AskLeveler, given(term.FloorArea, sqft(24), term.Depth, l(in(.25)), term.BagYield, half))
	require.Equal(t, term.Count(1), value(r, term.Bags), "an exact bag is not two")
	refusal(t, term.AskLeveler, given(term.FloorArea, sqft(24), term.Depth, l(length.Foot)), "4 in at most")
	refusal(t, term.AskLeveler, given(term.FloorArea, sqft(24), term.Depth, l(in(1)), term.Shape, term.Word("star")), "star")
	refusal(t, term.AskLeveler, given(term.FloorArea, sqft(24), term.Depth, l(in(1)), term.BagYield, term.Volume{}), "fills nothing")
}

// ASTM F710: 75 % RH and 3 lb. ERFMI: 2.0 CM-%, 0.5 of anhydrite, 1.8 and 0.3 heated. NWFA: 12 %.
func TestMoisture(t *testing.T) {
	for _, c := range []struct {
		test, floor    term.Word
		reading, allow term.Value
		pass           term.Pass
	}{
		{"rh", "concrete", term.Percent(75_000), term.Percent(75_000), true},
		{"rh", "concrete", term.Percent(78_000), term.Percent(75_000), false},
		{"calcium-chloride", "concrete", ratio(3, 1), ratio(3, 1), true},
		{"calcium-chloride", "concrete", ratio(31, 10), ratio(3, 1), false},
		{"carbide", "concrete", term.Percent(1_900), term.Percent(2_000), true},
		{"carbide", "heated screed", term.Percent(1_900), term.Percent(1_800), false},
		{"carbide", "anhydrite", term.Percent(500), term.Percent(500), true},
		{"carbide", "heated anhydrite", ratio(5, 10), term.Percent(300), false},
		{"wood", "plywood", term.Percent(12_000), term.Percent(12_000), true},
		{"wood", "plywood", term.Count(13), term.Percent(12_000), false},
	} {
		r := answer(t, &Job{}, term.AskMoisture, given(term.Test, c.test, term.Reading, c.reading, term.Subfloor, c.floor))
		require.Equal(t, c.allow, value(r, term.Allowed), c)
		require.Equal(t, c.pass, value(r, term.Passes), c)
	}
}

// A limit is no licence: with no reading there is no verdict.
func TestMoistureLimitAlone(t *testing.T) {
	r := answer(t, &Job{}, term.AskMoisture, given(term.Test, term.Word("rh")))
	require.Equal(t, term.Percent(75_000), value(r, term.Allowed))
	require.Nil(t, value(r, term.Passes))
	job := &Job{Facts: map[term.Name]term.Value{term.Test: term.Word("rh"), term.Reading: term.Percent(70_000)}}
	require.Equal(t, term.Pass(true), value(answer(t, job, term.AskMoisture, nil), term.Passes))
	r = answer(t, job, term.AskMoisture, given(term.Test, term.Word("carbide")))
	require.Nil(t, value(r, term.Passes), "a reading of one test is none of another")
	dip := &Job{Facts: map[term.Name]term.Value{term.Reading: l(mm(3)), term.Dip: l(mm(3))}}
	require.Nil(t, value(answer(t, dip, term.AskMoisture, given(term.Test, term.Word("rh"))), term.Passes))
}

// ASTM F710 holds where the maker says nothing else: a product's own limit takes its place.
func TestMoistureOfTheProduct(t *testing.T) {
	ask := func(allowed term.Percent) Result {
		return answer(t, &Job{}, term.AskMoisture, given(term.Test, term.Word("rh"), term.Reading, term.Percent(78_000), term.Allowed, allowed))
	}
	require.Equal(t, term.Pass(true), value(ask(80_000), term.Passes))
	require.Equal(t, term.Percent(80_000), value(ask(80_000), term.Allowed))
	require.Equal(t, term.Pass(false), value(ask(70_000), term.Passes))
}

// ASTM F2170-19a 10.1.
func TestMoistureTests(t *testing.T) {
	for area, want := range map[int64]term.Count{1000: 3, 1001: 4} {
		r := answer(t, &Job{}, term.AskMoisture, given(term.Test, term.Word("rh"), term.FloorArea, sqft(area)))
		require.Equal(t, want, value(r, term.Tests))
	}
	r := answer(t, &Job{}, term.AskMoisture, given(term.Test, term.Word("wood"), term.FloorArea, sqft(180)))
	require.Equal(t, term.Count(4), value(r, term.Tests))
	r = answer(t, &Job{}, term.AskMoisture, given(term.Test, term.Word("carbide"), term.FloorArea, sqft(180)))
	require.Nil(t, value(r, term.Tests))
}

// ASTM F2170-19a 10.2: 40 % of a slab that dries from the top.
func TestProbeDepth(t *testing.T) {
	r := answer(t, &Job{}, term.AskMoisture, given(term.Test, term.Word("rh"), term.SlabThickness, l(in(5))))
	require.Equal(t, l(in(2)), value(r, term.ProbeDepth))
	r = answer(t, &Job{}, term.AskMoisture, given(term.Test, term.Word("carbide"), term.SlabThickness, l(in(5))))
	require.Nil(t, value(r, term.ProbeDepth))
}

// NWFA example: 11 % under 5 in plank at 8 %, 3 points apart where 2 may be.
func TestMoistureAgainstPlanks(t *testing.T) {
	ask := func(planks term.Percent) term.Value {
		return value(answer(t, &Job{}, term.AskMoisture, given(term.Test, term.Word("wood"), term.Reading, term.Percent(11_000),
			term.PlankMoisture, planks, term.PlankWidth, l(in(5)))), term.Passes)
	}
	require.Equal(t, term.Pass(false), ask(8_000))
	require.Equal(t, term.Pass(true), ask(9_000))
}

// ASTM D4263: damp says no; dry proves nothing.
func TestPlasticSheet(t *testing.T) {
	r := answer(t, &Job{}, term.AskMoisture, given(term.Test, term.Word("plastic-sheet"), term.Reading, term.Word("damp")))
	require.Equal(t, term.Pass(false), value(r, term.Passes))
	r = answer(t, &Job{}, term.AskMoisture, given(term.Test, term.Word("plastic-sheet"), term.Reading, term.Word("dry")))
	require.Nil(t, value(r, term.Passes))
	require.Nil(t, value(r, term.Allowed))
}

func TestMoistureRefused(t *testing.T) {
	refusal(t, term.AskMoisture, given(term.Test, term.Word("rh"), term.Reading, term.Percent(140_000)), "0 to 100")
	refusal(t, term.AskMoisture, given(term.Test, term.Word("rh"), term.Reading, term.Word("damp")), "number")
	refusal(t, term.AskMoisture, given(term.Test, term.Word("tongue")), "no moisture test")
}

func TestVaporBarrier(t *testing.T) {
	r := answer(t, &Job{}, term.AskVaporBarrier, given(term.Subfloor, term.Word("concrete")))
	require.Equal(t, term.Pass(true), value(r, term.Passes))
	require.Equal(t, l(in(8)), value(r, term.Overlap))
	r = answer(t, metricJob(), term.AskVaporBarrier, given(term.Subfloor, term.Word("slab"), term.Reading, term.Percent(70_000)))
	require.Equal(t, l(mm(200)), value(r, term.Overlap))
	r = answer(t, &Job{}, term.AskVaporBarrier, given(term.Subfloor, term.Word("plywood")))
	require.Equal(t, term.Pass(false), value(r, term.Passes))
	refusal(t, term.AskVaporBarrier, given(term.Subfloor, term.Word("vinyl")), "tile over concrete")
	_, err := Answer(&Job{}, Question{term.AskVaporBarrier, given(term.Subfloor, term.Word("heated"))})
	require.ErrorContains(t, err, "needs subfloor")
	require.Equal(t, term.Pass(true), value(answer(t, &Job{}, term.AskVaporBarrier, given(term.Subfloor, term.Word("tile over concrete"))), term.Passes))
}

// 48 h, common practice; 18 °C is 64.4 °F.
func TestAcclimate(t *testing.T) {
	r := answer(t, &Job{}, term.AskAcclimate, nil)
	require.Equal(t, term.Hours(48), value(r, term.HoursTaken))
	require.Contains(t, r.Working[1], "64.4 °F")
	require.Contains(t, answer(t, metricJob(), term.AskAcclimate, nil).Working[1], "18 °C")
}
