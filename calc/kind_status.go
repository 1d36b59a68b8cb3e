package calc

import (
	"fmt"

	"lastrow/calc/layout"
	"lastrow/calc/material"
	"lastrow/calc/term"
)

func init() { handlers[term.AskStatus] = status }

// progress is how far a job is.
type progress struct {
	rows, used, toCome, opened, damaged, perBox int64
}

// status says how far the floor is: rows laid, planks used, boxes opened, what is left, and whether it will do.
func status(in *inputs) (Result, error) {
	l := in.laid()
	if l == nil {
		return Result{}, in.err()
	}
	p := progress{rows: in.tally(term.Laid), opened: in.tally(term.Opened), damaged: in.tally(term.Damaged)}
	if p.rows > int64(len(l.Rows)) {
		in.refuse("%d rows laid are more than the floor has, %d", p.rows, len(l.Rows))
	}
	if in.perBoxKnown() {
		p.perBox = in.perBox()
	}
	if err := in.err(); err != nil {
		return Result{}, err
	}
	p.used = usedBy(l, int(p.rows))
	p.toCome = int64(l.Planks) - p.used
	r := Result{Values: p.values(l), Working: p.lines(l), Floor: l.Request.Floor, Layout: l}
	if p.perBox > 0 {
		in.boxesLeft(&r, p)
	}
	return r, in.err()
}

// tally is a count of the job's that is nothing until it is said.
func (in *inputs) tally(n term.Name) int64 {
	c, _ := get[term.Count](in, n)
	return int64(c)
}

// usedBy is the planks that the first rows have begun.
func usedBy(l *layout.Layout, rows int) int64 {
	n := int64(0)
	for _, s := range l.Stock {
		if s.Pieces[0].Row <= rows {
			n++
		}
	}
	return n
}

func (p progress) values(l *layout.Layout) []term.Named {
	return []term.Named{
		{Name: term.Laid, Value: term.Count(p.rows)},
		{Name: term.Rows, Value: term.Count(len(l.Rows))},
		{Name: term.Planks, Value: term.Count(p.used + p.damaged)},
		{Name: term.Opened, Value: term.Count(p.opened)},
	}
}

func (p progress) lines(l *layout.Layout) []string {
	return []string{
		fmt.Sprintf("%d of %d rows laid, %d to go", p.rows, len(l.Rows), int64(len(l.Rows))-p.rows),
		fmt.Sprintf("%d planks in those rows + %d damaged = %d used", p.used, p.damaged, p.used+p.damaged),
		fmt.Sprintf("%d planks in all - %d = %d to come", l.Planks, p.used, p.toCome),
	}
}

// boxesLeft adds what is left of the boxes opened, and whether those bought will do.
func (in *inputs) boxesLeft(r *Result, p progress) {
	bought, said := get[term.Count](in, term.Boxes)
	have := int64(bought)
	if !said {
		have = max(p.opened, material.Boxes(in.spare().over(p.used+p.toCome), p.perBox))
		in.assume(term.Boxes, term.Count(have))
	}
	left := p.opened*p.perBox - p.used - p.damaged
	if left >= 0 && p.opened > 0 {
		r.Values = append(r.Values, term.Named{Name: term.Leftover, Value: term.Count(left)})
		r.Working = append(r.Working, fmt.Sprintf("%d boxes opened x %d - %d = %d planks loose", p.opened, p.perBox, p.used+p.damaged, left))
	}
	if left < 0 && p.opened > 0 {
		r.Working = append(r.Working, fmt.Sprintf("%d boxes opened hold %d planks, fewer than %d used: one of the counts is off", p.opened, p.opened*p.perBox, p.used+p.damaged))
	}
	rest := have*p.perBox - p.used - p.damaged
	if back := min(have-p.opened, material.Returnable(have, p.used+p.damaged+p.toCome, 0, p.perBox)); said && back > 0 {
		r.Values = append(r.Values, term.Named{Name: term.Returnable, Value: term.Count(back)})
		r.Working = append(r.Working, fmt.Sprintf("%s can go back unopened; one is usually kept for repairs", some(back, "box")))
	}
	r.Values = append(r.Values, term.Named{Name: term.Boxes, Value: term.Count(have)}, term.Named{Name: term.Passes, Value: term.Pass(rest >= p.toCome)})
	r.Working = append(r.Working, fmt.Sprintf("%d boxes x %d - %d = %d planks for the %d to come", have, p.perBox, p.used+p.damaged, rest, p.toCome))
}
