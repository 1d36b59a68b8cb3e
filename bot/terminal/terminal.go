// Package terminal holds a conversation in a terminal: line editing and history where there is one, plain lines where not.
package terminal

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/peterh/liner"

	"lastrow/bot"
)

// Replier answers one message.
type Replier func(context.Context, bot.Message) (bot.Reply, error)

// Chat is a conversation of one user.
type Chat struct {
	Reply   Replier
	User    string
	Out     io.Writer
	Folder  string           // where drawings and lists are written
	History string           // the file of lines typed before, or ""
	Now     func() time.Time // the clock
	Fault   func(error)      // told of faults of ours
}

const prompt = "> "

// Run talks until the input ends, a word of leaving is typed, or ctx ends; the terminal is left as it was found.
func (c Chat) Run(ctx context.Context, in *os.File) error {
	talk := func() error { return c.lines(ctx, in) }
	if terminal(in) {
		editor := liner.NewLiner()
		defer editor.Close()
		editor.SetCtrlCAborts(true)
		c.recall(editor)
		defer c.remember(editor)
		talk = func() error { return c.talk(ctx, editor) }
	}
	left := make(chan error, 1)
	go func() { left <- talk() }()
	select {
	case err := <-left:
		return err
	case <-ctx.Done():
		return nil
	}
}

func (c Chat) talk(ctx context.Context, editor *liner.State) error {
	for {
		line, err := editor.Prompt(prompt)
		if errors.Is(err, io.EOF) || errors.Is(err, liner.ErrPromptAborted) {
			return nil
		}
		if err != nil {
			return err
		}
		if strings.TrimSpace(line) != "" {
			editor.AppendHistory(line)
		}
		if !c.say(ctx, line) {
			return nil
		}
	}
}

func terminal(f *os.File) bool {
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}

func (c Chat) recall(editor *liner.State) {
	if f, err := os.Open(c.History); err == nil {
		_, _ = editor.ReadHistory(f)
		_ = f.Close()
	}
}

func (c Chat) remember(editor *liner.State) {
	if f, err := os.OpenFile(c.History, os.O_CREATE|os.O_TRUNC|os.O_WRONLY, 0o600); err == nil {
		_, _ = editor.WriteHistory(f)
		_ = f.Close()
	}
}

// longest is the longest line read, in bytes.
const longest = 1 << 20

func (c Chat) lines(ctx context.Context, in io.Reader) error {
	s := bufio.NewScanner(in)
	s.Buffer(make([]byte, 0, 4096), longest)
	for s.Scan() {
		if !c.say(ctx, s.Text()) {
			return nil
		}
	}
	return s.Err()
}

// say answers one line; false where the line takes leave.
func (c Chat) say(ctx context.Context, line string) bool {
	switch strings.ToLower(strings.TrimSpace(line)) {
	case "":
		return true
	case "quit", "exit", "bye":
		return false
	}
	r, err := c.Reply(ctx, bot.Message{User: c.User, Addressed: true, Text: line, At: c.Now()})
	if err != nil {
		c.Fault(err)
	}
	fmt.Fprintln(c.Out, r.Text())
	for _, f := range r.Files {
		c.write(f)
	}
	return true
}

func (c Chat) write(f bot.File) {
	path := filepath.Join(c.Folder, filepath.Base(f.Name))
	if err := os.WriteFile(path, f.Data, 0o600); err != nil {
		fmt.Fprintf(c.Out, "(%s could not be written to %s)\n", f.Name, c.Folder)
		return
	}
	fmt.Fprintf(c.Out, "(%s)\n", path)
}
