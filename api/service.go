package api

import (
	"log/slog"
	"maps"
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
	ruler     *rulerCalculation
	paper     *paperCalculation
	mail      *mailCalculation
	suggest   *suggestCalculation
	match     *matchCalculation
	learned   *calibrateCalculation
	yield     *yieldCalculation
	portfolio *portfolioEntry
	lists     lists
	batches   *batches
	documents documents
}

// New returns a service with these settings that writes to this log.
func New(config Config, log *slog.Logger) *Service {
	h := newHost(config, log)
	s := &Service{
		host: h, echo: echo.New(), kinds: newKinds(h), lists: newLists(h), documents: newDocuments(),
		ruler: newRulerCalculation(), paper: newPaperCalculation(), mail: newMailCalculation(), suggest: newSuggestCalculation(), match: newMatchCalculation(h.holders), learned: newCalibrateCalculation(), yield: newYieldCalculation(), portfolio: newPortfolioEntry(),
	}
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
	calls := map[string]lineCall{s.ruler.path: s.ruler, s.paper.path: s.paper, s.yield.path: s.yield, s.mail.path: s.mail, s.suggest.path: s.suggest, s.match.path: s.match, s.learned.path: s.learned}
	p := s.portfolio
	calls[p.solve.path], calls[p.check.path], calls[p.guide.path], calls[p.drawing.path] = p.solve, p.check, p.guide, p.drawing
	maps.Copy(calls, s.kinds.own.lines())
	for _, e := range s.kinds.byName {
		calls[e.adapt.path] = e.adapt
		calls[e.solve.path], calls[e.check.path], calls[e.guide.path], calls[e.drawing.path] = e.solve, e.check, e.guide, e.drawing
	}
	return calls
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
	s.list("/v1/kinds", s.lists.listKinds)
	s.get("/v1/kinds/:kind", s.kinds.showKind)
	s.list("/v1/kinds/"+portfolioName, s.lists.showPortfolio)
	s.calculate("/v1/solve/"+portfolioName, solvePortfolio(s.host, s.portfolio))
	s.calculate("/v1/check/"+portfolioName, checkPortfolio(s.host, s.portfolio))
	s.calculate("/v1/guide/"+portfolioName, guidePortfolio(s.host, s.portfolio))
	s.calculate("/v1/drawing/"+portfolioName, drawPortfolio(s.host, s.portfolio))
	s.calculateKind("/v1/solve/", s.kinds.solveKind)
	s.calculateKind("/v1/check/", s.kinds.checkKind)
	s.calculateKind("/v1/adapt/", s.kinds.adaptKind)
	s.calculateKind("/v1/guide/", s.kinds.writeGuide)
	s.calculateKind("/v1/drawing/", s.kinds.drawKind)
	s.calculate("/v1/ruler", readRuler(s.host, s.ruler))
	s.calculate("/v1/stock", tellStock(s.host, s.paper))
	s.calculate("/v1/yield", planYield(s.host, s.yield))
	s.calculate("/v1/mail", judgeMail(s.host, s.mail))
	s.calculate("/v1/suggest", suggest(s.host, s.suggest))
	s.calculate("/v1/match", match(s.host, s.match))
	s.calculate("/v1/calibrate", learn(s.host, s.learned))
	s.get("/v1/batch", s.batches.answerAddress)
	s.echo.POST("/v1/batch", s.batches.runBatch)
	s.list("/v1/contents", s.lists.listContents)
	s.list("/v1/stocks", s.lists.listStocks)
	s.list("/v1/sheets/sizes", s.lists.listSheets)
	s.list("/v1/benches", s.lists.listBenches)
	s.list("/v1/designs", s.lists.listDesigns)
	s.list("/v1/kinds/:kind/design", s.kinds.describeKind)
	s.list("/v1/posts", s.lists.listPosts)
	s.list("/v1/limits", s.lists.listLimits)
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
