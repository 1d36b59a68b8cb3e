package discord

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"

	"lastrow/bot"
	"lastrow/bot/answer"

	"github.com/stretchr/testify/require"
)

func with(m map[string]any, pairs ...any) map[string]any {
	for i := 0; i < len(pairs); i += 2 {
		m[pairs[i].(string)] = pairs[i+1]
	}
	return m
}

func TestWhoIsAddressed(t *testing.T) {
	mentions := []any{map[string]any{"id": me}}
	fromMe := map[string]any{"id": "1", "author": map[string]any{"id": me, "bot": true}}
	for name, c := range map[string]struct {
		m    map[string]any
		want bot.Message
	}{
		"private":          {private(1, "how many boxes"), bot.Message{Addressed: true, Text: "how many boxes"}},
		"private, named":   {private(1, "<@"+me+"> how many"), bot.Message{Addressed: true, Text: "how many"}},
		"group":            {grouped(1, "how many boxes"), bot.Message{Channel: "500", Text: "how many boxes"}},
		"mention":          {with(grouped(1, "<@!"+me+">: how many"), "mentions", mentions), bot.Message{Channel: "500", Addressed: true, Text: "how many"}},
		"mention, at end":  {with(grouped(1, "how many <@"+me+">"), "mentions", mentions), bot.Message{Channel: "500", Addressed: true, Text: "how many"}},
		"mention, no list": {grouped(1, "<@"+me+"> how many"), bot.Message{Channel: "500", Addressed: true, Text: "how many"}},
		"mention alone":    {grouped(1, "<@"+me+">"), bot.Message{Channel: "500", Addressed: true}},
		"role":             {with(grouped(1, "<@&600> how many"), "mention_roles", []any{"600"}), bot.Message{Channel: "500", Addressed: true, Text: "how many"}},
		"another":          {grouped(1, "<@301> how many"), bot.Message{Channel: "500", Text: "<@301> how many"}},
		"reply": {with(grouped(1, "7 5/8"), "type", 19, "message_reference", map[string]any{"message_id": "1"}, "referenced_message", fromMe),
			bot.Message{Channel: "500", Addressed: true, Text: "7 5/8"}},
		"reply to another": {with(grouped(1, "7 5/8"), "type", 19, "referenced_message", map[string]any{"author": map[string]any{"id": "301"}}),
			bot.Message{Channel: "500", Text: "7 5/8"}},
		"group by channel": {with(private(1, "how many"), "channel_id", "500"), bot.Message{Channel: "500", Text: "how many"}},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			f := newFake(t)
			r := serve(t, f, nil, func(c *Config) { c.Contents = true })
			f.say(f.ready(0), "MESSAGE_CREATE", c.m)
			f.awaitPosts(1)
			got := r.messages()[0]
			require.WithinDuration(t, time.Now(), got.At, 5*time.Second)
			c.want.ID, c.want.User, c.want.At = c.m["id"].(string), "300", got.At
			require.Equal(t, c.want, got)
			require.EqualValues(t, 1<<0|1<<9|1<<12|1<<15, f.socket(0).identify["intents"], "guilds, their messages, direct messages, contents")
		})
	}
}

func TestReplyToAnAnswer(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	r := serve(t, f, nil)
	s := f.ready(0)
	f.say(s, "MESSAGE_CREATE", grouped(1, "<@"+me+"> how many"))
	first := f.awaitPosts(1)[0]
	f.say(s, "MESSAGE_CREATE", with(grouped(2, "7 5/8"), "type", 19, "message_reference", map[string]any{"message_id": first.id}))
	f.awaitPosts(2)
	require.True(t, r.messages()[1].Addressed, "also where the server doesn't show the message replied to")
}

func TestWhatIsNotHeard(t *testing.T) {
	bot, system := map[string]any{"id": "302", "bot": true}, map[string]any{"id": "302", "system": true}
	ms := []map[string]any{
		with(private(1, "a"), "author", bot), with(private(2, "b"), "author", system), with(private(3, "c"), "author", map[string]any{"id": me}),
		with(private(4, "d"), "webhook_id", "303"), grouped(5, "not addressed, and contents weren't asked for"),
	}
	for kind := 1; kind < 50; kind++ {
		if kind != 19 {
			ms = append(ms, with(private(10+kind, "e"), "type", kind))
		}
	}
	f := newFake(t)
	r := serve(t, f, nil)
	s := f.ready(0)
	for _, m := range ms {
		f.say(s, "MESSAGE_CREATE", m)
	}
	f.say(s, "MESSAGE_CREATE", private(100, "the last"))
	f.awaitPosts(1)
	require.Len(t, r.messages(), 1)
	require.EqualValues(t, 1<<0|1<<9|1<<12, f.socket(0).identify["intents"])
}

