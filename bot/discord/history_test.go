package discord

import (
	"net/http"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func (f *fake) past(channel string, ms ...map[string]any) {
	f.mu.Lock()
	defer f.mu.Unlock()
	f.history[channel] = append(f.history[channel], ms...)
}

// newSession drops the bot's connection and has it begin again, with nothing replayed.
func newSession(f *fake, s *socketOf) {
	s.send(map[string]any{"op": 9, "d": false})
}

func TestSaidWhileAway(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	r := serve(t, f, nil)
	s := f.ready(0)
	before := private(1, "before")
	f.say(s, "MESSAGE_CREATE", before)
	f.awaitPosts(1)
	time.Sleep(5 * time.Millisecond)
	f.past("400", before, private(2, "missed"), with(private(3, "a bot's"), "author", map[string]any{"id": "302", "bot": true}))
	f.past("500", grouped(4, "<@"+me+"> also missed"), grouped(5, "to someone else"))
	newSession(f, s)
	f.awaitPosts(3)
	require.Len(t, r.messages(), 3)
	texts := []string{r.messages()[1].Text, r.messages()[2].Text}
	require.ElementsMatch(t, []string{"missed", "also missed"}, texts)

	newSession(f, f.ready(1))
	f.ready(2)
	time.Sleep(80 * time.Millisecond)
	f.awaitPosts(3)
}

func TestSaidWhileAwayThenResumedWithNothingReplayed(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	serve(t, f, nil)
	s := f.ready(0)
	f.say(s, "MESSAGE_CREATE", private(1, "before"))
	f.awaitPosts(1)
	time.Sleep(5 * time.Millisecond)
	f.past("400", private(2, "missed"))
	s.Close()
	require.Equal(t, "you said missed", f.awaitPosts(2)[1].body["content"])
}

// looked says whether the guild's channel has been read; the fake is locked.
func (f *fake) looked() bool {
	return slices.ContainsFunc(f.requests, func(q request) bool {
		return q.method == http.MethodGet && q.path == "/api/v9/channels/500/messages"
	})
}

func TestSaidWhileAwayIsNotPassedOverByWhatCameLater(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	serve(t, f, nil, func(c *Config) { c.pace.settle = 400 * time.Millisecond })
	s := f.ready(0)
	before := private(1, "before")
	f.say(s, "MESSAGE_CREATE", before)
	f.awaitPosts(1)
	f.wait("the first look back", func() bool { return f.looked() })
	missed := private(2, "missed")
	f.past("400", missed)
	newSession(f, s)
	again := f.ready(1)
	time.Sleep(5 * time.Millisecond)
	f.say(again, "MESSAGE_CREATE", private(3, "live"))
	posts := f.awaitPosts(3)
	require.Equal(t, "you said missed", posts[2].body["content"])
	for _, q := range f.requests {
		if q.method == "GET" && q.path == "/api/v9/channels/400/messages" {
			require.Contains(t, q.query, "after="+before["id"].(string))
		}
	}
}

func TestSaidBeforeTheProgramBegan(t *testing.T) {
	t.Parallel()
	old := with(grouped(0, "<@"+me+"> long ago"), "id", "100000000000000000", "timestamp", time.Now().Add(-time.Hour).Format(time.RFC3339))
	f := newFake(t)
	answered, reply, open := grouped(1, "<@"+me+"> answered"), with(grouped(2, "the answer"), "author", map[string]any{"id": me, "bot": true}), grouped(3, "<@"+me+"> not yet")
	f.past("500", old, answered, reply, open)
	r := serve(t, f, nil)
	f.ready(0)
	require.Equal(t, "you said not yet", f.awaitPosts(1)[0].body["content"])
	require.Len(t, r.messages(), 1)
}

func TestServerWithoutHistory(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	f.fail("GET /api/v9/channels/500/messages", answering(403, `{"code":50001}`))
	serve(t, f, nil)
	f.say(f.ready(0), "MESSAGE_CREATE", private(1, "a"))
	f.awaitPosts(1)
	require.LessOrEqual(t, f.asked("GET", "/api/v9/channels/500"), 1)
}

func TestIds(t *testing.T) {
	// The example in Discord's reference of snowflakes: 175928847299117063 was made at 2016-04-30 11:18:25.796 UTC.
	require.Equal(t, time.Date(2016, 4, 30, 11, 18, 25, 796e6, time.UTC), id("175928847299117063").at().UTC())
	require.True(t, id("12").at().IsZero())
	require.True(t, id("100").after("99"))
	require.False(t, id("99").after("100"))
	require.False(t, id("99").after("99"))
	require.True(t, id("1").after(""))
}
