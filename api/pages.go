package api

import (
	"net/http"
	"strings"
	"sync"

	"github.com/labstack/echo/v4"

	"creasefit/internal/fault"
	"creasefit/internal/web"
	"creasefit/openapi"
)

// Headers of the pages and of the files that they load. They are never changed.
var (
	pagePolicy    = []string{web.Policy}
	noReferrer    = []string{"no-referrer"}
	cacheShortly  = []string{"public, max-age=300, stale-while-revalidate=86400, stale-if-error=604800"}
	cacheForever  = []string{"public, max-age=31536000, immutable"}
	crossOriginOK = []string{"cross-origin"}
)

// file is a document that is also kept compressed.
type file struct {
	plain, packed *document
	cache         []string
}

// newFile compresses a document once.
func newFile(media string, body []byte, cache []string) *file {
	return &file{newDocument(media, body), newDocument(media, compress(append([]byte(nil), body...))), cache}
}

// serve sends the file the way that the caller reads it.
func (f *file) serve(c echo.Context) error {
	h := c.Response().Header()
	d := f.plain
	if acceptsGzip(c.Request().Header.Get("Accept-Encoding")) {
		d = f.packed
		h["Content-Encoding"] = []string{"gzip"}
	}
	h["Etag"], h["Cache-Control"] = []string{d.tag}, f.cache
	if matchesTag(c.Request().Header.Get("If-None-Match"), d.tag) {
		h.Del("Content-Encoding")
		return c.NoContent(http.StatusNotModified)
	}
	return send(c, http.StatusOK, d.media, d.body)
}

// servePage sends a page under the policy that keeps it to its own files.
func servePage(c echo.Context, f *file) error {
	h := c.Response().Header()
	h["Content-Security-Policy"], h["Referrer-Policy"] = pagePolicy, noReferrer
	return f.serve(c)
}

// The pages, written when they are first asked for.
var (
	workbench = sync.OnceValue(func() *file { return newFile(web.Media, web.Workbench(), cacheShortly) })
	reference = sync.OnceValue(func() *file { return newFile(web.Media, web.Reference(openapi.JSON()), cacheShortly) })
)

// webFiles is every file by its addresses.
var webFiles = sync.OnceValue(func() map[string]*file {
	all := map[string]*file{}
	for _, a := range web.Assets() {
		all[a.Path] = newFile(a.Media, a.Body, cacheShortly)
		all[a.Pinned] = newFile(a.Media, a.Body, cacheForever)
	}
	return all
})

// pages registers the pages and their files.
func (s *Service) pages() {
	s.get("/docs", s.showReference)
	s.get("/element/:version/:name", s.serveWebFile)
	s.get("/assets/:version/:name", s.serveWebFile)
}

// start answers with the workbench page.
//
//	@Summary	The workbench page
//	@ID			start
//	@Tags		service
//	@Produce	html
//	@Success	200	{string}	string
//	@Router		/ [get]
func (s *Service) start(c echo.Context) error { return servePage(c, workbench()) }

// showReference answers with this specification as a page.
//
//	@Summary	This specification to read and to try
//	@ID			docs
//	@Tags		service
//	@Produce	html
//	@Success	200	{string}	string
//	@Router		/docs [get]
func (s *Service) showReference(c echo.Context) error { return servePage(c, reference()) }

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
	return f.serve(c)
}

// fileHint names the present address of a file.
func fileHint(name string) string {
	for _, a := range web.Assets() {
		if strings.HasSuffix(a.Path, "/"+name) {
			return "the present one is at " + a.Path + ", and pinned at " + a.Pinned
		}
	}
	return ""
}
