package edge

import (
	"bufio"
	"io"
	"net"
	"net/http"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// writeTimeout is that of the server.
const writeTimeout = 400 * time.Millisecond

// shedAt serves a handler that reads bodies and answers "read" behind a listener
// that sheds while crowded is set.
func shedAt(t *testing.T, proxies Proxies) (address string, crowded *atomic.Bool) {
	inner, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	crowded = &atomic.Bool{}
	server := &http.Server{WriteTimeout: writeTimeout, Handler: http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		_, _ = io.Copy(io.Discard, r.Body)
		if r.URL.Query().Has("slow") {
			time.Sleep(60 * time.Millisecond)
		}
		_, _ = io.WriteString(w, "read")
	})}
	l := &Shedding{Listener: inner, Caller: proxies.Peer, Crowded: func(caller string) bool { return caller == "127.0.0.1" && crowded.Load() },
		Answer: []byte("HTTP/1.1 503 Service Unavailable\r\nContent-Length: 4\r\n\r\nfull")}
	go func() { _ = server.Serve(l) }()
	t.Cleanup(func() { _ = server.Close() })
	return inner.Addr().String(), crowded
}

// told sends parts of a text, each a moment after the one before, and returns the
// statuses of so many answers.
func told(t *testing.T, c net.Conn, in *bufio.Reader, answers int, parts ...string) string {
	t.Helper()
	for i, part := range parts {
		if i > 0 {
			time.Sleep(20 * time.Millisecond)
		}
		_, err := io.WriteString(c, part)
		require.NoError(t, err)
	}
	var all []string
	for range answers {
		response, err := http.ReadResponse(in, nil)
		require.NoError(t, err)
		body, err := io.ReadAll(response.Body)
		require.NoError(t, err)
		all = append(all, response.Status[:3]+" "+string(body))
	}
	return strings.Join(all, ", ")
}

// toldApart sends parts over new connections until it is told what it wants. On a busy
// machine parts that were sent apart are read at once, and are one call then.
func toldApart(t *testing.T, address, want string, parts ...string) (net.Conn, *bufio.Reader) {
	t.Helper()
	for range 100 {
		connection, in := open(t, address)
		got := told(t, connection, in, 1, parts...)
		if got == want {
			return connection, in
		}
		if len(parts) == 1 || got != "503 full" {
			require.Equal(t, want, got, "%q", parts)
		}
	}
	require.Fail(t, "never told "+want, "%q", parts)
	return nil, nil
}

// open connects for a few seconds.
func open(t *testing.T, address string) (net.Conn, *bufio.Reader) {
	c, err := net.Dial("tcp", address)
	require.NoError(t, err)
	t.Cleanup(func() { _ = c.Close() })
	require.NoError(t, c.SetDeadline(time.Now().Add(20*time.Second)))
	return c, bufio.NewReader(c)
}

const (
	plainGet  = "GET /v1/ruler?length=3 HTTP/1.1\r\nHost: x\r\n\r\n"
	plainPost = "POST /v1/ruler HTTP/1.1\r\nHost: x\r\ncontent-length: 2\r\n\r\n{}"
	headPost  = "POST /v1/ruler HTTP/1.1\r\nHost: x\r\n"
	headGet   = "GET /v1/ruler?length=3 HTTP/1.1\r\nHost: x\r\n"
)

// What is whole and plain is turned away, all else reaches the server, which
// answers what it always answers.
func TestWhatIsShed(t *testing.T) {
	address, crowded := shedAt(t, nil)
	crowded.Store(true)
	for _, c := range map[string]struct {
		parts []string
		want  string
	}{
		"a query":              {[]string{plainGet}, "503 full"},
		"a body":               {[]string{plainPost}, "503 full"},
		"bare line ends":       {[]string{strings.ReplaceAll(plainPost, "\r", "")}, "503 full"},
		"a probe":              {[]string{"GET /readyz?x HTTP/1.1\r\nHost: x\r\n\r\n"}, "200 read"},
		"a list":               {[]string{"GET /v1/kinds HTTP/1.1\r\nHost: x\r\n\r\n"}, "200 read"},
		"a cell":               {[]string{"GET /v1/ruler?length=3&errors=cell HTTP/1.1\r\nHost: x\r\n\r\n"}, "200 read"},
		"a browser":            {[]string{headGet + "Accept: text/html,*/*\r\n\r\n"}, "200 read"},
		"another origin":       {[]string{headGet + "Origin: https://tidewater.example\r\n\r\n"}, "200 read"},
		"the last call":        {[]string{headGet + "Connection: close\r\n\r\n"}, "200 read"},
		"an older protocol":    {[]string{"GET /v1/ruler?length=3 HTTP/1.0\r\n\r\n"}, "200 read"},
		"chunks":               {[]string{headPost + "Transfer-Encoding: chunked\r\n\r\n2\r\n{}\r\n0\r\n\r\n"}, "200 read"},
		"a late body":          {[]string{headPost + "Content-Length: 2\r\n\r\n", "{}"}, "200 read"},
		"a late end":           {[]string{headPost + "Content-Length: 2\r\n", "\r\n{}"}, "200 read"},
		"two lengths":          {[]string{headPost + "Content-Length: 2\r\nContent-Length: 3\r\n\r\n{}"}, "400 400 Bad Request"},
		"a space in a name":    {[]string{headPost + "Content-Length : 2\r\n\r\n"}, "400 400 Bad Request: invalid header name"},
		"a length of no sense": {[]string{headPost + "Content-Length: +2\r\n\r\n{}"}, "400 400 Bad Request"},
	} {
		toldApart(t, address, c.want, c.parts...)
	}
}

