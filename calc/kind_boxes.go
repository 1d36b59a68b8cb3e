package calc

import (
	"fmt"
	"math/big"
	"slices"

	"lastrow/calc/layout"
	"lastrow/calc/length"
	"lastrow/calc/limit"
	"lastrow/calc/material"
	"lastrow/calc/term"
)

func init() { handlers[term.AskBoxes] = boxes }

// boxes counts the boxes of planks: from the layout where the floor's shape and the plank are known, else by the rule of
// thumb by area. The rule of thumb is always given to compare.
func boxes(in *inputs) (Result, error) {
	if in.saysArea() || !in.has(term.PlankWidth) || !in.has(term.PlankLength) || !in.perBoxKnown() {
		return in.boxesByArea()
	}
	l := in.laid()
	if l == nil {
		return Result{}, in.err()
	}
	perBox := in.perBox()
	spare := in.spare()
	if err := in.err(); err != nil {
		return Result{}, err
	}
	return in.boxesByLayout(l, perBox, spare)
}

func (in *inputs) perBoxKnown() bool {
	if in.has(term.PlanksPerBox) {
		return true
	}
	return in.perBoxByArea() > 0
}

// perBoxByArea is the planks that make up the area printed on a box, where they do to 2 %.
func (in *inputs) perBoxByArea() int64 {
	box, ok := in.peek(term.BoxCoverage)
	w, okW := in.peek(term.PlankWidth)
	l, okL := in.peek(term.PlankLength)
	area, isArea := box.Value.(term.Area)
	wide, isW := w.Value.(term.Len)
	long, isL := l.Value.(term.Len)
	if !ok || !okW || !okL || !isArea || !isW || !isL || wide <= 0 || long <= 0 {
		return 0
	}
	q := area.Over(length.Length(wide).Times(length.Length(long)))
	n := length.Up(new(big.Rat).Sub(q, big.NewRat(1, 2)))
	off := new(big.Rat).Sub(q, big.NewRat(n, 1))
	if n < 1 || off.Abs(off).Cmp(big.NewRat(n, 50)) > 0 {
		return 0
	}
	return n
}

func (in *inputs) perBox() int64 {
	if n, ok := get[term.Count](in, term.PlanksPerBox); ok {
		if n < 1 {
			in.refuse("a box holds one plank at least, not %d", int64(n))
		}
		return int64(n)
	}
	get[term.Area](in, term.BoxCoverage)
	n := in.perBoxByArea()
	in.assume(term.PlanksPerBox, term.Count(n))
	return n
}

func (in *inputs) boxesByLayout(l *layout.Layout, perBox int64, spare spare) (Result, error) {
	planks := spare.over(int64(l.Planks))
	n := material.Boxes(planks, perBox)
	face := l.Request.Plank.Width.Times(l.Request.Plank.Length)
	box := length.Number{Num: perBox, Den: 1}.OfArea(face)
	if a, ok := get[term.Area](in, term.BoxCoverage); ok && a.Sign() > 0 {
		box = a.Area
	}
	floor := l.Request.Floor.Region.Area()
	thumb := material.BoxesByArea(floor, percentOf(limit.WasteByArea), box)
	taken := length.Number{Num: int64(l.Planks), Den: 1}.OfArea(face)
	waste := wasteOf(l.Request.Floor.Laying.Area(), taken)
	r := Result{
		Values: []term.Named{
			{Name: term.Planks, Value: term.Count(planks)},
			{Name: term.Boxes, Value: term.Count(n)},
			{Name: term.FloorArea, Value: term.Area{Area: floor}},
			{Name: term.Waste, Value: waste},
			{Name: term.BoxesByArea, Value: term.Count(thumb)},
		},
		Working: []string{
			fmt.Sprintf("%d rows take %s", len(l.Rows), planksText(l)),
			spare.line(int64(l.Planks)),
			fmt.Sprintf("%d / %d a box = %d boxes, rounded up", planks, perBox, n),
			fmt.Sprintf("by area: %s + %s / %s a box = %d boxes, rounded up", in.tape.Area(floor), percent(percentOf(limit.WasteByArea)), in.tape.Area(box), thumb),
		},
		Floor: l.Request.Floor, Layout: l,
	}
	in.willDo(&r, n)
	return r, in.err()
}

