package api

import (
	"context"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/edge"
)

// with is a service with changed settings and no log.
func with(change func(*Config)) *Service {
	config := DefaultConfig()
	change(&config)
	return New(config, slog.New(slog.DiscardHandler))
}

// TestRateIsLimitedByCaller: two calls at once, and every answer says what is
// left. Probes do not count, and what a caller writes about itself neither.
func TestRateIsLimitedByCaller(t *testing.T) {
	s := with(func(c *Config) { c.RateLimit, c.RateBurst = 0.001, 2 })
	for left := 1; left >= 0; left-- {
		a := call(t, s, http.MethodGet, "/v1/kinds", "", "X-Forwarded-For", fmt.Sprint("198.51.100.", left)).ok()
		assert.Regexp(t, fmt.Sprintf(`^"calls";r=%d;t=`, left), a.Header().Get("RateLimit"))
		assert.Equal(t, `"calls";q=2;w=2000`, a.Header().Get("RateLimit-Policy"))
	}
	a := call(t, s, http.MethodGet, "/v1/kinds", "", "X-Forwarded-For", "198.51.100.9")
	assert.Regexp(t, `^[1-9][0-9]*$`, a.Header().Get("Retry-After"))
	assert.NotEqual(t, "1", a.Header().Get("Retry-After"), "it says how long")
	assert.Equal(t, "/problems/too-many-calls", a.problem(http.StatusTooManyRequests).Type)
	for _, probe := range []string{"/readyz", "/livez", "/healthz"} {
		call(t, s, http.MethodGet, probe, "").ok()
	}
	behind := with(func(c *Config) { c.RateLimit, c.RateBurst, c.TrustedProxies = 0.001, 1, []string{"192.0.2.0/24"} })
	for _, address := range []string{"198.51.100.7", "198.51.100.8", "2001:db8:1:1::1", "2001:db8:1:2::1"} {
		call(t, behind, http.MethodGet, "/v1/kinds", "", "X-Forwarded-For", address).ok()
	}
	call(t, behind, http.MethodGet, "/v1/kinds", "", "X-Forwarded-For", "2001:db8:1:1:9:9:9:9").problem(http.StatusTooManyRequests)
}

// TestLinesCountAsCalls: a batch takes as long as its lines would alone.
func TestLinesCountAsCalls(t *testing.T) {
	s := with(func(c *Config) { c.RateLimit, c.RateBurst = 20, 5 })
	began := time.Now()
	a := call(t, s, http.MethodPost, "/v1/batch", strings.Repeat(`{"call":"/v1/ruler","length":"92.1 mm"}`+"\n", 8), "Content-Type", mediaLines).ok()
	assert.Contains(t, a.Body.String(), `"done":true,"count":8,"failed":0`)
	assert.GreaterOrEqual(t, time.Since(began), 150*time.Millisecond, "the burst is four lines, and the other four wait for 50 ms each")
}

// TestKeysOpenTheCalls where they are configured; what is no call stays open.
func TestKeysOpenTheCalls(t *testing.T) {
	key, line := edge.NewKey("stall")
	path := filepath.Join(t.TempDir(), "keys")
	require.NoError(t, os.WriteFile(path, []byte(line+" 0.001 2\n"), 0o600))
	s := with(func(c *Config) { c.KeysFile, c.RateLimit = path, 1 })
	ask := func(target, key string) int {
		return askFrom(s, http.MethodGet, target, "", "Authorization", "Bearer "+key).Code
	}
	w := askFrom(s, http.MethodGet, "/v1/kinds", "")
	assert.Equal(t, http.StatusUnauthorized, w.Code)
	assert.Equal(t, `Bearer realm="creasefit"`, w.Header().Get("WWW-Authenticate"))
	assert.Contains(t, w.Body.String(), "/problems/no-key")
	assert.Equal(t, http.StatusUnauthorized, ask("/v1/kinds", "cf_WRONG"))
	for _, open := range []string{"/readyz", "/openapi.json", "/problems/no-key", "/"} {
		assert.Equal(t, http.StatusOK, askFrom(s, http.MethodGet, open, "").Code, open)
	}
	assert.Equal(t, http.StatusOK, ask("/v1/kinds", key))
	assert.Equal(t, http.StatusOK, ask("/v1/kinds", key))
	assert.Equal(t, http.StatusTooManyRequests, ask("/v1/kinds", key), "its own rate")
}

