package grammar

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Every example that help shows reads to its kind.
func TestExamplesReadToTheirKinds(t *testing.T) {
	for _, e := range Examples {
		r := Read(e.Text, Context{})
		outcome, kinds := shape(r)
		want := "question"
		if e.Tell {
			want = "told"
		}
		assert.Equal(t, want, outcome, "%q: %s", e.Text, told(r))
		assert.Equal(t, []string{string(e.Kind)}, kinds, e.Text)
	}
}

// Phones put spaces that don't break between a number and its unit: Unicode Standard Annex 14, class GL.
func TestSpacesThatDoNotBreakAreSpaces(t *testing.T) {
	for _, space := range []string{"\u00a0", "\u202f", "\u2009", "\u3000"} {
		got := Read("last row for 11"+space+"ft 4"+space+"in, plank 7"+space+"5/8", Context{})
		assert.NotNil(t, got.Question)
		assert.Equal(t, Read("last row for 11 ft 4 in, plank 7 5/8", Context{}).Question.String(), got.Question.String(), "%q", space)
	}
}
