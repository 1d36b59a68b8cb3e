package discord

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"strings"
	"time"

	"github.com/bwmarrin/discordgo"
)

// address is where the next connection goes: where the session is to be resumed, or where the API says.
func (g *gateway) address(ctx context.Context) (string, error) {
	switch {
	case g.session.id != "" && g.session.resume != "":
		return g.session.resume, nil
	case g.config.Gateway != "":
		return g.socket(g.config.Gateway)
	}
	said, err := g.ask(ctx)
	if err != nil {
		return "", err
	}
	return g.socket(said)
}

// ask gets the gateway's address from the API. A server that lacks the address for bots has the plain one.
func (g *gateway) ask(ctx context.Context) (string, error) {
	body, err := g.rest.call(ctx, http.MethodGet, discordgo.EndpointGatewayBot, nil)
	if status, _, ok := refusal(err); ok && status == http.StatusUnauthorized {
		return "", fmt.Errorf("%w: %s (HTTP 401)", errFatal, fatal[4004])
	}
	var bot struct {
		URL   string `json:"url"`
		Start struct {
			Remaining  *int  `json:"remaining"`
			ResetAfter int64 `json:"reset_after"`
		} `json:"session_start_limit"`
	}
	_ = json.Unmarshal(body, &bot)
	if left := bot.Start.Remaining; left != nil && *left == 0 && bot.Start.ResetAfter > 0 && g.session.id == "" {
		wait := min(time.Duration(bot.Start.ResetAfter)*time.Millisecond, 24*time.Hour)
		g.log.Error("no new sessions are left for today", "again in", wait)
		return bot.URL, sleep(ctx, wait)
	}
	if bot.URL != "" {
		return bot.URL, nil
	}
	return g.askPlain(ctx)
}

func (g *gateway) askPlain(ctx context.Context) (string, error) {
	body, err := g.rest.call(ctx, http.MethodGet, discordgo.EndpointGateway, nil)
	if err != nil {
		return "", fmt.Errorf("no gateway address: %w", brief(err))
	}
	var plain struct {
		URL string `json:"url"`
	}
	if err := json.Unmarshal(body, &plain); plain.URL == "" {
		return "", errors.Join(errors.New("no gateway address in the API's answer"), err)
	}
	return plain.URL, nil
}

// socket is a gateway's address with the version of the API and the encoding that is spoken here.
func (g *gateway) socket(address string) (string, error) {
	u, err := url.Parse(address)
	if err != nil {
		return "", err
	}
	switch u.Scheme {
	case "http":
		u.Scheme = "ws"
	case "https":
		u.Scheme = "wss"
	case "ws", "wss":
	default:
		return "", fmt.Errorf("gateway address %q: not a ws or wss address", address)
	}
	if u.Path == "" {
		u.Path = "/"
	}
	q := u.Query()
	q.Set("v", g.rest.version)
	q.Set("encoding", "json")
	u.RawQuery = q.Encode()
	return u.String(), nil
}

// resumeAt is the address to resume at, "" where the usual one is to be used: none was told, or the gateway's address was
// set by hand, or a server other than Discord names Discord's gateway, which is not to see its token.
func (g *gateway) resumeAt(told string) string {
	if g.config.Gateway != "" || told == "" {
		return ""
	}
	at, err := g.socket(told)
	if err != nil {
		return ""
	}
	if u, _ := url.Parse(at); !g.rest.discords && strings.HasSuffix(u.Hostname(), "discord.gg") {
		return ""
	}
	return at
}
