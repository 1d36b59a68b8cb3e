package bot

import (
	"bytes"
	"context"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "rewrite the replies in testdata/conversations")

// TestConversations holds the conversations in testdata/conversations, and compares the replies. What is said stands at
// the margin, the reply under it, indented. A line may begin with who says it and where, and aside where it is not
// said to the bot: "[bo in site, aside] got 3 boxes". "[3h later]" lets time pass; a line with # is a remark.
func TestConversations(t *testing.T) {
	files, err := filepath.Glob("../testdata/conversations/*.txt")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txt"), func(t *testing.T) {
			want, err := os.ReadFile(file)
			require.NoError(t, err)
			got := converse(t, string(want))
			if *update {
				require.NoError(t, os.WriteFile(file, []byte(got), 0o644))
			}
			require.Equal(t, string(want), got)
		})
	}
}

func converse(t *testing.T, script string) string {
	b := newBot(t, ":memory:")
	at := noon
	var out bytes.Buffer
	for _, line := range strings.Split(strings.TrimRight(script, "\n"), "\n") {
		if strings.HasPrefix(line, "\t") {
			continue
		}
		fmt.Fprintln(&out, line)
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		if later := laterLine.FindStringSubmatch(line); later != nil {
			d, err := time.ParseDuration(later[1])
			require.NoError(t, err)
			at = at.Add(d)
			continue
		}
		at = at.Add(time.Minute)
		m := spoken(line)
		m.At = at
		r, err := b.Reply(context.Background(), m)
		require.NoError(t, err)
		for _, text := range strings.Split(replyText(r), "\n") {
			fmt.Fprintln(&out, "\t"+text)
		}
	}
	return out.String()
}

func replyText(r Reply) string {
	if r.Silent() {
		return "(silent)"
	}
	text := r.Text()
	for _, f := range r.Files {
		text += "\n(" + f.Name + ": " + f.Alt + ")"
	}
	return text
}

var (
	laterLine = regexp.MustCompile(`^\[(\w+) later\]$`)
	whoLine   = regexp.MustCompile(`^\[(\w+)(?: in (\w+))?(, aside)?\] (.*)$`)
)

func spoken(line string) Message {
	who := whoLine.FindStringSubmatch(line)
	if who == nil {
		return Message{User: "ana", Addressed: true, Text: line}
	}
	return Message{User: who[1], Channel: who[2], Addressed: who[3] == "", Text: who[4]}
}
