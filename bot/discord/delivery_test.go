package discord

import (
	"net/http"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"lastrow/bot"

	"github.com/stretchr/testify/require"
)

func TestLongReplies(t *testing.T) {
	picture := bot.File{Name: "plan.png", Type: "image/png", Data: []byte("x")}
	line := strings.Repeat("row ", 24) + "end\n"
	for name, c := range map[string]struct {
		text     string
		messages int
	}{
		"2000":       {strings.Repeat("x", 2000), 1},
		"2001":       {strings.Repeat("x", 2001), 2},
		"lines":      {strings.Repeat(line, 50), 3},
		"very long":  {strings.Repeat(line, 300), 1},
		"wide signs": {strings.Repeat("½", 2000), 1},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			f := newFake(t)
			serve(t, f, func(bot.Message) bot.Reply { return says(c.text, picture) })
			f.say(f.ready(0), "MESSAGE_CREATE", private(1, "a"))
			posts := f.awaitPosts(c.messages)
			said := ""
			for i, p := range posts {
				require.LessOrEqual(t, utf8.RuneCountInString(p.body["content"].(string)), 2000)
				require.Equal(t, i == 0, p.body["message_reference"] != nil)
				said += p.body["content"].(string)
			}
			files := posts[len(posts)-1].files
			require.Equal(t, "plan.png", files[len(files)-1].name)
			if len(files) > 1 {
				require.Equal(t, "reply.txt", files[0].name)
				said = string(files[0].data)
			}
			require.True(t, squeeze(c.text) == squeeze(said), "nothing is lost")
		})
	}
}

func squeeze(s string) string { return strings.Join(strings.Fields(s), "") }

func TestFilesTooLarge(t *testing.T) {
	t.Parallel()
	most, over := make([]byte, 10<<20), make([]byte, 10<<20+1)
	f := newFake(t)
	serve(t, f, func(bot.Message) bot.Reply {
		return says("a", bot.File{Name: "over.png", Data: over}, bot.File{Name: "most.png", Data: most})
	})
	f.say(f.ready(0), "MESSAGE_CREATE", private(1, "a"))
	got := f.awaitPosts(1)[0]
	require.Len(t, got.files, 1)
	require.Equal(t, "most.png", got.files[0].name)
	require.Contains(t, got.body["content"], tooLarge)
}

func TestSlashCommand(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	worked := make(chan bool)
	r := serve(t, f, func(m bot.Message) bot.Reply {
		<-worked
		return says("you said "+m.Text, bot.File{Name: "plan.png", Type: "image/png", Alt: "a plan", Data: []byte("x")})
	})
	s := f.ready(0)
	f.say(s, "INTERACTION_CREATE", slash("1", "secret", "rows"))
	inGuild := slash("2", "secret2", "boxes")
	delete(inGuild, "user")
	f.say(s, "INTERACTION_CREATE", with(inGuild, "guild_id", "700", "channel_id", "500", "member", map[string]any{"user": map[string]any{"id": "301"}}))
	f.say(s, "INTERACTION_CREATE", slash("1", "secret", "rows"))
	f.wait("two first answers, which don't wait for the bot", func() bool { return f.opened() == 2 })
	close(worked)
	posts := f.awaitPosts(2)
	require.Equal(t, 2, f.asked(http.MethodPost, "/api/v9/interactions"))
	for _, p := range posts {
		require.Equal(t, http.MethodPatch, p.method)
		require.Equal(t, map[string]any{"parse": []any{}, "replied_user": false}, p.body["allowed_mentions"])
		require.Len(t, p.files, 1)
	}
	for _, m := range r.messages() {
		require.True(t, m.Addressed)
		require.Equal(t, map[string]string{"300": "rows", "301": "boxes"}[m.User], m.Text)
		require.Equal(t, map[string]string{"300": "", "301": "500"}[m.User], m.Channel)
	}
}

