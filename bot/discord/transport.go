package discord

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"log/slog"
	"math/rand/v2"
	"net/http"
	"net/url"
	"strconv"
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
	inner  http.RoundTripper
	log    *slog.Logger
	pace   *pace
	all    *rate.Limiter // 50 requests a second, over all
	paused atomic.Int64  // until when a global limit holds, in Unix nanoseconds
}

func newTransport(base *url.URL, c Config) *transport {
	return &transport{base: base, inner: http.DefaultTransport.(*http.Transport).Clone(), log: c.Log, pace: c.pace, all: rate.NewLimiter(45, 45)}
}

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
	tidy(answer, body)
	return answer, nil
}

// tidy takes out what discordgo would make an error of, though the request was done: limits that are no numbers, an instant
// of reset that rests on the server's clock, a 429 that isn't JSON.
func tidy(a *http.Response, body []byte) {
	a.Header.Del("X-RateLimit-Reset")
	for _, name := range []string{"X-RateLimit-Reset-After", "X-RateLimit-Remaining"} {
		if _, err := strconv.ParseFloat(a.Header.Get(name), 64); err != nil {
			a.Header.Del(name)
		}
	}
	if _, err := strconv.ParseInt(a.Header.Get("X-RateLimit-Remaining"), 10, 32); err != nil {
		a.Header.Del("X-RateLimit-Remaining")
	}
	if a.StatusCode == http.StatusTooManyRequests && !json.Valid(body) {
		a.Body = io.NopCloser(strings.NewReader("{}"))
	}
}

// again says whether to try once more, and after what pause.
func (t *transport) again(a *http.Response, err error, n int) (time.Duration, bool) {
	if n >= t.pace.attempts {
		return 0, false
	}
	backoff := time.Duration(float64(t.pace.retry<<(n-1)) * (0.75 + rand.Float64()/2))
	if err != nil {
		return backoff, true
	}
	switch a.StatusCode {
	case http.StatusTooManyRequests:
		asked, global := retryAfter(a)
		if global {
			t.paused.Store(time.Now().Add(asked).UnixNano())
		}
		return max(asked, t.pace.retry), asked <= t.pace.retryLimit
	case http.StatusInternalServerError, http.StatusBadGateway, http.StatusServiceUnavailable, http.StatusGatewayTimeout:
		asked, _ := retryAfter(a)
		return max(asked, backoff), asked <= t.pace.retryLimit
	}
	return 0, false
}

// retryAfter is how long the server asks to wait, by the header or the body, the longer where both say; and whether for all.
func retryAfter(a *http.Response) (asked time.Duration, global bool) {
	body, _ := io.ReadAll(a.Body)
	a.Body = io.NopCloser(bytes.NewReader(body))
	var said struct {
		RetryAfter float64 `json:"retry_after"`
		Global     bool    `json:"global"`
	}
	_ = json.Unmarshal(body, &said)
	header, _ := strconv.ParseFloat(a.Header.Get("Retry-After"), 64)
	seconds := min(max(said.RetryAfter, header, 0), 1e6)
	return time.Duration(seconds * float64(time.Second)), said.Global || a.Header.Get("X-RateLimit-Global") != ""
}

func outcome(a *http.Response, err error) string {
	if err != nil {
		return err.Error()
	}
	return a.Status
}

// sleep waits, or gives the context's error if that ends first.
func sleep(ctx context.Context, d time.Duration) error {
	if d <= 0 {
		return ctx.Err()
	}
	timer := time.NewTimer(d)
	defer timer.Stop()
	select {
	case <-timer.C:
		return nil
	case <-ctx.Done():
		return ctx.Err()
	}
}
