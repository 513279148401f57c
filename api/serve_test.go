package api

import (
	"bufio"
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/http"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/labstack/echo/v4"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.uber.org/goleak"
)

// running is a service on real listeners.
type running struct {
	*Service
	public, admin string
	stop          context.CancelFunc
	done          chan error
}

// start serves with short times until the test ends.
func start(t *testing.T, change func(*Config)) *running {
	t.Helper()
	return startLogging(t, slog.New(slog.DiscardHandler), change)
}

// startLogging does so with a log.
func startLogging(t *testing.T, log *slog.Logger, change func(*Config)) *running {
	t.Helper()
	t.Cleanup(func() { goleak.VerifyNone(t, goleak.IgnoreCurrent()) })
	config := DefaultConfig()
	config.DrainDelay, config.DrainTimeout = 50*time.Millisecond, 2*time.Second
	if change != nil {
		change(&config)
	}
	public, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	admin, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	ctx, stop := context.WithCancel(context.Background())
	r := &running{New(config, log), "http://" + public.Addr().String(), "http://" + admin.Addr().String(), stop, make(chan error, 1)}
	go func() { r.done <- r.Serve(ctx, public, admin) }()
	t.Cleanup(func() {
		stop()
		http.DefaultClient.CloseIdleConnections()
		select {
		case err := <-r.done:
			assert.NoError(t, err)
		case <-time.After(10 * time.Second):
			assert.Fail(t, "the service does not end")
		}
	})
	return r
}

// fetch gets an address over the network.
func fetch(t *testing.T, address string) (*http.Response, string) {
	t.Helper()
	response, err := http.Get(address)
	require.NoError(t, err)
	defer response.Body.Close()
	body, err := io.ReadAll(response.Body)
	require.NoError(t, err)
	return response, string(body)
}

// TestDrainLosesNoRequest sends requests without pause while the service is
// told to stop: all that are sent before the listener closes are answered,
// readiness is refused at once and connections are asked to close.
func TestDrainLosesNoRequest(t *testing.T) {
	r := start(t, func(c *Config) { c.DrainDelay = 400 * time.Millisecond })
	response, _ := fetch(t, r.public+"/readyz")
	require.Equal(t, http.StatusOK, response.StatusCode)
	var wait sync.WaitGroup
	stopped := make(chan struct{})
	for range 4 {
		wait.Go(func() {
			for {
				select {
				case <-stopped:
					return
				default:
					response, body := fetch(t, r.public+"/v1/solve/slotted-band?"+cards)
					assert.Equal(t, http.StatusOK, response.StatusCode, body)
				}
			}
		})
	}
	time.Sleep(50 * time.Millisecond)
	r.stop()
	require.Eventually(t, r.draining.Load, time.Second, time.Millisecond)
	response, body := fetch(t, r.public+"/readyz")
	assert.Equal(t, http.StatusServiceUnavailable, response.StatusCode)
	assert.True(t, response.Close, "Connection: close")
	assert.NotEmpty(t, response.Header.Get("Retry-After"))
	assert.Contains(t, body, "draining")
	response, _ = fetch(t, r.public+"/healthz")
	assert.Equal(t, http.StatusOK, response.StatusCode)
	time.Sleep(100 * time.Millisecond)
	close(stopped)
	wait.Wait()
}

func TestAdminListenerHasMetricsAndProbes(t *testing.T) {
	r := start(t, nil)
	fetch(t, r.public+"/v1/solve/slotted-band?"+cards)
	fetch(t, r.public+"/nothing")
	_, metrics := fetch(t, r.admin+"/metrics")
	for _, line := range []string{
		`creasefit_answers_total{class="2xx",kind="slotted-band",route="/v1/solve/:kind"} 1`, `creasefit_answers_total{class="4xx",kind="",route="none"} 1`,
		`creasefit_recent_answers_total{remembered="no"} 1`, `creasefit_lane_free_places{lane="dear"} `, `creasefit_lane_shed_total{lane="cheap"} 0`,
		`creasefit_lane_waiting{lane="streams"} 0`, `creasefit_build_info{go="go`, `creasefit_request_seconds_count{route="/v1/solve/:kind"} 1`,
	} {
		assert.Contains(t, metrics, line)
	}
	for _, path := range []string{"/healthz", "/livez", "/readyz", "/debug/pprof/"} {
		response, _ := fetch(t, r.admin+path)
		assert.Equal(t, http.StatusOK, response.StatusCode, path)
	}
	for _, path := range []string{"/metrics", "/debug/pprof/"} {
		response, _ := fetch(t, r.public+path)
		assert.Equal(t, http.StatusNotFound, response.StatusCode, "%s must not be public", path)
	}
}

