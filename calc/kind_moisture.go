package calc

import (
	"fmt"
	"math/big"

	"lastrow/calc/length"
	"lastrow/calc/limit"
	"lastrow/calc/subfloor"
	"lastrow/calc/term"
)

func init() { handlers[term.AskMoisture] = moisture }

// moisture judges a reading by the limit of its own method, or gives the limit alone where there is no reading; and how
// many tests the area needs, where that is known.
func moisture(in *inputs) (Result, error) {
	if _, slab := in.said[term.SlabThickness]; slab && !in.has(term.Test) {
		return in.drying()
	}
	word := need[term.Word](in, term.Test)
	if err := in.err(); err != nil {
		return Result{}, err
	}
	test := subfloor.Test(word)
	if test == subfloor.Sheet {
		return in.sheet()
	}
	name := in.subfloorName()
	screed := subfloor.ScreedOf(name)
	dry, ok := subfloor.Dryness(test, screed)
	if !ok {
		in.refuse("%q is no moisture test known here: rh, calcium-chloride, carbide, wood or plastic-sheet", string(word))
		return Result{}, in.err()
	}
	most, why := in.most(dry)
	if err := in.err(); err != nil {
		return Result{}, err
	}
	r := Result{Values: []term.Named{{Name: term.Allowed, Value: figure(test, most)}}, Working: []string{why}}
	in.judge(&r, test, most, dry.Unit)
	in.probe(&r, test)
	in.tests(&r, test)
	if err := in.err(); err != nil {
		return Result{}, err
	}
	return r, nil
}

func (in *inputs) subfloorName() string {
	w, _ := get[term.Word](in, term.Subfloor)
	return string(w)
}

// most is the limit that holds: the product's own where it was said, or else the published one.
func (in *inputs) most(dry *limit.Limit) (*big.Rat, string) {
	if !in.has(term.Allowed) {
		return dry.Rat(), dry.Why(in.tape)
	}
	own := in.amount(term.Allowed)
	if own == nil {
		return nil, ""
	}
	return own, fmt.Sprintf("%s: %s %s, as said for this product, in place of %s", dry.What, decimal(own), dry.Unit, dry.Text(in.tape))
}

// figure is a limit as a value: a percentage, but for the pounds of the calcium chloride test.
func figure(t subfloor.Test, most *big.Rat) term.Value {
	if t == subfloor.MVER {
		return term.Number{Rat: most}
	}
	thousandths := new(big.Rat).Mul(most, big.NewRat(1000, 1))
	return term.Percent(thousandths.Num().Int64())
}

// judge adds the verdict on a reading, and on how far a wood subfloor is from wood planks.
func (in *inputs) judge(r *Result, t subfloor.Test, most *big.Rat, unit string) {
	if !in.readingOf(t) {
		return
	}
	reading := in.amount(term.Reading)
	if reading == nil {
		return
	}
	in.check(subfloor.Plausible(t, reading))
	kept := subfloor.Dry(reading, most)
	r.Working = append(r.Working, fmt.Sprintf("%s against %s %s", decimal(reading), decimal(most), unit))
	if t == subfloor.Wood && in.has(term.PlankMoisture) {
		kept = in.match(r, reading) && kept
	}
	r.Values = append(r.Values, term.Named{Name: term.Passes, Value: term.Pass(kept)})
}

// readingOf says whether there is a reading of this test: one said, or one of the job that is neither of another test nor
// the dip under a straightedge.
func (in *inputs) readingOf(t subfloor.Test) bool {
	if _, ok := in.said[term.Reading]; ok {
		return true
	}
	known, ok := in.job.Facts[term.Test]
	_, dip := in.job.Facts[term.Reading].(term.Len)
	return in.has(term.Reading) && !dip && (!ok || known == term.Word(t))
}

func (in *inputs) match(r *Result, reading *big.Rat) bool {
	planks, width := in.amount(term.PlankMoisture), in.needLength(term.PlankWidth)
	if planks == nil || in.err() != nil {
		return false
	}
	apart := subfloor.Apart(width)
	diff := new(big.Rat).Sub(reading, planks)
	r.Working = append(r.Working, fmt.Sprintf("%s - %s = %s points", decimal(reading), decimal(planks), decimal(diff)), apart.Why(in.tape))
	return subfloor.Match(reading, planks, width)
}

// drying estimates how long a new screed or slab takes to dry.
func (in *inputs) drying() (Result, error) {
	thick := in.needLength(term.SlabThickness)
	if err := in.err(); err != nil {
		return Result{}, err
	}
	days := subfloor.Drying(thick)
	return Result{
		Values: []term.Named{{Name: term.DryingDays, Value: term.Count(days)}},
		Working: []string{
			fmt.Sprintf("%s: a day for each millimetre to 50, two for each below = %d days, in good conditions (common practice, no source)", in.told(thick), days),
			"damp rooms and cold take longer: a moisture test decides",
		},
	}, nil
}

// probe adds how deep a probe goes in a slab of known thickness, drying from the top alone.
func (in *inputs) probe(r *Result, t subfloor.Test) {
	if t != subfloor.RH || !in.has(term.SlabThickness) {
		return
	}
	slab := in.needLength(term.SlabThickness)
	depth := subfloor.ProbeDepth(slab, false)
	r.Values = append(r.Values, term.Named{Name: term.ProbeDepth, Value: term.Len(depth)})
	r.Working = append(r.Working, fmt.Sprintf("40 %% of %s = %s deep; 20 %% where the slab dries on both sides, %s (ASTM F2170-19a 10.2)",
		in.told(slab), in.mark(depth), in.mark(subfloor.ProbeDepth(slab, true))))
}

// tests adds how many tests the area needs.
func (in *inputs) tests(r *Result, t subfloor.Test) {
	area, ok := in.floorArea()
	if !ok {
		return
	}
	n := subfloor.Tests(t, area)
	if n == 0 {
		return
	}
	r.Values = append(r.Values, term.Named{Name: term.Tests, Value: term.Count(n)})
	sq := decimal(area.Over(length.SquareFoot)) + " sq ft"
	if in.tape.System == length.Metric {
		sq = in.tape.Area(area) + " = " + sq
	}
	switch t {
	case subfloor.Wood:
		r.Working = append(r.Working, fmt.Sprintf("%s at 20 readings for 1000 = %d readings (%s)", sq, n, limit.TestsWood.Source))
	case subfloor.Sheet:
		r.Working = append(r.Working, fmt.Sprintf("%s at one sheet for %s = %d sheets (%s, from memory)", sq, limit.TestsSheet.Text(in.tape), n, limit.TestsSheet.Source))
	default:
		r.Working = append(r.Working, fmt.Sprintf("%s: 3 for the first 1000, 1 for each further 1000 or part = %d tests (%s)", sq, n, limit.TestsFirst.Source))
	}
}

// sheet takes a taped plastic sheet for what it is: damp under it says no, dry under it says nothing yet.
func (in *inputs) sheet() (Result, error) {
	r := Result{Working: []string{limit.SheetHours.Why(in.tape)}}
	found, ok := get[term.Word](in, term.Reading)
	switch {
	case ok && names(found, "damp", "wet", "dark", "moist", "yes", "water", "sweat", "fog"):
		r.Values = []term.Named{{Name: term.Passes, Value: term.Pass(false)}}
	default:
		r.Working = append(r.Working, "a dry sheet proves no dry slab: probes (ASTM F2170) or calcium chloride (F1869) give a figure")
	}
	in.tests(&r, subfloor.Sheet)
	return r, in.err()
}
