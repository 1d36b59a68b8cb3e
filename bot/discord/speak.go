package discord

import (
	"cmp"
	"context"
	"encoding/json"
	"fmt"
	"runtime"

	"github.com/bwmarrin/discordgo"
)

// event is something that happened, as the gateway tells it.
type event struct {
	kind string
	data json.RawMessage
}

// introduce resumes the session, or begins one.
func (c *conn) introduce(ctx context.Context) error {
	g := c.gateway
	token := "Bot " + g.config.Token
	if s := g.session; s.id != "" && s.seq != nil {
		return c.write(opResume, map[string]any{"token": token, "session_id": s.id, "seq": *s.seq})
	}
	g.session = session{}
	c.seq.Store(nil)
	if err := cmp.Or(g.identifies.Wait(ctx), g.spacing.Wait(ctx)); err != nil {
		return err
	}
	return c.write(opIdentify, map[string]any{
		"token":      token,
		"intents":    intents(g.config.Contents),
		"properties": map[string]string{"os": runtime.GOOS, "browser": "lastrow", "device": "lastrow"},
	})
}

// intents are what is asked for: guilds for their channels and roles, and messages.
func intents(contents bool) discordgo.Intent {
	in := discordgo.IntentGuilds | discordgo.IntentGuildMessages | discordgo.IntentDirectMessages
	if contents {
		in |= discordgo.IntentMessageContent
	}
	return in
}

// handle does what a packet asks; an error ends the connection.
func (c *conn) handle(p packet) error {
	switch p.Op {
	case opDispatch:
		c.dispatch(p)
	case opHeartbeat:
		return c.write(opHeartbeat, c.seq.Load())
	case opHeartbeatAck:
		c.unacked.Store(false)
	case opReconnect:
		return errReconnect
	case opInvalidSession:
		return c.invalid(p)
	}
	return nil
}

// invalid forgets the session, unless the gateway says that it may be resumed.
func (c *conn) invalid(p packet) error {
	if string(p.Data) != "true" {
		c.gateway.session = session{}
		c.seq.Store(nil)
	}
	return errInvalid
}

func (c *conn) dispatch(p packet) {
	if p.Seq != nil {
		c.seq.Store(p.Seq)
	}
	switch p.Type {
	case "READY":
		c.ready(p)
	case "RESUMED":
		c.gateway.worked = true
		c.gateway.log.Info("session resumed")
	}
	defer func() {
		if r := recover(); r != nil {
			c.gateway.log.Error("event handler failed", "event", p.Type, "panic", fmt.Sprint(r))
		}
	}()
	c.gateway.dispatch(event{p.Type, p.Data})
}

// ready notes the session that has begun.
func (c *conn) ready(p packet) {
	var r struct {
		Session string `json:"session_id"`
		Resume  string `json:"resume_gateway_url"`
	}
	_ = json.Unmarshal(p.Data, &r)
	g := c.gateway
	g.worked = true
	g.session.id, g.session.resume = r.Session, g.resumeAt(r.Resume)
	g.log.Info("session begun", "session", r.Session)
}