// willDo judges a number of boxes that was said against what is needed.
func (in *inputs) willDo(r *Result, needed int64) {
	if _, said := in.said[term.Boxes]; !said {
		return
	}
	have, ok := get[term.Count](in, term.Boxes)
	if !ok {
		return
	}
	r.Values = append(r.Values, term.Named{Name: term.Passes, Value: term.Pass(int64(have) >= needed)})
	r.Working = append(r.Working, fmt.Sprintf("%d boxes said against %d", int64(have), needed))
}

// wasteOf is what of the planks taken does not end up on the floor, to a thousandth of one percent.
func wasteOf(floor, taken length.Area) term.Percent {
	q := new(big.Rat).Sub(big.NewRat(1, 1), floor.Over(taken))
	q.Mul(q, big.NewRat(100_000, 1))
	return term.Percent(length.Up(q.Sub(q, big.NewRat(1, 2))))
}

// planksText says how many planks a layout takes, and how good that is.
func planksText(l *layout.Layout) string {
	if l.Planks == 1 {
		return "1 plank"
	}
	text := fmt.Sprintf("%d planks; no layout under these rules", l.Planks)
	if hasAngledEnd(l) {
		text += ", with square cuts between pieces of one plank,"
	}
	text += " takes fewer"
	if l.Planks > l.Bound {
		text += fmt.Sprintf(" than %d", l.Bound)
	}
	return text
}

// hasAngledEnd says whether a piece ends at an angle: one slanted cut between two such pieces could save what a square
// one wastes, which the layout and its bound leave out.
func hasAngledEnd(l *layout.Layout) bool {
	for _, row := range l.Rows {
		for _, run := range row.Runs {
			for _, p := range run.Pieces {
				if slices.ContainsFunc(p.Cuts, func(c layout.Cut) bool { return c.What == "angle" }) {
					return true
				}
			}
		}
	}
	return false
}

// boxesByArea is the rule of thumb.
func (in *inputs) boxesByArea() (Result, error) {
	floor := in.needArea()
	box, _ := in.boxArea(true)
	if box.Sign() < 0 || box.Sign() == 0 && in.has(term.BoxCoverage) {
		in.refuse("a box that covers %s holds nothing", in.tape.Area(box))
	}
	if err := in.err(); err != nil {
		return Result{}, err
	}
	waste := percentOf(limit.WasteByArea)
	if p, ok := get[term.Percent](in, term.Waste); ok {
		waste = p
	} else if g, ok := in.said[term.Spare].Value.(term.Percent); ok {
		waste = g
		in.use(in.said[term.Spare])
	} else {
		in.assume(term.Waste, waste)
	}
	n := material.BoxesByArea(floor, waste, box)
	more := length.AreaOf(new(big.Int).Quo(new(big.Int).Mul(floor.Nm2(), big.NewInt(100_000+int64(waste))), big.NewInt(100_000)))
	r := Result{
		Values: []term.Named{
			{Name: term.Boxes, Value: term.Count(n)},
			{Name: term.FloorArea, Value: term.Area{Area: floor}},
			{Name: term.Waste, Value: waste},
			{Name: term.BoxesByArea, Value: term.Count(n)},
		},
		Working: []string{
			fmt.Sprintf("%s + %s = %s", in.tape.Area(floor), percent(waste), in.tape.Area(more)),
			fmt.Sprintf("%s / %s a box = %d boxes, rounded up", in.tape.Area(more), in.tape.Area(box), n),
		},
	}
	in.willDo(&r, n)
	return r, in.err()
}
