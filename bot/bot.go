// Package bot holds a conversation: one message in, one reply out, whichever way it came.
package bot

import (
	"context"
	"sync"
	"sync/atomic"
	"time"

	"lastrow/bot/answer"
	"lastrow/store"
)

// Message is one message as a transport received it.
type Message struct {
	ID        string // the transport's own, "" where it has none; a message delivered twice counts once
	User      string
	Channel   string // a group channel, or "" for a private chat
	Addressed bool   // mentions the bot, replies to it, or is private
	Text      string
	At        time.Time
}

// File is something to attach.
type File struct {
	Name string // "plan.png"
	Type string // "image/png"
	Alt  string // what it shows, for those who can't see it
	Data []byte
}

// Reply is what goes back. A silent one is not sent.
type Reply struct {
	Answer answer.Answer
	Files  []File
}

// Text is the whole reply as a chat user sees it.
func (r Reply) Text() string { return r.Answer.Text }

// Silent says whether nothing is to be said.
func (r Reply) Silent() bool { return r.Answer.Outcome == answer.Silent }

// Bot replies to messages. Its methods may be called by several goroutines.
type Bot struct {
	store *store.Store
	talks sync.Map     // of *sync.Mutex, by conversation
	tidy  atomic.Int64 // when old conversations are next dropped, in Unix seconds
}

// New is a bot that keeps its jobs and conversations in a store.
func New(s *store.Store) *Bot { return &Bot{store: s} }

// hold lets one message of a conversation through at a time; the result lets the next one in.
func (b *Bot) hold(m Message) func() {
	key := m.Channel
	if key == "" {
		key = "@" + m.User
	}
	mu, _ := b.talks.LoadOrStore(key, &sync.Mutex{})
	mu.(*sync.Mutex).Lock()
	return mu.(*sync.Mutex).Unlock
}

// How long replies and conversations are kept, for messages delivered twice and for those who come back to them, and how
// often older ones are dropped.
const (
	keepFor   = 24 * time.Hour
	tidyEvery = time.Hour
)

// letGo drops what is older than it need be, at most once in a while of the messages' own time.
func (b *Bot) letGo(ctx context.Context, now time.Time) error {
	next := b.tidy.Load()
	if now.Unix() < next || !b.tidy.CompareAndSwap(next, now.Add(tidyEvery).Unix()) {
		return nil
	}
	return b.store.LetGo(ctx, now.Add(-keepFor))
}
