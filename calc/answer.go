package calc

import (
	"fmt"
	"strings"

	"lastrow/calc/measure"
	"lastrow/calc/term"
)

// Answer computes what the question asks of the job. The error is a *Missing or a *Refusal; with either the Result
// holds the inputs found so far.
func Answer(job *Job, q Question) (Result, error) {
	compute, ok := handlers[q.Kind]
	if !ok {
		return Result{Kind: q.Kind}, &Refusal{Kind: q.Kind, Reasons: []string{fmt.Sprintf("%q is not computed", q.Kind)}}
	}
	in := newInputs(job, q)
	in.bound(q.Given)
	if len(in.refused) > 0 {
		return Result{Kind: q.Kind}, &Refusal{Kind: q.Kind, Reasons: in.refused}
	}
	r, err := compute(in)
	r.Kind, r.Given = q.Kind, in.used
	if err == nil {
		r.Working = append(in.areaSum(), r.Working...)
	}
	switch e := err.(type) {
	case *Missing:
		e.Kind = q.Kind
	case *Refusal:
		e.Kind = q.Kind
	}
	return r, err
}

// areaSum is the arithmetic of an area that was said as a sum, of several rooms.
func (in *inputs) areaSum() []string {
	sum, ok := in.said[term.Expression].Value.(term.Expr)
	area, isArea := in.said[term.FloorArea].Value.(term.Area)
	if !ok || !isArea {
		return nil
	}
	if q, err := measure.Eval(sum.Expr); err != nil || q.Dim != measure.Flat || q.Area().Cmp(area.Area) != 0 {
		return nil
	}
	return measure.Steps(sum.Expr, in.tape)
}

// bound refuses values that no floor has, whatever they are said to be.
func (in *inputs) bound(given []term.Given) {
	for _, g := range given {
		if why := Bound(g.Name, g.Value, in.tape); why != "" {
			in.refuse("%s", why)
		}
	}
}

func (m *Missing) Error() string {
	var needs []string
	for _, names := range m.Needs {
		var any []string
		for _, n := range names {
			any = append(any, string(n))
		}
		needs = append(needs, strings.Join(any, " or "))
	}
	return fmt.Sprintf("%s needs %s", m.Kind, strings.Join(needs, ", "))
}

func (r *Refusal) Error() string { return strings.Join(r.Reasons, "; ") }
