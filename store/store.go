// Package store keeps jobs and conversations in SQLite: ordered texts by job, the job that a user or a channel is on,
// and what a conversation was about. It knows no meaning: every text is the caller's.
package store

import (
	"errors"
	"time"
)

// ErrNotFound says that there is no such job.
var ErrNotFound = errors.New("no such job")

// Job is a job's place in the store.
type Job struct {
	ID    int64
	Owner string
	Name  string
	Group string    // the channel that it is shared to, or ""
	Done  time.Time // when its last statement was stored
}

// Change is what one message changes, stored all together or not at all. MessageID, where not empty, makes it count once.
type Change struct {
	MessageID string
	User      string
	Channel   string
	Job       int64
	Texts     []string
	At        time.Time
}

// Talk is what a conversation was about, as text that the caller made and reads back.
type Talk struct {
	Text string
	At   time.Time
}

// The methods, all safe for use by several goroutines, are:
//
//	Open(ctx, path) (*Store, error); (*Store) Close() error
//	Begin(ctx, owner, name, at) (Job, error)                 begins a job, or finds the owner's job of that name
//	Jobs(ctx, user, channel) ([]Job, error)                  the user's own and the channel's, last changed first
//	Current(ctx, user, channel) (Job, error)                 the channel's shared job where there is one, else the user's; ErrNotFound
//	Switch(ctx, user, channel, job) error
//	Share(ctx, job, channel) error; Unshare(ctx, channel) error
//	Append(ctx, Change) (fresh bool, err error)              false: that message was stored before
//	Texts(ctx, job) ([]Line, error)                          in order, with user and time
//	Forget(ctx, user) error                                  everything of a user
//	Talk(ctx, user, channel) (Talk, error); Keep(ctx, user, channel, Talk) error; LetGo(ctx, before) error
//	Replied(ctx, messageID) (reply []byte, ok bool, err error); Reply(ctx, messageID, reply []byte, at) error
type Store struct{}
