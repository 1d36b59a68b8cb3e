package grammar

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A reading said again in its canonical words reads the same.
func TestReadingsSaidAgainReadTheSame(t *testing.T) {
	for _, e := range Examples {
		r := Read(e.Text, Context{})
		require.Nil(t, r.Problem, e.Text)
		for _, s := range r.Statements {
			again := Read(s.String(), Context{})
			require.Equal(t, []Statement{s}, again.Statements, s.String())
		}
		if r.Question == nil {
			continue
		}
		again := Read(r.Question.String(), Context{})
		require.NotNil(t, again.Question, r.Question.String())
		require.Equal(t, r.Question.String(), again.Question.String(), e.Text)
		require.Equal(t, r.Question.Given, again.Question.Given, e.Text)
	}
}
