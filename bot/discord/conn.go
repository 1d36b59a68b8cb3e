package discord

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"sync"
	"sync/atomic"
	"time"

	"github.com/gorilla/websocket"
)

// Gateway opcodes.
const (
	opDispatch       = 0
	opHeartbeat      = 1
	opIdentify       = 2
	opResume         = 6
	opReconnect      = 7
	opInvalidSession = 9
	opHello          = 10
	opHeartbeatAck   = 11
)

// resumable is the code to close with when the session is to go on; 1000 and 1001 would end it.
const resumable = 4000

var (
	errReconnect = errors.New("the gateway asked to reconnect")
	errNoAck     = errors.New("a heartbeat was not acknowledged")
)

// packet is what the gateway sends.
type packet struct {
	Op   int             `json:"op"`
	Data json.RawMessage `json:"d"`
	Seq  *int64          `json:"s"`
	Type string          `json:"t"`
}

// conn is one connection to the gateway, from its greeting to its end.
type conn struct {
	ws       *websocket.Conn
	gateway  *gateway
	writing  sync.Mutex
	interval time.Duration
	unacked  atomic.Bool
	seq      atomic.Pointer[int64]
	failed   chan error
	ended    chan struct{}
}

func newConn(ws *websocket.Conn, g *gateway) *conn {
	c := &conn{ws: ws, gateway: g, failed: make(chan error, 1), ended: make(chan struct{})}
	c.seq.Store(g.session.seq)
	ws.SetReadLimit(16 << 20)
	ws.SetCloseHandler(func(int, string) error { return nil })
	return c
}

// run speaks with the gateway until the connection ends, and says why it did.
func (c *conn) run(ctx context.Context) error {
	if err := c.greet(); err != nil {
		return err
	}
	go c.beat()
	if err := c.introduce(ctx); err != nil {
		return err
	}
	begun := time.Now()
	for {
		if !c.gateway.worked && time.Since(begun) > c.gateway.pace.hello {
			return errors.New("the gateway did not get ready")
		}
		p, err := c.read(c.patience(begun))
		if err == nil {
			err = c.handle(p)
		}
		if err != nil {
			return c.why(err)
		}
	}
}

// patience is how long the next packet may take to come.
func (c *conn) patience(begun time.Time) time.Duration {
	if !c.gateway.worked {
		return max(c.gateway.pace.hello-time.Since(begun), time.Millisecond)
	}
	return 2*c.interval + c.gateway.pace.dial
}

// greet waits for the gateway's hello.
func (c *conn) greet() error {
	p, err := c.read(c.gateway.pace.hello)
	if err != nil {
		return fmt.Errorf("no greeting from the gateway: %w", err)
	}
	if p.Op != opHello {
		return fmt.Errorf("opcode %d in place of a greeting", p.Op)
	}
	var hello struct {
		Interval float64 `json:"heartbeat_interval"`
	}
	_ = json.Unmarshal(p.Data, &hello)
	if hello.Interval <= 0 {
		hello.Interval = 41250
	}
	c.interval = time.Duration(min(hello.Interval, 3.6e6) * float64(time.Millisecond))
	return nil
}

// why is the reason for an end: what the heartbeat found, if it was that.
func (c *conn) why(err error) error {
	select {
	case found := <-c.failed:
		return found
	default:
		return err
	}
}
