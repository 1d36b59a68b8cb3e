package bot

import (
	"context"
	"encoding/json"
	"math"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"lastrow/bot/answer"
	"lastrow/calc/term"
)

func ask(t testing.TB, b *Bot, m Message) Reply {
	if m.User == "" {
		m.User, m.Addressed = "ana", true
	}
	if m.At.IsZero() {
		m.At = noon
	}
	r, err := b.Reply(context.Background(), m)
	require.NoError(t, err)
	return r
}

func result(t testing.TB, r Reply, n term.Name) string {
	for _, v := range r.Answer.Values {
		if v.Name == n {
			return v.Value.Text
		}
	}
	require.Fail(t, "no "+string(n), r.Text())
	return ""
}

func TestKeepsAcrossRestart(t *testing.T) {
	path := filepath.Join(t.TempDir(), "lastrow.db")
	first := newBot(t, path)
	ask(t, first, Message{Text: "job Alder"})
	ask(t, first, Message{Text: "room 11ft 4in x 12ft 6in"})
	require.Equal(t, answer.AskBack, ask(t, first, Message{Text: "rows?"}).Answer.Outcome)
	require.NoError(t, first.store.Close())

	second := newBot(t, path)
	r := ask(t, second, Message{Text: "7 5/8", At: noon.Add(time.Hour)})
	require.Equal(t, "18", result(t, r, term.Rows))
}

func TestLetsGoOfAConversation(t *testing.T) {
	b := newBot(t, ":memory:")
	ask(t, b, Message{Text: "room 11ft 4in x 12ft 6in"})
	ask(t, b, Message{Text: "rows?"})
	r := ask(t, b, Message{Text: "7 5/8", At: noon.Add(remembered + time.Second)})
	require.NotEqual(t, answer.Answered, r.Answer.Outcome, r.Text())
}

func TestOldConversationsAreDropped(t *testing.T) {
	b, ctx := newBot(t, ":memory:"), context.Background()
	ask(t, b, Message{ID: "m1", Text: "rows?"})
	ask(t, b, Message{User: "bo", Addressed: true, Text: "rows?", At: noon.Add(keepFor + time.Second)})
	talk, err := b.store.Talk(ctx, "ana", "")
	require.NoError(t, err)
	require.Zero(t, talk)
	_, kept, err := b.store.Replied(ctx, "m1")
	require.NoError(t, err)
	require.False(t, kept)
}

func TestMessageDeliveredTwiceCountsOnce(t *testing.T) {
	b := newBot(t, ":memory:")
	m := Message{ID: "m1", Text: "laid 2 more rows"}
	first, second := ask(t, b, m), ask(t, b, m)
	require.Equal(t, first.Text(), second.Text())
	require.Equal(t, answer.Recorded, second.Answer.Outcome)
	one, err := json.Marshal(first.Answer)
	require.NoError(t, err)
	two, err := json.Marshal(second.Answer)
	require.NoError(t, err)
	require.JSONEq(t, string(one), string(two))
	lines, err := b.store.Texts(context.Background(), 1)
	require.NoError(t, err)
	require.Len(t, lines, 1)
}

// TestManyAtOnce has users talk at the same time, every message delivered twice.
func TestManyAtOnce(t *testing.T) {
	b := newBot(t, filepath.Join(t.TempDir(), "lastrow.db"))
	var wg sync.WaitGroup
	for u := range 8 {
		wg.Go(func() {
			user := strconv.Itoa(u)
			for i := range 20 {
				m := Message{ID: user + "-" + strconv.Itoa(i/2), User: user, Addressed: true, At: noon, Text: "laid 1 more row"}
				if _, err := b.Reply(context.Background(), m); err != nil {
					t.Error(err)
				}
			}
		})
	}
	wg.Wait()
	for u := range 8 {
		r := ask(t, b, Message{User: strconv.Itoa(u), Addressed: true, Text: "laid 0 more rows"})
		require.Equal(t, "10", result(t, r, term.Laid))
	}
}

func TestRefusedMessageStoresNothing(t *testing.T) {
	for _, text := range []string{
		"room 0 x 12", "room 1e30 ft", "room 99999999999 mm x 3000 mm",
		"room 11ft 4in x 12ft 6in, plank 900 in wide", "laid 6 rows and opened 99999999 boxes", strings.Repeat("noise ", 700),
	} {
		b := newBot(t, ":memory:")
		r := ask(t, b, Message{Text: text})
		require.Contains(t, []answer.Outcome{answer.Refused, answer.Unclear, answer.AskBack}, r.Answer.Outcome, text)
		require.LessOrEqual(t, strings.Count(r.Text(), "\n"), 2, r.Text())
		jobs, err := b.store.Jobs(context.Background(), "ana", "")
		require.NoError(t, err)
		require.Empty(t, jobs, text)
	}
}

// TestReadingSaidAgain says the restated message in the same place again: it must come to the same.
func TestReadingSaidAgain(t *testing.T) {
	for _, text := range []string{
		"last row width for 11ft 4in room, plank 7 5/8", "plank 7 5/8 x 47 1/2, 8 per box", "room 3.45m x 2.8m",
		"12mm plank on 2mm underlay to 3/4 carpet, which strip?", "half of 92 1/2",
	} {
		first := ask(t, newBot(t, ":memory:"), Message{Text: text})
		require.NotEmpty(t, first.Answer.Reading, text)
		again := ask(t, newBot(t, ":memory:"), Message{Text: first.Answer.Reading})
		require.Equal(t, first.Answer.Reading, again.Answer.Reading, text)
		require.Equal(t, first.Answer.Values, again.Answer.Values, text)
		require.Equal(t, first.Answer.Outcome, again.Answer.Outcome, text)
	}
}

