// Package store keeps jobs and conversations in SQLite: ordered texts by job, the job that a user or a channel is on,
// and what a conversation was about. It knows no meaning: every text is the caller's.
package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"time"

	_ "github.com/mattn/go-sqlite3" // the driver
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

// Line is one text of a job.
type Line struct {
	Text string
	User string
	At   time.Time
}

// Change is all that one message changes. MessageID, where not empty, makes its texts count once.
type Change struct {
	MessageID string
	User      string
	Channel   string
	Job       int64    // the job that the texts go to
	Begin     string   // instead of Job: the user's job of that name, begun where there is none
	Switch    bool     // whether the user is on the job from now on
	Texts     []string // in canonical wording
	Talk      string   // what the conversation is about now
	Reply     []byte   // to give again where the message is delivered again; nil keeps none
	At        time.Time
}

// Talk is what a conversation was about, as text that the caller made and reads back.
type Talk struct {
	Text string
	At   time.Time
}

// Store is an open database. Its methods may be called by several goroutines.
type Store struct{ db *sql.DB }

// busy is how long a statement waits for another process that writes, in milliseconds.
const busy = 5000

// Open opens the database at path, making it where there is none, and brings its schema forward. ":memory:" keeps nothing.
func Open(ctx context.Context, path string) (*Store, error) {
	if path != inMemory {
		if err := touch(path); err != nil {
			return nil, err
		}
	}
	db, err := sql.Open("sqlite3", source(path))
	if err != nil {
		return nil, fmt.Errorf("open %s: %w", path, err)
	}
	db.SetMaxOpenConns(1) // one connection: a second would have a :memory: of its own, and would meet a busy lock at once
	s := &Store{db}
	if err := s.ready(ctx, path != inMemory); err != nil {
		return nil, errors.Join(fmt.Errorf("open %s: %w", path, err), db.Close())
	}
	return s, nil
}

const inMemory = ":memory:"

// source names the database and its settings to the driver. What is deleted is overwritten.
func source(path string) string {
	if path != inMemory {
		path = (&url.URL{Path: filepath.Clean(path)}).EscapedPath()
	}
	return fmt.Sprintf("file:%s?_busy_timeout=%d&_journal_mode=WAL&_synchronous=FULL&_foreign_keys=on&_secure_delete=on&_txlock=immediate", path, busy)
}

// touch makes the file where there is none, for its owner alone: it holds what people said.
func touch(path string) error {
	f, err := os.OpenFile(path, os.O_CREATE|os.O_RDWR, 0o600)
	if err != nil {
		return err
	}
	return f.Close()
}

// Close closes the database.
func (s *Store) Close() error { return s.db.Close() }

// ready asserts the settings, which the driver drops without a word when they are misspelt, and migrates.
func (s *Store) ready(ctx context.Context, onDisk bool) error {
	journal := "memory"
	if onDisk {
		journal = "wal"
	}
	for _, want := range []struct{ pragma, value string }{
		{"journal_mode", journal}, {"synchronous", "2"}, {"foreign_keys", "1"}, {"secure_delete", "1"}, {"busy_timeout", fmt.Sprint(busy)},
	} {
		var got string
		if err := s.db.QueryRowContext(ctx, "pragma "+want.pragma).Scan(&got); err != nil {
			return err
		}
		if got != want.value {
			return fmt.Errorf("%s is %s, not %s", want.pragma, got, want.value)
		}
	}
	return s.migrate(ctx)
}

// within runs do in one transaction: all of it happens, or nothing.
func (s *Store) within(ctx context.Context, do func(*sql.Tx) error) error {
	tx, err := s.db.BeginTx(ctx, nil)
	if err != nil {
		return err
	}
	defer tx.Rollback() // does nothing once committed
	if err := do(tx); err != nil {
		return err
	}
	return tx.Commit()
}

func milli(t time.Time) int64 { return t.UnixMilli() }