// opened counts the interactions that were told to wait; the fake is locked.
func (f *fake) opened() (n int) {
	for _, q := range f.requests {
		if strings.HasSuffix(q.path, "/callback") && q.body["type"] == 5.0 {
			n++
		}
	}
	return n
}

func TestSlashCommandFirstAnswerIsSlow(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	f.fail("POST /api/v9/interactions/1/secret/callback", func(http.ResponseWriter, *http.Request) bool {
		time.Sleep(400 * time.Millisecond)
		return false
	})
	serve(t, f, nil, func(c *Config) { c.pace.callback = 100 * time.Millisecond })
	f.say(f.ready(0), "INTERACTION_CREATE", slash("1", "secret", "rows"))
	got := f.awaitPosts(1)[0]
	require.Equal(t, "/api/v9/channels/400/messages", got.path, "too late for an edit, so it goes to the channel")
}

func TestSlashCommandFirstAnswerWasTakenThoughLost(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	f.fail("POST /api/v9/interactions/1/secret/callback", broken, answering(400, `{"code":40060,"message":"Interaction has already been acknowledged."}`))
	serve(t, f, nil)
	f.say(f.ready(0), "INTERACTION_CREATE", slash("1", "secret", "rows"))
	require.Equal(t, http.MethodPatch, f.awaitPosts(1)[0].method)
}

func TestSlashCommandTokenHasRunOut(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	serve(t, f, nil, func(c *Config) { c.pace.token = 0 })
	f.say(f.ready(0), "INTERACTION_CREATE", slash("1", "secret", "rows"))
	require.Equal(t, "/api/v9/channels/400/messages", f.awaitPosts(1)[0].path)
	require.Zero(t, f.asked(http.MethodPatch, "/api/v9/webhooks"))
}

func TestSlashCommandEditRefused(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	f.fail("PATCH /api/v9/webhooks/"+app+"/secret/messages/@original", answering(404, `{"code":10015,"message":"Unknown Webhook"}`))
	serve(t, f, nil)
	f.say(f.ready(0), "INTERACTION_CREATE", slash("1", "secret", "rows"))
	require.Equal(t, "/api/v9/channels/400/messages", f.awaitPosts(1)[0].path)
}

func TestLongAnswerToASlashCommand(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	serve(t, f, func(bot.Message) bot.Reply { return says(strings.Repeat("row ", 900)) })
	f.say(f.ready(0), "INTERACTION_CREATE", slash("1", "secret", "rows"))
	posts := f.awaitPosts(2)
	require.Equal(t, http.MethodPatch, posts[0].method)
	require.Equal(t, "/api/v9/webhooks/"+app+"/secret", posts[1].path)
}

func TestCommandIsRegisteredOnce(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	r := serve(t, f, nil)
	f.wait("the command", func() bool { return len(f.commands) == 1 })
	f.socket(0).send(map[string]any{"op": 9, "d": false})
	f.say(f.ready(1), "MESSAGE_CREATE", private(1, "a"))
	f.awaitPosts(1)
	r.stop()
	require.NoError(t, <-r.ended)
	r.ended <- nil
	serve(t, f, nil)
	f.say(f.ready(2), "MESSAGE_CREATE", private(3, "b"))
	f.awaitPosts(2)
	require.Equal(t, 1, f.asked(http.MethodPost, "/api/v9/applications/"+app+"/commands"), "nor by a second run")
	require.Equal(t, "lastrow", f.commands[0]["name"])
}

func TestSplit(t *testing.T) {
	for text, want := range map[string][]string{
		"":                {""},
		"abcdefghij":      {"abcdefghij"},
		"abcdefghijk":     {"abcdefghij", "k"},
		"abcdefg hijk":    {"abcdefg", "hijk"},
		"abcdefg\nhi jkl": {"abcdefg", "hi jkl"},
		"a bcdefghijk":    {"a bcdefghi", "jk"},
		"😀😀😀😀😀😀":          {"😀😀😀😀😀", "😀"},
	} {
		require.Equal(t, want, split(text, 10), text)
	}
}
