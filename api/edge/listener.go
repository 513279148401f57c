package edge

import (
	"errors"
	"net"
	"os"
	"sync/atomic"
	"time"
)

// Patient returns a listener that, once it is told to close, first hands out
// every connection that has already been made. Closing at once would reset
// callers that wait in the backlog of the kernel.
func Patient(l net.Listener) net.Listener {
	if tcp, ok := l.(*net.TCPListener); ok {
		return &patient{TCPListener: tcp}
	}
	return l
}

type patient struct {
	*net.TCPListener
	closing atomic.Bool
}

// settling is how long a closing listener waits for one more connection.
const settling = 20 * time.Millisecond

// Accept hands out connections, and closes when it is to close and none is left.
func (l *patient) Accept() (net.Conn, error) {
	for {
		connection, err := l.TCPListener.Accept()
		if err == nil || !errors.Is(err, os.ErrDeadlineExceeded) {
			return connection, err
		}
		return nil, errors.Join(net.ErrClosed, l.TCPListener.Close())
	}
}

// Close begins to close.
func (l *patient) Close() error {
	if l.closing.Swap(true) {
		return nil
	}
	return l.SetDeadline(time.Now().Add(settling))
}
