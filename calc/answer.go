package calc

import (
	"fmt"
	"strings"

	"lastrow/calc/length"
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
	switch e := err.(type) {
	case *Missing:
		e.Kind = q.Kind
	case *Refusal:
		e.Kind = q.Kind
	}
	return r, err
}

// Longest is the longest length that any question takes: a floor longer than a kilometre is a slip of the thumb.
const Longest = 1000 * length.Metre

// bound refuses lengths and areas that no floor has, whatever they are said to be.
func (in *inputs) bound(given []term.Given) {
	for _, g := range given {
		switch v := g.Value.(type) {
		case term.Len:
			in.boundLength(g.Name, length.Length(v))
		case term.Lens:
			for _, l := range v {
				in.boundLength(g.Name, l)
			}
		case term.Area:
			if v.Sign() <= 0 || v.Cmp(Longest.Times(Longest)) > 0 {
				in.refuse("%s of %s is no floor's", g.Name, in.tape.Area(v.Area))
			}
		case term.Count:
			if v < 0 || v > 1_000_000 {
				in.refuse("%s of %d is out of bounds", g.Name, int64(v))
			}
		}
	}
}

func (in *inputs) boundLength(n term.Name, l length.Length) {
	if l < 0 || l > Longest {
		in.refuse("%s of %s is out of bounds: 0 to 1 km", n, in.tape.Exact(l))
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
