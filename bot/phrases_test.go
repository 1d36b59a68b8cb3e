package bot

import (
	"bufio"
	"context"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"lastrow/store"
)

// phrase is a message as someone would type it, with its expected reading: see testdata/phrases/README.md.
type phrase struct {
	ID       string
	Setup    []string
	Say      string
	Kind     string
	Outcome  string
	Given    map[string]map[string]any
	Values   map[string]map[string]any
	Missing  []string
	Cautions []string
	Group    bool
	MustNot  []string `json:"must_not"`
}

// tally counts how phrases come out.
type tally struct{ right, asked, wrong, silentWhenDue, spokeWhenNot int }

// floors are the least right and the most wrong and spoken out of turn of each file. They only get better.
var floors = map[string]tally{
	"chatter": {right: 62}, "crew": {right: 38}, "foreman": {right: 38}, "homeowner": {right: 38}, "hostile": {right: 29},
	"heights2-chatter": {right: 32}, "heights2-crew": {right: 61}, "heights2-foreman": {right: 32}, "heights2-home": {right: 62},
	"heights-crew": {right: 71}, "heights-foreman": {right: 35}, "heights-home": {right: 67},
	"more-chatter": {right: 30}, "more-crew": {right: 35}, "more-foreman": {right: 20}, "more-home": {right: 39},
	"eighth-crew": {right: 134}, "eighth-foreman": {right: 126}, "eighth-hostile": {right: 85}, "lang1-crew": {right: 50}, "lang1-chatter": {right: 9},
	"own-chatter": {right: 40}, "own-crew": {right: 57}, "own-foreman": {right: 23}, "own-home": {right: 46},
}

var noon = time.Date(2026, 3, 2, 12, 0, 0, 0, time.UTC)

func newBot(t testing.TB, path string) *Bot {
	s, err := store.Open(context.Background(), path)
	require.NoError(t, err)
	t.Cleanup(func() { s.Close() })
	return New(s)
}

func readPhrases(t testing.TB, file string) []phrase {
	f, err := os.Open(file)
	require.NoError(t, err)
	defer f.Close()
	var out []phrase
	for lines := bufio.NewScanner(f); lines.Scan(); {
		var p phrase
		require.NoError(t, json.Unmarshal(lines.Bytes(), &p))
		out = append(out, p)
	}
	return out
}

func TestPhrases(t *testing.T) {
	files, err := phraseFiles()
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		name := strings.TrimSuffix(filepath.Base(file), ".jsonl")
		t.Run(name, func(t *testing.T) {
			var got tally
			phrases := readPhrases(t, file)
			for _, p := range phrases {
				p.judge(t, &got)
			}
			t.Logf("%d phrases: %d right, %d asked back or unclear, %d wrong, %d silent when due, %d spoke when not",
				len(phrases), got.right, got.asked, got.wrong, got.silentWhenDue, got.spokeWhenNot)
			least := floors[name]
			require.GreaterOrEqual(t, got.right, least.right, "right")
			require.LessOrEqual(t, got.wrong, least.wrong, "wrong")
			require.LessOrEqual(t, got.spokeWhenNot, least.spokeWhenNot, "spoke when not")
		})
	}
}

// judge says a phrase in a fresh conversation and counts how it comes out.
func (p phrase) judge(t *testing.T, got *tally) {
	r := p.reply(t)
	why := p.differs(t, r)
	outcome := string(r.Answer.Outcome)
	verdict := "WRONG"
	switch {
	case why == "":
		got.right++
		return
	case p.Outcome == "silent":
		got.spokeWhenNot++
		verdict = "SPOKE"
	case outcome == "silent":
		got.silentWhenDue++
		verdict = "silent"
	case outcome == "ask-back" || outcome == "unclear":
		got.asked++
		verdict = "asked"
	default:
		got.wrong++
	}
	t.Logf("%s %s: %q: %s\n\t%s", verdict, p.ID, p.Say, why, strings.ReplaceAll(r.Text(), "\n", "\n\t"))
}

