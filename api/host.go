package api

import (
	"log/slog"
	"sync/atomic"

	"creasefit/api/edge"
	"creasefit/api/tell"
)

// Config is every setting of the service.
type Config = edge.Config

// DefaultConfig returns the settings of an empty environment.
func DefaultConfig() Config { return edge.DefaultConfig() }

// host is what every call needs and no call is: settings, lanes, memory,
// counters, and who may call. It answers with problems.
type host struct {
	config    Config
	log       *slog.Logger
	cheap     *edge.Lane // solves, checks, lists
	dear      *edge.Lane // orders, PDFs, PNGs
	streams   *edge.Lane // batches as a whole; their lines take the other lanes
	recent    *recent
	spellings generations[*spelling] // requests whose answers are remembered, as they were sent
	holders   *recent                // lists of holders, by the name of their content
	metrics   *edge.Metrics
	limiter   *edge.Limiter // nil without a limit
	keys      *edge.Keys    // nil where everybody may call
	tracer    *edge.Tracer  // nil without a collector
	flight    *edge.Flight  // bytes of answers on their way
	proxies   edge.Proxies
	stopping  chan struct{} // closed when streams are to end
	ids       edge.IDs
	draining  atomic.Bool
	cross     edge.Origins
	paths     []string // of every call, for hints
	overload  []byte   // the prebuilt body of a 503
}

// newHost opens what calls need.
func newHost(config Config, log *slog.Logger) *host {
	s := &host{
		config: config, log: log,
		recent: newRecent(config.Recent, config.Recent/32), spellings: newGenerations[*spelling](config.Recent / 16), holders: newRecent(config.Recent, config.Recent/8), limiter: edge.NewLimiter(config.RateLimit, config.RateBurst), stopping: make(chan struct{}),
		flight: edge.NewFlight(config.MostInFlight), ids: edge.NewIDs(), cross: edge.NewOrigins(config.AllowedOrigins),
		overload: tell.AppendJSON(nil, overloaded().answer()),
	}
	s.openLanes()
	s.knowCallers()
	var err error
	if s.tracer, err = edge.NewTracer(config.Collector, config.TraceShare, Release, Revision()); err != nil {
		log.Error("no traces are sent", slog.Any("cause", err))
	}
	return s
}

// openLanes opens the lanes that work runs in, and counts what goes on in them.
func (s *host) openLanes() {
	cheap, dear, streams := s.config.Places()
	s.cheap = edge.NewLane("cheap", cheap, s.config.MostWaiting, s.config.QueueTimeout)
	s.dear = edge.NewLane("dear", dear, s.config.MostWaiting, s.config.DearTimeout)
	s.dear.Apart = true
	s.streams = edge.NewLane("streams", streams, 0, s.config.QueueTimeout)
	s.metrics = edge.NewMetrics(Release, Revision(), s.cheap, s.dear, s.streams)
}

// knowCallers reads who may call and whom to believe. The settings have been
// checked; should the file of keys have gone since, nobody may call.
func (s *host) knowCallers() {
	s.proxies, _ = edge.ParseProxies(s.config.TrustedProxies)
	if s.config.KeysFile == "" {
		return
	}
	report := func(err error) { s.log.Error("keys stay as they were", slog.Any("cause", err)) }
	keys, err := edge.OpenKeys(s.config.KeysFile, report)
	if err != nil {
		report(err)
	}
	s.keys = keys
}
