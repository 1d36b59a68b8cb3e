package discord

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"log/slog"
	"net/http"
	"net/url"
	"strings"
	"sync/atomic"
	"time"

	"github.com/bwmarrin/discordgo"
	"golang.org/x/time/rate"
)

// transport sends discordgo's requests to the configured API, and again where that may help: after 429, 500, 502, 503, 504
// and a connection that broke. Messages carry a nonce, so that one whose answer was lost isn't posted twice.
type transport struct {
	base   *url.URL
	inner  *http.Transport
	log    *slog.Logger
	pace   *pace
	all    *rate.Limiter // 50 requests a second, over all
	paused atomic.Int64  // until when a global limit holds, in Unix nanoseconds
}

func newTransport(base *url.URL, c Config) *transport {
	return &transport{base: base, inner: http.DefaultTransport.(*http.Transport).Clone(), log: c.Log, pace: c.pace, all: rate.NewLimiter(45, 45)}
}

// CloseIdleConnections is what http.Client looks for.
func (t *transport) CloseIdleConnections() { t.inner.CloseIdleConnections() }

// largest is the most that is read of an answer.
const largest = 8 << 20

func (t *transport) RoundTrip(q *http.Request) (*http.Response, error) {
	where, err := t.address(q.URL)
	if err != nil {
		return nil, err
	}
	for n := 1; ; n++ {
		if err := t.wait(q.Context(), q.URL); err != nil {
			return nil, err
		}
		answer, err := t.attempt(q, where)
		pause, again := t.again(answer, err, n)
		if !again || q.Context().Err() != nil {
			return answer, err
		}
		t.log.Warn("request failed, trying again", "method", q.Method, "path", q.URL.Path, "result", outcome(answer, err), "attempt", n, "after", pause)
		if err := sleep(q.Context(), pause); err != nil {
			return nil, err
		}
	}
}

// address is where a request of discordgo's goes.
func (t *transport) address(u *url.URL) (*url.URL, error) {
	path, ok := strings.CutPrefix(u.String(), discordgo.EndpointAPI)
	if !ok {
		return nil, fmt.Errorf("unexpected address %s", u.Redacted())
	}
	return url.Parse(t.base.String() + "/" + path)
}

// wait keeps to the global limits, which interactions are free of.
func (t *transport) wait(ctx context.Context, u *url.URL) error {
	if onInteraction(u.Path) {
		return nil
	}
	if err := sleep(ctx, time.Until(time.Unix(0, t.paused.Load()))); err != nil {
		return err
	}
	return t.all.Wait(ctx)
}

// attempt makes the request once and reads its answer. An answer of success that breaks off is a success.
func (t *transport) attempt(q *http.Request, where *url.URL) (*http.Response, error) {
	ctx, cancel := context.WithTimeout(q.Context(), t.pace.attempt)
	defer cancel()
	try := q.Clone(ctx)
	try.URL, try.Host = where, where.Host
	if q.GetBody != nil {
		body, err := q.GetBody()
		if err != nil {
			return nil, err
		}
		try.Body = body
	}
	answer, err := t.inner.RoundTrip(try)
	if err != nil {
		return nil, err
	}
	defer answer.Body.Close()
	body, err := io.ReadAll(io.LimitReader(answer.Body, largest))
	if err != nil && (answer.StatusCode/100 != 2 || q.Method == http.MethodGet) {
		return nil, err
	}
	answer.Body = io.NopCloser(bytes.NewReader(body))
	tidy(answer, body, t.pace.retryLimit)
	return answer, nil
}
