// Package discord carries messages between Discord, or a server that speaks its protocol, and a bot. It knows connections,
// identities and delivery; what a message means is the bot's to say.
//
// Requests and their types are discordgo's. The gateway is driven here: discordgo's own neither reads close codes nor uses
// the resume address, ends a session that it means to resume, identifies on a socket that refused it, and hangs for ever on
// a gateway that is silent or asks for a reconnect before READY.
package discord

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"log/slog"
	"strings"

	"lastrow/bot"
)

// Config is what serving takes. Only Token is required.
type Config struct {
	Token    string       // the bot's token, without or with "Bot " before it; never logged
	API      string       // the API's address, "" for Discord's: "http://127.0.0.1:8080", or with its path, ".../api/v9"
	Gateway  string       // the gateway's address, "" to ask the API for it
	Contents bool         // ask for the content of messages that don't mention the bot, a privileged intent
	Log      *slog.Logger // nil for the default

	pace *pace // nil for Discord's; tests are quicker
}

// Bot gives the reply to a message; with an error the reply says so in plain words, and the error is for the log.
type Bot func(context.Context, bot.Message) (bot.Reply, error)

// Serve answers messages until the context ends, and then gives nil. It reconnects for as long as that may help: an error
// says what no reconnecting can mend, such as a token that was refused.
func Serve(ctx context.Context, c Config, reply Bot) error {
	c.Token = strings.TrimSpace(strings.TrimPrefix(strings.TrimSpace(c.Token), "Bot "))
	if c.Token == "" {
		return errors.New("no Discord token")
	}
	c.Log = slog.New(redacting{cmp.Or(c.Log, slog.Default()).Handler(), c.Token})
	if c.pace == nil {
		c.pace = &discords
	}
	rest, err := newREST(c)
	if err != nil {
		return fmt.Errorf("API address %q: %w", c.API, err)
	}
	forwardLibraryLog(c.Log)
	s := newServer(c, rest, reply)
	defer rest.close()
	defer s.work.finish()
	return s.stay(ctx)
}
