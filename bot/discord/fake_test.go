package discord

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/gorilla/websocket"
	"github.com/stretchr/testify/require"
)

// fake speaks as much of Discord's API and gateway as the tests need, from Discord's documentation.
type fake struct {
	t    *testing.T
	web  *httptest.Server
	beat time.Duration // the heartbeat interval it asks for

	mu       sync.Mutex
	sockets  []*socketOf
	posts    []posted
	requests []request
	events   []map[string]any // dispatched in the session, to be replayed
	faults   map[string][]func(http.ResponseWriter, *http.Request) bool
	history  map[string][]map[string]any
	commands []map[string]any
	nonces   map[string]string
	strict   bool // wants every message unable to mention anyone
	silent   bool // says nothing to who connects
	deaf     bool // acknowledges no heartbeat
	greeting []func(*socketOf)
}

// socketOf is one connection to the fake's gateway and what came over it.
type socketOf struct {
	*websocket.Conn
	path     string
	writing  sync.Mutex
	identify map[string]any
	resume   map[string]any
	beats    int
	closed   int // the code the client closed with
}

type request struct {
	method, path, auth string
	body               map[string]any
	query              string
	at                 time.Time
}

// posted is a message as the fake would show it.
type posted struct {
	request
	id    string
	files []upload
}

type upload struct {
	name, kind string
	data       []byte
}

const (
	me    = "900000000000000001"
	app   = "900000000000000002"
	token = "TOKEN.that.nobody-may-see"
)

func newFake(t *testing.T) *fake {
	f := &fake{
		t: t, beat: 40 * time.Second, nonces: map[string]string{}, strict: true,
		faults: map[string][]func(http.ResponseWriter, *http.Request) bool{}, history: map[string][]map[string]any{},
	}
	mux := http.NewServeMux()
	mux.HandleFunc("GET /api/v9/gateway/bot", func(w http.ResponseWriter, _ *http.Request) {
		f.give(w, map[string]any{"url": f.ws("/ws"), "shards": 1, "session_start_limit": map[string]any{"total": 1000, "remaining": 999, "reset_after": 1000, "max_concurrency": 1}})
	})
	mux.HandleFunc("GET /api/v9/gateway", func(w http.ResponseWriter, _ *http.Request) { f.give(w, map[string]any{"url": f.ws("/ws")}) })
	mux.HandleFunc("/ws/", f.connect)
	mux.HandleFunc("/ws", f.connect)
	mux.HandleFunc("/resume", f.connect)
	mux.HandleFunc("/resume/", f.connect)
	mux.HandleFunc("POST /api/v9/channels/{channel}/messages", f.post)
	mux.HandleFunc("GET /api/v9/channels/{channel}/messages", f.read)
	mux.HandleFunc("POST /api/v9/interactions/{id}/{token}/callback", func(w http.ResponseWriter, _ *http.Request) { w.WriteHeader(http.StatusNoContent) })
	mux.HandleFunc("PATCH /api/v9/webhooks/{app}/{token}/messages/@original", f.post)
	mux.HandleFunc("POST /api/v9/webhooks/{app}/{token}", f.post)
	mux.HandleFunc("GET /api/v9/applications/{app}/commands", func(w http.ResponseWriter, _ *http.Request) {
		f.mu.Lock()
		defer f.mu.Unlock()
		f.give(w, f.commands)
	})
	mux.HandleFunc("POST /api/v9/applications/{app}/commands", f.register)
	f.web = httptest.NewUnstartedServer(f.watch(mux))
	f.web.Start()
	t.Cleanup(f.stop)
	return f
}

func (f *fake) ws(path string) string { return "ws" + strings.TrimPrefix(f.web.URL, "http") + path }

func (f *fake) stop() {
	f.mu.Lock()
	for _, s := range f.sockets {
		s.Close()
	}
	f.mu.Unlock()
	f.web.CloseClientConnections()
	f.web.Close()
}

// fail has a request answered otherwise, once for each of the answers.
func (f *fake) fail(what string, with ...func(http.ResponseWriter, *http.Request) bool) {
	f.mu.Lock()
	defer f.mu.Unlock()
	f.faults[what] = append(f.faults[what], with...)
}

// wait waits until something holds.
func (f *fake) wait(what string, holds func() bool) {
	f.t.Helper()
	require.Eventually(f.t, func() bool {
		f.mu.Lock()
		defer f.mu.Unlock()
		return holds()
	}, 10*time.Second, 2*time.Millisecond, what)
}

// awaitPosts waits for so many messages, and a little longer to see that there are no more.
func (f *fake) awaitPosts(n int) []posted {
	f.t.Helper()
	f.wait(fmt.Sprintf("%d messages", n), func() bool { return len(f.posts) >= n })
	time.Sleep(60 * time.Millisecond)
	f.mu.Lock()
	defer f.mu.Unlock()
	require.Len(f.t, f.posts, n)
	return append([]posted{}, f.posts...)
}

// asked counts the requests of a kind.
func (f *fake) asked(method, path string) (n int) {
	f.mu.Lock()
	defer f.mu.Unlock()
	for _, r := range f.requests {
		if r.method == method && strings.HasPrefix(r.path, path) {
			n++
		}
	}
	return n
}