// A connection goes on after it shed a call, before and after calls that the
// server read; one whose requests do not come one by one is the server's for good,
// however crowded it is: what lies in a body is never taken for a call.
func TestSheddingKeepsItsPlace(t *testing.T) {
	address, crowded := shedAt(t, nil)
	connection, in := open(t, address)
	assert.Equal(t, "200 read", told(t, connection, in, 1, plainPost))
	crowded.Store(true)
	toldFull(t, connection, in, plainPost)
	toldFull(t, connection, in, plainGet)
	crowded.Store(false)
	assert.Equal(t, "200 read", told(t, connection, in, 1, plainGet))
	crowded.Store(true)
	toldFull(t, connection, in, plainGet)
	assert.Equal(t, "200 read, 200 read", told(t, connection, in, 2, plainGet+plainGet), "pipelined")
	assert.Equal(t, "200 read", told(t, connection, in, 1, plainGet))

	hidden := headPost + "Content-Length: 44\r\n\r\n"
	require.Len(t, plainGet, 44)
	connection, in = toldApart(t, address, "200 read", hidden, plainGet) // what looks like a call is a body
	assert.Equal(t, "200 read", told(t, connection, in, 1, plainGet))

	for _, parts := range [][]string{
		{headPost + "Content-Length: 44\r\n", "\r\n", plainGet},
		{headPost, "Content-Length: 44\r\n\r\n", plainGet},
		{headPost + "Transfer-Encoding: chunked\r\n\r\n", "2c\r\n", plainGet, "\r\n0\r\n\r\n"},
	} {
		toldApart(t, address, "200 read", parts...)
	}
}

// What comes while the server is busy is the server's, but not what comes after it.
func TestSheddingOutlastsABusyServer(t *testing.T) {
	address, crowded := shedAt(t, nil)
	connection, in := open(t, address)
	slow := strings.Replace(plainGet, "length", "slow&length", 1)
	assert.Equal(t, "200 read, 200 read", told(t, connection, in, 2, slow, plainPost))
	crowded.Store(true)
	toldFull(t, connection, in, plainGet)
}

// toldFull asks until it is turned away. The server may have begun to read a request
// before it was crowded, or before it was done with the one before.
func toldFull(t *testing.T, c net.Conn, in *bufio.Reader, request string) {
	t.Helper()
	for range 100 {
		if told(t, c, in, 1, request) == "503 full" {
			return
		}
	}
	t.Error("never turned away")
}

// Who is turned away is answered at once, and not read again for a moment.
func TestSheddingTakesABreath(t *testing.T) {
	address, crowded := shedAt(t, nil)
	crowded.Store(true)
	connection, in := open(t, address)
	began := time.Now()
	for range 5 {
		assert.Equal(t, "503 full", told(t, connection, in, 1, plainGet))
	}
	assert.GreaterOrEqual(t, time.Since(began), 4*breath)
}

// A deadline of the server's that is over keeps no answer back, nor does that of
// what was shed hold for what the server answers.
func TestSheddingHasItsOwnDeadline(t *testing.T) {
	address, crowded := shedAt(t, nil)
	connection, in := open(t, address)
	assert.Equal(t, "200 read", told(t, connection, in, 1, plainPost))
	time.Sleep(2 * writeTimeout)
	crowded.Store(true)
	toldFull(t, connection, in, plainPost)
	crowded.Store(false)
	assert.Equal(t, "200 read", told(t, connection, in, 1, plainPost))
}

// Behind a trusted proxy only the request says who calls.
func TestProxiesAreNotShed(t *testing.T) {
	proxies, err := ParseProxies([]string{"127.0.0.0/8"})
	require.NoError(t, err)
	address, crowded := shedAt(t, proxies)
	crowded.Store(true)
	connection, in := open(t, address)
	assert.Equal(t, "200 read", told(t, connection, in, 1, plainGet))
}
