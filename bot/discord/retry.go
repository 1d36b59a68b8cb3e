package discord

import (
	"bytes"
	"context"
	"encoding/json"
	"io"
	"math/rand/v2"
	"net/http"
	"strconv"
	"strings"
	"time"
)

// tidy takes out what discordgo would make an error of, though the request was done, or sleep on for too long: limits that
// are no sensible numbers, an instant of reset that rests on the server's clock, a 429 that isn't JSON.
func tidy(a *http.Response, body []byte, most time.Duration) {
	a.Header.Del("X-RateLimit-Reset")
	if after, err := strconv.ParseFloat(a.Header.Get("X-RateLimit-Reset-After"), 64); err != nil || !(after >= 0 && after <= most.Seconds()) {
		a.Header.Del("X-RateLimit-Reset-After")
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
