package store

import (
	"bufio"
	"database/sql"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// writer, where set, makes the test binary one that stores texts until it is killed, a line of output for each stored.
const writer = "STORE_TEST_WRITER"

func TestMain(m *testing.M) {
	if path := os.Getenv(writer); path != "" {
		writeForEver(path)
	}
	os.Exit(m.Run())
}

func writeForEver(path string) {
	s, err := Open(ctx, path)
	if err != nil {
		panic(err)
	}
	j, err := s.Commit(ctx, Change{User: "ann", Begin: "a", At: day})
	if err != nil {
		panic(err)
	}
	lines, err := s.Texts(ctx, j.ID)
	if err != nil {
		panic(err)
	}
	for n := len(lines) / 2; ; n++ {
		text := strconv.Itoa(n)
		if _, err := s.Commit(ctx, Change{MessageID: "m" + text, Job: j.ID, Texts: []string{text, text}, At: day}); err != nil {
			panic(err)
		}
		fmt.Println(n)
	}
}

// What was said to be stored is there after the process is killed, and a message is there whole or not at all.
func TestKilledProcessLosesNothing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "killed.db")
	for round := range 5 {
		last := killAfter(t, path, 5+round)
		s := open(t, path)
		j := begin(t, s, "ann", "a")
		lines, err := s.Texts(ctx, j.ID)
		require.NoError(t, err)
		require.GreaterOrEqual(t, len(lines), 2*(last+1))
		for i, l := range lines {
			require.Equal(t, strconv.Itoa(i/2), l.Text)
		}
		require.Zero(t, len(lines)%2)
		var sound string
		require.NoError(t, s.db.QueryRow("pragma integrity_check").Scan(&sound))
		require.Equal(t, "ok", sound)
		require.NoError(t, s.Close())
	}
}

// killAfter kills a writer after it has said so many times that a text is stored, and gives the last that it named.
func killAfter(t *testing.T, path string, times int) (last int) {
	child := exec.Command(os.Args[0])
	child.Env = append(os.Environ(), writer+"="+path)
	child.Stderr = os.Stderr
	out, err := child.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, child.Start())
	said := bufio.NewScanner(out)
	for n := 0; said.Scan(); n++ {
		last, err = strconv.Atoi(said.Text())
		require.NoError(t, err)
		if n == times {
			require.NoError(t, child.Process.Kill())
		}
	}
	require.Error(t, child.Wait())
	return last
}

func TestManyProcessesBeginOneDatabase(t *testing.T) {
	for range 5 {
		path := filepath.Join(t.TempDir(), "fresh.db")
		var all sync.WaitGroup
		for g := range 8 {
			all.Go(func() {
				s, err := Open(ctx, path)
				if !assertNoError(t, err) {
					return
				}
				defer s.Close()
				_, err = s.Commit(ctx, Change{User: "ann", Begin: "a", Texts: []string{strconv.Itoa(g)}, At: day})
				assertNoError(t, err)
			})
		}
		all.Wait()
		lines, err := open(t, path).Texts(ctx, 1)
		require.NoError(t, err)
		require.Len(t, lines, 8)
	}
}

func assertNoError(t *testing.T, err error) bool {
	if err != nil {
		t.Error(err)
	}
	return err == nil
}

// A job that is no longer shared is its owner's alone, also for those who were on it.
func TestUnsharedJobIsItsOwnersAlone(t *testing.T) {
	s := open(t, ":memory:")
	anns, bobs := begin(t, s, "ann", "ann's"), begin(t, s, "bob", "bob's")
	require.NoError(t, s.Share(ctx, anns.ID, "crew"))
	commit(t, s, Change{User: "bob", Channel: "crew", Job: anns.ID, Switch: true})
	_, err := s.Current(ctx, "bob", "")
	require.ErrorIs(t, err, ErrNotFound)
	commit(t, s, Change{User: "bob", Channel: "", Job: bobs.ID, Switch: true})
	on := func(channel string) string {
		j, err := s.Current(ctx, "bob", channel)
		require.NoError(t, err)
		return j.Name
	}
	require.Equal(t, "ann's", on("crew"))
	require.Equal(t, "bob's", on(""))
	for _, leave := range []func() error{
		func() error { return s.Unshare(ctx, "crew") },
		func() error { return s.Share(ctx, anns.ID, "another crew") },
	} {
		require.NoError(t, s.Share(ctx, anns.ID, "crew"))
		commit(t, s, Change{User: "bob", Channel: "crew", Job: anns.ID, Switch: true})
		require.NoError(t, leave())
		require.Equal(t, "bob's", on("crew"))
		require.Equal(t, "bob's", on(""))
		jobs, err := s.Jobs(ctx, "bob", "crew")
		require.NoError(t, err)
		require.Len(t, jobs, 1)
	}
}

func TestFileIsItsOwnersAlone(t *testing.T) {
	path := filepath.Join(t.TempDir(), "own.db")
	s := open(t, path)
	begin(t, s, "ann", "a")
	for _, end := range []string{"", "-wal", "-shm"} {
		info, err := os.Stat(path + end)
		require.NoError(t, err)
		require.Equal(t, os.FileMode(0o600), info.Mode().Perm(), end)
	}
}

