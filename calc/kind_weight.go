package calc

import (
	"fmt"
	"math/big"

	"lastrow/calc/length"
	"lastrow/calc/material"
	"lastrow/calc/term"
)

func init() { handlers[term.AskWeight] = weight }

// weight gives the mass of planks of an area, or of so many boxes, and the trips that a payload makes of them.
func weight(in *inputs) (Result, error) {
	thick := in.needLength(term.PlankThickness)
	boxes, byBox := get[term.Count](in, term.Boxes)
	box, known := in.boxArea(byBox)
	var floor length.Area
	if byBox {
		floor = in.areaOf(int64(boxes), box)
	} else {
		floor = in.needArea()
	}
	if err := in.err(); err != nil {
		return Result{}, err
	}
	density := in.density()
	kg := material.Weight(floor, thick, density)
	r := Result{
		Values:  []term.Named{{Name: term.Kg, Value: mass(kg)}},
		Working: []string{fmt.Sprintf("%s x %s x %d kg/m³ = %s; papers and cartons add a few percent", in.tape.Area(floor), in.thickness(thick), density, in.massText(kg))},
	}
	if known {
		in.boxWeight(&r, material.Weight(box, thick, density), floor, box)
	}
	return r, in.err()
}

// boxArea gives what a box covers: as printed, or planks times face. Needed says to note what is missing.
func (in *inputs) boxArea(needed bool) (length.Area, bool) {
	if a, ok := get[term.Area](in, term.BoxCoverage); ok {
		if a.Cmp(length.SquareInch) < 0 {
			in.refuse("a box of %s m² covers nothing", a.Over(length.SquareMetre).FloatString(6))
			return length.Area{}, false
		}
		return a.Area, true
	}
	if !needed && !(in.has(term.PlanksPerBox) && in.has(term.PlankWidth) && in.has(term.PlankLength)) {
		return length.Area{}, false
	}
	n := need[term.Count](in, term.PlanksPerBox, term.BoxCoverage)
	w, l := in.needLength(term.PlankWidth, term.BoxCoverage), in.needLength(term.PlankLength, term.BoxCoverage)
	if n < 1 || w <= 0 || l <= 0 {
		return length.Area{}, false
	}
	return length.Number{Num: int64(n), Den: 1}.OfArea(w.Times(l)), true
}

func (in *inputs) areaOf(boxes int64, box length.Area) length.Area {
	if boxes < 1 {
		in.refuse("%d boxes weigh nothing", boxes)
	}
	return length.Number{Num: boxes, Den: 1}.OfArea(box)
}

func (in *inputs) density() int64 {
	if n, ok := get[term.Number](in, term.Density); ok {
		if !n.IsInt() || n.Num().Int64() < 300 || n.Num().Int64() > 3000 {
			in.refuse("a density of %s kg/m³ is no floor's: 300 to 3000, in whole kg", n.FloatString(1))
			return material.Density
		}
		return n.Num().Int64()
	}
	in.assume(term.Density, term.Number{Rat: big.NewRat(material.Density, 1)})
	return material.Density
}

// boxWeight adds what a box weighs and, with a payload, the trips.
func (in *inputs) boxWeight(r *Result, kg *big.Rat, floor, box length.Area) {
	r.Values = append(r.Values, term.Named{Name: term.BoxKg, Value: mass(kg)})
	r.Working = append(r.Working, fmt.Sprintf("a box of %s: %s", in.tape.Area(box), in.massText(kg)))
	payload, ok := get[term.Mass](in, term.Payload)
	if !ok {
		return
	}
	load := new(big.Rat)
	if load.SetFloat64(float64(payload)) == nil || load.Cmp(kg) < 0 {
		in.refuse("a payload of %g kg does not carry one box", float64(payload))
		return
	}
	boxes := length.Up(floor.Over(box))
	trips, per := material.Trips(boxes, kg, load)
	r.Values = append(r.Values, term.Named{Name: term.Trips, Value: term.Count(trips)})
	r.Working = append(r.Working, fmt.Sprintf("%d boxes, %d a trip = %d trips", boxes, per, trips))
}

func mass(kg *big.Rat) term.Mass {
	f, _ := kg.Float64()
	return term.Mass(f)
}

// pound is 0.45359237 kg exactly (international yard and pound agreement, 1959).
var pound = big.NewRat(45359237, 100000000)

func (in *inputs) massText(kg *big.Rat) string {
	if in.tape.System == length.Metric {
		return kg.FloatString(1) + " kg"
	}
	return new(big.Rat).Quo(kg, pound).FloatString(1) + " lb (" + kg.FloatString(1) + " kg)"
}

// thickness shows a plank's thickness, which is sold in millimetres on either tape.
func (in *inputs) thickness(l length.Length) string {
	if l%length.Millimetre == 0 {
		return length.Tape{System: length.Metric}.Exact(l)
	}
	return in.text(l)
}
