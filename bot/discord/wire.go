package discord

import (
	"bytes"
	"compress/zlib"
	"encoding/json"
	"io"
	"math/rand/v2"
	"time"

	"github.com/gorilla/websocket"
)

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
