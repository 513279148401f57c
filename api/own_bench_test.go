package api

import (
	"fmt"
	"maps"
	"net/http"
	"net/http/httptest"
	"slices"
	"strings"
	"testing"
	"time"

	"creasefit/internal/enclosure/own"
)

// BenchmarkCallAlike tells how much longer a call about a design takes than one about its
// kind, in processor time: both are asked in turn, no request like another.
func BenchmarkCallAlike(b *testing.B) {
	handler := with(func(c *Config) { c.QueueTimeout = time.Minute }).Handler()
	n := 0
	solve := func(b *testing.B, path, more string) {
		n++
		body := fmt.Sprintf(`{%s"unit":"mm","width":"%d.%04d","height":150,"thickness":12,"caliper":0.3}`, more, 100+n/10_000%50, n%10_000)
		request := httptest.NewRequest(http.MethodPost, path, strings.NewReader(body))
		request.Header.Set("Content-Type", "application/json")
		w := httptest.NewRecorder()
		handler.ServeHTTP(w, request)
		if w.Code != http.StatusOK {
			b.Skip("not of this thing: " + w.Body.String())
		}
	}
	for _, d := range own.Kinds() {
		b.Run(d.Name, func(b *testing.B) {
			var chosen, sizes strings.Builder
			for _, name := range slices.Sorted(maps.Keys(d.With)) {
				switch d.With[name] {
				case own.LeftOut:
				case own.Given:
					fmt.Fprintf(&sizes, `"%s":"40 mm",`, name)
				default:
					fmt.Fprintf(&chosen, `"%s":"%s",`, name, d.With[name])
				}
			}
			var took [2]time.Duration
			calls := [...]func(){
				func() { solve(b, "/v1/solve/"+d.Kind, chosen.String()+sizes.String()) },
				func() { solve(b, "/v1/solve/own", sizes.String()+`"design":`+string(d.Text)+",") },
			}
			for b.Loop() {
				for k, call := range calls {
					began := processorTime(b)
					call()
					took[k] += processorTime(b) - began
				}
			}
			for k, name := range [...]string{"kind-us", "design-us"} {
				b.ReportMetric(float64(took[k].Microseconds())/float64(b.N), name)
			}
			b.ReportMetric(float64(took[1])/float64(took[0]), "times")
		})
	}
}
