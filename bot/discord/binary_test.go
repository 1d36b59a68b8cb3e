package discord

import (
	"bytes"
	"image/png"
	"net/http"
	"os/exec"
	"path/filepath"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// program is lastrow as shipped, serving a fake of Discord.
type program struct {
	*exec.Cmd
	log *bytes.Buffer
}

func build(t *testing.T) string {
	path := filepath.Join(t.TempDir(), "lastrow")
	out, err := exec.Command("go", "build", "-o", path, "lastrow/cmd/lastrow").CombinedOutput()
	require.NoError(t, err, string(out))
	return path
}

func start(t *testing.T, path, home string, f *fake) program {
	p := program{exec.Command(path, "serve"), &bytes.Buffer{}}
	p.Env = []string{"HOME=" + home, "DISCORD_TOKEN=" + token, "DISCORD_API_BASE=" + f.web.URL}
	p.Stdout, p.Stderr = p.log, p.log
	require.NoError(t, p.Start())
	t.Cleanup(func() { _ = p.Process.Kill() })
	return p
}

// end waits for the program's end and gives its exit status and what it printed.
func (p program) end(t *testing.T) (int, string) {
	done := make(chan struct{})
	go func() { _ = p.Wait(); close(done) }()
	select {
	case <-done:
	case <-time.After(10 * time.Second):
		require.Fail(t, "the program doesn't end")
	}
	require.NotContains(t, p.log.String(), token)
	return p.ProcessState.ExitCode(), p.log.String()
}

func toBot(n int, text string) map[string]any {
	m := grouped(n, "<@"+me+"> "+text)
	m["mentions"] = []any{map[string]any{"id": me}}
	return m
}

// TestProgram builds lastrow as shipped and runs it.
func TestProgram(t *testing.T) {
	t.Parallel()
	path := build(t)
	t.Run("answers through faults", func(t *testing.T) { t.Parallel(); answersThroughFaults(t, path) })
	t.Run("stops where the token is refused", func(t *testing.T) { t.Parallel(); stopsAtRefusal(t, path) })
}

// answersThroughFaults has a message in, the answer with its picture out, over a dropped
// gateway, answers of 429 and 500, and a kill.
func answersThroughFaults(t *testing.T, path string) {
	f, home := newFake(t), t.TempDir()
	p := start(t, path, home, f)
	s := f.ready(0)
	f.say(s, "MESSAGE_CREATE", private(1, "last row width for 11ft 4in room, plank 7 5/8"))
	require.Contains(t, f.awaitPosts(1)[0].body["content"], "18 rows")

	f.say(s, "MESSAGE_CREATE", toBot(2, "room 11ft 4in x 12ft 6in, plank 7 5/8 x 47 1/2, 8 per box"))
	f.say(s, "MESSAGE_CREATE", toBot(3, "plan"))
	plan := f.awaitPosts(3)[2]
	require.Len(t, plan.files, 1)
	_, err := png.Decode(bytes.NewReader(plan.files[0].data))
	require.NoError(t, err)
	require.NotEmpty(t, plan.body["attachments"].([]any)[0].(map[string]any)["description"])

	f.fail("POST /api/v9/channels/500/messages", answering(429, `{"retry_after": 0.05}`, "Retry-After", "0.05"), answering(500, "no"), broken)
	require.NoError(t, s.Close()) // without a word
	late := toBot(4, "laid 6 rows")
	f.say(nil, "MESSAGE_CREATE", late)
	s = f.ready(1)
	require.NotNil(t, s.resume)
	require.Contains(t, f.awaitPosts(4)[3].body["content"], "laid 6 rows")

	require.NoError(t, p.Process.Kill())
	p.end(t)
	mine := grouped(5, "Noted: laid 6 rows.")
	mine["author"] = map[string]any{"id": me, "bot": true}
	f.mu.Lock()
	f.history["500"] = []map[string]any{late, mine, toBot(6, "opened 5 boxes")} // the last while the program was away
	f.mu.Unlock()
	p = start(t, path, home, f)
	s = f.ready(2)
	require.Contains(t, f.awaitPosts(5)[4].body["content"], "opened 5 boxes")
	f.say(s, "MESSAGE_CREATE", late) // again: nothing new is recorded, and the reply is the one there
	f.say(s, "MESSAGE_CREATE", toBot(7, "status"))
	require.Contains(t, f.awaitPosts(6)[5].body["content"], "6 of 18 rows")

	require.NoError(t, p.Process.Signal(syscall.SIGTERM))
	code, log := p.end(t)
	require.Zero(t, code, log)
}

func stopsAtRefusal(t *testing.T, path string) {
	f := newFake(t)
	f.mu.Lock()
	f.greeting = []func(*socketOf){func(s *socketOf) { s.hangUp(4004) }}
	f.mu.Unlock()
	code, log := start(t, path, t.TempDir(), f).end(t)
	require.Equal(t, 1, code)
	require.Contains(t, log, "token")
	f.mu.Lock()
	require.Len(t, f.sockets, 1)
	f.mu.Unlock()

	f = newFake(t)
	f.fail("GET /api/v9/gateway/bot", answering(http.StatusUnauthorized, `{"message": "401: Unauthorized", "code": 0}`))
	code, log = start(t, path, t.TempDir(), f).end(t)
	require.Equal(t, 1, code)
	require.Contains(t, log, "token")
}
