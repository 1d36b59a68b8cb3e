package store

import (
	"context"
	"database/sql"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

var (
	ctx = context.Background()
	day = time.UnixMilli(1_790_000_000_000)
)

func open(t testing.TB, path string) *Store {
	s, err := Open(ctx, path)
	require.NoError(t, err)
	t.Cleanup(func() { _ = s.Close() })
	return s
}

// begin begins or finds a job of a user.
func begin(t testing.TB, s *Store, user, name string) Job {
	return commit(t, s, Change{User: user, Begin: name})
}

// commit stores a change that must succeed.
func commit(t testing.TB, s *Store, c Change) Job {
	if c.At.IsZero() {
		c.At = day
	}
	j, err := s.Commit(ctx, c)
	require.NoError(t, err)
	return j
}

func TestJobKeepsItsTextsAcrossAReopening(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a b?#%.db")
	s := open(t, path)
	j := begin(t, s, "ann", "Alder basement")
	commit(t, s, Change{MessageID: "m1", User: "ann", Job: j.ID, Texts: []string{"room 1", "gap 2"}})
	require.NoError(t, s.Close())
	s = open(t, path)
	_, err := os.Stat(path)
	require.NoError(t, err)
	lines, err := s.Texts(ctx, j.ID)
	require.NoError(t, err)
	require.Equal(t, []Line{{"room 1", "ann", day}, {"gap 2", "ann", day}}, lines)
}

func TestMessageCountsOnce(t *testing.T) {
	s := open(t, ":memory:")
	j, other := begin(t, s, "ann", "a"), begin(t, s, "ann", "b")
	for _, id := range []int64{j.ID, j.ID, other.ID} {
		commit(t, s, Change{MessageID: "m", Job: id, Texts: []string{"x", "y"}})
	}
	for range 2 { // no id: each counts
		commit(t, s, Change{Job: j.ID, Texts: []string{"z"}})
	}
	lines, _ := s.Texts(ctx, j.ID)
	require.Len(t, lines, 4)
	lines, _ = s.Texts(ctx, other.ID)
	require.Empty(t, lines)
}

func TestCommitIsAllOrNothing(t *testing.T) {
	s := open(t, ":memory:")
	_, err := s.db.Exec("create trigger bad before insert on lines when new.text = 'bad' begin select raise(abort, 'refused'); end")
	require.NoError(t, err)
	for _, c := range []Change{
		{Job: 99, Texts: []string{"x"}}, {Texts: []string{"x"}}, {Switch: true},
		{Begin: "a", Switch: true, Texts: []string{"good", "bad"}},
	} {
		c.MessageID, c.User, c.Talk, c.Reply = "m", "ann", "rows", []byte("r")
		_, err := s.Commit(ctx, c)
		require.Error(t, err)
		for _, table := range []string{"jobs", "lines", "current", "talks", "replies"} {
			var n int
			require.NoError(t, s.db.QueryRow("select count(*) from "+table).Scan(&n))
			require.Zero(t, n, table)
		}
	}
}

func TestCurrent(t *testing.T) {
	s := open(t, ":memory:")
	_, err := s.Current(ctx, "ann", "")
	require.ErrorIs(t, err, ErrNotFound)
	a, b := begin(t, s, "ann", "a"), begin(t, s, "ann", "b")
	commit(t, s, Change{User: "ann", Channel: "crew", Job: a.ID, Switch: true})
	at := func(user, channel string) string {
		j, err := s.Current(ctx, user, channel)
		if err != nil {
			require.ErrorIs(t, err, ErrNotFound)
		}
		return j.Name
	}
	require.Equal(t, "a", at("ann", "crew"))
	require.Equal(t, "a", at("ann", ""))
	require.NoError(t, s.Share(ctx, b.ID, "crew"))
	require.Equal(t, "b", at("ann", "crew"))
	require.Equal(t, "b", at("bob", "crew"))
	require.Equal(t, "", at("bob", ""))
	require.Equal(t, "a", at("ann", ""))
	commit(t, s, Change{User: "ann", Channel: "crew", Job: a.ID, Switch: true})
	require.Equal(t, "a", at("ann", "crew"))
	require.Equal(t, "b", at("bob", "crew"))
	require.NoError(t, s.Unshare(ctx, "crew"))
	require.Equal(t, "", at("bob", "crew"))
	jobs, err := s.Jobs(ctx, "ann", "crew")
	require.NoError(t, err)
	require.Len(t, jobs, 2)
}

func TestNamesAreOnlyNames(t *testing.T) {
	s := open(t, ":memory:")
	name := `'; drop table jobs; -- "x"`
	require.Equal(t, begin(t, s, name, name), begin(t, s, name, name))
	require.Equal(t, begin(t, s, "ann", "Alder"), begin(t, s, "ann", "aLDER"))
	require.NotEqual(t, begin(t, s, "ann", "Alder").ID, begin(t, s, "bob", "Alder").ID)
}

func TestTalksAndReplies(t *testing.T) {
	s := open(t, ":memory:")
	talk, err := s.Talk(ctx, "ann", "")
	require.NoError(t, err)
	require.Zero(t, talk)
	commit(t, s, Change{User: "ann", Talk: "rows", MessageID: "m1", Reply: []byte("18 rows")})
	commit(t, s, Change{User: "ann", Talk: "boxes", MessageID: "m1", Reply: []byte("another")})
	talk, _ = s.Talk(ctx, "ann", "")
	require.Equal(t, Talk{"boxes", day}, talk)
	reply, ok, err := s.Replied(ctx, "m1")
	require.NoError(t, err)
	require.True(t, ok)
	require.Equal(t, "18 rows", string(reply))
	require.NoError(t, s.LetGo(ctx, day.Add(time.Second)))
	_, ok, _ = s.Replied(ctx, "m1")
	require.False(t, ok)
	talk, _ = s.Talk(ctx, "ann", "")
	require.Zero(t, talk)
}

func TestForgetLeavesNothingOfTheUser(t *testing.T) {
	path := filepath.Join(t.TempDir(), "f.db")
	s := open(t, path)
	mine, other := begin(t, s, "ann", "mine"), begin(t, s, "bob", "other")
	commit(t, s, Change{User: "ann", Job: other.ID, Texts: []string{"gap"}})
	commit(t, s, Change{User: "ann", Job: mine.ID, Switch: true, Texts: []string{"gap"}, Talk: "rows", MessageID: "m", Reply: []byte("x")})
	require.NoError(t, s.Forget(ctx, "ann"))
	for _, query := range []string{"select count(*) from jobs where owner = 'ann'", "select count(*) from lines where user = 'ann'",
		"select count(*) from talks where user = 'ann'", "select count(*) from replies", "select count(*) from current"} {
		var n int
		require.NoError(t, s.db.QueryRow(query).Scan(&n))
		require.Zero(t, n, query)
	}
	lines, _ := s.Texts(ctx, other.ID)
	require.Len(t, lines, 1)
}

func TestManyAtOnce(t *testing.T) {
	s := open(t, filepath.Join(t.TempDir(), "many.db"))
	j := begin(t, s, "ann", "a")
	var all sync.WaitGroup
	for g := range 8 {
		all.Go(func() {
			for i := range 10 {
				_, err := s.Commit(ctx, Change{MessageID: fmt.Sprint(g%4, "-", i), Job: j.ID, Texts: []string{"x"}, At: day})
				assertNoError(t, err)
			}
		})
	}
	all.Wait()
	lines, _ := s.Texts(ctx, j.ID)
	require.Len(t, lines, 40)
}

func TestTwoProcessesWaitForEachOther(t *testing.T) {
	path := filepath.Join(t.TempDir(), "two.db")
	a, b := open(t, path), open(t, path)
	j := begin(t, a, "ann", "a")
	tx, err := a.db.Begin()
	require.NoError(t, err)
	_, err = tx.Exec("update jobs set done = 1")
	require.NoError(t, err)
	time.AfterFunc(50*time.Millisecond, func() { _ = tx.Commit() })
	commit(t, b, Change{Job: j.ID, Texts: []string{"x"}})
}

func TestNewerDatabaseIsRefused(t *testing.T) {
	path := filepath.Join(t.TempDir(), "new.db")
	s := open(t, path)
	_, err := s.db.Exec("pragma user_version = 99")
	require.NoError(t, err)
	require.NoError(t, s.Close())
	_, err = Open(ctx, path)
	require.ErrorContains(t, err, "newer program")
}

func TestSpoiltFileGivesOneClearError(t *testing.T) {
	path := filepath.Join(t.TempDir(), "spoilt.db")
	require.NoError(t, os.WriteFile(path, []byte("this is no database, it is a note about a floor, long enough to be read as one"), 0o600))
	_, err := Open(ctx, path)
	require.ErrorContains(t, err, path)
	_, err = Open(ctx, filepath.Join(t.TempDir(), "no", "such", "folder.db"))
	require.Error(t, err)
}

// Every schema that has shipped migrates forward with what it holds; testdata keeps a dump of each.
func TestOldSchemasMigrate(t *testing.T) {
	dumps, err := filepath.Glob("../testdata/store/v*.sql")
	require.NoError(t, err)
	steps, _ := schema.ReadDir("schema")
	require.Len(t, dumps, len(steps))
	for _, dump := range dumps {
		text, err := os.ReadFile(dump)
		require.NoError(t, err)
		path := filepath.Join(t.TempDir(), "old.db")
		db, err := sql.Open("sqlite3", path)
		require.NoError(t, err)
		_, err = db.Exec(string(text))
		require.NoError(t, err)
		require.NoError(t, db.Close())
		s := open(t, path)
		j, err := s.Current(ctx, "ann", "crew")
		require.NoError(t, err)
		lines, err := s.Texts(ctx, j.ID)
		require.NoError(t, err)
		require.Len(t, lines, 2, dump)
	}
}

// BenchmarkCommit stores a message's texts durably with its talk and its reply, beside a bare insert into a table of the same
// database: quote the ratio.
func BenchmarkCommit(b *testing.B) {
	s := open(b, filepath.Join(b.TempDir(), "b.db"))
	j := begin(b, s, "ann", "a")
	n := 0
	for _, size := range []int{1, 10} {
		b.Run(fmt.Sprintf("texts=%d", size), func(b *testing.B) {
			c := Change{User: "ann", Job: j.ID, Texts: slices.Repeat([]string{"laid 6 rows"}, size), Talk: "rows", Reply: []byte("noted"), At: day}
			b.ReportAllocs()
			for b.Loop() {
				n++
				c.MessageID = fmt.Sprint(n)
				if _, err := s.Commit(ctx, c); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	_, err := s.db.Exec("create table bare (t text)")
	require.NoError(b, err)
	b.Run("bare", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := s.db.Exec("insert into bare values ('laid 6 rows')"); err != nil {
				b.Fatal(err)
			}
		}
	})
}

// BenchmarkTexts reads a job's texts back, as every message does.
func BenchmarkTexts(b *testing.B) {
	for _, size := range []int{10, 100, 1000} {
		b.Run(fmt.Sprintf("texts=%d", size), func(b *testing.B) {
			s := open(b, ":memory:")
			j := commit(b, s, Change{User: "ann", Begin: "a", Texts: slices.Repeat([]string{"laid 6 rows"}, size)})
			b.ReportAllocs()
			for b.Loop() {
				if lines, err := s.Texts(ctx, j.ID); err != nil || len(lines) != size {
					b.Fatal(len(lines), err)
				}
			}
		})
	}
}
