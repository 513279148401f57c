package api

import (
	"context"
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"os"
	"runtime"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// processorTime is what this process has used of the processors.
func processorTime(t testing.TB) time.Duration {
	var used syscall.Rusage
	require.NoError(t, syscall.Getrusage(syscall.RUSAGE_SELF, &used))
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}

// dearest is a request of at most 8 KB that costs as much as its call lets in.
type dearest struct{ Target, Media, Body string }

// dearestRequests reads the dearest requests of every call.
func dearestRequests(t *testing.T) []dearest {
	t.Helper()
	text, err := os.ReadFile("testdata/dearest.json")
	require.NoError(t, err)
	var list []dearest
	require.NoError(t, json.Unmarshal(text, &list))
	require.NotEmpty(t, list)
	return list
}

// send sends it to a service for as long as its caller waits.
func (d *dearest) send(t *testing.T, ctx context.Context, service http.Handler) *httptest.ResponseRecorder {
	t.Helper()
	method := http.MethodGet
	if d.Body != "" {
		method = http.MethodPost
	}
	r := httptest.NewRequestWithContext(ctx, method, d.Target, strings.NewReader(d.Body))
	r.Header.Set("Content-Type", d.Media)
	r.Header.Set("Accept-Encoding", "gzip")
	w := httptest.NewRecorder()
	defer func() {
		if cause := recover(); cause != nil {
			assert.Equal(t, http.ErrAbortHandler, cause) // it answers nobody
		}
	}()
	service.ServeHTTP(w, r)
	return w
}

// TestDearestRequests: none takes a second of a processor. All that it allocates,
// freed or not, is counted, which is more than it ever holds.
func TestDearestRequests(t *testing.T) {
	if testing.Short() {
		t.Skip("the dearest requests")
	}
	for _, d := range dearestRequests(t) {
		require.LessOrEqual(t, len(d.Target)+len(d.Body), 8<<10)
		service := unremembering().Handler()
		runtime.GC()
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		began := processorTime(t)
		w := d.send(t, context.Background(), service)
		took := processorTime(t) - began
		runtime.ReadMemStats(&after)
		allocated := float64(after.TotalAlloc-before.TotalAlloc) / (1 << 20)
		t.Logf("%3d %7.1f ms %6.1f MiB allocated %8d bytes sent  %.70s", w.Code, took.Seconds()*1000, allocated, w.Body.Len(), d.Target)
		assert.Equal(t, http.StatusOK, w.Code, "%s: %.300s", d.Target, w.Body)
		assert.Less(t, took, time.Second, d.Target)
		assert.Less(t, allocated, 80.0, d.Target)
	}
}

// TestDearestRequestsEndWithTheirCaller: one who leaves in the middle has no more
// than 100 ms of a processor spent on what nobody waits for. Processor time is the
// whole process's, with what it collects of earlier requests: the least of a few
// tries is the request's own.
func TestDearestRequestsEndWithTheirCaller(t *testing.T) {
	if testing.Short() {
		t.Skip("the dearest requests")
	}
	requests := append(dearestRequests(t), dearest{Target: "/v1/yield", Media: "application/json", Body: hardOrder()})
	for _, d := range requests {
		least := d.afterLeaving(t)
		for n := 0; n < 4 && least >= 100*time.Millisecond; n++ {
			least = min(least, d.afterLeaving(t))
		}
		t.Logf("%6.1f ms after the caller left  %.70s", least.Seconds()*1000, d.Target)
		assert.Less(t, least, 100*time.Millisecond, d.Target)
	}
}

// afterLeaving is the processor time that is spent after a caller has left in the
// middle of a request.
func (d *dearest) afterLeaving(t *testing.T) (since time.Duration) {
	service := unremembering().Handler()
	runtime.GC()
	began := time.Now()
	ctx, leave := context.WithTimeout(context.Background(), 200*time.Millisecond)
	d.send(t, ctx, service)
	leave()
	ctx, leave = context.WithCancel(context.Background())
	defer leave()
	left := make(chan time.Duration, 1)
	timer := time.AfterFunc(time.Since(began)/2, func() { left <- processorTime(t); leave() })
	d.send(t, ctx, service)
	if ended := processorTime(t); !timer.Stop() {
		since = ended - <-left
	}
	return since
}
