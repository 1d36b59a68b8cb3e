package main

import (
	"bufio"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"iter"
	"os"
	"path/filepath"
	"strings"
	"time"

	"lastrow/bot"
	"lastrow/bot/answer"
	"lastrow/store"
)

type askCmd struct {
	JSON bool     `name:"json" help:"Print one JSON object a message."`
	DB   string   `name:"db" placeholder:"FILE" help:"The database; :memory: keeps nothing. Default: the one that chat uses."`
	As   string   `placeholder:"USER" default:"me" help:"The user who speaks."`
	In   string   `placeholder:"CHANNEL" help:"The group channel spoken in. Default: a private chat."`
	Plan string   `placeholder:"FILE.png" help:"Write the last plan drawn to this file."`
	Text []string `arg:"" help:"Messages, in order; - reads them from standard input, one a line."`
}

// Run says the messages.
func (a *askCmd) Run(ctx context.Context, w world) error {
	s, err := openStore(ctx, a.DB, w)
	if err != nil {
		return err
	}
	defer s.Close()
	b, all := bot.New(s), true
	for text, err := range a.messages(w) {
		if err != nil {
			return err
		}
		outcome, err := a.say(ctx, b, s, w, text)
		if err != nil {
			return err
		}
		all = all && answered(outcome)
	}
	if !all {
		return errNotAll
	}
	return nil
}

// say says one message and prints the reply, also where the plan can't be written or the fault is ours.
func (a *askCmd) say(ctx context.Context, b *bot.Bot, s *store.Store, w world, text string) (answer.Outcome, error) {
	addressed, err := a.addressed(ctx, s)
	if err != nil {
		return "", err
	}
	r, err := b.Reply(ctx, bot.Message{User: a.As, Channel: a.In, Addressed: addressed, Text: text, At: time.Now()})
	if err != nil {
		logger(w).Error("a message could not be answered", "error", err)
		return "", errors.Join(errors.New("a fault of ours, not of your message"), a.print(w, r))
	}
	if a.In != "" && r.Answer.Idle() { // nobody asked
		r.Answer = answer.Answer{Message: text, Outcome: answer.Silent}
	}
	return r.Answer.Outcome, errors.Join(a.files(&r), a.print(w, r))
}

// addressed says whether a message is said to the bot: in a private chat, and in a channel until a job is shared there,
// so that one can be begun and shared; from then on the channel's talk is overheard.
func (a *askCmd) addressed(ctx context.Context, s *store.Store) (bool, error) {
	if a.In == "" {
		return true, nil
	}
	j, err := s.Current(ctx, a.As, a.In)
	if errors.Is(err, store.ErrNotFound) {
		return true, nil
	}
	return j.Group != a.In, err
}

func answered(o answer.Outcome) bool {
	return o == answer.Answered || o == answer.Recorded || o == answer.Silent
}

// longest is the longest line read, in bytes.
const longest = 1 << 20

// messages gives the messages one by one, with the lines of standard input, as they come, in the place of "-".
func (a *askCmd) messages(w world) iter.Seq2[string, error] {
	return func(yield func(string, error) bool) {
		for _, t := range a.Text {
			if t != "-" {
				if !yield(t, nil) {
					return
				}
				continue
			}
			in := bufio.NewScanner(w.in)
			in.Buffer(make([]byte, 0, 4096), longest)
			for in.Scan() {
				if !yield(in.Text(), nil) {
					return
				}
			}
			if err := in.Err(); err != nil {
				yield("", fmt.Errorf("standard input, where a line may be %d bytes long: %w", longest, err))
				return
			}
		}
	}
}

// files writes the plan, where one was asked for and drawn.
func (a *askCmd) files(r *bot.Reply) error {
	for _, f := range r.Files {
		if a.Plan == "" || f.Type != "image/png" {
			continue
		}
		if err := os.WriteFile(a.Plan, f.Data, 0o600); err != nil {
			return err
		}
		r.Answer.Files = []string{a.Plan}
	}
	return nil
}

func (a *askCmd) print(w world, r bot.Reply) error {
	if !a.JSON {
		if r.Silent() {
			return nil
		}
		_, err := fmt.Fprintln(w.out, r.Text())
		return err
	}
	out := json.NewEncoder(w.out)
	out.SetEscapeHTML(false)
	return out.Encode(r.Answer)
}

// keep is how long conversations and replies are kept: longer than a conversation lasts or a message is delivered again.
const keep = 24 * time.Hour

// openStore opens the database named, or the user's own, and drops what is over.
func openStore(ctx context.Context, path string, w world) (*store.Store, error) {
	if path == "" {
		folder, err := dataFolder(w)
		if err != nil {
			return nil, err
		}
		path = filepath.Join(folder, "lastrow.db")
	}
	s, err := store.Open(ctx, path)
	if err != nil {
		return nil, err
	}
	if err := s.LetGo(ctx, time.Now().Add(-keep)); err != nil {
		return nil, errors.Join(fmt.Errorf("%s: %w", path, err), s.Close())
	}
	return s, nil
}

// dataFolder is the user's data folder for this program, made where there is none: $LASTROW_DATA, else
// $XDG_DATA_HOME/lastrow, else ~/.local/share/lastrow (XDG Base Directory Specification).
func dataFolder(w world) (string, error) {
	folder := w.env("LASTROW_DATA")
	if folder == "" {
		base := w.env("XDG_DATA_HOME")
		if base == "" {
			home := w.env("HOME")
			if strings.TrimSpace(home) == "" {
				return "", fmt.Errorf("no data folder: set LASTROW_DATA, or name a database with --db")
			}
			base = filepath.Join(home, ".local", "share")
		}
		folder = filepath.Join(base, "lastrow")
	}
	return folder, os.MkdirAll(folder, 0o700)
}
