//go:build unix

package edge

import (
	"net"

	"golang.org/x/sys/unix"
)

// waits reports whether a connection has been made that nobody has taken yet.
func waits(l *net.TCPListener) (one bool) {
	raw, err := l.SyscallConn()
	if err != nil {
		return false
	}
	// It fails on a listener that is closed.
	_ = raw.Control(func(fd uintptr) {
		n, err := unix.Poll([]unix.PollFd{{Fd: int32(fd), Events: unix.POLLIN}}, 0)
		one = err == nil && n > 0
	})
	return one
}
