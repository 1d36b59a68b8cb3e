// Package caution warns where a floor's work can hurt someone or fail: one table of rules over a job, a question and its
// result.
//
// A caution appears where its condition holds and not otherwise. Each defers to the local code, the product's own
// instructions and licensed practice, and names what it rests on.
package caution

import (
	"slices"

	"lastrow/calc"
	"lastrow/calc/term"
)

// Caution says what to do, in one or two sentences, and what that rests on.
type Caution struct {
	ID     string
	Text   string
	Source string
	Weight int // heavier ones are shown first; those of 80 and more are dangers to health
}

// Circumstance is what the rules look at. Any part may be missing.
type Circumstance struct {
	Job      *calc.Job
	Question calc.Question
	Result   calc.Result
	Set      []term.Kind // kinds of the statements that the message made
	Signs    []string    // dangers mentioned in passing, by caution id
}

// rule is one row of the table. The first row of an id that holds is the one that speaks; a sign makes an id's last row hold.
type rule struct {
	Caution
	when func(Circumstance) bool
}

// For gives the cautions that apply, heaviest first, each id once.
func For(c Circumstance) []Caution {
	var out []Caution
	for i, r := range table {
		spoken := slices.ContainsFunc(out, func(o Caution) bool { return o.ID == r.ID })
		last := i+1 == len(table) || table[i+1].ID != r.ID
		if !spoken && (r.when(c) || last && slices.Contains(c.Signs, r.ID)) {
			out = append(out, r.Caution)
		}
	}
	slices.SortStableFunc(out, func(a, b Caution) int { return b.Weight - a.Weight })
	return out
}

// IDs lists the ids of the table, in its order.
func IDs() []string {
	var ids []string
	for _, r := range table {
		ids = append(ids, r.ID)
	}
	return slices.Compact(ids)
}