// TestSettingsAreCheckedTogether: every mistake and every name that is none.
func TestSettingsAreCheckedTogether(t *testing.T) {
	_, err := edge.ReadConfig([]string{"HOME=/", "CREASEFIT_MOST_RUNING=5", "CREASEFIT_MOST_URL=0", "CREASEFIT_DRAIN_DELAY=-1s", "CREASEFIT_TRUSTED_PROXIES=10.0.0.0/8,proxy.example",
		"CREASEFIT_KEYS_FILE=/nowhere/keys", "CREASEFIT_LOG_FORMAT=xml", "CREASEFIT_ALLOWED_ORIGINS=https://tidewater.example/"})
	for _, wrong := range []string{"CREASEFIT_MOST_RUNING is no setting; did you mean CREASEFIT_MOST_RUNNING?", "CREASEFIT_MOST_URL must be above zero", "CREASEFIT_DRAIN_DELAY must not be below zero",
		`CREASEFIT_TRUSTED_PROXIES: "proxy.example"`, "CREASEFIT_KEYS_FILE: ", "CREASEFIT_LOG_FORMAT: ", "CREASEFIT_ALLOWED_ORIGINS: "} {
		assert.ErrorContains(t, err, wrong)
	}
	_, err = edge.ReadConfig([]string{"CREASEFIT_SOLVE_TIMEOUT=soon", "CREASEFIT_MOST_BODY=much", "CREASEFIT_X=1"})
	for _, wrong := range []string{"SolveTimeout", "MostBody", "CREASEFIT_X is no setting"} {
		assert.ErrorContains(t, err, wrong)
	}
	config, err := edge.ReadConfig([]string{"CREASEFIT_ADDR=127.0.0.1:9000"})
	require.NoError(t, err)
	assert.Equal(t, "127.0.0.1:9000", config.Addr)
}

// TestDearWorkLeavesTheCheapLane: however much dear work is there, it waits in a
// lane of its own, which never has all processors; remembered answers and
// probes wait for none.
func TestDearWorkLeavesTheCheapLane(t *testing.T) {
	cheap, dear, _ := DefaultConfig().Places()
	assert.Equal(t, max(1, cheap-1), dear)
	s := with(func(c *Config) { c.MostRunning, c.MostDear, c.MostWaiting = 1, 1, 0 })
	for range 2 { // an answer is remembered when it is given again
		call(t, s, http.MethodGet, "/v1/drawing/slotted-band.svg?"+cards, "").ok()
	}
	require.True(t, s.dear.Enter(context.Background(), "somebody"))
	for _, target := range []string{"/v1/drawing/slotted-band.pdf?" + cards, "/v1/drawing/slotted-band.png?" + cards, "/v1/guide/slotted-band.pdf?" + cards, "/v1/yield?unit=in&sheet=12x12&blank=2x3"} {
		a := call(t, s, http.MethodGet, target, "")
		assert.Equal(t, "/problems/overloaded", a.problem(http.StatusServiceUnavailable).Type, target)
	}
	for range 2 {
		call(t, s, http.MethodGet, "/v1/solve/slotted-band?"+cards, "").ok()
	}
	require.True(t, s.cheap.Enter(context.Background(), "somebody"))
	call(t, s, http.MethodGet, "/v1/solve/slotted-band?"+cards+"&bench=plotter", "").problem(http.StatusServiceUnavailable)
	for _, open := range []string{"/v1/solve/slotted-band?" + cards, "/v1/drawing/slotted-band.svg?" + cards, "/readyz", "/livez", "/openapi.json"} {
		call(t, s, http.MethodGet, open, "").ok()
	}
	s.cheap.Leave()
	s.dear.Leave()
	assert.Equal(t, uint64(4), s.dear.State().Shed)
	assert.Equal(t, uint64(1), s.cheap.State().Shed)
}

// TestStreamsEndWithALastLine when the service goes down: what was not answered
// is not taken for answered.
func TestStreamsEndWithALastLine(t *testing.T) {
	r := start(t, func(c *Config) { c.DrainDelay = 20 * time.Millisecond })
	in, out := io.Pipe()
	defer out.Close()
	go func() { _, _ = io.WriteString(out, cardLine(0, "4")+"\n"+cardLine(1, "5")+"\n") }()
	response, err := http.Post(r.public+"/v1/batch", mediaLines, in)
	require.NoError(t, err)
	defer response.Body.Close()
	r.stop()
	body, err := io.ReadAll(response.Body)
	require.NoError(t, err)
	lines := strings.Split(strings.TrimSpace(string(body)), "\n")
	assert.Contains(t, lines[len(lines)-1], `{"done":false,"count":`)
	assert.Contains(t, lines[len(lines)-1], `"why":"the service is going down`)
}

// TestDrainResetsNobody keeps calling anew, on a connection a call, long after
// the pause: whoever was connected is answered.
func TestDrainResetsNobody(t *testing.T) {
	r := start(t, func(c *Config) { c.DrainDelay = 100 * time.Millisecond })
	address := strings.TrimPrefix(r.public, "http://")
	var wait sync.WaitGroup
	var answers, connected atomic.Int64
	enough := make(chan struct{})
	for range 8 {
		wait.Go(func() {
			for {
				select {
				case <-enough:
					return
				default:
				}
				connection, err := net.Dial("tcp", address)
				if err != nil {
					return // the listener is gone: refused, not reset
				}
				connected.Add(1)
				_ = connection.SetDeadline(time.Now().Add(10 * time.Second))
				_, _ = io.WriteString(connection, "GET /v1/kinds HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n")
				body, err := io.ReadAll(connection)
				if assert.NoError(t, err) && assert.True(t, strings.HasPrefix(string(body), "HTTP/1.1 200 "), "%.60q", body) {
					answers.Add(1)
				}
				_ = connection.Close()
			}
		})
	}
	time.Sleep(20 * time.Millisecond)
	r.stop()
	time.Sleep(300 * time.Millisecond)
	close(enough)
	wait.Wait()
	assert.Equal(t, connected.Load(), answers.Load())
	assert.Positive(t, answers.Load())
}
