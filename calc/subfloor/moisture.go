package subfloor

import (
	"fmt"
	"math/big"

	"lastrow/calc/length"
	"lastrow/calc/limit"
)

// Test is a way to measure moisture. The figures of one are never those of another: 2.0 CM-% is neither 2.0 % by mass
// nor a relative humidity.
type Test string

// The tests.
const (
	RH      Test = "rh"               // probes in the slab, ASTM F2170
	MVER    Test = "calcium-chloride" // vapor given off, ASTM F1869
	Carbide Test = "carbide"          // carbide bomb, CM-%
	Wood    Test = "wood"             // pins or pinless, moisture content of a wood subfloor
	Sheet   Test = "plastic-sheet"    // ASTM D4263: a yes or no, never a figure
)

// Screed is what a carbide test was taken of.
type Screed struct{ Sulfate, Heated bool }

// Dryness is the limit of a test. The plastic sheet has none.
func Dryness(t Test, s Screed) (*limit.Limit, bool) {
	switch t {
	case RH:
		return limit.MoistureRH, true
	case MVER:
		return limit.MoistureMVER, true
	case Wood:
		return limit.MoistureWood, true
	case Carbide:
		return carbide(s), true
	}
	return nil, false
}

func carbide(s Screed) *limit.Limit {
	switch {
	case s.Sulfate && s.Heated:
		return limit.CarbideSulfateWarm
	case s.Sulfate:
		return limit.CarbideSulfate
	case s.Heated:
		return limit.CarbideCementWarm
	}
	return limit.CarbideCement
}

// Dry says whether a reading keeps a limit.
func Dry(reading, most *big.Rat) bool { return reading.Cmp(most) <= 0 }

// Plausible refuses readings that the method can't give.
func Plausible(t Test, reading *big.Rat) error {
	most := map[Test]int64{RH: 100, MVER: 50, Carbide: 15, Wood: 60}[t]
	if most > 0 && (reading.Sign() < 0 || reading.Cmp(big.NewRat(most, 1)) > 0) {
		return fmt.Errorf("a %s reading of %s is out of bounds: 0 to %d", t, reading.FloatString(1), most)
	}
	return nil
}

// Apart gives the most that a wood subfloor and wood planks on it may differ, by the width of the plank's face: 4
// points under 3 in, 2 points from 3 in on.
func Apart(plankWidth length.Length) *limit.Limit {
	if plankWidth < 3*length.Inch {
		return limit.WoodStrip
	}
	return limit.WoodPlank
}

// Match says whether a wood subfloor is dry enough in itself and near enough to the planks.
func Match(subfloor, planks *big.Rat, plankWidth length.Length) bool {
	diff := new(big.Rat).Sub(subfloor, planks)
	return Dry(subfloor, limit.MoistureWood.Rat()) && Dry(diff.Abs(diff), Apart(plankWidth).Rat())
}

// Tests is how many tests an area needs. The inch-pound figure governs, so 1000 sq ft is 92.9 m² and not 100. The
// rule for calcium chloride is that of the probes, from memory; that for the plastic sheet is from memory too.
// Tests of carbide have no rule here: 0.
func Tests(t Test, area length.Area) int64 {
	thousands := area.Over(thousand)
	switch t {
	case RH, MVER:
		further := max(0, length.Up(thousands)-1)
		return whole(limit.TestsFirst) + further*whole(limit.TestsMore)
	case Wood:
		return length.Up(thousands.Mul(thousands, limit.TestsWood.Rat()))
	case Sheet:
		return length.Up(area.Over(length.Number{Num: whole(limit.TestsSheet), Den: 1}.OfArea(length.SquareFoot)))
	}
	return 0
}

var thousand = length.Number{Num: 1000, Den: 1}.OfArea(length.SquareFoot)

func whole(l *limit.Limit) int64 { return l.Rat().Num().Int64() }

// ProbeDepth is how deep a probe sits in a slab: 40 % of its thickness where it dries from the top alone, 20 % where it
// dries on both sides (ASTM F2170-19a 10.2).
func ProbeDepth(slab length.Length, bothSides bool) length.Length {
	if bothSides {
		return slab / 5
	}
	return slab * 2 / 5
}
