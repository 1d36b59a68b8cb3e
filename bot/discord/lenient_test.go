package discord

import (
	"context"
	"encoding/json"
	"net/http"
	"strings"
	"testing"

	"lastrow/bot"
	"lastrow/bot/answer"

	"github.com/gorilla/websocket"
	"github.com/stretchr/testify/require"
)

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

func TestWhereToResume(t *testing.T) {
	for _, c := range []struct{ api, gateway, told, want string }{
		{"", "", "wss://gateway-us-east1-b.discord.gg", "wss://gateway-us-east1-b.discord.gg/?encoding=json&v=9"},
		{"https://discord.com", "", "wss://gateway-us-east1-b.discord.gg", "wss://gateway-us-east1-b.discord.gg/?encoding=json&v=9"},
		{"https://chat.example/api/v10", "", "wss://resume.chat.example/x?a=b", "wss://resume.chat.example/x?a=b&encoding=json&v=10"},
		{"http://127.0.0.1:80", "", "wss://gateway-us-east1-b.discord.gg", ""},
		{"", "wss://set.example", "wss://resume.example", ""},
		{"", "", "", ""},
		{"", "", "gopher://resume.example", ""},
	} {
		r, err := newREST(Config{API: c.api, Token: token, Log: quietLog(), pace: quick()})
		require.NoError(t, err)
		g := gateway{config: Config{API: c.api, Gateway: c.gateway}, rest: r}
		require.Equal(t, c.want, g.resumeAt(c.told), "%+v", c)
	}
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

// FuzzEvents gives the server events of any form.
func FuzzEvents(f *testing.F) {
	for _, m := range []any{private(1, "a"), grouped(2, "<@"+me+"> b"), slash("1", "t", "c"), map[string]any{"channels": []any{nil}, "roles": 3}} {
		b, _ := json.Marshal(m)
		f.Add(b)
	}
	rest, err := newREST(Config{Token: token, Log: quietLog(), pace: quick()})
	require.NoError(f, err)
	f.Fuzz(func(t *testing.T, data []byte) {
		var heard []bot.Message
		s := newServer(Config{Log: quietLog(), pace: quick(), Contents: true}, rest, func(_ context.Context, m bot.Message) (bot.Reply, error) {
			heard = append(heard, m)
			return bot.Reply{Answer: answer.Answer{Outcome: answer.Silent}}, nil
		})
		s.me = me
		s.take(event{"GUILD_CREATE", data})
		s.take(event{"MESSAGE_CREATE", data})
		i := read[interaction](data)
		i.author()
		i.text()
		s.work.finish()
		for _, m := range heard {
			require.NotContains(t, m.Text, "<@"+me+">")
			require.NotEmpty(t, m.User)
		}
	})
}