// TestStalledBodyIs408 sends half a body and waits.
func TestStalledBodyIs408(t *testing.T) {
	r := start(t, func(c *Config) { c.ReadTimeout = 150 * time.Millisecond })
	answer := rawRequest(t, r.public, "POST /v1/solve/band HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\nContent-Length: 100\r\n\r\n{\"unit\"")
	assert.Contains(t, answer, "408 Request Timeout")
	assert.Contains(t, answer, "/problems/body-timeout")
	assert.Contains(t, answer, "Access-Control-Allow-Origin: *")
}

// TestBodyTooLargeIs413 announces a large body, and sends one in chunks that
// is announced by nothing.
func TestBodyTooLargeIs413(t *testing.T) {
	r := start(t, func(c *Config) { c.MostBody = 1000 })
	head := "POST /v1/solve/band HTTP/1.1\r\nHost: x\r\nConnection: close\r\nContent-Type: application/json\r\n"
	announced := rawRequest(t, r.public, head+"Content-Length: 5000\r\n\r\n")
	assert.Contains(t, announced, "413 Request Entity Too Large")
	chunked := rawRequest(t, r.public, head+"Transfer-Encoding: chunked\r\n\r\n7d0\r\n"+strings.Repeat(" ", 2000)+"\r\n0\r\n\r\n")
	assert.Contains(t, chunked, "413 Request Entity Too Large")
	assert.Contains(t, chunked, "/problems/body-too-large")
}

// TestCutOffBodyIsAnswered closes the sending side in the middle of a body.
func TestCutOffBodyIsAnswered(t *testing.T) {
	r := start(t, nil)
	connection, err := net.Dial("tcp", strings.TrimPrefix(r.public, "http://"))
	require.NoError(t, err)
	defer connection.Close()
	_, err = io.WriteString(connection, "POST /v1/solve/band HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\nContent-Length: 100\r\n\r\n{")
	require.NoError(t, err)
	require.NoError(t, connection.(*net.TCPConn).CloseWrite())
	answer, err := io.ReadAll(connection)
	require.NoError(t, err)
	assert.Contains(t, string(answer), "400 Bad Request")
}

// TestStalledHeadersEndTheConnection sends half a request line.
func TestStalledHeadersEndTheConnection(t *testing.T) {
	r := start(t, func(c *Config) { c.ReadTimeout = 100 * time.Millisecond })
	began := time.Now()
	rawRequest(t, r.public, "GET /v1/ki")
	assert.Less(t, time.Since(began), 5*time.Second)
}

// rawRequest sends bytes and returns all that comes back until the end.
func rawRequest(t *testing.T, address, request string) string {
	t.Helper()
	connection, err := net.Dial("tcp", strings.TrimPrefix(address, "http://"))
	require.NoError(t, err)
	defer connection.Close()
	require.NoError(t, connection.SetDeadline(time.Now().Add(8*time.Second)))
	_, err = io.WriteString(connection, request)
	require.NoError(t, err)
	answer, err := io.ReadAll(bufio.NewReader(connection))
	if err != nil && !errors.Is(err, io.EOF) && !strings.Contains(err.Error(), "reset") {
		require.NoError(t, err)
	}
	return string(answer)
}

// TestOverloadIsRefusedInTime takes every place, so that one call waits and
// the next is turned away at once.
func TestOverloadIsRefusedInTime(t *testing.T) {
	config := DefaultConfig()
	config.MostRunning, config.MostWaiting, config.QueueTimeout, config.Recent = 1, 1, 20*time.Millisecond, 0
	s := New(config, slog.New(slog.DiscardHandler))
	require.True(t, s.cheap.Enter(context.Background(), "somebody"))
	a := call(t, s, http.MethodGet, "/v1/solve/slotted-band?"+cards, "")
	assert.Equal(t, "1", a.Header().Get("Retry-After"))
	assert.Equal(t, "/problems/overloaded", a.problem(http.StatusServiceUnavailable).Type)
	s.cheap.Leave()
	call(t, s, http.MethodGet, "/v1/solve/slotted-band?"+cards, "").ok()
}

// freeCheap is how many cheap calculations run at once by default.
func freeCheap() int {
	cheap, _, _ := DefaultConfig().Places()
	return cheap
}

