package api

import (
	"log/slog"
	"net/http"
	"sync"

	"github.com/labstack/echo/v4"

	"creasefit/api/ask"
	"creasefit/internal/repertoire"
)

// Service is the whole HTTP service: every call, and what they have in common.
// It keeps nothing between two requests but counters.
type Service struct {
	*host
	echo      *echo.Echo
	kinds     *kinds
	calls     []computing // but those about kinds
	batches   *batches
	documents documents
}

// New returns a service with these settings that writes to this log.
func New(config Config, log *slog.Logger) *Service {
	h := newHost(config, log)
	s := &Service{host: h, echo: echo.New(), kinds: newKinds(h), documents: newDocuments(), calls: []computing{
		solvePortfolio(), newPortfolioCheck(), guidePortfolio(), drawPortfolio(),
		newRuler(), newPaper(), newYield(), newMail(), newSuggest(), newMatch(h.holders), newCalibration(),
	}}
	s.batches = &batches{host: h, lines: s.lineCalls()}
	s.batches.families = sync.OnceValue(s.batches.nameFamilies)
	s.echo.HTTPErrorHandler = s.answerError
	s.echo.Binder, s.echo.Validator = ask.Binder{MostBody: config.MostBody, MostLarge: config.MostYieldBody}, ask.Validator{}
	s.echo.Use(s.around)
	s.routes()
	return s
}

// lineCalls is every calculation that a line of a batch may name, by its path.
func (s *Service) lineCalls() map[string]lineCall {
	lines := s.kinds.own.lines()
	for _, k := range s.calls {
		lines[k.where()] = k
	}
	for _, e := range s.kinds.byName {
		for _, name := range aboutKinds {
			lines[e.calls[name].where()] = e.calls[name]
		}
	}
	return lines
}

// Handler returns the public handler.
func (s *Service) Handler() http.Handler { return s.echo }

// get registers a call for GET and HEAD.
func (s *Service) get(path string, h echo.HandlerFunc) {
	s.echo.GET(path, h)
	s.echo.HEAD(path, h)
	s.paths = append(s.paths, path)
}

// list registers a list for GET and HEAD, with and without a format as the
// path's extension.
func (s *Service) list(path string, h echo.HandlerFunc) {
	s.get(path, h)
	s.echo.GET(path+".:extension", h)
	s.echo.HEAD(path+".:extension", h)
}

// calculate registers a calculation for GET, HEAD and POST, with and without
// a format as the path's extension.
func (s *Service) calculate(path string, h echo.HandlerFunc) {
	for _, p := range []string{path, path + ".:extension"} {
		s.echo.GET(p, h)
		s.echo.HEAD(p, h)
		s.echo.POST(p, h)
	}
	s.paths = append(s.paths, path)
}

// routes registers every call.
func (s *Service) routes() {
	s.get("/", s.start)
	s.get("/v1/kinds/:kind", s.kinds.serves("kinds"))
	for _, k := range s.calls {
		s.calculate(k.where(), k.at(s.host))
	}
	for _, name := range aboutKinds {
		s.calculateKind("/v1/"+name+"/", s.kinds.serves(name))
	}
	for _, l := range lists(s.config) {
		s.list(l.where(), l.at(s.host))
	}
	s.get("/v1/batch", s.batches.answerAddress)
	s.echo.POST("/v1/batch", s.batches.runBatch)
	s.list("/v1/kinds/:kind/design", s.kinds.describeKind)
	s.pages()
	s.get("/healthz", s.healthy)
	s.get("/livez", s.live)
	s.get("/readyz", s.ready)
}

// calculateKind registers a calculation about a kind; its extension is part
// of the last segment.
func (s *Service) calculateKind(prefix string, h echo.HandlerFunc) {
	s.echo.GET(prefix+":kind", h)
	s.echo.HEAD(prefix+":kind", h)
	s.echo.POST(prefix+":kind", h)
	for _, k := range repertoire.Kinds() {
		s.paths = append(s.paths, prefix+k.Name)
	}
}
