package main

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// said runs the command with a home of its own and gives what it printed.
func said(t *testing.T, in string, args ...string) (out, errs string, code int) {
	t.Helper()
	home := t.TempDir()
	return saidAt(t, home, in, args...)
}

func saidAt(t *testing.T, home, in string, args ...string) (out, errs string, code int) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "in")
	require.NoError(t, os.WriteFile(path, []byte(in), 0o600))
	f, err := os.Open(path)
	require.NoError(t, err)
	defer f.Close()
	var o, e bytes.Buffer
	env := func(name string) string {
		if name == "HOME" {
			return home
		}
		return ""
	}
	code = run(context.Background(), args, world{f, &o, &e, env})
	return o.String(), e.String(), code
}

func TestAskLastRow(t *testing.T) {
	out, _, code := said(t, "", "ask", "last row width for 11ft 4in room, plank 7 5/8")
	require.Equal(t, done, code)
	require.Contains(t, out, "18 rows")
	require.Contains(t, out, "last row 5 7/8 in")
	require.Contains(t, out, "1/4 in gap at each wall")
}

func TestAskJSONPrintsAnObjectALine(t *testing.T) {
	out, _, code := said(t, "", "ask", "--json", "--db", ":memory:", "plank 7 5/8 x 47 1/2, 8 per box", "room 11ft 4in x 12ft 6in", "how many boxes")
	require.Equal(t, done, code)
	lines := strings.Split(strings.TrimSpace(out), "\n")
	require.Len(t, lines, 3)
	for i, outcome := range []string{"recorded", "recorded", "answer"} {
		var got map[string]any
		require.NoError(t, json.Unmarshal([]byte(lines[i]), &got))
		require.Equal(t, outcome, got["outcome"])
		for _, field := range []string{"message", "kind", "reading", "given", "values", "working", "cautions", "missing", "files", "text"} {
			require.Contains(t, got, field)
			require.NotNil(t, got[field], field)
		}
	}
}

func TestAskKeepsTheJobBetweenRuns(t *testing.T) {
	home := t.TempDir()
	_, _, code := saidAt(t, home, "", "ask", "room 11ft 4in x 12ft 6in")
	require.Equal(t, done, code)
	out, _, code := saidAt(t, home, "", "ask", "--json", "last row, plank 7 5/8")
	require.Equal(t, done, code)
	require.Contains(t, out, `"from":"job"`)
	_, _, code = saidAt(t, home, "", "ask", "--as", "another", "last row, plank 7 5/8")
	require.Equal(t, notAll, code)
}

func TestAskStatus(t *testing.T) {
	for text, want := range map[string]int{"help": done, "room 0 x 12": notAll, "whats my undercut": notAll, "xyzzy": notAll, "": notAll} {
		_, _, code := said(t, "", "ask", "--db", ":memory:", text)
		require.Equal(t, want, code, text)
	}
	_, errs, code := said(t, "", "ask", "--db", "/no/such/folder/x.db", "help")
	require.Equal(t, fault, code)
	require.Contains(t, errs, "/no/such/folder/x.db")
	_, _, code = said(t, "", "dance")
	require.Equal(t, badUsage, code)
	out, _, code := said(t, "", "--help")
	require.Equal(t, done, code)
	require.Contains(t, out, "ask")
}

func TestAskReadsStandardInput(t *testing.T) {
	out, _, code := said(t, "room 11ft 4in x 12ft 6in\nplank 7 5/8\n", "ask", "--json", "-", "last row")
	require.Equal(t, done, code)
	require.Equal(t, 3, strings.Count(out, "\n"))
}

func TestAskInAGroup(t *testing.T) {
	out, _, code := said(t, "", "ask", "--db", ":memory:", "--in", "crew", "be there at 8")
	require.Equal(t, done, code)
	require.Empty(t, out)
	out, _, _ = said(t, "", "ask", "--json", "--db", ":memory:", "--in", "crew", "be there at 8")
	require.Contains(t, out, `"outcome":"silent"`)
}

func TestAskWritesThePlan(t *testing.T) {
	path := filepath.Join(t.TempDir(), "p.png")
	out, _, code := said(t, "", "ask", "--json", "--plan", path, "room 11ft 4in x 12ft 6in", "plank 7 5/8 x 47 1/2, 8 per box", "plan")
	require.Equal(t, done, code)
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	require.True(t, bytes.HasPrefix(data, []byte("\x89PNG")))
	require.Contains(t, out, path)
}

func TestChatTalks(t *testing.T) {
	out, _, code := said(t, "whats my undercut\n12mm\n2mm\nbye\n", "chat", "--db", ":memory:")
	require.Equal(t, done, code)
	require.Contains(t, out, "Undercut 14 mm")
}

func TestServeNeedsAToken(t *testing.T) {
	_, errs, code := said(t, "", "serve")
	require.Equal(t, fault, code)
	require.Contains(t, errs, "DISCORD_TOKEN")
}