func (p phrase) reply(t *testing.T) Reply {
	b := newBot(t, ":memory:")
	m := Message{User: "ana", Addressed: true, At: noon}
	if p.Group {
		m.Channel = "site"
	}
	setup := p.Setup
	if p.Group && !slices.Contains(setup, "share") {
		setup = append([]string{"job Site", "share"}, setup...)
	}
	for _, text := range setup {
		m.Text, m.At = text, m.At.Add(time.Minute)
		_, err := b.Reply(context.Background(), m)
		require.NoError(t, err, p.ID)
	}
	m.Text, m.At, m.Addressed = p.Say, m.At.Add(time.Minute), !p.Group
	r, err := b.Reply(context.Background(), m)
	require.NoError(t, err, p.ID)
	return r
}

// differs says how a reply differs from what is expected, or "".
func (p phrase) differs(t *testing.T, r Reply) string {
	text, err := json.Marshal(r.Answer)
	require.NoError(t, err)
	var a struct {
		Outcome, Kind, Text string
		Given, Values       []struct {
			Name  string
			Value map[string]any
		}
		Missing  []string
		Cautions []struct{ ID string }
	}
	require.NoError(t, json.Unmarshal(text, &a))
	for _, bad := range p.MustNot {
		if strings.Contains(a.Text, bad) {
			return "says " + bad
		}
	}
	if !slices.Contains(strings.Split(p.Outcome, "|"), a.Outcome) {
		return fmt.Sprintf("outcome %s, not %s", a.Outcome, p.Outcome)
	}
	if p.Kind != "" && !slices.Contains(strings.Split(p.Kind, "|"), a.Kind) && a.Outcome != "unclear" {
		return fmt.Sprintf("kind %s, not %s", a.Kind, p.Kind)
	}
	given, values := map[string]map[string]any{}, map[string]map[string]any{}
	for _, g := range a.Given {
		given[g.Name] = g.Value
	}
	for _, v := range a.Values {
		values[v.Name] = v.Value
	}
	for name, want := range p.Given {
		if !slices.ContainsFunc(strings.Split(name, "|"), func(n string) bool { return agrees(want, given[n], 0.02) }) {
			return fmt.Sprintf("given %s: %v, not %v", name, given[name], want)
		}
	}
	for name, want := range p.Values {
		if !slices.ContainsFunc(strings.Split(name, "|"), func(n string) bool { return agrees(want, values[n], 0.5) }) {
			return fmt.Sprintf("value %s: %v, not %v", name, values[name], want)
		}
	}
	for _, id := range p.Cautions {
		if !slices.ContainsFunc(a.Cautions, func(c struct{ ID string }) bool { return c.ID == id }) {
			return "no caution " + id
		}
	}
	return ""
}

// agrees says whether every field wanted is there: lengths within so many millimetres, other numbers within a thousandth of their size.
func agrees(want, got map[string]any, mm float64) bool {
	for field, w := range want {
		if field == "text" {
			continue
		}
		g, ok := got[field]
		if !ok || !same(w, g, field == "mm", mm) {
			return false
		}
	}
	return true
}

func same(want, got any, isMM bool, mm float64) bool {
	switch w := want.(type) {
	case float64:
		g, ok := got.(float64)
		if isMM {
			return ok && math.Abs(g-w) <= mm
		}
		return ok && math.Abs(g-w) <= 1e-3*math.Max(math.Abs(w), 1e-9)
	case []any:
		g, ok := got.([]any)
		if !ok || len(g) != len(w) {
			return false
		}
		for i := range w {
			if !same(w[i], g[i], isMM, mm) {
				return false
			}
		}
		return true
	}
	return fmt.Sprint(want) == fmt.Sprint(got)
}

// phraseFiles are the files of testdata/phrases, and those of its folder blind, which were written without a look at the code.
func phraseFiles() ([]string, error) {
	files, err := filepath.Glob("../testdata/phrases/*.jsonl")
	if err != nil {
		return nil, err
	}
	blind, err := filepath.Glob("../testdata/phrases/blind/*.jsonl")
	return append(files, blind...), err
}
