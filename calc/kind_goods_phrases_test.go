package calc

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/length"
	"lastrow/calc/term"
)

var goods = []term.Kind{term.AskUnderlay, term.AskTrim, term.AskTrimCover, term.AskScrews, term.AskNails, term.AskCaulk, term.AskSquare,
	term.AskTaper, term.AskMiter, term.AskHours, term.AskWeight, term.AskCost, term.AskShopping}

// Each phrase on goods and corners, its inputs as it should be read, gives the values that it should, or asks for what it
// should.
func TestPhrasesOfGoods(t *testing.T) {
	answered, asked := 0, 0
	for _, p := range phrases(t) {
		if !slices.Contains(goods, p.Kind) || len(p.Setup) > 0 {
			continue
		}
		given, system := p.inputs()
		r, err := Answer(&Job{Tape: length.Tape{System: system}}, Question{p.Kind, given})
		switch {
		case p.Outcome == "answer" && len(given) > 0:
			require.NoError(t, err, p.ID)
			p.agrees(t, r)
			answered++
		case p.Outcome == "refused":
			var refusal *Refusal
			if len(given) > 0 {
				require.ErrorAs(t, err, &refusal, p.ID)
			}
		case p.Outcome == "ask-back":
			var missing *Missing
			require.ErrorAs(t, err, &missing, p.ID)
			names := slices.Concat(missing.Needs...)
			require.True(t, slices.ContainsFunc(p.Missing, func(n term.Name) bool { return slices.Contains(names, n) }), "%s: %v", p.ID, names)
			asked++
		}
	}
	require.Greater(t, answered, 8)
	require.Greater(t, asked, 2)
}