// Every kind in testdata/kinds.txt answers as JSON, in inch words and in metric words.
func TestAskEveryKind(t *testing.T) {
	kinds, err := os.ReadFile("../../testdata/kinds.txt")
	require.NoError(t, err)
	kind, asked := "", 0
	for _, line := range strings.Split(strings.TrimSpace(string(kinds)), "\n") {
		if !strings.HasPrefix(line, "\t") {
			kind = line
			continue
		}
		args := append([]string{"ask", "--json", "--db", ":memory:"}, strings.Split(strings.TrimSpace(line), " / ")...)
		out, errs, code := said(t, "", args...)
		require.Equal(t, done, code, "%s\n%s%s", line, out, errs)
		lines := strings.Split(strings.TrimSpace(out), "\n")
		require.Contains(t, lines[len(lines)-1], `"outcome":"answer","kind":"`+kind+`"`)
		asked++
	}
	require.GreaterOrEqual(t, asked, 80)
}

// The exchange in the README is a real one.
func TestReadmeExchange(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	_, block, _ := strings.Cut(string(readme), "\n    > ")
	block, _, _ = strings.Cut(block, "\n\n")
	asked, answer, _ := strings.Cut(block, "\n")
	out, _, code := said(t, "", "ask", "--db", ":memory:", asked)
	require.Equal(t, done, code)
	require.Equal(t, strings.ReplaceAll("\n"+answer, "\n    ", "\n")[1:], strings.TrimSpace(out))
}

// Every setting that the command reads is in .env.example, and nothing else is.
func TestEnvExampleListsEverySetting(t *testing.T) {
	example, err := os.ReadFile("../../.env.example")
	require.NoError(t, err)
	listed := map[string]bool{}
	for _, m := range regexp.MustCompile(`(?m)^([A-Z_]+)=`).FindAllStringSubmatch(string(example), -1) {
		listed[m[1]] = true
	}
	files, err := filepath.Glob("*.go")
	require.NoError(t, err)
	read := map[string]bool{}
	for _, f := range files {
		if strings.HasSuffix(f, "_test.go") {
			continue
		}
		source, err := os.ReadFile(f)
		require.NoError(t, err)
		for _, m := range regexp.MustCompile(`env\("([A-Z_]+)"\)`).FindAllStringSubmatch(string(source), -1) {
			read[m[1]] = true
		}
	}
	require.Equal(t, read, listed)
}

func TestServeSaysWhatIsMissing(t *testing.T) {
	_, errs, code := said(t, "", "serve", "--db", ":memory:")
	require.Equal(t, fault, code)
	require.Contains(t, errs, "DISCORD_TOKEN")
	require.Equal(t, 1, strings.Count(errs, "\n"))
}

// A program that says a message and waits for its answer gets it before it says the next.
func TestAskAnswersEachLineAsItComes(t *testing.T) {
	in, mine, err := os.Pipe()
	require.NoError(t, err)
	theirs, out, err := os.Pipe()
	require.NoError(t, err)
	ended := make(chan int)
	go func() {
		ended <- run(context.Background(), []string{"ask", "--json", "--db", ":memory:", "-"}, world{in, out, io.Discard, func(string) string { return "" }})
		_ = out.Close()
	}()
	replies := bufio.NewScanner(theirs)
	for message, outcome := range map[string]string{"room 11ft 4in x 12ft 6in": "recorded", "whats my undercut": "ask-back", "half of 92 1/2": "answer"} {
		_, err := fmt.Fprintln(mine, message)
		require.NoError(t, err)
		require.True(t, replies.Scan())
		require.Contains(t, replies.Text(), `"outcome":"`+outcome+`"`)
	}
	require.NoError(t, mine.Close())
	require.Equal(t, notAll, <-ended)
	require.False(t, replies.Scan())
}

func TestAskAnswersThoughThePlanCannotBeWritten(t *testing.T) {
	out, errs, code := said(t, "", "ask", "--plan", "/no/such/p.png", "room 11ft 4in x 12ft 6in", "plank 7 5/8 x 47 1/2, 8 per box", "plan", "never said")
	require.Equal(t, fault, code)
	require.Contains(t, errs, "/no/such/p.png")
	require.Equal(t, 1, strings.Count(errs, "\n"))
	require.Contains(t, out, "18 rows")
	require.NotContains(t, out, "never")
}

func TestAskRefusesALineWithoutEnd(t *testing.T) {
	out, errs, code := said(t, strings.Repeat("x", longest+1), "ask", "--db", ":memory:", "help", "-")
	require.Equal(t, fault, code)
	require.Contains(t, errs, "standard input")
	require.NotEmpty(t, out)
}

func TestServeRefusesASettingThatItCannotRead(t *testing.T) {
	env := map[string]string{"DISCORD_TOKEN": "t", "DISCORD_MESSAGE_CONTENT": "perhaps"}
	var errs bytes.Buffer
	code := run(context.Background(), []string{"serve", "--db", ":memory:"}, world{nil, io.Discard, &errs, func(n string) string { return env[n] }})
	require.Equal(t, fault, code)
	require.Contains(t, errs.String(), "perhaps")
}