func TestSilence(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	r := serve(t, f, func(m bot.Message) bot.Reply {
		if m.Addressed {
			return echo(m)
		}
		return bot.Reply{Answer: answer.Answer{Outcome: answer.Silent}}
	}, func(c *Config) { c.Contents = true })
	s := f.ready(0)
	f.say(s, "MESSAGE_CREATE", grouped(1, "lunch?"))
	f.say(s, "MESSAGE_CREATE", grouped(2, "<@"+me+"> rows"))
	f.awaitPosts(1)
	require.Len(t, r.messages(), 2)
}

func TestOrderWithinAConversation(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	serve(t, f, func(m bot.Message) bot.Reply {
		time.Sleep(time.Duration(len(m.Text)%7) * time.Millisecond)
		return echo(m)
	})
	s := f.ready(0)
	var want, got []string
	for i := range 30 {
		text := strings.Repeat("x", (30-i)%7) + fmt.Sprint(i)
		want = append(want, "you said "+text)
		f.say(s, "MESSAGE_CREATE", private(i, text))
	}
	for _, p := range f.awaitPosts(30) {
		got = append(got, p.body["content"].(string))
	}
	require.Equal(t, want, got)
}

func TestOneConversationDoesNotHoldUpAnother(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	slow := make(chan bool)
	serve(t, f, func(m bot.Message) bot.Reply {
		if m.Text == "slow" {
			<-slow
		}
		return echo(m)
	})
	s := f.ready(0)
	f.say(s, "MESSAGE_CREATE", private(1, "slow"))
	f.say(s, "MESSAGE_CREATE", with(private(2, "quick"), "channel_id", "401"))
	require.Equal(t, "you said quick", f.awaitPosts(1)[0].body["content"])
	close(slow)
	f.awaitPosts(2)
}

func TestPanickingBot(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	serve(t, f, func(m bot.Message) bot.Reply {
		if m.Text == "bad" {
			panic("as a test has it")
		}
		return echo(m)
	})
	s := f.ready(0)
	f.say(s, "MESSAGE_CREATE", private(1, "bad"))
	f.say(s, "MESSAGE_CREATE", private(2, "good"))
	posts := f.awaitPosts(2)
	require.Equal(t, fault, posts[0].body["content"])
	require.Equal(t, "you said good", posts[1].body["content"])
}

func TestTooManyMessages(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	r := serve(t, f, nil, func(c *Config) { c.pace.user, c.pace.userBurst = 0.001, 3 })
	s := f.ready(0)
	for i := range 9 {
		f.say(s, "MESSAGE_CREATE", private(i, "again"))
	}
	f.say(s, "MESSAGE_CREATE", with(private(20, "someone else"), "channel_id", "401", "author", map[string]any{"id": "305"}))
	told := 0
	for _, p := range f.awaitPosts(5) {
		if p.body["content"] == tooMany {
			told++
		}
	}
	require.Equal(t, 1, told)
	require.Len(t, r.messages(), 4)
}

func TestFullConversation(t *testing.T) {
	q := newQueues(quietLog(), time.Second)
	hold, began := make(chan bool), make(chan bool)
	require.True(t, q.add("1", func(context.Context) { close(began); <-hold }))
	<-began
	for range longest {
		require.True(t, q.add("1", func(context.Context) {}))
	}
	require.False(t, q.add("1", func(context.Context) {}), "no more may wait")
	require.True(t, q.add("2", func(context.Context) {}), "elsewhere it may")
	close(hold)
	q.finish()
	require.Empty(t, q.waiting)
	require.False(t, q.add("1", func(context.Context) {}), "after the end nothing is taken")
}

func TestLimitsForgetWhoIsQuiet(t *testing.T) {
	l := newLimits(&pace{user: 1e9, userBurst: 2})
	for i := range 3 * crowd {
		ok, _ := l.allow(id(fmt.Sprint(i)))
		require.True(t, ok)
		require.LessOrEqual(t, len(l.users), crowd)
	}
}

func TestRecentForgetsTheOldest(t *testing.T) {
	r := newRecent(2)
	require.True(t, r.add("1"))
	require.False(t, r.add("1"))
	require.True(t, r.add("2"))
	require.True(t, r.add("3"))
	require.True(t, r.add("1"))
	require.Len(t, r.ids, 2)
}
