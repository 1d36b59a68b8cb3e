package calc

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/calc/term"
)

func TestSome(t *testing.T) {
	require.Equal(t, []string{"1 box", "2 boxes", "0 strips"}, []string{some(1, "box"), some(2, "box"), some(0, "strip")})
}

// Of 14 boxes bought, those that the layout's planks don't need can go back, but none that was opened.
func TestBoxesThatCanGoBack(t *testing.T) {
	job := bedroom()
	job.Facts[term.Boxes], job.Facts[term.Opened] = term.Count(14), term.Count(2)
	r, err := Answer(job, Question{Kind: term.AskStatus})
	require.NoError(t, err)
	planks := int64(len(r.Layout.Stock))
	require.Equal(t, term.Count(14-(planks+7)/8), value(r, term.Returnable))
	job.Facts[term.Opened] = term.Count(14)
	r, err = Answer(job, Question{Kind: term.AskStatus})
	require.NoError(t, err)
	require.Nil(t, value(r, term.Returnable))
}