func TestForgottenTextIsInNoFile(t *testing.T) {
	folder := t.TempDir()
	s := open(t, filepath.Join(folder, "forget.db"))
	for n := range 200 {
		name, text := fmt.Sprint("secret place ", n), "note: secret "+strings.Repeat("x", n*20)
		commit(t, s, Change{User: "secret user", Begin: name, Texts: []string{text}, Talk: "secret", MessageID: name, Reply: []byte("secret")})
	}
	require.True(t, found(t, folder, "secret"))
	require.NoError(t, s.Forget(ctx, "secret user"))
	require.False(t, found(t, folder, "secret"))
}

// found says whether any file of a folder holds a text.
func found(t *testing.T, folder, text string) bool {
	files, err := filepath.Glob(filepath.Join(folder, "*"))
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, f := range files {
		data, err := os.ReadFile(f)
		require.NoError(t, err)
		if strings.Contains(string(data), text) {
			return true
		}
	}
	return false
}

// A file spoilt in its middle opens or not, but nothing wrong is read from it.
func TestSpoiltPagesGiveAnError(t *testing.T) {
	path := filepath.Join(t.TempDir(), "spoilt.db")
	s := open(t, path)
	j := begin(t, s, "ann", "a")
	for range 300 {
		commit(t, s, Change{Job: j.ID, Texts: []string{strings.Repeat("plank ", 40)}})
	}
	require.NoError(t, s.Close())
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	for i := 4096; i < len(data); i++ {
		data[i] = byte(i * 7)
	}
	require.NoError(t, os.WriteFile(path, data, 0o600))
	s, err = Open(ctx, path)
	if err == nil {
		_, err = s.Texts(ctx, j.ID)
		require.NoError(t, s.Close())
	}
	require.ErrorContains(t, err, "malformed")
	require.NotContains(t, err.Error(), "\n")
}

func TestWhatIsNoFileIsRefused(t *testing.T) {
	folder := t.TempDir()
	for _, path := range []string{folder, filepath.Join(folder, "none", "x.db"), ""} {
		_, err := Open(ctx, path)
		require.ErrorContains(t, err, path)
		require.NotContains(t, err.Error(), "\n")
	}
}

func TestWaitsNoLongerThanBusy(t *testing.T) {
	path := filepath.Join(t.TempDir(), "busy.db")
	a, b := open(t, path), open(t, path)
	j := begin(t, a, "ann", "a")
	_, err := b.db.Exec("pragma busy_timeout = 50")
	require.NoError(t, err)
	tx, err := a.db.Begin()
	require.NoError(t, err)
	start := time.Now()
	_, err = b.Commit(ctx, Change{Job: j.ID, Texts: []string{"x"}, At: day})
	require.ErrorContains(t, err, "locked")
	require.GreaterOrEqual(t, time.Since(start), 50*time.Millisecond)
	require.NoError(t, tx.Rollback())
	commit(t, b, Change{Job: j.ID, Texts: []string{"x"}})
}

func TestPathsThatLookLikeSettings(t *testing.T) {
	folder := t.TempDir()
	for _, name := range []string{"a?mode=ro&x.db", "a%20b#c.db", "ä ö.db", "file:x.db"} {
		path := folder + "//" + name
		s := open(t, path)
		require.NoError(t, s.Close())
		_, err := os.Stat(path)
		require.NoError(t, err)
	}
	files, err := os.ReadDir(folder)
	require.NoError(t, err)
	require.Len(t, files, 4)
}

func TestMigrationIsWholeOrNothing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "half.db")
	db, err := sql.Open("sqlite3", path)
	require.NoError(t, err)
	_, err = db.Exec("create table talks (x)") // in the way of the first step, after its first tables
	require.NoError(t, err)
	_, err = Open(ctx, path)
	require.ErrorContains(t, err, "0001.sql: table talks already exists")
	var n int
	require.NoError(t, db.QueryRow("select count(*) from sqlite_master where name = 'jobs'").Scan(&n))
	require.Zero(t, n)
	require.NoError(t, db.Close())
}

// A full disk refuses a message whole, and what was stored before stays readable.
func TestFullDiskRefusesTheMessageWhole(t *testing.T) {
	s := open(t, filepath.Join(t.TempDir(), "full.db"))
	j := begin(t, s, "ann", "a")
	_, err := s.db.Exec("pragma max_page_count = 30")
	require.NoError(t, err)
	stored := 0
	for c := (Change{Job: j.ID, Texts: []string{"short", strings.Repeat("plank ", 400)}, At: day}); ; stored++ {
		require.Less(t, stored, 100)
		if _, err = s.Commit(ctx, c); err != nil {
			break
		}
	}
	require.ErrorContains(t, err, "full")
	lines, err := s.Texts(ctx, j.ID)
	require.NoError(t, err)
	require.NotZero(t, stored)
	require.Len(t, lines, 2*stored)
}
