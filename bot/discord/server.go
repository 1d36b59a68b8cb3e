package discord

import (
	"context"
	"fmt"
	"log/slog"
	"net/http"
	"sync"
	"time"

	"github.com/bwmarrin/discordgo"
	"golang.org/x/time/rate"
)

// server joins the gateway's events to the bot, and the bot's replies to the API.
type server struct {
	gateway
	reply  Bot
	work   *queues
	users  *limits
	seen   *recent // ids of messages and interactions that were taken up
	sent   *recent // ids of the bot's own messages
	places *places
	heard  time.Time // when the last event came; only the gateway's reader uses it

	mu         sync.Mutex
	me         id
	app        id
	roles      map[id]bool // the bot's own roles
	registered bool
}

func newServer(c Config, r *rest, reply Bot) *server {
	s := &server{
		reply: reply, users: newLimits(c.pace), seen: newRecent(8192), sent: newRecent(8192),
		places: newPlaces(), roles: map[id]bool{},
	}
	s.work = newQueues(c.Log, c.pace.finish)
	s.gateway = gateway{
		config: c, pace: c.pace, rest: r, log: c.Log, dispatch: s.take,
		identifies: rate.NewLimiter(c.pace.identify, c.pace.identifyBurst), spacing: rate.NewLimiter(rate.Every(c.pace.identifyGap), 1),
	}
	return s
}

// take hands an event on. It doesn't wait for anything, so that the gateway is always read.
func (s *server) take(e event) {
	away := absence{since: s.heard, newest: s.places.last(), all: e.kind == "READY"}
	s.heard = time.Now()
	switch e.kind {
	case "READY":
		s.ready(read[ready](e.data), away)
	case "RESUMED":
		s.places.leave()
		s.work.background(func(ctx context.Context) { s.catchUp(ctx, away) })
	case "GUILD_CREATE":
		s.guild(read[guild](e.data))
	case "MESSAGE_CREATE":
		s.message(read[message](e.data))
	case "INTERACTION_CREATE":
		s.interaction(read[interaction](e.data))
	}
}

// ready notes who the bot is, and sees to its command and to what was said while it was away.
func (s *server) ready(r ready, away absence) {
	if away.since.IsZero() {
		away.first, away.since = true, s.heard.Add(-s.pace.away)
	}
	s.places.leave()
	s.mu.Lock()
	s.me, s.app = r.User.ID, r.Application.ID
	s.mu.Unlock()
	for _, c := range r.Private {
		s.places.private(c)
	}
	for _, g := range r.Guilds {
		s.guild(g)
	}
	s.work.background(func(ctx context.Context) {
		s.whoAmI(ctx)
		s.register(ctx)
		if sleep(ctx, s.pace.settle) == nil {
			s.catchUp(ctx, away)
		}
	})
}

func (s *server) guild(g guild) {
	me := s.self()
	s.mu.Lock()
	for _, r := range g.Roles {
		if r.Tags.Bot != "" && r.Tags.Bot == me {
			s.roles[r.ID] = true
		}
	}
	s.mu.Unlock()
	for _, c := range append(g.Channels, g.Threads...) {
		s.places.group(c)
	}
}

func (s *server) self() id {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.me
}

// whoAmI asks for what READY left out.
func (s *server) whoAmI(ctx context.Context) {
	s.mu.Lock()
	me, app := s.me, s.app
	s.mu.Unlock()
	if me == "" {
		me = s.askID(ctx, discordgo.EndpointUser("@me"))
	}
	if app == "" {
		app = s.askID(ctx, discordgo.EndpointApplication("@me"))
	}
	if app == "" {
		app = me
	}
	s.mu.Lock()
	s.me, s.app = me, app
	s.mu.Unlock()
}

func (s *server) askID(ctx context.Context, endpoint string) id {
	body, err := s.rest.call(ctx, http.MethodGet, endpoint, nil)
	if err != nil {
		s.log.Warn("no answer to who the bot is", "error", brief(err))
	}
	return read[user](body).ID
}

// answer asks the bot, whatever it may do.
func (s *server) answer(ctx context.Context, m arrived) (text string, files []file, ok bool) {
	defer func() {
		if r := recover(); r != nil {
			s.log.Error("the bot failed", "message", m.ID, "panic", fmt.Sprint(r))
			text, files, ok = fault, nil, m.Addressed
		}
	}()
	reply, err := s.reply(ctx, m.Message)
	if err != nil {
		s.log.Error("the bot failed", slog.String("message", m.ID), slog.Any("error", err))
	}
	return reply.Text(), reply.Files, !reply.Silent() && (reply.Text() != "" || len(reply.Files) > 0)
}
