package discord

import (
	"context"
	"fmt"
	"net/http"
	"time"

	"lastrow/bot"

	"github.com/bwmarrin/discordgo"
)

// kindCommand is the kind of interaction that a slash command is.
const kindCommand = 2

// interaction takes up a slash command. Discord waits three seconds for a first answer, so that is given at once, and
// edited when the bot has replied.
func (s *server) interaction(i interaction) {
	from := i.author()
	if i.ID == "" || i.Token == "" || i.Kind != kindCommand || i.Data.Name != commandName || from == nil || !s.seen.add(i.ID) {
		return
	}
	a := arrived{
		Message: bot.Message{ID: string(i.ID), User: string(from.ID), Addressed: true, Text: i.text(), At: time.Now()},
		to:      target{channel: i.Channel, guild: i.Guild, nonce: i.ID, token: i.Token, app: i.Application, until: time.Now().Add(s.pace.token), opened: make(chan bool, 1)},
	}
	if i.Guild != "" {
		a.Channel = string(i.Channel)
	}
	if a.to.app == "" {
		a.to.app = s.application()
	}
	s.work.background(func(ctx context.Context) { a.to.opened <- s.open(ctx, i) })
	s.admit(i.Channel, from.ID, a)
}

func (s *server) application() id {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.app
}

// text is what the command was given.
func (i *interaction) text() string {
	for _, o := range i.Data.Options {
		if o.Value != nil {
			return fmt.Sprint(o.Value)
		}
	}
	return ""
}

// open gives an interaction its first answer: that another will come.
func (s *server) open(ctx context.Context, i interaction) bool {
	ctx, cancel := context.WithTimeout(ctx, s.pace.callback)
	defer cancel()
	first := discordgo.InteractionResponse{Type: discordgo.InteractionResponseDeferredChannelMessageWithSource}
	_, err := s.rest.call(ctx, http.MethodPost, discordgo.EndpointInteractionResponse(string(i.ID), i.Token), first)
	if err != nil {
		s.log.Warn("an interaction was not opened", "interaction", i.ID, "error", brief(err))
	}
	_, code, _ := refusal(err)
	return err == nil || code == codeAnswered
}

// codeAnswered is Discord's for an interaction that has had its first answer, maybe one whose success didn't reach us.
const codeAnswered = 40060

// deliverToInteraction edits an interaction's first answer, and adds to it. Where it can't be answered, or no longer, the
// reply goes to the channel.
func (s *server) deliverToInteraction(ctx context.Context, to target, text string, files []file) {
	opened := <-to.opened
	to.opened <- opened
	ps := parts(text, files)
	for i, p := range ps {
		err := errTooLate
		if opened && time.Now().Before(to.until) {
			err = s.edit(ctx, to, i, p)
		}
		if err != nil {
			s.log.Warn("an interaction took no answer, which goes to the channel", "channel", to.channel, "error", brief(err))
			s.instead(ctx, to, ps[i:])
			return
		}
	}
}

var errTooLate = fmt.Errorf("not opened, or too late")

// edit puts one part of a reply in the place of the first answer, or after it.
func (s *server) edit(ctx context.Context, to target, i int, p part) error {
	m := post{Content: p.text, files: p.files}
	if i == 0 {
		return s.insist(ctx, http.MethodPatch, discordgo.EndpointWebhookMessage(string(to.app), to.token, "@original"), m)
	}
	return s.insist(ctx, http.MethodPost, discordgo.EndpointWebhookToken(string(to.app), to.token), m)
}

// instead posts to the channel what an interaction didn't take.
func (s *server) instead(ctx context.Context, to target, ps []part) {
	for i, p := range ps {
		if err := s.post(ctx, target{channel: to.channel, nonce: to.nonce}, i, p); err != nil {
			s.log.Error("a reply was not delivered", "channel", to.channel, "error", brief(err))
			return
		}
	}
}
