package bot

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lastrow/bot/answer"
)

// TestKinds asks every kind in testdata/kinds.txt, in inch words and in metric words.
func TestKinds(t *testing.T) {
	text, err := os.ReadFile("../testdata/kinds.txt")
	require.NoError(t, err)
	kind := ""
	for _, line := range strings.Split(strings.TrimSpace(string(text)), "\n") {
		if strings.HasPrefix(line, "#") {
			continue
		}
		if !strings.HasPrefix(line, "\t") {
			kind = line
			continue
		}
		t.Run(kind, func(t *testing.T) {
			b := newBot(t, ":memory:")
			var r Reply
			for _, say := range strings.Split(line, " / ") {
				r = ask(t, b, Message{Text: strings.TrimSpace(say)})
			}
			require.Equal(t, answer.Answered, r.Answer.Outcome, "%s\n%s", line, r.Text())
			require.Equal(t, kind, string(r.Answer.Kind), "%s\n%s", line, r.Text())
			sound(t, r)
			t.Logf("%s\n%s", strings.TrimSpace(line), r.Text())
		})
	}
}
