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
	until time.Time              // when the backlog is waited for no longer; zero before Quiesce
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
	for errors.Is(err, os.ErrDeadlineExceeded) && l.settle() {
		connection, err = l.Listener.Accept()
	}
	if err == nil || !errors.Is(err, os.ErrDeadlineExceeded) {
		l.settle() // where one came another may follow
		return connection, err
	}
	err = l.Listener.Close()
	close(l.quiet)
	<-l.closed
	return nil, errors.Join(net.ErrClosed, err)
}

// settle waits for one more connection, if the listener is to become quiet. It
// reports whether one is there already: on a busy machine it may have come after the
// time was over and before anybody heard of that, and closing would reset it.
func (l *Patient) settle() bool {
	l.mutex.Lock()
	defer l.mutex.Unlock()
	tcp, ok := l.Listener.(*net.TCPListener)
	if !ok || l.until.IsZero() {
		return false
	}
	next := time.Now().Add(settling)
	if next.After(l.until) {
		next = l.until
	}
	_ = tcp.SetDeadline(next) // it fails on a listener that is closed
	return time.Now().Before(l.until) && waits(tcp)
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

// Quiesce takes the connections that have been made, as long as they follow one
// another closely and for half of the time at most, and then no more. It waits
// until all of them are answered or the time is over. Other listeners than
// those of TCP it leaves as they are.
func (l *Patient) Quiesce(ctx context.Context, most time.Duration) {
	if _, ok := l.Listener.(*net.TCPListener); !ok {
		return
	}
	l.mutex.Lock()
	l.until = time.Now().Add(most / 2)
	l.mutex.Unlock()
	l.settle()
	select {
	case <-l.quiet:
	case <-ctx.Done():
		return
	}
	for l.busy() && ctx.Err() == nil {
		time.Sleep(settling / 4)
	}
}
