package discord

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"math/rand/v2"
	"time"

	"github.com/gorilla/websocket"
	"golang.org/x/time/rate"
)

// gateway keeps one connection to Discord's gateway, and begins another when it ends.
type gateway struct {
	config     Config
	pace       *pace
	rest       *rest
	log        *slog.Logger
	dispatch   func(event)   // called in order, and not to block
	identifies *rate.Limiter // new sessions in a day
	spacing    *rate.Limiter // and from one to the next
	session    session
	worked     bool // the last connection got as far as READY or RESUMED
	futile     int  // connections since one that did
}

// session is what a connection needs to go on where another ended.
type session struct {
	id     string
	seq    *int64
	resume string // the address to resume at, "" for the usual one
}

// fatal are the close codes that no reconnecting can mend.
var fatal = map[int]string{
	4004: "the token was refused: check the bot's token",
	4010: "the shard was refused",
	4011: "the bot is in too many servers for one connection: sharding is required",
	4012: "the gateway's version was refused",
	4013: "the intents were refused as invalid",
	4014: "the intents were refused: switch on Message Content Intent in the bot's settings, or run without message contents",
}

// lost are the close codes after which a session can't be resumed.
var lost = map[int]bool{4003: true, 4007: true, 4009: true}

// errFatal marks what ends serving.
var errFatal = errors.New("discord")

// errInvalid is the gateway's answer that the session can't go on, and that a new one has to wait a little.
var errInvalid = errors.New("session refused")

// stay connects again and again, until the context ends or an error is fatal.
func (g *gateway) stay(ctx context.Context) error {
	pause := g.pace.backoff
	for {
		err := g.connect(ctx)
		switch {
		case ctx.Err() != nil:
			return nil
		case errors.Is(err, errFatal):
			return err
		case g.worked:
			pause = g.pace.backoff
		}
		wait := g.pauseAfter(err, pause)
		g.log.Warn("gateway connection ended", "reason", err, "resumes", g.session.id != "", "again in", wait)
		if sleep(ctx, wait) != nil {
			return nil
		}
		pause = min(2*pause, g.pace.most)
	}
}

// pauseAfter is the wait before the next connection: short where the gateway asked for it, and always at chance.
func (g *gateway) pauseAfter(err error, pause time.Duration) time.Duration {
	switch {
	case errors.Is(err, errInvalid):
		return g.pace.invalid + time.Duration(rand.Float64()*4*float64(g.pace.invalid))
	case errors.Is(err, errReconnect) && g.worked:
		return rand.N(g.pace.backoff/2 + 1)
	}
	return pause/2 + rand.N(pause/2+1)
}

// connect runs one connection to its end.
func (g *gateway) connect(ctx context.Context) error {
	g.worked = false
	address, err := g.address(ctx)
	if err != nil {
		return err
	}
	ws, err := g.dial(ctx, address)
	if err != nil {
		g.session.resume = ""
		return fmt.Errorf("no connection to the gateway: %w", err)
	}
	c := newConn(ws, g)
	defer c.end()
	defer context.AfterFunc(ctx, c.goodbye)()
	return g.judge(c.run(ctx))
}

// mostFutile is how often a session is tried to be resumed that the gateway neither resumes nor refuses.
const mostFutile = 3

// judge turns the end of a connection into what it means for the session.
func (g *gateway) judge(err error) error {
	if g.futile++; g.worked {
		g.futile = 0
	}
	if g.futile >= mostFutile {
		g.session = session{}
	}
	var closed *websocket.CloseError
	if !errors.As(err, &closed) {
		return err
	}
	if why, ok := fatal[closed.Code]; ok {
		return fmt.Errorf("%w: %s (close code %d)", errFatal, why, closed.Code)
	}
	if lost[closed.Code] {
		g.session = session{}
	}
	return err
}

func (g *gateway) dial(ctx context.Context, address string) (*websocket.Conn, error) {
	ctx, cancel := context.WithTimeout(ctx, g.pace.dial)
	defer cancel()
	d := websocket.Dialer{HandshakeTimeout: g.pace.dial, Proxy: websocket.DefaultDialer.Proxy}
	ws, _, err := d.DialContext(ctx, address, nil)
	return ws, err
}
