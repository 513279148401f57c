package edge

import (
	"bytes"
	"context"
	"io"
	"net"
	"net/http"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// held serves on a patient listener; each call says that it began and waits to be let go.
func held(t *testing.T) (l *Patient, began chan struct{}, letGo chan struct{}) {
	t.Helper()
	inner, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	l, began, letGo = NewPatient(inner), make(chan struct{}, 8), make(chan struct{})
	server := &http.Server{Handler: http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		began <- struct{}{}
		<-letGo
		_, _ = io.WriteString(w, "done")
	})}
	l.Watch(server)
	go func() { _ = server.Serve(l) }()
	t.Cleanup(func() { _ = server.Close() })
	return l, began, letGo
}

// asking calls by a connection of its own, and gives what it was told.
func asking(address string) chan string {
	answer := make(chan string, 1)
	go func() {
		client := &http.Client{Transport: &http.Transport{DisableKeepAlives: true}}
		response, err := client.Get("http://" + address)
		if err != nil {
			answer <- "refused"
			return
		}
		defer response.Body.Close()
		body, _ := io.ReadAll(response.Body)
		answer <- string(body)
	}()
	return answer
}

// TestAQuietListenerAnswersWhoIsThere: a call that was begun keeps it waiting and is answered;
// afterwards nobody is taken, and closing is no error.
func TestAQuietListenerAnswersWhoIsThere(t *testing.T) {
	l, began, letGo := held(t)
	address := l.Addr().String()
	answer := asking(address)
	<-began
	assert.True(t, l.busy())
	quiet := make(chan struct{})
	go func() { l.Quiesce(context.Background(), time.Minute); close(quiet) }()
	<-l.quiet
	select {
	case <-quiet:
		t.Error("it did not wait for the call that was begun")
	case <-time.After(2 * settling):
	}
	close(letGo)
	assert.Equal(t, "done", <-answer)
	<-quiet
	assert.False(t, l.busy())
	assert.Equal(t, "refused", <-asking(address))
	assert.NoError(t, l.Close())
	assert.NoError(t, l.Close(), "twice")
}

// TestQuiescingEndsWithItsCaller, however long a call takes; and what is no listener of
// TCP is left as it is.
func TestQuiescingEndsWithItsCaller(t *testing.T) {
	l, began, letGo := held(t)
	answer := asking(l.Addr().String())
	<-began
	ctx, stop := context.WithCancel(context.Background())
	go func() { <-l.quiet; stop() }()
	l.Quiesce(ctx, time.Minute)
	close(letGo)
	assert.Equal(t, "done", <-answer)

	other := NewPatient(pipes{})
	other.Quiesce(context.Background(), time.Hour)
	assert.True(t, other.until.IsZero())
}

// pipes is a listener that is none of TCP.
type pipes struct{ net.Listener }

// TestARefusedBodyIsReadOn: a caller that goes on sending gets the answer, and is told that
// the connection ends with it.
func TestARefusedBodyIsReadOn(t *testing.T) {
	server := &http.Server{Handler: http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		linger := Lingering(w, r, 10*time.Second)
		w.WriteHeader(http.StatusRequestEntityTooLarge)
		_, _ = io.WriteString(w, "too large")
		linger()
	})}
	l, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	go func() { _ = server.Serve(l) }()
	t.Cleanup(func() { _ = server.Close() })
	large := bytes.Repeat([]byte("x"), 8<<20) // more than the kernel keeps
	for range 3 {
		response, err := http.Post("http://"+l.Addr().String(), "text/plain", bytes.NewReader(large))
		require.NoError(t, err)
		body, err := io.ReadAll(response.Body)
		require.NoError(t, err)
		assert.Equal(t, "too large", string(body))
		assert.True(t, response.Close, "the connection is no more")
		_ = response.Body.Close()
	}
}

// TestWhoseBodyIsNotReadOn: nothing was sent, or it was not to be sent before it is
// wanted (RFC 9110, 10.1.1), or other calls have the same connection (HTTP/2).
func TestWhoseBodyIsNotReadOn(t *testing.T) {
	for name, change := range map[string]func(*http.Request){
		"nothing sent":  func(r *http.Request) { r.ContentLength, r.Body = 0, http.NoBody },
		"of no length":  func(r *http.Request) { r.ContentLength = 0 },
		"no body":       func(r *http.Request) { r.ContentLength, r.Body = -1, http.NoBody },
		"none at all":   func(r *http.Request) { r.ContentLength, r.Body = -1, nil },
		"asks first":    func(r *http.Request) { r.Header.Set("Expect", "100-continue") },
		"HTTP/2":        func(r *http.Request) { r.ProtoMajor = 2 },
		"of no network": func(*http.Request) {},
	} {
		sent := strings.NewReader("sent")
		r, err := http.NewRequest(http.MethodPost, "http://x/", sent)
		require.NoError(t, err)
		change(r)
		w := &heads{http.Header{}, name != "of no network"}
		Lingering(w, r, time.Second)()
		assert.Empty(t, w.header, name)
		assert.Equal(t, 4, sent.Len(), name)
	}
}

// heads is a writer that keeps headers, and may let bodies be read while it writes.
type heads struct {
	header http.Header
	duplex bool
}

func (h *heads) EnableFullDuplex() error {
	if h.duplex {
		return nil
	}
	return http.ErrNotSupported
}

func (h *heads) Header() http.Header         { return h.header }
func (h *heads) Write(b []byte) (int, error) { return len(b), nil }
func (h *heads) WriteHeader(int)             {}

// TestWhoCameAsTheTimeRanOutIsTaken: on a busy machine a connection is made after the
// deadline and before the listener hears of that; closing would reset it (RFC 9293, 3.10.7.4).
func TestWhoCameAsTheTimeRanOutIsTaken(t *testing.T) {
	inner, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	l := NewPatient(inner)
	l.until = time.Now().Add(time.Hour)
	require.NoError(t, inner.(*net.TCPListener).SetDeadline(time.Now().Add(-time.Hour)))
	caller, err := net.Dial("tcp", inner.Addr().String())
	require.NoError(t, err)
	defer caller.Close()
	taken, err := l.Accept()
	require.NoError(t, err)
	_, err = io.WriteString(taken, "here")
	require.NoError(t, err)
	require.NoError(t, taken.Close())
	said, err := io.ReadAll(caller)
	require.NoError(t, err)
	assert.Equal(t, "here", string(said))
	require.NoError(t, l.Close())
}
