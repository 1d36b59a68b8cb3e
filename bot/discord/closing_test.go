package discord

import (
	"fmt"
	"net/http"
	"testing"
	"time"

	"github.com/gorilla/websocket"
	"github.com/stretchr/testify/require"
)

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
