package discord

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"reflect"
	"strings"
	"testing"
	"time"
)

func (f *fake) give(w http.ResponseWriter, v any) {
	w.Header().Set("Content-Type", "application/json")
	_ = json.NewEncoder(w).Encode(v)
}

type parsed struct {
	body  map[string]any
	files []upload
}

// watch notes every request, and lets a fault answer in the place of the fake.
func (f *fake) watch(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, q *http.Request) {
		if !strings.HasPrefix(q.URL.Path, "/api/") {
			next.ServeHTTP(w, q)
			return
		}
		p := parse(f.t, q)
		f.mu.Lock()
		f.requests = append(f.requests, request{q.Method, q.URL.Path, q.Header.Get("Authorization"), p.body, q.URL.RawQuery, time.Now()})
		var fault func(http.ResponseWriter, *http.Request) bool
		if fs := f.faults[q.Method+" "+q.URL.Path]; len(fs) > 0 {
			fault, f.faults[q.Method+" "+q.URL.Path] = fs[0], fs[1:]
		}
		f.mu.Unlock()
		q = q.WithContext(withParsed(q.Context(), p))
		if fault == nil || !fault(w, q) {
			next.ServeHTTP(w, q)
		}
	})
}

// parse reads a JSON body, or one in parts as Discord's reference describes them.
func parse(t *testing.T, q *http.Request) (p parsed) {
	if !strings.HasPrefix(q.Header.Get("Content-Type"), "multipart/") {
		b, _ := io.ReadAll(q.Body)
		_ = json.Unmarshal(b, &p.body)
		return p
	}
	r, err := q.MultipartReader()
	if err != nil {
		t.Error(err)
		return p
	}
	for n := 0; ; {
		part, err := r.NextPart()
		if err != nil {
			return p
		}
		b, _ := io.ReadAll(part)
		if part.FormName() == "payload_json" {
			_ = json.Unmarshal(b, &p.body)
			continue
		}
		if want := fmt.Sprintf("files[%d]", n); part.FormName() != want {
			t.Errorf("part %q in place of %q", part.FormName(), want)
		}
		p.files = append(p.files, upload{part.FileName(), part.Header.Get("Content-Type"), b})
		n++
	}
}

// post keeps a message, once for each nonce that is to be enforced.
func (f *fake) post(w http.ResponseWriter, q *http.Request) {
	p := parsedOf(q.Context())
	f.mu.Lock()
	defer f.mu.Unlock()
	if allowed := p.body["allowed_mentions"]; f.strict && !reflect.DeepEqual(allowed, map[string]any{"parse": []any{}, "replied_user": false}) {
		f.t.Errorf("a message may mention %v", allowed)
	}
	nonce, _ := p.body["nonce"].(string)
	key := q.URL.Path + " " + nonce
	if there := f.nonces[key]; there != "" && p.body["enforce_nonce"] == true {
		f.give(w, map[string]any{"id": there})
		return
	}
	if content, _ := p.body["content"].(string); len([]rune(content)) > 2000 || content == "" && len(p.files) == 0 {
		w.WriteHeader(http.StatusBadRequest)
		f.give(w, map[string]any{"code": 50035, "message": "Invalid Form Body"})
		return
	}
	made := fmt.Sprint(800000000000000000 + len(f.posts))
	if nonce != "" {
		f.nonces[key] = made
	}
	f.posts = append(f.posts, posted{f.requests[len(f.requests)-1], made, p.files})
	f.posts[len(f.posts)-1].request = request{q.Method, q.URL.Path, q.Header.Get("Authorization"), p.body, q.URL.RawQuery, time.Now()}
	f.give(w, map[string]any{"id": made, "channel_id": q.PathValue("channel"), "author": map[string]any{"id": me, "bot": true}})
}

// read gives a channel's messages, newest first, those after an id where one is given.
func (f *fake) read(w http.ResponseWriter, q *http.Request) {
	f.mu.Lock()
	defer f.mu.Unlock()
	page := []map[string]any{}
	for _, m := range f.history[q.PathValue("channel")] {
		if id(m["id"].(string)).after(id(q.URL.Query().Get("after"))) {
			page = append([]map[string]any{m}, page...)
		}
	}
	f.give(w, page)
}

func (f *fake) register(w http.ResponseWriter, q *http.Request) {
	f.mu.Lock()
	defer f.mu.Unlock()
	c := parsedOf(q.Context()).body
	f.commands = append(f.commands, c)
	f.give(w, c)
}

type parsedKey struct{}

func withParsed(ctx context.Context, p parsed) context.Context {
	return context.WithValue(ctx, parsedKey{}, p)
}

func parsedOf(ctx context.Context) parsed {
	p, _ := ctx.Value(parsedKey{}).(parsed)
	return p
}
