package discord

import (
	"net/http"
	"net/http/httptest"
)

type misanswer = func(http.ResponseWriter, *http.Request) bool

// broken hangs up in the place of an answer.
func broken(w http.ResponseWriter, _ *http.Request) bool {
	panic(http.ErrAbortHandler)
}

// answering gives a status, a body, and headers in pairs.
func answering(status int, body string, header ...string) misanswer {
	return func(w http.ResponseWriter, _ *http.Request) bool {
		for i := 0; i < len(header); i += 2 {
			w.Header().Set(header[i], header[i+1])
		}
		w.WriteHeader(status)
		_, _ = w.Write([]byte(body))
		return true
	}
}

// doneBut does what is asked, and then answers otherwise.
func (f *fake) doneBut(then misanswer) misanswer {
	return func(w http.ResponseWriter, q *http.Request) bool {
		q.SetPathValue("channel", "400")
		f.post(httptest.NewRecorder(), q)
		return then(w, q)
	}
}

// slash is the command, given in a private chat.
func slash(id, token, text string) map[string]any {
	return map[string]any{
		"id": id, "application_id": app, "type": 2, "token": token, "channel_id": "400", "user": map[string]any{"id": "300"},
		"data": map[string]any{"name": "lastrow", "type": 1, "options": []any{map[string]any{"name": "text", "type": 3, "value": text}}},
	}
}
