package discord

import (
	"bytes"
	"context"
	"fmt"
	"log/slog"
	"strings"
	"sync"
	"testing"
	"time"

	"lastrow/bot"
	"lastrow/bot/answer"

	"github.com/stretchr/testify/require"
	"golang.org/x/time/rate"
)

// quick is the pace of the tests.
func quick() *pace {
	return &pace{
		dial: 2 * time.Second, hello: 4 * time.Second, backoff: 20 * time.Millisecond, most: 100 * time.Millisecond,
		invalid: 20 * time.Millisecond, identify: rate.Inf, identifyBurst: 1, settle: 20 * time.Millisecond,
		attempt: 2 * time.Second, attempts: 4, retry: 5 * time.Millisecond, retryLimit: 3 * time.Second,
		callback: 2 * time.Second, token: time.Minute, away: time.Minute, user: 1000, userBurst: 1000, finish: time.Second,
	}
}

// running is a bot at work.
type running struct {
	*fake
	config Config
	log    *bytes.Buffer
	stop   context.CancelFunc
	ended  chan error

	mu    sync.Mutex
	heard []bot.Message
}

// serve starts a bot that a fake server has been set up for; nil stands for one that repeats what it is told.
func serve(t *testing.T, f *fake, reply func(bot.Message) bot.Reply, change ...func(*Config)) *running {
	r := &running{fake: f, log: &bytes.Buffer{}, ended: make(chan error, 1)}
	r.config = Config{Token: token, API: f.web.URL, Log: slog.New(slog.NewTextHandler(&locked{w: r.log}, nil)), pace: quick()}
	for _, c := range change {
		c(&r.config)
	}
	if reply == nil {
		reply = echo
	}
	ctx, stop := context.WithCancel(context.Background())
	r.stop = stop
	go func() {
		r.ended <- Serve(ctx, r.config, func(_ context.Context, m bot.Message) (bot.Reply, error) {
			r.mu.Lock()
			r.heard = append(r.heard, m)
			r.mu.Unlock()
			return reply(m), nil
		})
	}()
	t.Cleanup(func() {
		stop()
		select {
		case <-r.ended:
		case <-time.After(3 * time.Second):
			t.Error("serving doesn't end")
		}
	})
	return r
}

func echo(m bot.Message) bot.Reply { return says("you said " + m.Text) }

func says(text string, files ...bot.File) bot.Reply {
	return bot.Reply{Answer: answer.Answer{Outcome: answer.Answered, Text: text}, Files: files}
}

// locked lets a log be written by several and read afterwards.
type locked struct {
	mu sync.Mutex
	w  *bytes.Buffer
}

func (l *locked) Write(p []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.w.Write(p)
}

func (r *running) messages() []bot.Message {
	r.mu.Lock()
	defer r.mu.Unlock()
	return append([]bot.Message{}, r.heard...)
}

// snowflake is an id of Discord's making for this moment.
func snowflake(n int) string {
	return fmt.Sprint(uint64(time.Now().UnixMilli()-epoch)<<22 + uint64(n))
}

// private is a direct message.
func private(n int, text string) map[string]any {
	return map[string]any{
		"id": snowflake(n), "channel_id": "400", "type": 0, "content": text, "timestamp": time.Now().Format(time.RFC3339),
		"author": map[string]any{"id": "300", "username": "mara"},
	}
}

// grouped is a message in a guild's channel.
func grouped(n int, text string) map[string]any {
	m := private(n, text)
	m["channel_id"], m["guild_id"], m["member"] = "500", "700", map[string]any{"roles": []any{}}
	return m
}

func TestAnswerIsAReplyWithThePicture(t *testing.T) {
	t.Parallel()
	picture := bot.File{Name: "plan.png", Type: "image/png", Alt: "Floor plan, 18 rows", Data: []byte("\x89PNG…")}
	f := newFake(t)
	r := serve(t, f, func(bot.Message) bot.Reply { return says("18 rows @everyone", picture) })
	m := grouped(1, "<@"+me+">, how many rows")
	m["mentions"] = []any{map[string]any{"id": me}}
	f.say(f.ready(0), "MESSAGE_CREATE", m)
	got := f.awaitPosts(1)[0]

	require.Equal(t, "/api/v9/channels/500/messages", got.path)
	require.Equal(t, "Bot "+token, got.auth)
	require.Equal(t, "18 rows @everyone", got.body["content"])
	require.Equal(t, map[string]any{"parse": []any{}, "replied_user": false}, got.body["allowed_mentions"])
	require.Equal(t, map[string]any{"message_id": m["id"], "channel_id": "500", "guild_id": "700", "fail_if_not_exists": false}, got.body["message_reference"])
	require.Equal(t, []any{map[string]any{"id": 0.0, "filename": "plan.png", "description": "Floor plan, 18 rows"}}, got.body["attachments"])
	require.Equal(t, []upload{{"plan.png", "image/png", picture.Data}}, got.files)
	require.Equal(t, true, got.body["enforce_nonce"])
	require.LessOrEqual(t, len(got.body["nonce"].(string)), 25)

	heard := r.messages()
	require.Len(t, heard, 1)
	require.Equal(t, "how many rows", heard[0].Text)
	require.Equal(t, "500", heard[0].Channel)
	require.Equal(t, "300", heard[0].User)
	require.True(t, heard[0].Addressed)
}

func TestTokenIsNeverLogged(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	r := serve(t, f, nil)
	f.fail("POST /api/v9/interactions/1/secret-token/callback", broken, broken, broken, broken)
	f.say(f.ready(0), "INTERACTION_CREATE", slash("1", "secret-token", "rows"))
	f.awaitPosts(1)
	r.stop()
	require.NoError(t, <-r.ended)
	r.ended <- nil
	require.Contains(t, r.log.String(), "interaction")
	require.NotContains(t, r.log.String(), token)
	require.NotContains(t, r.log.String(), "secret-token")
	var b bytes.Buffer
	l := slog.New(redacting{slog.NewTextHandler(&b, nil), token}).With("with", "x"+token).WithGroup("g")
	l.Error("at "+token, "any", fmt.Errorf("Bot %s", token), slog.Group("in", "a", token))
	require.NotContains(t, b.String(), token)
	require.Equal(t, 4, strings.Count(b.String(), "[token]"))
}

func quietLog() *slog.Logger { return slog.New(slog.DiscardHandler) }
