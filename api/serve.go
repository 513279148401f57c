package api

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"net/http/pprof"
	"time"

	"creasefit/api/edge"
)

// Serve answers on the public listener, and on the admin one unless it is
// nil, until the context ends. Then it refuses readiness at once, goes on
// answering for the drain delay so that balancers can turn away, and closes
// when the last request is done or the drain timeout is over.
func (s *Service) Serve(ctx context.Context, public, admin net.Listener) error {
	patient := edge.NewPatient(public)
	servers := []*http.Server{s.config.Server(s.Handler())}
	patient.Watch(servers[0])
	listeners := []net.Listener{s.shedding(patient)}
	if admin != nil {
		servers, listeners = append(servers, s.config.Server(s.AdminHandler())), append(listeners, admin)
	}
	failed := make(chan error, len(servers))
	for i, server := range servers {
		server.ErrorLog = slog.NewLogLogger(s.log.Handler(), slog.LevelWarn)
		go func() { failed <- server.Serve(listeners[i]) }()
	}
	var err error
	select {
	case err = <-failed:
	case <-ctx.Done():
		s.drain()
	}
	return errors.Join(err, s.shutdown(servers, patient))
}

// shedding returns a listener whose connections send answers whole and turn away what
// finds no room in the lane of cheap calls, before it is read. Where callers have keys, or trusted
// proxies call for them, only the request says who calls.
func (s *Service) shedding(l net.Listener) net.Listener {
	caller := s.proxies.Peer
	if s.keys != nil {
		caller = func(string) string { return "" }
	}
	crowded := func(caller string) bool { return s.cheap.Crowded(func() string { return caller }) }
	return &edge.Shedding{Listener: l, Caller: caller, Answer: s.overloadWhole(), Crowded: crowded}
}

// overloadWhole is the answer of a call that there is no room for, with its head.
func (s *Service) overloadWhole() []byte {
	p := overloaded()
	return fmt.Appendf(nil, "HTTP/1.1 %d %s\r\nContent-Type: %s\r\nCache-Control: %s\r\nRetry-After: %s\r\nVary: %s\r\nX-Content-Type-Options: %s\r\nContent-Length: %d\r\n\r\n%s",
		p.kind.status, http.StatusText(p.kind.status), problemMediaType, cacheNever[0], retrySoon[0], s.cross.Vary[0], noSniff[0], len(s.overload), s.overload)
}

// drain refuses readiness, waits for the drain delay, and tells streams to end.
func (s *Service) drain() {
	s.draining.Store(true)
	s.log.Info("draining", slog.Duration("delay", s.config.DrainDelay))
	time.Sleep(s.config.DrainDelay)
	close(s.stopping)
}

// shutdown closes the servers when everybody who is connected is answered, the
// admin one last so that it can be watched.
func (s *Service) shutdown(servers []*http.Server, public *edge.Patient) error {
	ctx, cancel := context.WithTimeout(context.Background(), s.config.DrainTimeout)
	defer cancel()
	if s.draining.Load() {
		public.Quiesce(ctx, s.config.DrainTimeout)
	}
	var err error
	for _, server := range servers {
		err = errors.Join(err, server.Shutdown(ctx))
	}
	if lost := s.tracer.Shutdown(ctx); lost != nil {
		s.log.Warn("the last traces are lost", slog.Any("cause", lost))
	}
	return err
}

// AdminHandler returns the handler for operators: metrics, probes, profiles.
func (s *Service) AdminHandler() http.Handler {
	mux := http.NewServeMux()
	mux.Handle("GET /metrics", s.metrics.Handler())
	mux.Handle("GET /healthz", s.echo)
	mux.Handle("GET /readyz", s.echo)
	mux.Handle("GET /livez", s.echo)
	mux.HandleFunc("GET /debug/pprof/", pprof.Index)
	mux.HandleFunc("GET /debug/pprof/profile", pprof.Profile)
	mux.HandleFunc("GET /debug/pprof/trace", pprof.Trace)
	return mux
}
