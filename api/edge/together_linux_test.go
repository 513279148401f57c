package edge

import (
	"io"
	"net"
	"net/http"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/sys/unix"
)

// segments is how many segments with data the kernel has received on a connection (tcp(7),
// TCP_INFO).
func segments(t *testing.T, c net.Conn) (n uint32) {
	t.Helper()
	raw, err := c.(*net.TCPConn).SyscallConn()
	require.NoError(t, err)
	require.NoError(t, raw.Control(func(fd uintptr) {
		info, err := unix.GetsockoptTCPInfo(int(fd), unix.IPPROTO_TCP, unix.TCP_INFO)
		require.NoError(t, err)
		n = info.Data_segs_in
	}))
	return n
}

// TestOneAnswerIsOneSegment by the count of the kernel, where net/http alone sends more.
func TestOneAnswerIsOneSegment(t *testing.T) {
	const answers = 10
	for _, plain := range []bool{false, true} {
		address, _ := answerAt(t, plain, false)
		connection, in := open(t, address)
		for range answers {
			_, err := io.WriteString(connection, "GET /7400 HTTP/1.1\r\nHost: x\r\n\r\n")
			require.NoError(t, err)
			response, err := http.ReadResponse(in, nil)
			require.NoError(t, err)
			body, err := io.ReadAll(response.Body)
			require.NoError(t, err)
			assert.Len(t, body, 7400)
		}
		if n := segments(t, connection); plain {
			assert.Greater(t, n, uint32(answers))
		} else {
			assert.EqualValues(t, answers, n)
		}
	}
}
