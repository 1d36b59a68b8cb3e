package discord

import (
	"net/http"
	"strings"
	"testing"
	"time"

	"lastrow/bot"

	"github.com/stretchr/testify/require"
)

const toPrivate = "POST /api/v9/channels/400/messages"

func TestFailedRequestsArriveOnce(t *testing.T) {
	html := "<html>busy</html>"
	for name, answers := range map[string][]misanswer{
		"500":              {answering(500, html)},
		"502":              {answering(502, html), answering(502, html)},
		"503":              {answering(503, `{"message":"over capacity"}`)},
		"504":              {answering(504, "")},
		"EOF":              {broken},
		"429 as JSON":      {answering(429, `{"message":"slow","retry_after":0.02,"global":false}`)},
		"429 global":       {answering(429, `{"retry_after":0.02,"global":true}`, "X-RateLimit-Global", "true")},
		"429 by a proxy":   {answering(429, html, "Retry-After", "0.02")},
		"one after other":  {answering(429, html, "Retry-After", "0"), answering(500, ""), broken},
		"odd limits":       {answering(500, "", "X-RateLimit-Remaining", "many", "X-RateLimit-Reset", "soon", "X-RateLimit-Reset-After", "x")},
		"limit by instant": {answering(500, "", "X-RateLimit-Reset", "1470173023.123", "Date", "today", "X-RateLimit-Remaining", "1")},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			f := newFake(t)
			serve(t, f, nil)
			f.fail(toPrivate, answers...)
			f.say(f.ready(0), "MESSAGE_CREATE", private(1, "a"))
			f.awaitPosts(1)
			require.Equal(t, len(answers)+1, f.asked(http.MethodPost, "/api/v9/channels/400"))
		})
	}
}

func TestDoneThoughTheAnswerWasLost(t *testing.T) {
	for name, then := range map[string]misanswer{
		"not JSON": answering(200, "<html>"), "cut off": answering(200, `{"id":"8`), "too short": answering(200, "{}", "Content-Length", "900"),
		"EOF": broken, "500": answering(500, ""), "504": answering(504, "<html>"),
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			f := newFake(t)
			serve(t, f, func(bot.Message) bot.Reply { return says("a", bot.File{Name: "a.png", Data: []byte("x")}) })
			f.fail(toPrivate, f.doneBut(then))
			s := f.ready(0)
			f.say(s, "MESSAGE_CREATE", private(1, "a"))
			f.awaitPosts(1)
			f.say(s, "MESSAGE_CREATE", private(2, "b"))
			f.awaitPosts(2)
		})
	}
}

func TestOddLimitsOfWhatWasDone(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	serve(t, f, func(bot.Message) bot.Reply { return says(strings.Repeat("row ", 900)) })
	f.fail(toPrivate, f.doneBut(answering(200, "{}", "X-RateLimit-Remaining", "many", "X-RateLimit-Reset", "soon", "X-RateLimit-Reset-After", "9e9")))
	f.say(f.ready(0), "MESSAGE_CREATE", private(1, "a"))
	f.awaitPosts(2)
}

func TestRetryAfterIsKept(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	serve(t, f, nil)
	f.fail(toPrivate, answering(429, "{}", "Retry-After", "1"))
	begun := time.Now()
	f.say(f.ready(0), "MESSAGE_CREATE", private(1, "a"))
	require.GreaterOrEqual(t, f.awaitPosts(1)[0].at.Sub(begun), time.Second)
}

func TestRetriesEnd(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	serve(t, f, nil)
	f.fail(toPrivate, broken, broken, broken, broken)
	s := f.ready(0)
	f.say(s, "MESSAGE_CREATE", private(1, "a"))
	f.say(s, "MESSAGE_CREATE", private(2, "b"))
	require.Equal(t, "you said b", f.awaitPosts(1)[0].body["content"])
}

func TestLongWaitIsNotKept(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	serve(t, f, nil)
	f.fail(toPrivate, answering(429, `{"retry_after": 3600}`))
	s := f.ready(0)
	f.say(s, "MESSAGE_CREATE", private(1, "a"))
	f.say(s, "MESSAGE_CREATE", private(2, "b"))
	require.Equal(t, "you said b", f.awaitPosts(1)[0].body["content"])
}

func TestRefusedPosts(t *testing.T) {
	picture := bot.File{Name: "plan.png", Type: "image/png", Data: []byte("x")}
	forbidden := `{"message":"Missing Permissions","code":50013}`
	for name, c := range map[string]struct {
		answers           []misanswer
		posts, asked      int
		file, refers, say bool
	}{
		"may not attach":  {[]misanswer{answering(403, forbidden)}, 1, 2, false, true, true},
		"may not send":    {[]misanswer{answering(403, forbidden), answering(403, forbidden)}, 0, 2, false, false, false},
		"may not see":     {[]misanswer{answering(403, `{"code":50001}`)}, 0, 1, false, false, false},
		"no channel":      {[]misanswer{answering(404, `{"code":10003}`)}, 0, 1, false, false, false},
		"no history":      {[]misanswer{answering(400, `{"code":160002}`)}, 1, 2, true, false, false},
		"message is gone": {[]misanswer{answering(400, `{"code":50035,"errors":{"message_reference":{"_errors":[]}}}`)}, 1, 2, true, false, false},
		"unknown message": {[]misanswer{answering(404, `{"code":10008}`)}, 1, 2, true, false, false},
		"file too large":  {[]misanswer{answering(413, `{"code":40005}`)}, 1, 2, false, true, true},
		"neither":         {[]misanswer{answering(400, `{"code":160002}`), answering(403, forbidden)}, 1, 3, false, false, true},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			f := newFake(t)
			serve(t, f, func(bot.Message) bot.Reply { return says("a", picture) })
			f.fail(toPrivate, c.answers...)
			f.say(f.ready(0), "MESSAGE_CREATE", private(1, "a"))
			f.wait("the requests", func() bool { return f.countPosts() >= c.asked })
			posts := f.awaitPosts(c.posts)
			require.Equal(t, c.asked, f.asked(http.MethodPost, "/api/v9/channels"))
			for _, p := range posts {
				require.Equal(t, c.file, len(p.files) == 1)
				require.Equal(t, c.refers, p.body["message_reference"] != nil)
				require.Equal(t, c.say, strings.Contains(p.body["content"].(string), noFiles))
				require.Equal(t, []any{}, p.body["allowed_mentions"].(map[string]any)["parse"])
			}
		})
	}
}

// countPosts counts requests to post in a channel; the fake is locked.
func (f *fake) countPosts() (n int) {
	for _, r := range f.requests {
		if r.method == http.MethodPost && strings.HasPrefix(r.path, "/api/v9/channels") {
			n++
		}
	}
	return n
}

func TestAPIBase(t *testing.T) {
	for address, want := range map[string]string{
		"":                             "https://discord.com/api/v9",
		"http://127.0.0.1:80":          "http://127.0.0.1:80/api/v9",
		"http://127.0.0.1:80/":         "http://127.0.0.1:80/api/v9",
		"https://chat.example/api":     "https://chat.example/api/v9",
		"https://chat.example/api/":    "https://chat.example/api/v9",
		"https://chat.example/api/v10": "https://chat.example/api/v10",
		"https://chat.example/x":       "https://chat.example/x/api/v9",
	} {
		u, err := apiBase(address)
		require.NoError(t, err)
		require.Equal(t, want, u.String())
	}
	for _, address := range []string{"127.0.0.1:80", "ftp://x", "https://", "::"} {
		_, err := apiBase(address)
		require.Error(t, err, address)
	}
}
