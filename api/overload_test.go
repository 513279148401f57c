package api

import (
	"context"
	"fmt"
	"net/http"
	"net/http/httptest"
	"runtime"
	"slices"
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
// it is told to stop; it returns how many of each status they were answered.
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
			}
		})
	}
	return func() map[int]int { cancel(); all.Wait(); return answers }
}

// TestDearWorkKeepsNoCheapCallOut: however much dear work is offered, every
// cheap call is answered meanwhile, and some of the dear ones too.
func TestDearWorkKeepsNoCheapCallOut(t *testing.T) {
	s := with(func(c *Config) { c.MostRunning, c.MostDear, c.MostWaiting = 2, 1, 8 })
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

// mostOffering is how many callers offer calls at a rate: as many connections as
// may wait for an answer at once before one comes late.
const mostOffering = 512

// offer sends cheap calls at a rate and returns how many of them were answered a
// second, and how long the slowest but one in a hundred took from when it was due.
func offer(b testing.TB, address string, rate float64, most time.Duration) (perSecond float64, slow time.Duration) {
	var mutex sync.Mutex
	var took []time.Duration
	var all sync.WaitGroup
	var next atomic.Int64
	callers := make([]*visitor, mostOffering)
	for i := range callers {
		callers[i] = dial(b, address)
	}
	began := time.Now()
	for _, caller := range callers {
		what := newAsking("/v1/solve/slotted-band", bandBody, false)
		all.Go(func() {
			for {
				due := time.Duration(float64(next.Add(1)) / rate * float64(time.Second))
				if due > most {
					return
				}
				time.Sleep(time.Until(began.Add(due)))
				status, _, err := caller.ask(what.next())
				assert.NoError(b, err)
				if status == http.StatusOK {
					mutex.Lock()
					took = append(took, time.Since(began)-due)
					mutex.Unlock()
				}
			}
		})
	}
	all.Wait()
	slices.Sort(took)
	return float64(len(took)) / time.Since(began).Seconds(), took[len(took)*99/100]
}

// BenchmarkOverload measures what the service answers alone, at half of that
// quietly and beside dear work without limit, and at four times of it, in one
// run: the cheap calls kept, and their slowest hundredth beside the quiet one.
func BenchmarkOverload(b *testing.B) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	for b.Loop() {
		s := unremembering()
		address := listen(b, s.Handler())
		_, dear, _ := s.config.Places()
		runtime.GOMAXPROCS(runtime.NumCPU() + dear) // as the program has it
		const each = 2 * time.Second
		began := time.Now()
		answered := newCrowd(b, 8, address, "/v1/solve/slotted-band", bandBody, false).ask(b, 5000)
		alone := float64(answered) / time.Since(began).Seconds()
		_, quiet := offer(b, address, alone/2, each)
		stop := besides(s, 16, dearCall)
		kept, beside := offer(b, address, alone/2, each)
		stop()
		peak, _ := offer(b, address, 4*alone, each)
		after, recovered := offer(b, address, alone/2, each)
		b.ReportMetric(alone, "alone/s")
		b.ReportMetric(kept/(alone/2), "kept")
		b.ReportMetric(float64(beside)/float64(quiet), "p99-ratio")
		b.ReportMetric(float64(quiet.Microseconds()), "quiet-p99-us")
		b.ReportMetric(peak/alone, "flooded")
		b.ReportMetric(after/(alone/2), "after")
		b.ReportMetric(float64(recovered)/float64(quiet), "after-p99-ratio")
	}
}
