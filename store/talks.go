package store

import (
	"context"
	"database/sql"
	"errors"
	"time"
)

// Talk is what a conversation was about; the zero Talk where it was about nothing.
func (s *Store) Talk(ctx context.Context, user, channel string) (Talk, error) {
	var t Talk
	var at int64
	err := s.db.QueryRowContext(ctx, "select text, at from talks where user = ? and channel = ?", user, channel).Scan(&t.Text, &at)
	if errors.Is(err, sql.ErrNoRows) {
		return Talk{}, nil
	}
	t.At = time.UnixMilli(at)
	return t, err
}

// keep keeps what the conversation is about, and the first reply to a message.
func keep(ctx context.Context, tx *sql.Tx, c Change) error {
	_, err := tx.ExecContext(ctx, `insert into talks (user, channel, text, at) values (?, ?, ?, ?)
		on conflict do update set text = excluded.text, at = excluded.at`, c.User, c.Channel, c.Talk, milli(c.At))
	if err != nil || c.MessageID == "" || c.Reply == nil {
		return err
	}
	_, err = tx.ExecContext(ctx, "insert into replies (message, reply, at) values (?, ?, ?) on conflict do nothing", c.MessageID, c.Reply, milli(c.At))
	return err
}

// LetGo drops conversations and kept replies from before a time.
func (s *Store) LetGo(ctx context.Context, before time.Time) error {
	return s.within(ctx, func(tx *sql.Tx) error {
		return each(ctx, tx, []any{milli(before)}, "delete from talks where at < ?", "delete from replies where at < ?")
	})
}

// Replied gives the reply kept for a message, if it was answered before.
func (s *Store) Replied(ctx context.Context, messageID string) (reply []byte, ok bool, err error) {
	err = s.db.QueryRowContext(ctx, "select reply from replies where message = ?", messageID).Scan(&reply)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, false, nil
	}
	return reply, err == nil, err
}

// Forget deletes the user's jobs and conversations, from the files too. What the user added to another's job stays, without
// the name. Kept replies, which hold what people said, all go: they only serve messages delivered twice.
func (s *Store) Forget(ctx context.Context, user string) error {
	err := s.within(ctx, func(tx *sql.Tx) error {
		err := each(ctx, tx, []any{user}, "delete from jobs where owner = ?", "delete from current where user = ?",
			"delete from talks where user = ?", "update lines set user = '' where user = ?")
		if err != nil {
			return err
		}
		return each(ctx, tx, nil, "delete from replies")
	})
	if err != nil {
		return err
	}
	_, err = s.db.ExecContext(ctx, "pragma wal_checkpoint(truncate)") // the log still holds what was deleted
	return err
}

func each(ctx context.Context, tx *sql.Tx, args []any, statements ...string) error {
	for _, s := range statements {
		if _, err := tx.ExecContext(ctx, s, args...); err != nil {
			return err
		}
	}
	return nil
}
