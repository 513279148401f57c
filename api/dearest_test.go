package api

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"runtime"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// processorTime is what this process has used of the processors.
func processorTime(t *testing.T) time.Duration {
	var used syscall.Rusage
	require.NoError(t, syscall.Getrusage(syscall.RUSAGE_SELF, &used))
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}

// TestDearestRequests sends the dearest requests of every call that are let in
// and have at most 8 KB: none takes a second of a processor. All that it
// allocates, freed or not, is counted, which is more than it ever holds.
func TestDearestRequests(t *testing.T) {
	if testing.Short() {
		t.Skip("the dearest requests")
	}
	const bag = "unit=mm&width=2000&height=2000&thickness=500&caliper=0.5&fit=easy"
	const tray = "unit=mm&width=100&height=100&thickness=30&caliper=0.5&fit=easy"
	layers := `{"unit":"in","width":5,"height":4,"thickness":2,"caliper":0.012,"fit":"easy","layers":[{"kind":"dividers","columns":3},{"kind":"tray","corners":"outside"},"sleeve",{"kind":"band","caliper":0.006,"fit":"snug"}]}`
	line := `{"call":"/v1/solve/slotted-band","unit":"mm","width":89,"thickness":2.3,"caliper":0.3%03d}` + "\n"
	batch := strings.Builder{}
	for i := 0; batch.Len() < 8000; i++ {
		fmt.Fprintf(&batch, line, i)
	}
	s := unremembering()
	for _, c := range []struct{ target, media, body string }{
		{"/v1/drawing/gusset-bag.pdf?" + bag, "", ""}, {"/v1/drawing/gusset-bag.pdf?paper=250x250mm&" + bag, "", ""}, {"/v1/drawing/tray.png?pixels=4096&" + tray, "", ""},
		{"/v1/drawing/gusset-bag.png?pixels=4096&" + bag, "", ""}, {"/v1/drawing/gusset-bag.svg?" + bag, "", ""}, {"/v1/drawing/gusset-bag.glb?" + bag, "", ""},
		{"/v1/drawing/gusset-bag.dxf?" + bag, "", ""}, {"/v1/guide/gusset-bag.pdf?paper=140x140mm&" + bag, "", ""}, {"/v1/guide/gusset-bag.html?" + bag, "", ""},
		{"/v1/solve/gusset-bag?" + bag, "", ""}, {"/v1/yield?unit=mm&sheet=5000x5000&blank=106x41", "", ""}, {"/v1/yield.csv?unit=mm&sheet=1000x1400&blank=14x17", "", ""},
		{"/v1/yield.svg?unit=mm&sheet=10000x10000&blank=100x173", "", ""}, {"/v1/ruler?length=" + strings.TrimSuffix(strings.Repeat("92.1mm&length=", 50), "&length="), "", ""},
		{"/v1/solve/portfolio", "application/json", layers}, {"/v1/drawing/portfolio.png?pixels=4096", "application/json", layers}, {"/v1/guide/portfolio.pdf", "application/json", layers},
		{"/v1/batch", mediaLines, batch.String()}, {"/v1/mail?" + square, "", ""}, {"/openapi.json", "", ""},
	} {
		method := http.MethodGet
		if c.body != "" {
			method = http.MethodPost
		}
		request := httptest.NewRequest(method, c.target, strings.NewReader(c.body))
		request.Header.Set("Content-Type", c.media)
		request.Header.Set("Accept-Encoding", "gzip")
		require.LessOrEqual(t, len(c.target)+len(c.body), 8<<10)
		runtime.GC()
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		began := processorTime(t)
		w := httptest.NewRecorder()
		s.Handler().ServeHTTP(w, request)
		took := processorTime(t) - began
		runtime.ReadMemStats(&after)
		allocated := float64(after.TotalAlloc-before.TotalAlloc) / (1 << 20)
		t.Logf("%3d %7.1f ms %6.1f MiB allocated %8d bytes sent  %.70s", w.Code, took.Seconds()*1000, allocated, w.Body.Len(), c.target)
		assert.Equal(t, http.StatusOK, w.Code, "%s: %.300s", c.target, w.Body)
		assert.Less(t, took, time.Second, c.target)
		assert.Less(t, allocated, 64.0, c.target)
	}
}
