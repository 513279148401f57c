package edge

import (
	"bytes"
	"cmp"
	"context"
	"net"
	"net/http"
	"sync"
)

// together is a connection that can send in one piece what is written to it in several:
// an answer that finds no room in the buffer of the server costs the kernel two
// writes else, and wakes whoever reads it twice.
type together struct {
	*net.TCPConn
	held *bytes.Buffer // what is written; nil unless it is held
}

// Write sends, or holds what is to be sent.
func (c *together) Write(p []byte) (int, error) {
	if c.held != nil {
		return c.held.Write(p)
	}
	return c.TCPConn.Write(p)
}

// release sends what was held, whole or not at all: after a part of it nothing else may be sent.
func (c *together) release(whole bool) (err error) {
	held := c.held
	c.held = nil
	if whole {
		_, err = held.WriteTo(c.TCPConn)
	}
	if !whole || err != nil {
		_ = c.Close() // it is of no use any more
	}
	helds.Put(held)
	return err
}

// holderKey is where the context of a request has its connection.
type holderKey struct{}

// withHolder puts a connection that can hold into the context of its requests.
func withHolder(ctx context.Context, c net.Conn) context.Context {
	if s, ok := c.(*sheddingConn); ok {
		return context.WithValue(ctx, holderKey{}, &s.together)
	}
	return ctx
}

// Bodies that are sent together with their heads: smaller ones fit into the buffer of the
// server, and beside larger ones another write is nothing.
const (
	leastTogether = 2 << 10
	mostTogether  = 64 << 10
)

// helds are what answers are held in.
var helds = sync.Pool{New: func() any { return new(bytes.Buffer) }}

// WriteBody writes a body whose head is set, together with it where the connection can.
func WriteBody(w http.ResponseWriter, r *http.Request, body []byte) (err error) {
	c, _ := r.Context().Value(holderKey{}).(*together)
	if c == nil || len(body) < leastTogether || len(body) > mostTogether {
		_, err = w.Write(body)
		return err
	}
	c.held = helds.Get().(*bytes.Buffer)
	c.held.Reset()
	whole := false // unless a panic comes between
	defer func() { err = cmp.Or(err, c.release(whole)) }()
	_, err = w.Write(body)
	err = cmp.Or(err, http.NewResponseController(w).Flush())
	whole = true
	return err
}