// TestPanicsAreAnsweredAndLogged makes a handler panic and another one fail:
// the answer says a fixed sentence and the request id, the log says the rest.
func TestPanicsAreAnsweredAndLogged(t *testing.T) {
	var log strings.Builder
	s := New(DefaultConfig(), slog.New(slog.NewTextHandler(&log, nil)))
	s.get("/v1/panic", func(echo.Context) error { panic("the secret cause") })
	s.get("/v1/fail", func(echo.Context) error { return errors.New("the secret cause") })
	for _, path := range []string{"/v1/panic", "/v1/fail"} {
		log.Reset()
		p := call(t, s, http.MethodGet, path, "", "Request-Id", "stall-42-abc").problem(http.StatusInternalServerError)
		assert.Contains(t, p.Detail, "stall-42-abc")
		assert.NotContains(t, fmt.Sprint(p), "secret")
		assert.Contains(t, log.String(), "the secret cause")
		assert.Contains(t, log.String(), "stall-42-abc")
	}
}

// TestSlowCalculationsAreCutShort gives the solver no time at all.
func TestSlowCalculationsAreCutShort(t *testing.T) {
	config := DefaultConfig()
	config.SolveTimeout = time.Nanosecond
	p := call(t, New(config, slog.New(slog.DiscardHandler)), http.MethodGet, "/v1/solve/slotted-band?"+cards, "").problem(http.StatusUnprocessableEntity)
	assert.Equal(t, "/problems/took-too-long", p.Type)
}

func TestRequestsAreLoggedOnDemand(t *testing.T) {
	var log strings.Builder
	config := DefaultConfig()
	config.LogRequests = true
	call(t, New(config, slog.New(slog.NewTextHandler(&log, nil))), http.MethodGet, "/v1/kinds", "", "Traceparent", "00-4bf92f3577b34da6a3ce929d0e0e4736-00f067aa0ba902b7-01")
	assert.Contains(t, log.String(), "uri=/v1/kinds status=200")
	assert.Contains(t, log.String(), "trace=4bf92f3577b34da6a3ce929d0e0e4736 span=00f067aa0ba902b7")
	assert.Contains(t, log.String(), "caller=192.0.2.1")
}

func TestRecentAnswersAreTheSameAndBounded(t *testing.T) {
	forgetful := DefaultConfig()
	forgetful.Recent = 0
	fresh, remembering := New(forgetful, slog.New(slog.DiscardHandler)), quiet()
	for range 3 {
		for _, query := range []string{cards, cards + "&pick=/step", cards + "&format=csv", cards + "&format=csv&header=0", cards + "&show=step", strings.Replace(cards, "3-1/2", "3.5", 1)} {
			want := call(t, fresh, http.MethodGet, "/v1/solve/slotted-band?"+query, "").ok()
			got := call(t, remembering, http.MethodGet, "/v1/solve/slotted-band?"+query, "").ok()
			assert.Equal(t, want.Body.String(), got.Body.String())
		}
	}
	assert.Empty(t, fresh.recent.young)
	assert.NotEmpty(t, remembering.recent.young)
	small := newRecent(4000, 125)
	for i := range 1000 {
		small.keep(numbered(i), make([]byte, 100))
		assert.LessOrEqual(t, small.held, 2000)
	}
	assert.LessOrEqual(t, len(small.young)+len(small.old), 40)
	_, ok := small.find(numbered(999))
	assert.True(t, ok)
	_, ok = small.find(numbered(0))
	assert.False(t, ok)
}

// numbered is the key of a made-up request.
func numbered(i int) requestKey { return requestKey(sha256.Sum256(fmt.Append(nil, i))) }

// A collector that is no address keeps nobody from being answered, but is told; none at
// all is not.
func TestACollectorThatIsNoneIsLogged(t *testing.T) {
	for collector, told := range map[string]bool{"": false, "http://[stall": true} {
		var log strings.Builder
		config := DefaultConfig()
		config.Collector = collector
		call(t, New(config, slog.New(slog.NewTextHandler(&log, nil))), http.MethodGet, "/v1/ruler?length=1in", "").ok()
		assert.Equal(t, told, strings.Contains(log.String(), "no traces are sent"), "%q: %s", collector, log.String())
	}
}

func TestConfigIsChecked(t *testing.T) {
	assert.NoError(t, DefaultConfig().Check())
	config := DefaultConfig()
	config.MostURL, config.DrainDelay = 0, -1
	assert.ErrorContains(t, config.Check(), "CREASEFIT_MOST_URL")
	assert.ErrorContains(t, config.Check(), "CREASEFIT_DRAIN_DELAY")
}
