package discord

import (
	"fmt"
	"net/http"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func TestResumeReplaysAndCountsOnce(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	r := serve(t, f, nil)
	s := f.ready(0)
	first, missed := private(1, "first"), private(2, "second")
	f.say(s, "MESSAGE_CREATE", first)
	f.awaitPosts(1)
	f.mu.Lock()
	f.tell(nil, "MESSAGE_CREATE", missed) // sent into the void
	f.tell(nil, "MESSAGE_CREATE", first)  // and one that was delivered before
	f.mu.Unlock()
	s.Close()

	again := f.ready(1)
	posts := f.awaitPosts(2)
	require.Equal(t, "you said second", posts[1].body["content"])
	require.Equal(t, "session-1", again.resume["session_id"])
	require.EqualValues(t, 3, again.resume["seq"])
	require.Equal(t, "Bot "+token, again.resume["token"])
	require.True(t, strings.HasPrefix(again.path, "/resume"), again.path)
	require.Contains(t, again.path, "v=9")
	require.Contains(t, again.path, "encoding=json")
	require.Len(t, r.messages(), 2)
}

func TestReconnectWhenAsked(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	serve(t, f, nil)
	f.say(f.ready(0), "MESSAGE_CREATE", private(1, "a"))
	f.awaitPosts(1)
	f.socket(0).send(map[string]any{"op": 7, "d": nil})
	again := f.ready(1)
	require.Equal(t, "session-1", again.resume["session_id"])
	f.wait("a close", func() bool { return f.sockets[0].closed != 0 })
	require.NotContains(t, []int{1000, 1001}, f.sockets[0].closed, "these would end the session")
	f.say(again, "MESSAGE_CREATE", private(2, "b"))
	f.awaitPosts(2)
}

func TestReconnectAskedBeforeReady(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	f.greeting = append(f.greeting, func(s *socketOf) { s.send(map[string]any{"op": 7, "d": nil}) })
	serve(t, f, nil)
	f.say(f.ready(1), "MESSAGE_CREATE", private(1, "a"))
	f.awaitPosts(1)
	require.NotNil(t, f.socket(1).identify)
}

func TestInvalidSession(t *testing.T) {
	for _, goesOn := range []bool{true, false} {
		t.Run(fmt.Sprint("resumable=", goesOn), func(t *testing.T) {
			t.Parallel()
			f := newFake(t)
			serve(t, f, nil)
			f.ready(0).send(map[string]any{"op": 9, "d": goesOn})
			again := f.ready(1)
			require.Equal(t, goesOn, again.resume != nil)
			require.Equal(t, !goesOn, again.identify != nil)
			f.say(again, "MESSAGE_CREATE", private(2, "b"))
			f.awaitPosts(1)
			require.Zero(t, f.asked(http.MethodPost, "/api/v9/applications")-1, "the command is registered once")
		})
	}
}

func TestResumeRefused(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	refused := time.Time{}
	serve(t, f, nil)
	s := f.ready(0)
	f.mu.Lock()
	f.greeting = append(f.greeting, func(s *socketOf) { refused = time.Now(); s.send(map[string]any{"op": 9, "d": false}) })
	f.mu.Unlock()
	s.Close()
	require.NotNil(t, f.ready(1).resume)
	last := f.ready(2)
	require.NotNil(t, last.identify)
	require.GreaterOrEqual(t, time.Since(refused), quick().invalid, "a new session has to wait")
}

func TestResumeNeitherGrantedNorRefused(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	serve(t, f, nil)
	first := f.ready(0)
	f.mu.Lock()
	for range mostFutile {
		f.greeting = append(f.greeting, func(s *socketOf) { s.hangUp(4000) })
	}
	f.mu.Unlock()
	first.Close()
	for n := range mostFutile {
		require.NotNil(t, f.ready(1+n).resume)
	}
	last := f.ready(1 + mostFutile)
	require.NotNil(t, last.identify)
	f.say(last, "MESSAGE_CREATE", private(1, "a"))
	f.awaitPosts(1)
}

func TestSilentGateway(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	f.silent = true
	serve(t, f, nil, func(c *Config) { c.pace.hello = 700 * time.Millisecond })
	f.socket(1)
	f.mu.Lock()
	f.silent = false
	f.mu.Unlock()
	f.say(f.ready(len(f.sockets)), "MESSAGE_CREATE", private(1, "a"))
	f.awaitPosts(1)
}

func TestGatewayThatNeverGetsReady(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	f.greeting = append(f.greeting, func(*socketOf) {})
	serve(t, f, nil, func(c *Config) { c.pace.hello = 700 * time.Millisecond })
	f.say(f.ready(1), "MESSAGE_CREATE", private(1, "a"))
	f.awaitPosts(1)
}

func TestMissedHeartbeatAck(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	f.beat, f.deaf = 60*time.Millisecond, true
	serve(t, f, nil)
	f.ready(0)
	again := f.ready(1)
	require.NotNil(t, again.resume)
	f.mu.Lock()
	defer f.mu.Unlock()
	require.Equal(t, 1, f.sockets[0].beats, "one heartbeat without an answer is enough")
	require.Equal(t, resumable, f.sockets[0].closed)
}

func TestHeartbeats(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	f.beat = 400 * time.Millisecond
	serve(t, f, nil)
	s := f.ready(0)
	f.wait("heartbeats", func() bool { return s.beats >= 3 })
	require.Len(t, f.sockets, 1)
	f.mu.Lock()
	before := s.beats
	f.mu.Unlock()
	s.send(map[string]any{"op": 1, "d": nil})
	f.wait("a heartbeat", func() bool { return s.beats > before })
}
