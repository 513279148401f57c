package edge

import (
	"context"
	"errors"
	"net"
	"net/http"
	"os"
	"sync"
	"time"
)

// Patient is a listener that can stop taking connections without resetting
// those that have been made: callers wait in the backlog of the kernel, and a
// server that is told to shut down drops what it has not begun to read.
type Patient struct {
	net.Listener
	quiet  chan struct{} // closed when no connection is taken any more
	closed chan struct{} // closed when the server closes the listener
	once   sync.Once

	mutex sync.Mutex
	begun map[net.Conn]time.Time // connections with a request, or that may send one soon
}

// NewPatient wraps a listener.
func NewPatient(l net.Listener) *Patient {
	return &Patient{Listener: l, quiet: make(chan struct{}), closed: make(chan struct{}), begun: map[net.Conn]time.Time{}}
}

// settling is how long the backlog is waited for, and a new connection for its
// request.
const settling = 20 * time.Millisecond

// Accept hands out connections; after Quiesce those of the backlog, and then
// none until the server closes the listener.
func (l *Patient) Accept() (net.Conn, error) {
	connection, err := l.Listener.Accept()
	if err == nil || !errors.Is(err, os.ErrDeadlineExceeded) {
		return connection, err
	}
	err = l.Listener.Close()
	close(l.quiet)
	<-l.closed
	return nil, errors.Join(net.ErrClosed, err)
}

// Close closes the listener at once, unless it is quiet already.
func (l *Patient) Close() error {
	l.once.Do(func() { close(l.closed) })
	if err := l.Listener.Close(); !errors.Is(err, net.ErrClosed) {
		return err
	}
	return nil
}

// Watch follows the connections of a server on the listener.
func (l *Patient) Watch(s *http.Server) {
	s.ConnState = func(c net.Conn, state http.ConnState) {
		l.mutex.Lock()
		defer l.mutex.Unlock()
		switch state {
		case http.StateNew:
			l.begun[c] = time.Now().Add(50 * settling) // it is given a second for its request
		case http.StateActive:
			l.begun[c] = time.Time{}
		default:
			delete(l.begun, c)
		}
	}
}

// busy reports whether a connection has a request, or may send one soon.
func (l *Patient) busy() bool {
	l.mutex.Lock()
	defer l.mutex.Unlock()
	for _, until := range l.begun {
		if until.IsZero() || time.Now().Before(until) {
			return true
		}
	}
	return false
}

// Quiesce takes the connections that have been made and then no more, and waits
// until all of them are answered or the context ends. Other listeners than
// those of TCP it leaves as they are.
func (l *Patient) Quiesce(ctx context.Context) {
	tcp, ok := l.Listener.(*net.TCPListener)
	if !ok || tcp.SetDeadline(time.Now().Add(settling)) != nil {
		return
	}
	select {
	case <-l.quiet:
	case <-ctx.Done():
		return
	}
	for l.busy() && ctx.Err() == nil {
		time.Sleep(settling / 4)
	}
}
