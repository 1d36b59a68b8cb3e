package calc

import (
	"fmt"

	"lastrow/calc/length"
	"lastrow/calc/term"
)

// inputs finds each named input of a question: what was said, then the job, then the default. It remembers what was
// used, for Result.Given, and what was needed and not found.
//
// A handler asks for its inputs first, by the methods below; the ones that begin with need note what is missing and
// give zero. It then returns in.err() where that is not nil, and only then computes.
type inputs struct {
	job     *Job
	said    map[term.Name]term.Given
	used    []term.Given
	missing [][]term.Name
	refused []string
	tape    length.Tape
}

// handler computes one kind of question.
type handler func(in *inputs) (Result, error)

// handlers is filled by the files kind_*.go, one entry a kind.
var handlers = map[term.Kind]handler{}

func newInputs(job *Job, q Question) *inputs {
	in := &inputs{job: job, said: map[term.Name]term.Given{}, tape: job.Tape}
	for _, g := range q.Given {
		in.said[g.Name] = g
	}
	return in
}

// peek gives what was said under a name or what the job knows, without counting it as used.
func (in *inputs) peek(n term.Name) (term.Given, bool) {
	if g, ok := in.said[n]; ok {
		return g, true
	}
	if v, ok := in.job.fact(n); ok {
		return term.Given{Name: n, Value: v, From: term.FromJob}, true
	}
	return term.Given{}, false
}

// has says whether any of the names was said or is known to the job.
func (in *inputs) has(names ...term.Name) bool {
	for _, n := range names {
		if _, ok := in.peek(n); ok {
			return true
		}
	}
	return false
}

// use notes an input as one that the numbers rest on.
func (in *inputs) use(g term.Given) {
	for _, u := range in.used {
		if u.Name == g.Name {
			return
		}
	}
	in.used = append(in.used, g)
}

// assume notes a default that the numbers rest on.
func (in *inputs) assume(n term.Name, v term.Value) {
	in.use(term.Given{Name: n, Value: v, From: term.Default})
}

// get finds a value of type T under a name. A value of another type is refused.
func get[T term.Value](in *inputs, n term.Name) (T, bool) {
	var zero T
	g, ok := in.peek(n)
	if !ok {
		return zero, false
	}
	v, ok := g.Value.(T)
	if !ok {
		in.refuse("%s can't be that: %s", n, wanted(zero))
		return zero, false
	}
	in.use(g)
	return v, true
}

// need is get, with the name noted as missing where there is none. Others are names that would do in its place.
func need[T term.Value](in *inputs, n term.Name, others ...term.Name) T {
	v, ok := get[T](in, n)
	if !ok {
		in.lack(append([]term.Name{n}, others...)...)
	}
	return v
}

func (in *inputs) length(n term.Name) (length.Length, bool) {
	v, ok := get[term.Len](in, n)
	return length.Length(v), ok
}

// needLength is a length that must be more than nothing.
func (in *inputs) needLength(n term.Name, others ...term.Name) length.Length {
	l := length.Length(need[term.Len](in, n, others...))
	if _, ok := in.peek(n); ok && l <= 0 {
		in.refuse("%s of %s is no length to work with", n, in.tape.Exact(l))
	}
	return l
}

// lengthOr is a length that may be said, or else is the default.
func (in *inputs) lengthOr(n term.Name, usual length.Length) length.Length {
	if l, ok := in.length(n); ok {
		return l
	}
	in.assume(n, term.Len(usual))
	return usual
}

// lack notes a need: any one of the names will do.
func (in *inputs) lack(names ...term.Name) { in.missing = append(in.missing, names) }

// refuse notes a rule that the inputs break.
func (in *inputs) refuse(format string, args ...any) {
	in.refused = append(in.refused, fmt.Sprintf(format, args...))
}

// err is what stands in the way of computing: broken rules first, then what is missing.
func (in *inputs) err() error {
	switch {
	case len(in.refused) > 0:
		return &Refusal{Reasons: in.refused}
	case len(in.missing) > 0:
		return &Missing{Needs: in.missing}
	}
	return nil
}

// text shows a length on the job's tape.
func (in *inputs) text(l length.Length) string { return in.tape.Text(l) }

func wanted(v term.Value) string {
	switch v.(type) {
	case term.Len:
		return "it is one length"
	case term.Lens:
		return "it is several lengths"
	case term.Area:
		return "it is an area"
	case term.Count:
		return "it is a whole number"
	case term.Percent:
		return "it is a percentage"
	case term.Money:
		return "it is an amount"
	}
	return "it is of another kind"
}
