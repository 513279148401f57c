package api

import (
	"strings"
	"sync"

	"github.com/labstack/echo/v4"

	"creasefit/api/edge"
	"creasefit/internal/fault"
	"creasefit/internal/web"
	"creasefit/openapi"
)

// How long the pages and the files that they load are kept.
const (
	cacheShortly = "public, max-age=300, stale-while-revalidate=86400, stale-if-error=604800"
	cacheForever = "public, max-age=31536000, immutable"
)

var crossOriginOK = []string{"cross-origin"}

// The pages, written when they are first asked for.
var (
	workbenches, ownPages = inLanguages(web.Workbench), inLanguages(web.OwnPage)

	framed    = sync.OnceValue(func() *edge.File { return edge.NewFile(web.Media, web.Frame(), cacheShortly).Page(web.FramePolicy) })
	reference = sync.OnceValue(func() *edge.File {
		return edge.NewFile(web.Media, web.Reference(openapi.JSON()), cacheShortly).Page(web.Policy)
	})
)

// inLanguages is a page in every language.
func inLanguages(page func(language string) []byte) func() map[string]*edge.File {
	return sync.OnceValue(func() map[string]*edge.File {
		all := map[string]*edge.File{}
		for _, language := range web.Languages() {
			all[language] = edge.NewFile(web.Media, page(language), cacheShortly).Page(web.Policy)
		}
		return all
	})
}

// What crawlers and finders of weaknesses look for.
var (
	robots   = sync.OnceValue(func() *edge.File { return edge.NewFile(plainText[0], []byte(edge.Robots), cacheShortly) })
	security = sync.OnceValue(func() *edge.File { return edge.NewFile(plainText[0], []byte(edge.Security), cacheShortly) })
)

// webFiles is every file by its addresses.
var webFiles = sync.OnceValue(func() map[string]*edge.File {
	all := map[string]*edge.File{}
	for _, a := range append(web.Assets(), moduleAssets()...) {
		all[a.Path] = edge.NewFile(a.Media, a.Body, cacheShortly)
		all[a.Pinned] = edge.NewFile(a.Media, a.Body, cacheForever)
	}
	return all
})

// moduleAssets are the JavaScript module and its types.
func moduleAssets() []web.Asset {
	return []web.Asset{
		web.NewAsset("/module", "creasefit.js", "text/javascript; charset=utf-8", openapi.Module),
		web.NewAsset("/module", "creasefit.d.ts", "text/plain; charset=utf-8", openapi.ModuleTypes),
	}
}

// pages registers the pages and their files, the specification among them.
func (s *Service) pages() {
	s.get("/openapi.json", s.specJSON)
	s.get("/openapi-text.json", s.specText)
	s.get("/openapi/:kind", s.specOfKind)
	s.get("/openapi.yaml", s.specYAML)
	s.get("/problems/:code", s.showProblem)
	s.get("/own", s.showOwn)
	for _, language := range web.Languages()[1:] {
		s.get("/"+language, in(workbenches, language))
		s.get("/"+language+"/", in(workbenches, language))
		s.get("/"+language+"/own", in(ownPages, language))
	}
	s.get("/frame", func(c echo.Context) error { return framed().Serve(c) })
	s.get("/docs", s.showManual)
	s.get("/docs/calls", s.showReference)
	s.manualRoutes()
	s.get("/robots.txt", func(c echo.Context) error { return robots().Serve(c) })
	s.get("/.well-known/security.txt", func(c echo.Context) error { return security().Serve(c) })
	s.get("/element/:version/:name", s.serveWebFile)
	s.get("/assets/:version/:name", s.serveWebFile)
	s.get("/module/:version/:name", s.serveWebFile)
}

// start answers with the workbench page.
//
//	@Summary	The workbench page
//	@ID			start
//	@Tags		service
//	@Produce	html
//	@Success	200	{string}	string
//	@Router		/ [get]
func (s *Service) start(c echo.Context) error { return workbenches()[web.Languages()[0]].Serve(c) }

// in answers with a page in another language.
func in(pages func() map[string]*edge.File, language string) echo.HandlerFunc {
	return func(c echo.Context) error { return pages()[language].Serve(c) }
}

// showReference answers with this specification as a page.
//
//	@Summary	This specification to read and to try
//	@ID			docs-calls
//	@Tags		service
//	@Produce	html
//	@Success	200	{string}	string
//	@Router		/docs/calls [get]
func (s *Service) showReference(c echo.Context) error { return reference().Serve(c) }

// showOwn answers with the page on which somebody describes an enclosure.
//
//	@Summary	Describe an enclosure of your own
//	@ID			own-page
//	@Tags		service
//	@Produce	html
//	@Success	200	{string}	string
//	@Router		/own [get]
func (s *Service) showOwn(c echo.Context) error { return ownPages()[web.Languages()[0]].Serve(c) }

// serveWebFile answers with a file of the pages. An address that pins another
// content than the present one is not there, and the answer names the one
// that is.
func (s *Service) serveWebFile(c echo.Context) error {
	f, ok := webFiles()[c.Request().URL.Path]
	if !ok {
		return s.answerProblem(c, problemOf(fault.Faults{{Code: codeNotFound, Field: "version", Value: c.Param("version"),
			Detail: "there is no such file in this release", Hint: fileHint(c.Param("name"))}}))
	}
	c.Response().Header()["Cross-Origin-Resource-Policy"] = crossOriginOK
	return f.Serve(c)
}

// fileHint names the present address of a file.
func fileHint(name string) string {
	for _, a := range append(web.Assets(), moduleAssets()...) {
		if strings.HasSuffix(a.Path, "/"+name) {
			return "the present one is at " + a.Path + ", and pinned at " + a.Pinned
		}
	}
	return ""
}