func TestEchoesAreHarmless(t *testing.T) {
	b := newBot(t, ":memory:")
	for _, text := range []string{
		"job @everyone <@123> `x` **bold**", "jobs", "note: <#99> @here ```code```", "history", "@everyone what is this",
		"rows for @here", "job <@&77>", "jobs",
	} {
		r := ask(t, b, Message{Text: text})
		for _, bad := range []string{"@", "<", "`", "**"} {
			require.NotContains(t, r.Text(), bad, text)
		}
	}
}

// sound says that a reply is one that people may see, whatever was said.
func sound(t *testing.T, r Reply) {
	text := r.Text()
	for _, bad := range []string{"NaN", "+Inf", "-Inf", "<nil>", "%!", "panic", "runtime error", "goroutine", "participle", "sql:", "@"} {
		require.NotContains(t, text, bad)
	}
	require.LessOrEqual(t, len(text), answer.MaxText)
	if !r.Silent() {
		require.NotEmpty(t, text)
	}
	_, err := json.Marshal(r.Answer)
	require.NoError(t, err)
	for _, v := range r.Answer.Values {
		switch f := v.Value.Of.(type) {
		case term.Degrees:
			require.False(t, math.IsNaN(float64(f)) || math.IsInf(float64(f), 0))
		case term.Mass:
			require.False(t, math.IsNaN(float64(f)) || math.IsInf(float64(f), 0))
		}
	}
}

func FuzzReply(f *testing.F) {
	files, err := filepath.Glob("../testdata/phrases/*.jsonl")
	require.NoError(f, err)
	for _, file := range files {
		for _, p := range readPhrases(f, file) {
			if len(p.Say) < 4000 {
				f.Add(strings.Join(p.Setup, "\n"), p.Say)
			}
		}
	}
	b := newBot(f, ":memory:")
	var n atomic.Int64
	f.Fuzz(func(t *testing.T, setup, say string) {
		m := Message{User: strconv.FormatInt(n.Add(1), 10), Addressed: true, At: noon}
		for _, m.Text = range append(strings.Split(setup, "\n"), say) {
			r, err := b.Reply(context.Background(), m)
			require.NoError(t, err)
			sound(t, r)
		}
	})
}

func BenchmarkReply(b *testing.B) {
	for _, c := range []struct{ name, setup, say string }{
		{"rows", "", "last row width for 11ft 4in room, plank 7 5/8"},
		{"boxes=bedroom", "room 11ft 4in x 12ft 6in", "how many boxes, plank 7 5/8 x 47 1/2, 8 per box"},
		{"boxes=100m2", "room 10m x 10m", "how many boxes, plank 192 x 1285 mm, 8 per box"},
		{"plan=bedroom", "room 11ft 4in x 12ft 6in, plank 7 5/8 x 47 1/2, 8 per box", "plan"},
		{"record", "", "plank 7 5/8 x 47 1/2, 8 per box"},
	} {
		b.Run(c.name, func(b *testing.B) {
			bot := newBot(b, filepath.Join(b.TempDir(), "lastrow.db"))
			if c.setup != "" {
				ask(b, bot, Message{Text: c.setup})
			}
			b.ReportAllocs()
			for b.Loop() {
				ask(b, bot, Message{Text: c.say})
			}
		})
	}
}

// A message that could not be stored whole is a fault of ours, and leaves nothing.
func TestFaultStoresNothing(t *testing.T) {
	b := newBot(t, ":memory:")
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	r, err := b.Reply(ctx, Message{ID: "m1", User: "ana", Addressed: true, Text: "laid 6 rows", At: noon})
	require.Error(t, err)
	require.Equal(t, answer.Fault().Text, r.Text())
	require.Equal(t, answer.Recorded, ask(t, b, Message{ID: "m1", Text: "laid 6 rows"}).Answer.Outcome)
	lines, err := b.store.Texts(context.Background(), 1)
	require.NoError(t, err)
	require.Len(t, lines, 1)
}

func TestForgottenUserLeavesNoConversation(t *testing.T) {
	b := newBot(t, ":memory:")
	ask(t, b, Message{ID: "m1", Text: "laid 6 rows"})
	ask(t, b, Message{ID: "m2", Text: "forget everything"})
	jobs, err := b.store.Jobs(context.Background(), "ana", "")
	require.NoError(t, err)
	require.Empty(t, jobs)
	talk, err := b.store.Talk(context.Background(), "ana", "")
	require.NoError(t, err)
	require.Zero(t, talk)
	for _, id := range []string{"m1", "m2"} {
		_, kept, err := b.store.Replied(context.Background(), id)
		require.NoError(t, err)
		require.False(t, kept)
	}
}

func TestCommandsSeeWhatTheMessageSays(t *testing.T) {
	b := newBot(t, ":memory:")
	require.Contains(t, ask(t, b, Message{Text: "laid 6 rows, history"}).Text(), "my floor, 1 line")
	require.Contains(t, ask(t, b, Message{Text: "laid 7 rows. list my jobs"}).Text(), "my floor (on it now)")
	ask(t, b, Message{Text: "laid 4 rows"})
	require.Contains(t, string(ask(t, b, Message{Text: "opened 3 boxes and export the job"}).Files[0].Data), "opened 3 boxes\n")
	ask(t, b, Message{Text: "undo"})
	require.Contains(t, ask(t, b, Message{Text: "undo"}).Text(), "laid 4 rows")
	require.Contains(t, ask(t, b, Message{Text: "undo"}).Text(), "laid 7 rows")
}
