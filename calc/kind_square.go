package calc

import (
	"fmt"

	"lastrow/calc/corner"
	"lastrow/calc/length"
	"lastrow/calc/term"
)

func init() {
	handlers[term.AskSquare] = square
	handlers[term.AskTaper] = taper
	handlers[term.AskMiter] = miter
}

// square gives the diagonal that two sides should have, and how far out of square the corner is where one was measured.
func square(in *inputs) (Result, error) {
	a, b := in.needLength(term.SideA), in.needLength(term.SideB)
	measured, said := in.length(term.Diagonal)
	if err := in.err(); err != nil {
		return Result{}, err
	}
	right := corner.Diagonal(a, b)
	t := in.text
	r := Result{
		Values:  []term.Named{{Name: term.TrueDiagonal, Value: term.Len(right)}},
		Working: []string{fmt.Sprintf("square root of (%s squared + %s squared) = %s", t(a), t(b), t(right))},
	}
	if !said {
		return r, nil
	}
	angle, err := corner.Angle(a, b, measured)
	if err != nil {
		in.refuse("sides of %s and %s can't have a diagonal of %s: %v", in.tape.Exact(a), in.tape.Exact(b), in.tape.Exact(measured), err)
		return Result{}, in.err()
	}
	out := corner.OutOfSquare(a, b, measured)
	r.Values = append(r.Values, term.Named{Name: term.OutOfSquare, Value: term.Len(max(out, -out))}, term.Named{Name: term.Angle, Value: term.Degrees(angle)})
	r.Working = append(r.Working, in.squareWorking(measured, right, b, out, angle)...)
	return r, nil
}

func (in *inputs) squareWorking(measured, right, b, out length.Length, angle float64) []string {
	t := in.text
	switch {
	case t(measured) == t(right):
		return []string{fmt.Sprintf("the diagonal of %s is that: the corner is square", t(measured))}
	case measured > right:
		return []string{
			fmt.Sprintf("%s - %s = %s too long: the corner is wider than square, %.2f°", t(measured), t(right), t(measured-right), angle),
			fmt.Sprintf("the end of the %s side lies %s out", t(b), t(out)),
		}
	}
	return []string{
		fmt.Sprintf("%s - %s = %s too short: the corner is tighter than square, %.2f°", t(right), t(measured), t(right-measured), angle),
		fmt.Sprintf("the end of the %s side lies %s in", t(b), t(-out)),
	}
}

// taper gives how much a piece narrows, and the angle of its cut.
func taper(in *inputs) (Result, error) {
	here, there := need[term.Len](in, term.WidthHere), need[term.Len](in, term.WidthThere)
	over := in.needLength(term.Length)
	if err := in.err(); err != nil {
		return Result{}, err
	}
	wide, narrow := length.Length(max(here, there)), length.Length(min(here, there))
	by := wide - narrow
	angle := corner.Taper(by, over)
	half := corner.WidthAt(length.Length(here), length.Length(there), over, over/2)
	t := in.text
	return Result{
		Values: []term.Named{{Name: term.Taper, Value: term.Len(by)}, {Name: term.Angle, Value: term.Degrees(angle)}},
		Working: []string{
			fmt.Sprintf("%s - %s = %s over %s", t(wide), t(narrow), t(by), t(over)),
			fmt.Sprintf("%s wide half-way, a cut of %.2f° to the long edge", t(half), angle),
		},
	}, nil
}

// miter gives the saw's setting for each of the two pieces at a corner. A corner over 180° is an outside one, read from within.
func miter(in *inputs) (Result, error) {
	c := float64(need[term.Degrees](in, term.Corner))
	if err := in.err(); err != nil {
		return Result{}, err
	}
	if !(c >= 10 && c <= 350) || c == 180 {
		in.refuse("a corner of %g° is none that trim goes round: between 10° and 180°", c)
		return Result{}, in.err()
	}
	between := min(c, 360-c)
	cut := corner.Mitre(between)
	r := Result{
		Values: []term.Named{{Name: term.Miter, Value: term.Degrees(cut)}},
		Working: []string{
			fmt.Sprintf("(180° - %g°) / 2 = %g° on the saw for each piece, where 0° is a square cut", between, cut),
			fmt.Sprintf("each piece takes %g° of the corner", between/2),
		},
	}
	if thick, ok := in.length(term.TrimThickness); ok && between != 90 {
		r.Working = append(r.Working, fmt.Sprintf("cut at 45° for a square corner, trim %s thick would stand open by %s", in.told(thick), in.mark(corner.Opening(thick, between, 90))))
	}
	return r, in.err()
}
