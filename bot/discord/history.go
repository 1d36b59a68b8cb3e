package discord

import (
	"context"
	"encoding/json"
	"net/http"
	"net/url"
	"slices"
	"time"

	"github.com/bwmarrin/discordgo"
)

// absence is a time in which messages may have been missed.
type absence struct {
	since  time.Time
	newest id   // message before it
	first  bool // it lay before this program began, which knows only by its own messages what it has answered
	all    bool // any channel may hold some, not only those that were talked in
}

// skew is how far the server's clock may be off.
const skew = time.Minute

// catchUp reads what was said while the bot was away, a page of each channel, oldest first.
func (s *server) catchUp(ctx context.Context, away absence) {
	for _, at := range s.places.behind(away) {
		if ctx.Err() != nil {
			return
		}
		for _, m := range s.missed(ctx, at, away) {
			m.Channel = at.id
			s.message(m)
		}
	}
}

func (s *server) missed(ctx context.Context, at place, away absence) []message {
	page, err := s.page(ctx, at)
	if err != nil {
		s.log.Info("a channel's history can't be read", "channel", at.id, "error", brief(err))
		return nil
	}
	s.places.caughtUp(at.id)
	slices.SortFunc(page, func(a, b message) int { return order(a.ID, b.ID) })
	own := id("")
	for _, m := range page {
		if m.Author != nil && m.Author.ID == s.self() && m.ID.after(own) {
			own = m.ID
		}
	}
	return slices.DeleteFunc(page, func(m message) bool {
		return away.first && !m.ID.after(own) || !away.holds(m, at)
	})
}

// holds says whether a message falls into an absence.
func (a absence) holds(m message, at place) bool {
	switch sent := m.at(); {
	case at.mark != "":
		return m.ID.after(at.mark)
	case !sent.IsZero():
		return sent.After(a.since.Add(-skew))
	}
	return a.newest != "" && m.ID.after(a.newest)
}

// page reads a channel's messages, those after the last that was read.
func (s *server) page(ctx context.Context, at place) (page []message, err error) {
	q := url.Values{"limit": {"50"}}
	if at.mark != "" {
		q = url.Values{"limit": {"100"}, "after": {string(at.mark)}}
	}
	body, err := s.rest.call(ctx, http.MethodGet, discordgo.EndpointChannelMessages(string(at.id))+"?"+q.Encode(), nil)
	for _, one := range read[[]json.RawMessage](body) {
		page = append(page, read[message](one))
	}
	return page, err
}

func order(a, b id) int {
	switch {
	case b.after(a):
		return -1
	case a.after(b):
		return 1
	}
	return 0
}
