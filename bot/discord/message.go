package discord

import (
	"cmp"
	"context"
	"regexp"
	"strings"
	"time"

	"lastrow/bot"
)

// arrived is a message for the bot, and where its answer goes.
type arrived struct {
	bot.Message
	to target
}

// message takes up a message that someone said, once.
func (s *server) message(m message) {
	if m.ID == "" || m.Channel == "" || m.Author == nil {
		return
	}
	group := m.Guild != "" || len(m.Member) > 0 || s.places.isGroup(m.Channel)
	s.places.saw(m.Channel, m.ID, group)
	if !s.seen.add(m.ID) || !s.saidBySomeone(m) {
		return
	}
	a := s.arrival(m, group)
	if !a.Addressed && (a.Text == "" || !s.config.Contents) {
		return
	}
	s.admit(m.Channel, m.Author.ID, a)
}

// saidBySomeone is false for notices, for other bots and for the bot itself.
func (s *server) saidBySomeone(m message) bool {
	switch {
	case m.Kind != kindPlain && m.Kind != kindReply:
		return false
	case m.Author.ID == "" || m.Author.ID == s.self():
		return false
	}
	return !m.Author.Bot && !m.Author.System && m.Webhook == ""
}

func (s *server) arrival(m message, group bool) arrived {
	text, named := s.strip(m.Content)
	a := arrived{
		Message: bot.Message{
			ID: string(m.ID), User: string(m.Author.ID), Text: text, At: m.at(),
			Addressed: !group || named || s.mentioned(m) || s.repliedTo(m),
		},
		to: target{channel: m.Channel, guild: m.Guild, message: m.ID, nonce: m.ID},
	}
	if a.At.IsZero() {
		a.At = time.Now()
	}
	if group {
		a.Channel = string(m.Channel)
	}
	return a
}

func (s *server) mentioned(m message) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, u := range m.Mentions {
		if u.ID == s.me && s.me != "" {
			return true
		}
	}
	for _, r := range m.Roles {
		if s.roles[r] {
			return true
		}
	}
	return false
}

func (s *server) repliedTo(m message) bool {
	if m.Kind == kindReply && m.Referenced != nil && m.Referenced.Author != nil {
		return m.Referenced.Author.ID == s.self()
	}
	return m.Reference != nil && s.sent.has(m.Reference.Message)
}

var mention = regexp.MustCompile(`<@([!&]?)(\d+)>`)

// strip takes the mentions of the bot and its role out of a text, and says whether there were any.
func (s *server) strip(text string) (stripped string, named bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	stripped = mention.ReplaceAllStringFunc(text, func(found string) string {
		parts := mention.FindStringSubmatch(found)
		who := id(parts[2])
		if parts[1] == "&" && s.roles[who] || parts[1] != "&" && who == s.me {
			named = true
			return " "
		}
		return found
	})
	if named {
		stripped = strings.TrimLeft(stripped, " \t\r\n,:;")
	}
	return strings.TrimSpace(stripped), named
}

// admit puts a message into its conversation's queue, unless its user sends too many or too many wait there. Whoever spoke
// to the bot is told, once.
func (s *server) admit(conversation, from id, a arrived) {
	ok, tell := s.users.allow(from)
	if ok && s.work.add(conversation, func(ctx context.Context) { s.answerTo(ctx, a) }) {
		return
	}
	s.log.Warn("too many messages, one left out", "user", from, "channel", conversation, "message", a.ID)
	if a.to.token != "" || tell && a.Addressed {
		s.work.background(func(ctx context.Context) { s.deliver(ctx, a.to, tooMany, nil) })
	}
}

// answerTo gives the bot a message and delivers its reply.
func (s *server) answerTo(ctx context.Context, a arrived) {
	begun := time.Now()
	text, files, ok := s.answer(ctx, a)
	if !ok && a.to.token != "" {
		text, ok = nothing, true
	}
	if !ok {
		return
	}
	s.deliver(ctx, a.to, text, files)
	s.log.Info("answered", "message", a.ID, "channel", cmp.Or(a.Channel, "private"), "took", time.Since(begun).Round(time.Millisecond))
}
