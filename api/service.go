package api

import (
	"log/slog"
	"net/http"
	"sync/atomic"

	"github.com/labstack/echo/v4"

	"creasefit/api/ask"
	"creasefit/api/edge"
	"creasefit/api/tell"
	"creasefit/internal/enclosure"
)

// Config is every setting of the service.
type Config = edge.Config

// DefaultConfig returns the settings of an empty environment.
func DefaultConfig() Config { return edge.DefaultConfig() }

// Service is the whole HTTP service. It keeps nothing between two requests
// but counters.
type Service struct {
	config    Config
	log       *slog.Logger
	echo      *echo.Echo
	cheap     *edge.Lane // solves, checks, lists
	dear      *edge.Lane // orders, PDFs, PNGs
	streams   *edge.Lane // batches as a whole; their lines take the other lanes
	recent    *recent
	metrics   *edge.Metrics
	limiter   *edge.Limiter // nil without a limit
	keys      *edge.Keys    // nil where everybody may call
	proxies   edge.Proxies
	stopping  chan struct{} // closed when streams are to end
	ids       edge.IDs
	draining  atomic.Bool
	cross     edge.Origins
	paths     []string // of every call, for hints
	kinds     map[string]*kindEntry
	kindNames []string
	lines     map[string]lineCall // that a batch may name
	ruler     *rulerCalculation
	paper     *paperCalculation
	mail      *mailCalculation
	yield     *yieldCalculation
	portfolio *portfolioEntry
	lists     lists
	documents documents
	overload  []byte // the prebuilt body of a 503
}

// New returns a service with these settings that writes to this log.
func New(config Config, log *slog.Logger) *Service {
	s := &Service{
		config: config, log: log, echo: echo.New(),
		recent: newRecent(config.Recent), limiter: edge.NewLimiter(config.RateLimit, config.RateBurst), stopping: make(chan struct{}),
		ids: edge.NewIDs(), cross: edge.NewOrigins(config.AllowedOrigins),
		kinds: map[string]*kindEntry{}, ruler: newRulerCalculation(), paper: newPaperCalculation(), mail: newMailCalculation(),
		yield: newYieldCalculation(), portfolio: newPortfolioEntry(),
		documents: newDocuments(),
		overload:  tell.AppendJSON(nil, single(codeOverloaded, "too many calculations are running", "").answer()),
	}
	s.openLanes()
	s.knowCallers()
	for _, k := range enclosure.Kinds() {
		s.kinds[k.Name] = newKindEntry(k)
		s.kindNames = append(s.kindNames, k.Name)
	}
	s.lists, s.lines = newLists(config), s.lineCalls()
	s.echo.HTTPErrorHandler = s.answerError
	s.echo.Binder, s.echo.Validator = ask.Binder{MostBody: config.MostBody, MostLarge: config.MostYieldBody}, ask.Validator{}
	s.echo.Use(s.around)
	s.routes()
	return s
}

// openLanes opens the lanes that work runs in, and counts what goes on in them.
func (s *Service) openLanes() {
	cheap, dear, streams := s.config.Places()
	s.cheap = edge.NewLane("cheap", cheap, s.config.MostWaiting, s.config.QueueTimeout)
	s.dear = edge.NewLane("dear", dear, s.config.MostWaiting, s.config.DearTimeout)
	s.streams = edge.NewLane("streams", streams, 0, s.config.QueueTimeout)
	s.metrics = edge.NewMetrics(Release, Revision(), s.cheap, s.dear, s.streams)
}

// knowCallers reads who may call and whom to believe. The settings have been
// checked; should the file of keys have gone since, nobody may call.
func (s *Service) knowCallers() {
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

// Handler returns the public handler.
func (s *Service) Handler() http.Handler { return s.echo }

// get registers a call for GET and HEAD.
func (s *Service) get(path string, h echo.HandlerFunc) {
	s.echo.GET(path, h)
	s.echo.HEAD(path, h)
	s.paths = append(s.paths, path)
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
	s.get("/v1/kinds", s.listKinds)
	s.get("/v1/kinds/:kind", s.showKind)
	s.get("/v1/kinds/"+portfolioName, s.showPortfolio)
	s.calculate("/v1/solve/"+portfolioName, s.solvePortfolio)
	s.calculate("/v1/guide/"+portfolioName, s.guidePortfolio)
	s.calculate("/v1/drawing/"+portfolioName, s.drawPortfolio)
	s.calculateKind("/v1/solve/", s.solveKind)
	s.calculateKind("/v1/check/", s.checkKind)
	s.calculateKind("/v1/guide/", s.writeGuide)
	s.calculateKind("/v1/drawing/", s.drawKind)
	s.calculate("/v1/ruler", s.readRuler)
	s.calculate("/v1/stock", s.tellStock)
	s.calculate("/v1/yield", s.planYield)
	s.calculate("/v1/mail", s.judgeMail)
	s.echo.POST("/v1/batch", s.runBatch)
	s.paths = append(s.paths, "/v1/batch")
	s.get("/v1/contents", s.listContents)
	s.get("/v1/stocks", s.listStocks)
	s.get("/v1/sheets/sizes", s.listSheets)
	s.get("/v1/benches", s.listBenches)
	s.get("/v1/posts", s.listPosts)
	s.get("/v1/limits", s.listLimits)
	s.get("/openapi.json", s.specJSON)
	s.get("/openapi-text.json", s.specText)
	s.get("/openapi/:kind", s.specOfKind)
	s.get("/openapi.yaml", s.specYAML)
	s.get("/problems/:code", s.showProblem)
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
	for _, k := range enclosure.Kinds() {
		s.paths = append(s.paths, prefix+k.Name)
	}
}
