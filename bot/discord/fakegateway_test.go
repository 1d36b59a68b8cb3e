package discord

import (
	"encoding/json"
	"net/http"
	"time"

	"github.com/gorilla/websocket"
)

// connect speaks the gateway's side of one connection.
func (f *fake) connect(w http.ResponseWriter, q *http.Request) {
	up := websocket.Upgrader{}
	ws, err := up.Upgrade(w, q, nil)
	if err != nil {
		return
	}
	s := &socketOf{Conn: ws, path: q.URL.RequestURI()}
	ws.SetCloseHandler(func(code int, _ string) error {
		f.mu.Lock()
		defer f.mu.Unlock()
		s.closed = code
		return nil
	})
	f.mu.Lock()
	f.sockets = append(f.sockets, s)
	silent, beat := f.silent, f.beat
	f.mu.Unlock()
	if !silent {
		s.send(map[string]any{"op": 10, "d": map[string]any{"heartbeat_interval": beat.Milliseconds()}})
	}
	for {
		var p struct {
			Op   int             `json:"op"`
			Data json.RawMessage `json:"d"`
		}
		if ws.ReadJSON(&p) != nil {
			return
		}
		f.hear(s, p.Op, p.Data)
	}
}

func (f *fake) hear(s *socketOf, op int, data json.RawMessage) {
	f.mu.Lock()
	defer f.mu.Unlock()
	switch op {
	case 1:
		s.beats++
		if !f.deaf {
			s.send(map[string]any{"op": 11})
		}
	case 2:
		_ = json.Unmarshal(data, &s.identify)
		f.greet(s, f.begin)
	case 6:
		_ = json.Unmarshal(data, &s.resume)
		f.greet(s, f.goOn)
	}
}

// greet answers an identify or a resume: with what a test has put there, or as is usual.
func (f *fake) greet(s *socketOf, usual func(*socketOf)) {
	if len(f.greeting) > 0 {
		first := f.greeting[0]
		f.greeting = f.greeting[1:]
		first(s)
		return
	}
	usual(s)
}

// begin starts a session: READY, then the guild with its channels.
func (f *fake) begin(s *socketOf) {
	f.events = nil
	f.tell(s, "READY", map[string]any{
		"v": 9, "user": map[string]any{"id": me, "username": "lastrow", "bot": true}, "session_id": "session-1",
		"resume_gateway_url": f.ws("/resume"), "application": map[string]any{"id": app}, "guilds": []any{map[string]any{"id": "700", "unavailable": true}},
	})
	f.tell(s, "GUILD_CREATE", map[string]any{
		"id": "700", "channels": []any{map[string]any{"id": "500", "type": 0}, map[string]any{"id": "501", "type": 4}},
		"roles": []any{map[string]any{"id": "600", "tags": map[string]any{"bot_id": me}}},
	})
}

// goOn replays what came after the sequence number that the client has.
func (f *fake) goOn(s *socketOf) {
	seq, _ := s.resume["seq"].(float64)
	for i, e := range f.events {
		if float64(i+1) > seq {
			s.send(e)
		}
	}
	f.tell(s, "RESUMED", map[string]any{})
}

// tell dispatches an event.
func (f *fake) tell(s *socketOf, kind string, data any) {
	e := map[string]any{"op": 0, "t": kind, "s": len(f.events) + 1, "d": data}
	f.events = append(f.events, e)
	if s != nil {
		s.send(e)
	}
}

func (s *socketOf) send(v any) {
	s.writing.Lock()
	defer s.writing.Unlock()
	_ = s.SetWriteDeadline(time.Now().Add(time.Second))
	_ = s.WriteJSON(v)
}

// hangUp closes with a code.
func (s *socketOf) hangUp(code int) {
	_ = s.WriteControl(websocket.CloseMessage, websocket.FormatCloseMessage(code, "as a test has it"), time.Now().Add(time.Second))
}

// socket is the nth connection, once it has come about.
func (f *fake) socket(n int) *socketOf {
	f.t.Helper()
	f.wait("a connection", func() bool { return len(f.sockets) > n })
	f.mu.Lock()
	defer f.mu.Unlock()
	return f.sockets[n]
}

// ready waits until the nth connection has a session.
func (f *fake) ready(n int) *socketOf {
	f.t.Helper()
	s := f.socket(n)
	f.wait("an identify or a resume", func() bool { return s.identify != nil || s.resume != nil })
	return s
}

// say dispatches an event over a connection.
func (f *fake) say(s *socketOf, kind string, data any) {
	f.mu.Lock()
	defer f.mu.Unlock()
	f.tell(s, kind, data)
}
