package store

import (
	"context"
	"database/sql"
	"fmt"
	"os"
	"path/filepath"
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

func TestJobKeepsItsTextsAcrossAReopening(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a b?#%.db")
	s := open(t, path)
	j, err := s.Begin(ctx, "ann", "Alder basement", day)
	require.NoError(t, err)
	fresh, err := s.Append(ctx, Change{MessageID: "m1", User: "ann", Job: j.ID, Texts: []string{"room 1", "gap 2"}, At: day})
	require.NoError(t, err)
	require.True(t, fresh)
	require.NoError(t, s.Close())
	s = open(t, path)
	_, err = os.Stat(path)
	require.NoError(t, err)
	lines, err := s.Texts(ctx, j.ID)
	require.NoError(t, err)
	require.Equal(t, []Line{{"room 1", "ann", day}, {"gap 2", "ann", day}}, lines)
}

func TestMessageCountsOnce(t *testing.T) {
	s := open(t, ":memory:")
	j, _ := s.Begin(ctx, "ann", "a", day)
	for i, want := range []bool{true, false} {
		fresh, err := s.Append(ctx, Change{MessageID: "m", Job: j.ID, Texts: []string{"x", "y"}, At: day})
		require.NoError(t, err)
		require.Equal(t, want, fresh, i)
	}
	for range 2 { // no id: each counts
		fresh, err := s.Append(ctx, Change{Job: j.ID, Texts: []string{"z"}, At: day})
		require.NoError(t, err)
		require.True(t, fresh)
	}
	lines, _ := s.Texts(ctx, j.ID)
	require.Len(t, lines, 4)
}

func TestAppendIsAllOrNothing(t *testing.T) {
	s := open(t, ":memory:")
	fresh, err := s.Append(ctx, Change{Job: 99, Texts: []string{"x"}, At: day})
	require.Error(t, err)
	require.False(t, fresh)
	var n int
	require.NoError(t, s.db.QueryRow("select count(*) from lines").Scan(&n))
	require.Zero(t, n)
}

func TestCurrent(t *testing.T) {
	s := open(t, ":memory:")
	_, err := s.Current(ctx, "ann", "")
	require.ErrorIs(t, err, ErrNotFound)
	a, _ := s.Begin(ctx, "ann", "a", day)
	b, _ := s.Begin(ctx, "ann", "b", day)
	require.NoError(t, s.Switch(ctx, "ann", "crew", a.ID))
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
	require.NoError(t, s.Switch(ctx, "ann", "crew", a.ID))
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
	j, err := s.Begin(ctx, name, name, day)
	require.NoError(t, err)
	again, err := s.Begin(ctx, name, name, day)
	require.NoError(t, err)
	require.Equal(t, j.ID, again.ID)
	upper, err := s.Begin(ctx, "ann", "Alder", day)
	require.NoError(t, err)
	lower, err := s.Begin(ctx, "ann", "aLDER", day)
	require.NoError(t, err)
	require.Equal(t, upper, lower)
}

func TestTalksAndReplies(t *testing.T) {
	s := open(t, ":memory:")
	talk, err := s.Talk(ctx, "ann", "")
	require.NoError(t, err)
	require.Zero(t, talk)
	require.NoError(t, s.Keep(ctx, "ann", "", Talk{"rows", day}))
	require.NoError(t, s.Keep(ctx, "ann", "", Talk{"boxes", day}))
	talk, _ = s.Talk(ctx, "ann", "")
	require.Equal(t, Talk{"boxes", day}, talk)
	require.NoError(t, s.Reply(ctx, "m1", []byte("18 rows"), day))
	require.NoError(t, s.Reply(ctx, "m1", []byte("another"), day))
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
	mine, _ := s.Begin(ctx, "ann", "mine", day)
	other, _ := s.Begin(ctx, "bob", "other", day)
	for _, id := range []int64{mine.ID, other.ID} {
		_, err := s.Append(ctx, Change{User: "ann", Job: id, Texts: []string{"gap"}, At: day})
		require.NoError(t, err)
	}
	require.NoError(t, s.Switch(ctx, "ann", "", mine.ID))
	require.NoError(t, s.Keep(ctx, "ann", "", Talk{"rows", day}))
	require.NoError(t, s.Reply(ctx, "m", []byte("x"), day))
	require.NoError(t, s.Forget(ctx, "ann"))
	for _, query := range []string{"select count(*) from jobs where owner = 'ann'", "select count(*) from lines where user = 'ann'",
		"select count(*) from talks", "select count(*) from replies", "select count(*) from current"} {
		var n int
		require.NoError(t, s.db.QueryRow(query).Scan(&n))
		require.Zero(t, n, query)
	}
	lines, _ := s.Texts(ctx, other.ID)
	require.Len(t, lines, 1)
}

func TestManyAtOnce(t *testing.T) {
	s := open(t, filepath.Join(t.TempDir(), "many.db"))
	j, _ := s.Begin(ctx, "ann", "a", day)
	var all sync.WaitGroup
	for g := range 8 {
		all.Go(func() {
			for i := range 10 {
				_, err := s.Append(ctx, Change{MessageID: fmt.Sprint(g%4, "-", i), Job: j.ID, Texts: []string{"x"}, At: day})
				require.NoError(t, err)
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
	j, _ := a.Begin(ctx, "ann", "a", day)
	tx, err := a.db.Begin()
	require.NoError(t, err)
	_, err = tx.Exec("update jobs set done = 1")
	require.NoError(t, err)
	time.AfterFunc(50*time.Millisecond, func() { _ = tx.Commit() })
	_, err = b.Append(ctx, Change{Job: j.ID, Texts: []string{"x"}, At: day})
	require.NoError(t, err)
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

// BenchmarkAppend stores a statement durably, beside a bare insert into a table of the same database: quote the ratio.
func BenchmarkAppend(b *testing.B) {
	s := open(b, filepath.Join(b.TempDir(), "b.db"))
	j, _ := s.Begin(ctx, "ann", "a", day)
	b.Run("statement", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := s.Append(ctx, Change{Job: j.ID, Texts: []string{"laid 6 rows"}, At: day}); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("bare", func(b *testing.B) {
		_, _ = s.db.Exec("create table bare (t text)")
		b.ReportAllocs()
		for b.Loop() {
			if _, err := s.db.Exec("insert into bare values ('laid 6 rows')"); err != nil {
				b.Fatal(err)
			}
		}
	})
}
