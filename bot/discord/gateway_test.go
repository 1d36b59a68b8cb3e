package discord

import (
	"fmt"
	"net/http"
	"strings"
	"testing"
	"time"

	"github.com/gorilla/websocket"
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

func TestFatalCloseCodes(t *testing.T) {
	for _, code := range []int{4004, 4010, 4011, 4012, 4013, 4014} {
		for _, when := range []string{"identify", "later"} {
			t.Run(fmt.Sprint(code, " at ", when), func(t *testing.T) {
				t.Parallel()
				f := newFake(t)
				if when == "identify" {
					f.greeting = append(f.greeting, func(s *socketOf) { s.hangUp(code) })
				}
				r := serve(t, f, nil)
				if s := f.ready(0); when == "later" {
					s.hangUp(code)
				}
				select {
				case err := <-r.ended:
					require.ErrorContains(t, err, fmt.Sprint(code))
					require.NotContains(t, err.Error(), token)
					r.ended <- err
				case <-time.After(3 * time.Second):
					t.Fatal("serving goes on")
				}
				require.Len(t, f.sockets, 1)
			})
		}
	}
}

func TestOtherCloseCodes(t *testing.T) {
	for code, resumes := range map[int]bool{4000: true, 4001: true, 4008: true, 1001: true, 4007: false, 4009: false} {
		t.Run(fmt.Sprint(code), func(t *testing.T) {
			t.Parallel()
			f := newFake(t)
			serve(t, f, nil)
			f.say(f.ready(0), "MESSAGE_CREATE", private(1, "a"))
			f.awaitPosts(1)
			f.socket(0).hangUp(code)
			require.Equal(t, resumes, f.ready(1).resume != nil)
		})
	}
}

func TestSilentGateway(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	f.silent = true
	serve(t, f, nil)
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
	serve(t, f, nil)
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

func TestUnreadableEvents(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	r := serve(t, f, nil)
	s := f.ready(0)
	noAuthor := private(1, "no author")
	delete(noAuthor, "author")
	odd := private(2, "odd fields")
	odd["author"] = map[string]any{"id": "300", "public_flags": "none", "username": 7}
	odd["type"], odd["mentions"], odd["embeds"] = nil, "none", 3
	f.say(s, "MESSAGE_CREATE", noAuthor)
	f.say(s, "MESSAGE_CREATE", "not an object")
	f.say(s, "MESSAGE_CREATE", nil)
	f.say(s, "INTERACTION_CREATE", map[string]any{"id": "1", "type": 2, "token": "t", "data": map[string]any{"name": "lastrow"}})
	f.say(s, "A_KIND_OF_LATER_YEARS", []int{1})
	require.NoError(t, s.WriteMessage(websocket.TextMessage, []byte("{not json")))
	f.say(s, "MESSAGE_CREATE", odd)
	require.Equal(t, "you said odd fields", f.awaitPosts(1)[0].body["content"])
	require.Len(t, r.messages(), 1)
	require.Len(t, f.sockets, 1, "the connection is kept")
}

func TestIdsAsNumbers(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	r := serve(t, f, nil)
	f.say(f.ready(0), "MESSAGE_CREATE", map[string]any{"id": 12, "channel_id": 400, "content": "hi", "author": map[string]any{"id": 300}})
	f.awaitPosts(1)
	require.Equal(t, "300", r.messages()[0].User)
}

func TestUnreachableResumeAddress(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	f.greeting = append(f.greeting, func(s *socketOf) {
		f.tell(s, "READY", map[string]any{"user": map[string]any{"id": me}, "session_id": "session-1", "resume_gateway_url": "ws://127.0.0.1:1"})
	})
	serve(t, f, nil)
	f.ready(0).Close()
	again := f.ready(1)
	require.True(t, strings.HasPrefix(again.path, "/ws"))
	require.NotNil(t, again.resume)
}

func TestBarestServer(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	for range 9 {
		f.fail("GET /api/v9/gateway/bot", answering(http.StatusNotFound, ""))
	}
	f.fail("GET /api/v9/applications/"+me+"/commands", answering(http.StatusNotFound, "no such page"))
	f.greeting = append(f.greeting, func(s *socketOf) {
		f.tell(s, "READY", map[string]any{"user": map[string]any{"id": me}})
	})
	serve(t, f, nil)
	f.say(f.ready(0), "MESSAGE_CREATE", private(1, "a"))
	f.awaitPosts(1)
	f.wait("the command", func() bool { return len(f.commands) == 1 })
}

func TestRefusedToken(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	f.fail("GET /api/v9/gateway/bot", answering(http.StatusUnauthorized, `{"message":"401: Unauthorized","code":0}`))
	r := serve(t, f, nil)
	err := <-r.ended
	r.ended <- nil
	require.ErrorContains(t, err, "token")
	require.Len(t, f.requests, 1, "after 401 no more is asked")
}

func TestEndsInOrder(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	r := serve(t, f, nil)
	f.ready(0)
	r.stop()
	require.NoError(t, <-r.ended)
	r.ended <- nil
	f.wait("a close", func() bool { return f.sockets[0].closed == websocket.CloseNormalClosure })
}
