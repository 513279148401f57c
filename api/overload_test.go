package api

import (
	"context"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// askAs sends a request in the name of a caller and returns the status.
func askAs(s *Service, caller int, target string) int {
	r := httptest.NewRequest(http.MethodGet, target, nil)
	r.RemoteAddr = fmt.Sprintf("198.51.100.%d:4711", caller)
	w := httptest.NewRecorder()
	s.Handler().ServeHTTP(w, r)
	return w.Code
}

// unasked counts up, so that no answer is remembered.
var unasked atomic.Int64

// cheapCall and dearCall are addresses that nobody asked for before.
func cheapCall() string {
	return fmt.Sprintf("/v1/solve/slotted-band?unit=mm&width=89&thickness=2.3&caliper=0.%d", 200_000+unasked.Add(1))
}

func dearCall() string {
	return fmt.Sprintf("/v1/drawing/gusset-bag.png?pixels=2000&unit=mm&width=2000&height=2000&thickness=500&caliper=0.%d&fit=easy", 200_000+unasked.Add(1))
}

// besides keeps so many callers asking for something, one after another, until
// it is told to stop; it returns how many of each status they were answered. Who is turned away
// takes a breath, or the callers would keep the processor that the calls are to have.
func besides(s *Service, callers int, target func() string) (stop func() map[int]int) {
	ctx, cancel := context.WithCancel(context.Background())
	var all sync.WaitGroup
	var mutex sync.Mutex
	answers := map[int]int{}
	for i := range callers {
		all.Go(func() {
			for ctx.Err() == nil {
				status := askAs(s, i, target())
				mutex.Lock()
				answers[status]++
				mutex.Unlock()
				if status == http.StatusServiceUnavailable {
					time.Sleep(10 * time.Millisecond) // as its connection would: see edge.Shedding
				}
			}
		})
	}
	return func() map[int]int { cancel(); all.Wait(); return answers }
}

// TestDearWorkKeepsNoCheapCallOut: however much dear work is offered, every
// cheap call is answered meanwhile, and some of the dear ones too.
func TestDearWorkKeepsNoCheapCallOut(t *testing.T) {
	s := with(func(c *Config) {
		c.MostRunning, c.MostDear, c.MostWaiting, c.SolveTimeout, c.DearTimeout = 2, 1, 8, time.Minute, time.Minute
	})
	stop := besides(s, 8, dearCall)
	for range 200 {
		require.Equal(t, http.StatusOK, askAs(s, 100, cheapCall()))
	}
	require.Eventually(t, func() bool { return s.dear.State().Waiting > 0 }, time.Minute, time.Millisecond)
	answers := stop()
	assert.Positive(t, answers[http.StatusOK])
	assert.Equal(t, 1, s.dear.State().Free)
}

// TestFloodsLeaveNothingBehind: of far more callers than there is room for some
// are answered and the rest is turned away; then all is as before.
func TestFloodsLeaveNothingBehind(t *testing.T) {
	s := with(func(c *Config) { c.MostRunning, c.MostWaiting, c.QueueTimeout = 1, 4, time.Hour })
	require.True(t, s.cheap.Enter(context.Background(), "somebody"))
	var all sync.WaitGroup
	var answered, shed atomic.Int64
	for caller := range 64 {
		all.Go(func() {
			switch askAs(s, caller, cheapCall()) {
			case http.StatusOK:
				answered.Add(1)
			case http.StatusServiceUnavailable:
				shed.Add(1)
			}
		})
	}
	require.Eventually(t, func() bool { return shed.Load() == 60 }, time.Minute, time.Millisecond, "what finds no room waits for nothing")
	s.cheap.Leave()
	all.Wait()
	assert.EqualValues(t, 4, answered.Load())
	state := s.cheap.State()
	assert.Equal(t, 1, state.Free)
	assert.Zero(t, state.Waiting)
	assert.Equal(t, http.StatusOK, askAs(s, 1, cheapCall()))
}

// TestWhatIsShedUnreadIsAnsweredAlike: a call that finds no room is told the same
// whether it was read or not.
func TestWhatIsShedUnreadIsAnsweredAlike(t *testing.T) {
	r := start(t, func(c *Config) { c.MostRunning, c.MostWaiting, c.QueueTimeout = 1, 1, time.Hour })
	require.True(t, r.cheap.Enter(context.Background(), "somebody"))
	var waits sync.WaitGroup
	waits.Go(func() { fetch(t, r.public+cheapCall()) })
	require.Eventually(t, func() bool { return r.cheap.State().Waiting == 1 }, time.Minute, time.Millisecond)
	unread, body := fetch(t, r.public+cheapCall())
	again, _ := http.NewRequest(http.MethodGet, r.public+cheapCall(), nil)
	again.Header.Set("Origin", "https://tidewater.example") // a page's call is read, to say who may see the answer
	read, err := http.DefaultClient.Do(again)
	require.NoError(t, err)
	defer read.Body.Close()
	want, err := io.ReadAll(read.Body)
	require.NoError(t, err)
	assert.Equal(t, http.StatusServiceUnavailable, read.StatusCode)
	assert.Equal(t, read.StatusCode, unread.StatusCode)
	assert.Equal(t, string(want), body)
	for _, name := range []string{"Content-Type", "Cache-Control", "Retry-After", "Vary", "X-Content-Type-Options"} {
		assert.Equal(t, read.Header.Values(name), unread.Header.Values(name), name)
	}
	assert.Empty(t, unread.Header.Get("Request-Id"), "it was not read")
	assert.EqualValues(t, 2, r.cheap.State().Shed)
	r.cheap.Leave()
	waits.Wait()
	response, _ := fetch(t, r.public+cheapCall())
	assert.Equal(t, http.StatusOK, response.StatusCode)
}
