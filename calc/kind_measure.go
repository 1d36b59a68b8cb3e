package calc

import (
	"lastrow/calc/measure"
	"lastrow/calc/term"
)

func init() { handlers[term.AskMeasure] = measured }

// measured works out a sum of lengths, areas, volumes and numbers.
func measured(in *inputs) (Result, error) {
	sum := need[term.Expr](in, term.Expression)
	if err := in.err(); err != nil {
		return Result{}, err
	}
	q, err := measure.Eval(sum.Expr)
	if err != nil {
		in.refuse("%v", err)
		return Result{}, in.err()
	}
	values := []term.Named{{Name: term.Result, Value: quantity(q)}}
	if q.In != "" {
		values = append(values, term.Named{Name: term.Converted, Value: term.Word(q.Text(in.tape))})
	}
	return Result{Values: values, Working: measure.Steps(sum.Expr, in.tape)}, nil
}

// quantity is a sum's value under the type that its dimension has.
func quantity(q measure.Quantity) term.Value {
	switch {
	case q.Dim == measure.Long:
		return term.Len(q.Length())
	case q.Dim == measure.Flat:
		return term.Area{Area: q.Area()}
	case q.Dim == measure.Solid:
		return term.Volume{Volume: q.Volume()}
	case q.Value.IsInt():
		return term.Count(q.Value.Num().Int64())
	}
	return term.Number{Rat: q.Value}
}
