package discord

import (
	"context"
	"fmt"
	"log/slog"
	"regexp"
	"strings"
	"sync"
	"sync/atomic"

	"github.com/bwmarrin/discordgo"
)

// redacting is a log handler that hides the bot's token and the tokens of interactions, wherever they stand.
type redacting struct {
	slog.Handler
	token string
}

var interactionToken = regexp.MustCompile(`((?:interactions|webhooks)/[^/\s"]+/)[^/\s"?]+`)

func (r redacting) hide(s string) string {
	return interactionToken.ReplaceAllString(strings.ReplaceAll(s, r.token, "[token]"), "${1}[token]")
}

func (r redacting) hideAttr(a slog.Attr) slog.Attr {
	switch v := a.Value.Resolve(); v.Kind() {
	case slog.KindString:
		a.Value = slog.StringValue(r.hide(v.String()))
	case slog.KindAny:
		a.Value = slog.StringValue(r.hide(fmt.Sprint(v.Any())))
	case slog.KindGroup:
		a.Value = slog.GroupValue(r.hideAll(v.Group())...)
	}
	return a
}

func (r redacting) hideAll(as []slog.Attr) []slog.Attr {
	hidden := make([]slog.Attr, len(as))
	for i, a := range as {
		hidden[i] = r.hideAttr(a)
	}
	return hidden
}

func (r redacting) Handle(ctx context.Context, rec slog.Record) error {
	clean := slog.NewRecord(rec.Time, rec.Level, r.hide(rec.Message), rec.PC)
	rec.Attrs(func(a slog.Attr) bool {
		clean.AddAttrs(r.hideAttr(a))
		return true
	})
	return r.Handler.Handle(ctx, clean)
}

func (r redacting) WithAttrs(as []slog.Attr) slog.Handler {
	return redacting{r.Handler.WithAttrs(r.hideAll(as)), r.token}
}

func (r redacting) WithGroup(name string) slog.Handler {
	return redacting{r.Handler.WithGroup(name), r.token}
}

var (
	libraryLog     atomic.Pointer[slog.Logger]
	libraryLogOnce sync.Once
)

// forwardLibraryLog sends what discordgo logs, through its one global, to the log given last.
func forwardLibraryLog(l *slog.Logger) {
	libraryLog.Store(l)
	libraryLogOnce.Do(func() {
		discordgo.Logger = func(level, _ int, format string, a ...any) {
			libraryLog.Load().Warn("discordgo: "+fmt.Sprintf(format, a...), "level", level)
		}
	})
}
