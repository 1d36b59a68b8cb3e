package discord

import (
	"net/http"
	"testing"
	"time"

	"github.com/bwmarrin/discordgo"
	"github.com/gorilla/websocket"
	"github.com/stretchr/testify/require"
)

// TestFakeAsTheLibrarySeesIt has discordgo's own session use the fake server: that the other tests' server is like
// Discord's doesn't rest on this package's client alone.
func TestFakeAsTheLibrarySeesIt(t *testing.T) {
	t.Parallel()
	f := newFake(t)
	f.strict = false
	base, err := apiBase(f.web.URL)
	require.NoError(t, err)
	d, err := discordgo.New("Bot " + token)
	require.NoError(t, err)
	d.Client = &http.Client{Transport: newTransport(base, Config{Log: quietLog(), pace: quick()})}
	d.Dialer = &websocket.Dialer{HandshakeTimeout: time.Second}
	d.ShouldReconnectOnError = false
	heard := make(chan *discordgo.MessageCreate, 1)
	d.AddHandler(func(_ *discordgo.Session, m *discordgo.MessageCreate) { heard <- m })
	require.NoError(t, d.Open())
	defer d.Close()
	require.Equal(t, me, d.State.User.ID)

	m := grouped(1, "rows")
	f.say(f.ready(0), "MESSAGE_CREATE", m)
	got := <-heard
	require.Equal(t, "rows", got.Content)
	sent, err := d.ChannelMessageSendReply(got.ChannelID, "18", got.SoftReference())
	require.NoError(t, err)
	posts := f.awaitPosts(1)
	require.Equal(t, posts[0].id, sent.ID)
	require.Equal(t, m["id"], posts[0].body["message_reference"].(map[string]any)["message_id"])
	there, err := d.ApplicationCommandCreate(app, "", command())
	require.NoError(t, err)
	require.True(t, has([]*discordgo.ApplicationCommand{there}, command()))
}
