package edge

import (
	"net/http"
	"runtime"
	"time"

	"github.com/prometheus/client_golang/prometheus"
	"github.com/prometheus/client_golang/prometheus/collectors"
	"github.com/prometheus/client_golang/prometheus/promhttp"
)

// Metrics counts what is answered.
type Metrics struct {
	registry   *prometheus.Registry
	answers    *prometheus.CounterVec   // by route, kind and class of the status
	took       *prometheus.HistogramVec // by route
	remembered *prometheus.CounterVec   // by whether the answer was still known
}

// NewMetrics returns counters at zero in a registry of their own, with how the
// lanes stand and which build this is.
func NewMetrics(release, revision string, lanes ...*Lane) *Metrics {
	m := &Metrics{
		registry: prometheus.NewRegistry(),
		answers: prometheus.NewCounterVec(prometheus.CounterOpts{Name: "creasefit_answers_total",
			Help: "Answers by route, kind of enclosure and class of their status."}, []string{"route", "kind", "class"}),
		took: prometheus.NewHistogramVec(prometheus.HistogramOpts{Name: "creasefit_request_seconds",
			Help:    "Time from reading the request line to writing the answer.",
			Buckets: []float64{.0005, .001, .0025, .005, .01, .025, .05, .1, .25, .5, 1, 2.5, 5, 10}}, []string{"route"}),
		remembered: prometheus.NewCounterVec(prometheus.CounterOpts{Name: "creasefit_recent_answers_total",
			Help: "Calculations by whether their answer was remembered."}, []string{"remembered"}),
	}
	build := prometheus.NewGaugeVec(prometheus.GaugeOpts{Name: "creasefit_build_info", Help: "Which build this is."}, []string{"release", "revision", "go"})
	build.WithLabelValues(release, revision, runtime.Version()).Set(1)
	m.registry.MustRegister(m.answers, m.took, m.remembered, build, collectors.NewGoCollector(), collectors.NewProcessCollector(collectors.ProcessCollectorOpts{}))
	for _, l := range lanes {
		m.watch(l)
	}
	return m
}

// watch adds how a lane stands.
func (m *Metrics) watch(l *Lane) {
	labels := prometheus.Labels{"lane": l.Name}
	m.registry.MustRegister(
		prometheus.NewGaugeFunc(prometheus.GaugeOpts{Name: "creasefit_lane_free_places", Help: "Places of a lane that are free.", ConstLabels: labels},
			func() float64 { return float64(l.State().Free) }),
		prometheus.NewGaugeFunc(prometheus.GaugeOpts{Name: "creasefit_lane_waiting", Help: "Works that wait for a place.", ConstLabels: labels},
			func() float64 { return float64(l.State().Waiting) }),
		prometheus.NewCounterFunc(prometheus.CounterOpts{Name: "creasefit_lane_shed_total", Help: "Works that were turned away.", ConstLabels: labels},
			func() float64 { return float64(l.State().Shed) }),
	)
}

// classes are those of statuses, by their first digit.
var classes = [...]string{"0xx", "1xx", "2xx", "3xx", "4xx", "5xx"}

// Count counts one answer. The kind is one of the known ones, or empty: a label
// must not take what callers write.
func (m *Metrics) Count(route, kind string, status int, took time.Duration) {
	m.answers.WithLabelValues(route, kind, classes[status/100%len(classes)]).Inc()
	m.took.WithLabelValues(route).Observe(took.Seconds())
}

// Remembered counts whether an answer was still known.
func (m *Metrics) Remembered(yes bool) {
	word := "no"
	if yes {
		word = "yes"
	}
	m.remembered.WithLabelValues(word).Inc()
}

// Handler serves the counters in the text format of Prometheus.
func (m *Metrics) Handler() http.Handler {
	return promhttp.HandlerFor(m.registry, promhttp.HandlerOpts{})
}
