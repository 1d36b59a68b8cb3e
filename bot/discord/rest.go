package discord

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"strings"

	"github.com/bwmarrin/discordgo"
)

// rest makes requests through a discordgo session, which adds the token and keeps to the limits the server tells.
type rest struct {
	session  *discordgo.Session
	version  string // of the API, as the gateway is to speak it too
	discords bool   // the server is Discord itself
}

func newREST(c Config) (*rest, error) {
	base, err := apiBase(c.API)
	if err != nil {
		return nil, err
	}
	s, err := discordgo.New("Bot " + c.Token)
	if err != nil {
		return nil, err
	}
	s.LogLevel = discordgo.LogError
	s.StateEnabled = false
	s.Client = &http.Client{Transport: newTransport(base, c)}
	return &rest{s, base.Path[strings.LastIndex(base.Path, "/v")+2:], base.Hostname() == "discord.com"}, nil
}

// close lets go of connections that are kept for later.
func (r *rest) close() { r.session.Client.CloseIdleConnections() }

// apiBase reads the address that stands for discordgo.EndpointAPI.
func apiBase(address string) (*url.URL, error) {
	if address == "" {
		address = discordgo.EndpointAPI
	}
	u, err := url.Parse(strings.TrimRight(strings.TrimSpace(address), "/"))
	if err != nil {
		return nil, err
	}
	if u.Scheme != "http" && u.Scheme != "https" || u.Host == "" {
		return nil, errors.New("not an http or https address")
	}
	last := u.Path[strings.LastIndex(u.Path, "/")+1:]
	switch {
	case last == "api":
		u.Path += "/v" + discordgo.APIVersion
	case !isVersion(last):
		u.Path += "/api/v" + discordgo.APIVersion
	}
	return u, nil
}

func isVersion(s string) bool {
	return len(s) > 1 && s[0] == 'v' && strings.Trim(s[1:], "0123456789") == ""
}

// call makes a request with a JSON body, or none where body is nil.
func (r *rest) call(ctx context.Context, method, endpoint string, body any) ([]byte, error) {
	if body == nil {
		return r.raw(ctx, method, endpoint, "", nil)
	}
	b, err := json.Marshal(body)
	if err != nil {
		return nil, err
	}
	return r.raw(ctx, method, endpoint, "application/json", b)
}

// raw makes a request. Requests on an interaction have limits of their own, so that they neither wait for each other nor
// are remembered.
func (r *rest) raw(ctx context.Context, method, endpoint, contentType string, body []byte) ([]byte, error) {
	bucket, _, _ := strings.Cut(endpoint, "?")
	limiter := r.session.Ratelimiter
	if onInteraction(endpoint) {
		limiter = discordgo.NewRatelimiter()
	}
	return r.session.RequestWithLockedBucket(method, endpoint, contentType, body, limiter.LockBucket(bucket), 0,
		discordgo.WithContext(ctx), discordgo.WithRestRetries(0), discordgo.WithRetryOnRatelimit(false))
}

func onInteraction(path string) bool {
	return strings.Contains(path, "/interactions/") || strings.Contains(path, "/webhooks/")
}

// refusal is what a server said in refusing a request: the status, and Discord's code where the body has one.
func refusal(err error) (status, code int, ok bool) {
	var e *discordgo.RESTError
	if !errors.As(err, &e) {
		return 0, 0, false
	}
	if e.Message != nil {
		code = e.Message.Code
	}
	return e.Response.StatusCode, code, true
}

// brief is an error without the page of text that a proxy may have answered with.
func brief(err error) error {
	if status, code, ok := refusal(err); ok && len(err.Error()) > 300 {
		return fmt.Errorf("HTTP %d, code %d: %.200s", status, code, err)
	}
	return err
}
