package api

import (
	"fmt"
	"io"
	"net"
	"net/http"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestHostileRequests sends over real sockets what no honest caller sends: each
// is refused or cut off, none is answered with 200 or 5xx twice over, and the
// service goes on.
func TestHostileRequests(t *testing.T) {
	r := start(t, func(c *Config) { c.ReadTimeout = 300 * time.Millisecond })
	const head = "GET /v1/kinds HTTP/1.1\r\nHost: x\r\n"
	const post = "POST /v1/ruler HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\n"
	for name, c := range map[string]struct {
		request string
		answers []string // beginnings; "" for none at all
	}{
		"two lengths":              {post + "Content-Length: 2\r\nContent-Length: 30\r\n\r\n{}", []string{"HTTP/1.1 400"}},
		"length and chunks":        {post + "Content-Length: 4\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\nGET /smuggled HTTP/1.1\r\nHost: x\r\n\r\n", []string{"HTTP/1.1 400", "HTTP/1.1 400"}},
		"another coding":           {post + "Transfer-Encoding: xchunked\r\n\r\n0\r\n\r\n", []string{"HTTP/1.1 501", "HTTP/1.1 400"}},
		"a space before the colon": {head + "Content-Length : 5\r\n\r\nabcde", []string{"HTTP/1.1 400"}},
		"no host":                  {"GET /v1/kinds HTTP/1.1\r\n\r\n", []string{"HTTP/1.1 400"}},
		"two hosts":                {"GET /v1/kinds HTTP/1.1\r\nHost: x\r\nHost: y\r\n\r\n", []string{"HTTP/1.1 400"}},
		"a NUL in a header":        {head + "X: a\x00b\r\n\r\n", []string{"HTTP/1.1 400"}},
		"a chunk of nonsense":      {post + "Transfer-Encoding: chunked\r\n\r\nzz\r\n", []string{"HTTP/1.1 400"}},
		"a chunk beyond all":       {post + "Transfer-Encoding: chunked\r\n\r\nfffffffffffffffff\r\n", []string{"HTTP/1.1 400"}},
		"a negative length":        {post + "Content-Length: -1\r\n\r\n", []string{"HTTP/1.1 400"}},
		"headers without end":      {head + strings.Repeat("X-A: "+strings.Repeat("a", 1000)+"\r\n", 100), []string{"HTTP/1.1 431", ""}},
		"headers that stall":       {head, []string{"HTTP/1.1 408", ""}},
		"a body that stalls":       {post + "Content-Length: 50\r\n\r\n{", []string{"HTTP/1.1 408"}},
		"traversal":                {"GET /element/../../etc/passwd HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n", []string{"HTTP/1.1 404"}},
		"encoded traversal":        {"GET /assets/%2e%2e%2f%2e%2e/passwd HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n", []string{"HTTP/1.1 404"}},
		"bad UTF-8":                {"GET /v1/ruler?length=%ff%fe HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n", []string{"HTTP/1.1 400"}},
		"a compressed bomb":        {post + "Content-Encoding: gzip\r\nContent-Length: 4\r\nConnection: close\r\n\r\nabcd", []string{"HTTP/1.1 415"}},
		"a deep bomb":              {post + "Connection: close\r\nContent-Length: 60000\r\n\r\n" + strings.Repeat("[", 60000), []string{"HTTP/1.1 400"}},
		"another protocol":         {"PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n", []string{"HTTP/1.1 400", "HTTP/1.1 404", "HTTP/1.1 505", ""}},
		"no protocol":              {"\x16\x03\x01\x02\x00\x01\x00", []string{"HTTP/1.1 400", "HTTP/1.0 400", ""}},
	} {
		t.Run(name, func(t *testing.T) {
			answer := rawRequest(t, r.public, c.request)
			fits := false
			for _, want := range c.answers {
				fits = fits || want == "" && answer == "" || want != "" && strings.HasPrefix(answer, want)
			}
			assert.True(t, fits, "%.120q", answer)
			assert.LessOrEqual(t, strings.Count(answer, "HTTP/1.1 "), 1, "one answer: %.300q", answer)
			assert.NotContains(t, answer, "smuggled")
		})
	}
	response, _ := fetch(t, r.public+"/readyz")
	assert.Equal(t, http.StatusOK, response.StatusCode)
}

// TestPipelinedRequestsAreAnsweredInOrder sends many at once on one connection
// and reads as many answers. (One who half-closes counts as gone to net/http:
// what is still being worked on is broken off.)
func TestPipelinedRequestsAreAnsweredInOrder(t *testing.T) {
	r := start(t, nil)
	connection, err := net.Dial("tcp", strings.TrimPrefix(r.public, "http://"))
	require.NoError(t, err)
	defer connection.Close()
	_ = connection.SetDeadline(time.Now().Add(20 * time.Second))
	const count = 50
	for i := range count {
		last := map[bool]string{true: "Connection: close\r\n"}[i == count-1]
		fmt.Fprintf(connection, "GET /v1/ruler?length=%dmm&pick=/lengths/0/mm HTTP/1.1\r\nHost: x\r\n%s\r\n", i+1, last)
	}
	answers, err := io.ReadAll(connection)
	require.NoError(t, err)
	assert.Equal(t, count, strings.Count(string(answers), "HTTP/1.1 200 OK"))
	assert.Less(t, strings.Index(string(answers), "\r\n\r\n1HTTP"), strings.Index(string(answers), "\r\n\r\n2HTTP"))
}

// TestHalfClosedConnectionsAreLetGo: callers that send no more are answered or
// dropped, none of them holds anything, and others are answered.
func TestHalfClosedConnectionsAreLetGo(t *testing.T) {
	r := start(t, nil)
	for _, sent := range []string{"", "GET /v1/kinds HTTP/1.1\r\nHost: x\r\n\r\n", "GET /v1/ki", "POST /v1/ruler HTTP/1.1\r\nHost: x\r\nContent-Length: 50\r\n\r\n{"} {
		connection, err := net.Dial("tcp", strings.TrimPrefix(r.public, "http://"))
		require.NoError(t, err)
		defer connection.Close()
		_ = connection.SetDeadline(time.Now().Add(20 * time.Second))
		_, err = io.WriteString(connection, sent)
		require.NoError(t, err)
		require.NoError(t, connection.(*net.TCPConn).CloseWrite())
		answer, err := io.ReadAll(connection)
		assert.NoError(t, err, "it is closed from the other side too")
		assert.LessOrEqual(t, strings.Count(string(answer), "HTTP/1.1 "), 1)
	}
	response, _ := fetch(t, r.public+"/v1/kinds")
	assert.Equal(t, http.StatusOK, response.StatusCode)
}
