package discord

import (
	"bytes"
	"compress/zlib"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
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

// beat sends heartbeats: the first at a moment within the interval, so that not all connections beat together. One that
// isn't acknowledged before the next ends the connection.
func (c *conn) beat() {
	wait := time.Duration(rand.Float64() * float64(c.interval))
	for {
		select {
		case <-time.After(wait):
		case <-c.ended:
			return
		}
		wait = c.interval
		if c.unacked.Load() {
			c.failed <- errNoAck
			c.close(resumable)
			return
		}
		c.unacked.Store(true)
		if err := c.write(opHeartbeat, c.seq.Load()); err != nil {
			c.ws.Close()
			return
		}
	}
}

// read gives the next packet. One that isn't JSON is passed over.
func (c *conn) read(patience time.Duration) (packet, error) {
	if err := c.ws.SetReadDeadline(time.Now().Add(patience)); err != nil {
		return packet{}, err
	}
	for {
		kind, b, err := c.ws.ReadMessage()
		if err != nil {
			return packet{}, err
		}
		if kind == websocket.BinaryMessage {
			b = inflate(b)
		}
		var p packet
		if err := json.Unmarshal(b, &p); err == nil || p.Type != "" || p.Op != 0 {
			return p, nil
		}
		c.gateway.log.Warn("a packet of the gateway's can't be read", "bytes", len(b))
	}
}

func inflate(b []byte) []byte {
	z, err := zlib.NewReader(bytes.NewReader(b))
	if err != nil {
		return nil
	}
	plain, _ := io.ReadAll(io.LimitReader(z, 16<<20))
	return plain
}

func (c *conn) write(op int, data any) error {
	b, err := json.Marshal(map[string]any{"op": op, "d": data})
	if err != nil {
		return err
	}
	c.writing.Lock()
	defer c.writing.Unlock()
	if err := c.ws.SetWriteDeadline(time.Now().Add(c.gateway.pace.dial)); err != nil {
		return err
	}
	return c.ws.WriteMessage(websocket.TextMessage, b)
}

// close says goodbye with a code and hangs up.
func (c *conn) close(code int) {
	deadline := time.Now().Add(time.Second)
	_ = c.ws.WriteControl(websocket.CloseMessage, websocket.FormatCloseMessage(code, ""), deadline)
	c.ws.Close()
}

// goodbye ends the session for good.
func (c *conn) goodbye() { c.close(websocket.CloseNormalClosure) }

// end hangs up, whatever became of the connection.
func (c *conn) end() {
	close(c.ended)
	c.gateway.session.seq = c.seq.Load()
	c.close(resumable)
}
