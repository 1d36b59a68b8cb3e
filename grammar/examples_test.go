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
