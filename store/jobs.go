package store

import (
	"context"
	"database/sql"
	"errors"
	"time"
)

const jobFields = "select jobs.id, jobs.owner, jobs.name, jobs.grp, jobs.done from jobs "

func scanJob(row interface{ Scan(...any) error }) (j Job, err error) {
	var done int64
	err = row.Scan(&j.ID, &j.Owner, &j.Name, &j.Group, &done)
	j.Done = time.UnixMilli(done)
	if errors.Is(err, sql.ErrNoRows) {
		err = ErrNotFound
	}
	return j, err
}

// Commit stores a change, all of it or nothing, and gives its job; the zero Job where it names none.
func (s *Store) Commit(ctx context.Context, c Change) (j Job, err error) {
	err = s.within(ctx, func(tx *sql.Tx) error {
		if j, err = jobOf(ctx, tx, c); err != nil {
			return err
		}
		if err := put(ctx, tx, c, j.ID); err != nil {
			return err
		}
		return keep(ctx, tx, c)
	})
	return j, err
}

// jobOf finds the job of a change, or begins it. A name is the same in capitals or not.
func jobOf(ctx context.Context, tx *sql.Tx, c Change) (Job, error) {
	switch {
	case c.Begin != "":
		if _, err := tx.ExecContext(ctx, "insert into jobs (owner, name, done) values (?, ?, ?) on conflict do nothing", c.User, c.Begin, milli(c.At)); err != nil {
			return Job{}, err
		}
		return scanJob(tx.QueryRowContext(ctx, jobFields+"where owner = ? and name = ?", c.User, c.Begin))
	case c.Job != 0:
		return scanJob(tx.QueryRowContext(ctx, jobFields+"where id = ?", c.Job))
	case len(c.Texts) > 0 || c.Switch:
		return Job{}, ErrNotFound
	}
	return Job{}, nil
}

// put adds the texts to the job, unless the message did before, and puts the user on it.
func put(ctx context.Context, tx *sql.Tx, c Change, job int64) error {
	if c.Switch {
		if err := switchTo(ctx, tx, c.User, c.Channel, job); err != nil {
			return err
		}
	}
	if len(c.Texts) == 0 {
		return nil
	}
	var seen bool
	err := tx.QueryRowContext(ctx, "select exists (select 1 from lines where message = ? and message <> '')", c.MessageID).Scan(&seen)
	if err != nil || seen {
		return err
	}
	for n, text := range c.Texts {
		if _, err := tx.ExecContext(ctx, "insert into lines (job, text, user, message, n, at) values (?, ?, ?, ?, ?, ?)",
			job, text, c.User, c.MessageID, n, milli(c.At)); err != nil {
			return err
		}
	}
	_, err = tx.ExecContext(ctx, "update jobs set done = ? where id = ?", milli(c.At), job)
	return err
}

// switchTo puts the user on a job in the channel and, where it is the user's own, in private.
func switchTo(ctx context.Context, tx *sql.Tx, user, channel string, job int64) error {
	_, err := tx.ExecContext(ctx, `insert into current (user, channel, job)
		select ?1, ?2, id from jobs where id = ?3 union select ?1, '', id from jobs where id = ?3 and owner = ?1
		on conflict do update set job = excluded.job`, user, channel, job)
	return err
}

// Jobs lists the user's own jobs and the one shared to the channel, last changed first.
func (s *Store) Jobs(ctx context.Context, user, channel string) ([]Job, error) {
	rows, err := s.db.QueryContext(ctx, jobFields+"where owner = ? or grp = ? and grp <> '' order by done desc, id desc", user, channel)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var jobs []Job
	for rows.Next() {
		j, err := scanJob(rows)
		if err != nil {
			return nil, err
		}
		jobs = append(jobs, j)
	}
	return jobs, rows.Err()
}

// Current is the job that the user is on in the channel: the one switched to there, else the channel's shared one, else the
// user's own last. It is the user's own or the one shared to the channel, never another's. ErrNotFound where there is none.
func (s *Store) Current(ctx context.Context, user, channel string) (Job, error) {
	return scanJob(s.db.QueryRowContext(ctx, jobFields+`
		left join current here on here.job = jobs.id and here.user = ?1 and here.channel = ?2
		left join current own on own.job = jobs.id and own.user = ?1 and own.channel = ''
		where owner = ?1 and (here.job is not null or own.job is not null) or grp = ?2 and grp <> ''
		order by here.job is null, grp <> ?2 or grp = '' limit 1`, user, channel))
}

// Share makes a job the channel's: everyone there is on it.
func (s *Store) Share(ctx context.Context, job int64, channel string) error {
	return s.within(ctx, func(tx *sql.Tx) error {
		if err := unshare(ctx, tx, channel); err != nil {
			return err
		}
		_, err := tx.ExecContext(ctx, "update jobs set grp = ? where id = ?", channel, job)
		return err
	})
}

// Unshare leaves the channel with no job of its own.
func (s *Store) Unshare(ctx context.Context, channel string) error {
	return s.within(ctx, func(tx *sql.Tx) error { return unshare(ctx, tx, channel) })
}

func unshare(ctx context.Context, tx *sql.Tx, channel string) error {
	if _, err := tx.ExecContext(ctx, "update jobs set grp = '' where grp = ?", channel); err != nil {
		return err
	}
	_, err := tx.ExecContext(ctx, "delete from current where channel = ? and channel <> ''", channel)
	return err
}

// Texts lists a job's texts in the order that they were stored.
func (s *Store) Texts(ctx context.Context, job int64) ([]Line, error) {
	rows, err := s.db.QueryContext(ctx, "select text, user, at from lines where job = ? order by id", job)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var lines []Line
	for rows.Next() {
		var l Line
		var at int64
		if err := rows.Scan(&l.Text, &l.User, &at); err != nil {
			return nil, err
		}
		l.At = time.UnixMilli(at)
		lines = append(lines, l)
	}
	return lines, rows.Err()
}
