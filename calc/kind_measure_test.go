package calc

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
	"lastrow/calc/measure"
	"lastrow/calc/term"
)

func ask(t *testing.T, k term.Kind, pairs ...any) Result {
	t.Helper()
	r, err := Answer(&Job{}, Question{k, given(pairs...)})
	require.NoError(t, err)
	return r
}

func sum(e measure.Expr) term.Expr { return term.Expr{Expr: e} }

func TestMeasure(t *testing.T) {
	n := func(i int64) measure.Number { return measure.Num(length.Number{Num: i, Den: 1}) }
	inch := func(f float64) measure.Len { return measure.Len{Len: in(f), System: length.Imperial} }
	r := ask(t, term.AskMeasure, term.Expression, sum(measure.Binary{Op: measure.Mul, X: inch(7.625), Y: n(18)}))
	require.Equal(t, term.Len(in(137.25)), value(r, term.Result))
	require.Equal(t, []string{"7 5/8 in x 18 = 11 ft 5 1/4 in"}, r.Working)
	r = ask(t, term.AskMeasure, term.Expression, sum(measure.Binary{Op: measure.Mul, X: inch(12), Y: inch(24)}))
	require.Equal(t, term.Area{Area: in(12).Times(in(24))}, value(r, term.Result))
	r = ask(t, term.AskMeasure, term.Expression, sum(measure.Binary{Op: measure.Div, X: inch(12), Y: inch(8)}))
	require.Equal(t, "3/2", value(r, term.Result).(term.Number).String())
	r = ask(t, term.AskMeasure, term.Expression, sum(measure.Binary{Op: measure.Div, X: inch(12), Y: inch(4)}))
	require.Equal(t, term.Count(3), value(r, term.Result))
	r = ask(t, term.AskMeasure, term.Expression, sum(measure.Convert{X: inch(136), To: measure.Millimetres}))
	require.Equal(t, term.Word("3454.4 mm"), value(r, term.Converted))
	_, err := Answer(&Job{}, Question{term.AskMeasure, given(term.Expression, sum(measure.Binary{Op: measure.Div, X: inch(7.625), Y: n(0)}))})
	require.ErrorContains(t, err, "divided by zero")
	_, err = Answer(&Job{}, Question{Kind: term.AskMeasure})
	require.ErrorContains(t, err, "needs expression")
}
