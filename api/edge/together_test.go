package edge

import (
	"bufio"
	"bytes"
	"fmt"
	"io"
	"net"
	"net/http"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// answering is a server of bodies that are as long as the path says. What its handler
// is told by WriteBody comes out of said; a path of letters is a stream, of which one line
// is sent for each that more gives.
type answering struct {
	said chan error
	more chan bool
}

func (a *answering) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	n, err := strconv.Atoi(r.URL.Path[1:])
	if err != nil {
		for range a.more {
			_, _ = io.WriteString(w, "line\n")
			_ = http.NewResponseController(w).Flush()
		}
		return
	}
	_, _ = io.Copy(io.Discard, r.Body)
	w.Header().Set("Content-Length", strconv.Itoa(n))
	w.WriteHeader(http.StatusOK)
	a.said <- WriteBody(w, r, bytes.Repeat([]byte("tea "), n/4+1)[:n])
}

// narrow is a listener whose connections take next to nothing from the server that their
// callers do not read.
type narrow struct{ net.Listener }

func (l narrow) Accept() (net.Conn, error) {
	c, err := l.Listener.Accept()
	if err == nil {
		err = c.(*net.TCPConn).SetWriteBuffer(1)
	}
	return c, err
}

// answerAt serves with connections that hold answers, or with the plain ones of net/http.
func answerAt(t *testing.T, plain bool, narrowed bool) (address string, a *answering) {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	address, a = listener.Addr().String(), &answering{make(chan error, 1000), make(chan bool)}
	config := DefaultConfig()
	config.WriteTimeout = writeTimeout
	server := config.Server(a)
	if narrowed {
		listener = narrow{listener}
	}
	if !plain {
		listener = &Shedding{Listener: listener, Caller: func(string) string { return "" }}
	}
	go func() { _ = server.Serve(listener) }()
	t.Cleanup(func() { _ = server.Close() })
	return address, a
}

// date is the header that differs from answer to answer.
var date = regexp.MustCompile(`Date: [^\r]*\r\n`)

// bytesOf sends requests and returns all that comes until the server hangs up.
func bytesOf(t *testing.T, address, requests string) string {
	t.Helper()
	c, in := open(t, address)
	_, err := io.WriteString(c, requests)
	require.NoError(t, err)
	all, err := io.ReadAll(in)
	require.NoError(t, err)
	return date.ReplaceAllString(string(all), "")
}

// Byte for byte what net/http sends by itself: bodies of every size, requests that are
// kept alive, pipelined, of an older protocol, without a body wanted, and that wait to
// send theirs.
func TestAnswersAreThoseOfNetHTTP(t *testing.T) {
	ours, _ := answerAt(t, false, false)
	plain, _ := answerAt(t, true, false)
	for _, n := range []int{0, 1, leastTogether - 1, leastTogether, 3950, 4000, 4096, 7400, 8192, 20_000, mostTogether, mostTogether + 1, 300_000} {
		get, last := fmt.Sprintf("GET /%d HTTP/1.1\r\nHost: x\r\n", n), "GET /5000 HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n"
		for what, requests := range map[string]string{
			"alone":      get + "Connection: close\r\n\r\n",
			"pipelined":  get + "\r\n" + get + "\r\n" + last,
			"head":       "HEAD" + get[3:] + "\r\n" + last,
			"older":      fmt.Sprintf("GET /%d HTTP/1.0\r\n\r\n", n),
			"older kept": fmt.Sprintf("GET /%d HTTP/1.0\r\nConnection: keep-alive\r\n\r\n", n) + last,
			"continued":  fmt.Sprintf("POST /%d HTTP/1.1\r\nHost: x\r\nExpect: 100-continue\r\nContent-Length: 4\r\n\r\nteas", n) + last,
		} {
			want := bytesOf(t, plain, requests)
			require.Contains(t, want, fmt.Sprintf("Content-Length: %d\r\n", n))
			if got := bytesOf(t, ours, requests); got != want {
				assert.Equal(t, len(want), len(got), "%d bytes, %s", n, what)
				assert.Fail(t, "other bytes", "%d bytes, %s", n, what)
			}
		}
	}
}

// A connection that has held an answer holds nothing of a stream, and answers
// go out before the handler is done.
func TestStreamsAreNotHeld(t *testing.T) {
	address, a := answerAt(t, false, false)
	c, in := open(t, address)
	assert.Len(t, told(t, c, in, 1, "GET /7400 HTTP/1.1\r\nHost: x\r\n\r\n"), 4+7400)
	require.NoError(t, <-a.said)
	_, err := io.WriteString(c, "GET /stream HTTP/1.1\r\nHost: x\r\n\r\n")
	require.NoError(t, err)
	a.more <- true
	response, err := http.ReadResponse(in, nil)
	require.NoError(t, err)
	lines := bufio.NewReader(response.Body)
	for range 3 {
		line, err := lines.ReadString('\n')
		require.NoError(t, err)
		assert.Equal(t, "line\n", line)
		a.more <- true
	}
	close(a.more)
	rest, err := io.ReadAll(lines)
	require.NoError(t, err)
	assert.Equal(t, "line\n", string(rest))
	assert.Len(t, told(t, c, in, 1, "GET /7400 HTTP/1.1\r\nHost: x\r\n\r\n"), 4+7400, "and it is kept alive")
}

// Who does not read in time gets a part of an answer and then nothing more, since what
// would follow belongs to another one; the handler hears of it.
func TestNothingFollowsAPart(t *testing.T) {
	one := fmt.Sprintf("GET /%d HTTP/1.1\r\nHost: x\r\n\r\n", mostTogether)
	unhurried, _ := answerAt(t, false, false)
	whole := len(bytesOf(t, unhurried, strings.Replace(one, "1.1", "1.0", 1))) + len("Date: Mon, 02 Jan 2006 15:04:05 GMT\r\n") - len("Connection: close\r\n")
	address, a := answerAt(t, false, true)
	c, _ := open(t, address)
	require.NoError(t, c.(*net.TCPConn).SetReadBuffer(1))
	_, err := io.WriteString(c, strings.Repeat(one, 20))
	require.NoError(t, err)
	for err = <-a.said; err == nil; {
		err = <-a.said // what the kernel takes nobody waits for
	}
	got, _ := io.ReadAll(c) // it may end with a reset
	begun := bytes.Count(got, []byte("HTTP/1.1"))
	assert.Less(t, len(got), begun*whole)
	assert.Greater(t, len(got), (begun-1)*whole)
}

// fainting is a writer whose handler panics when all is written.
type fainting struct{ http.ResponseWriter }

func (fainting) Flush() { panic("spilt tea") }

// A handler that panics in the middle of an answer, and is caught, sends none of it: what
// was held is nobody else's, and the connection comes to its end.
func TestAPanicSendsNothing(t *testing.T) {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	server := DefaultConfig().Server(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		defer func() { assert.Equal(t, "spilt tea", recover()) }()
		_ = WriteBody(fainting{w}, r, make([]byte, 7400))
	}))
	go func() { _ = server.Serve(&Shedding{Listener: listener, Caller: func(string) string { return "" }}) }()
	t.Cleanup(func() { _ = server.Close() })
	assert.Empty(t, bytesOf(t, listener.Addr().String(), "GET / HTTP/1.1\r\nHost: x\r\n\r\n"))
}
