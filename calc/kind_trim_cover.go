package calc

import (
	"fmt"
	"math/big"
	"slices"

	"lastrow/calc/length"
	"lastrow/calc/limit"
	"lastrow/calc/subfloor"
	"lastrow/calc/term"
)

func init() { handlers[term.AskTrimCover] = trimCover }

// trimCover tells whether trim on the wall still hides the gap when the floor has shrunk, and by how much.
func trimCover(in *inputs) (Result, error) {
	trim := in.needLength(term.TrimThickness)
	run, ok := in.length(term.Run)
	if !ok {
		if run, _, ok = in.sides(); !ok {
			in.lack(term.Run, term.Room)
		}
	}
	if _, ok := in.peek(term.Gap); !ok && !in.has(term.Run, term.Room) {
		in.lack(term.Gap)
	}
	if err := in.err(); err != nil {
		return Result{}, err
	}
	gap := in.gap(run)
	swing := in.drySwing()
	if err := in.err(); err != nil {
		return Result{}, err
	}
	shrink := ShrinkPerEdge(run, swing)
	cover := trim - gap - shrink
	r := Result{
		Values:  []term.Named{{Name: term.Cover, Value: term.Len(cover)}, {Name: term.WidestGap, Value: term.Len(gap + shrink)}, {Name: term.Passes, Value: term.Pass(cover > 0)}},
		Working: in.coverWorking(trim, gap, shrink, cover, run, swing),
	}
	if _, said := in.peek(term.HumiditySwing); !said {
		r.Working = slices.Insert(r.Working, 1, in.swingLine(trim, gap, run))
	}
	return r, in.err()
}

// swingLine says why the floor draws back less than the gap rule lets it grow, and what the whole swing would do.
func (in *inputs) swingLine(trim, gap, run length.Length) string {
	whole := ShrinkPerEdge(run, limit.SeasonSwing.Rat())
	line := fmt.Sprintf("that is half of a year's swing, for a floor laid midway in it; the gap's rule of 1.5 mm a metre allows for nearly all of it, as after laying at the driest. Laid at the dampest it would draw back %s: ", in.mark(whole))
	if left := trim - gap - whole; left > 0 {
		return line + in.mark(left) + " of cover left"
	}
	return line + in.mark(gap+whole-trim) + " short"
}

// drySwing is how much drier than on the day of laying the air gets, in points: half of a year's swing where nobody says.
func (in *inputs) drySwing() *big.Rat {
	if !in.has(term.HumiditySwing) {
		half := new(big.Rat).Quo(limit.SeasonSwing.Rat(), big.NewRat(2, 1))
		in.assume(term.HumiditySwing, term.Number{Rat: half})
		return half
	}
	points := in.amount(term.HumiditySwing)
	if points != nil && (points.Sign() < 0 || points.Cmp(big.NewRat(100, 1)) > 0) {
		in.refuse("a humidity swing of %s points is out of bounds: 0 to 100", points.FloatString(1))
	}
	return points
}

// ShrinkPerEdge is how far each edge of a floor that is free on both sides draws back, at most, when the air gets drier by
// so many points: half of what the run moves, rounded up to a hundredth of a millimetre.
func ShrinkPerEdge(run length.Length, points *big.Rat) length.Length {
	const hundredth = length.Millimetre / 100
	half := (subfloor.Movement(run, points) + 1) / 2
	return (half + hundredth - 1) / hundredth * hundredth
}

func (in *inputs) coverWorking(trim, gap, shrink, cover, run length.Length, swing *big.Rat) []string {
	t := in.mark
	lines := []string{
		fmt.Sprintf("%s of floor draws back %s at each edge at most, in air %s points of humidity drier than on the day it was laid", in.tape.Room(run), t(shrink), decimal(swing)),
		fmt.Sprintf("%s gap + %s = %s at its widest", t(gap), t(shrink), t(gap+shrink)),
	}
	if cover > 0 {
		return append(lines, fmt.Sprintf("%s trim - %s = %s of cover left", t(trim), t(gap+shrink), t(cover)),
			"the trim is held by the wall, a sheet of paper clear of the floor, so that the floor can move under it")
	}
	return append(lines, fmt.Sprintf("%s trim is %s short of %s: take thicker trim, or put a quarter round before it", t(trim), t(-cover), t(gap+shrink)))
}
