package terminal

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"lastrow/bot"
	"lastrow/bot/answer"
)

func TestLinesAreAnsweredUntilLeave(t *testing.T) {
	dir := t.TempDir()
	in := filepath.Join(dir, "in")
	require.NoError(t, os.WriteFile(in, []byte("room 9 x 9\n\nplan\nbye\nnever\n"), 0o600))
	f, err := os.Open(in)
	require.NoError(t, err)
	defer f.Close()
	var out strings.Builder
	var heard []bot.Message
	var faults []error
	c := Chat{
		User: "ann", Out: &out, Folder: dir, Now: func() time.Time { return time.UnixMilli(5) },
		Fault: func(err error) { faults = append(faults, err) },
		Reply: func(_ context.Context, m bot.Message) (bot.Reply, error) {
			heard = append(heard, m)
			r := bot.Reply{Answer: answer.Answer{Text: "got " + m.Text}}
			if m.Text == "plan" {
				r.Files = []bot.File{{Name: "../plan.png", Data: []byte("png")}}
				return r, errors.New("half a fault")
			}
			return r, nil
		},
	}
	require.NoError(t, c.Run(context.Background(), f))
	require.Equal(t, "got room 9 x 9\ngot plan\n("+filepath.Join(dir, "plan.png")+")\n", out.String())
	require.Len(t, heard, 2)
	require.True(t, heard[0].Addressed)
	require.Len(t, faults, 1)
	data, err := os.ReadFile(filepath.Join(dir, "plan.png"))
	require.NoError(t, err)
	require.Equal(t, "png", string(data))
}
