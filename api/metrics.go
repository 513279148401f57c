package api

import (
	"net/http"
	"time"

	"github.com/prometheus/client_golang/prometheus"
	"github.com/prometheus/client_golang/prometheus/collectors"
	"github.com/prometheus/client_golang/prometheus/promhttp"
)

// metrics counts answers by the class of their status.
type metrics struct {
	registry *prometheus.Registry
	answers  [6]prometheus.Counter // by the first digit of the status
	took     prometheus.Histogram
}

// newMetrics returns counters at zero in a registry of their own.
func newMetrics() *metrics {
	m := &metrics{registry: prometheus.NewRegistry(), took: prometheus.NewHistogram(prometheus.HistogramOpts{
		Name: "creasefit_request_seconds", Help: "Time from reading the request line to writing the answer.",
		Buckets: []float64{.0001, .00025, .0005, .001, .0025, .005, .01, .025, .05, .1, .25, .5, 1},
	})}
	answers := prometheus.NewCounterVec(prometheus.CounterOpts{Name: "creasefit_answers_total", Help: "Answers by the class of their status."}, []string{"class"})
	for i, class := range [...]string{"none", "1xx", "2xx", "3xx", "4xx", "5xx"} {
		m.answers[i] = answers.WithLabelValues(class)
	}
	m.registry.MustRegister(answers, m.took, collectors.NewGoCollector(), collectors.NewProcessCollector(collectors.ProcessCollectorOpts{}))
	return m
}

// count counts one answer.
func (m *metrics) count(status int, took time.Duration) {
	m.answers[min(status/100, len(m.answers)-1)].Inc()
	m.took.Observe(took.Seconds())
}

// handler serves the counters in the text format of Prometheus.
func (m *metrics) handler() http.Handler {
	return promhttp.HandlerFor(m.registry, promhttp.HandlerOpts{})
}
