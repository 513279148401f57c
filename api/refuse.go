package api

import (
	"cmp"
	"context"
	"errors"
	"log/slog"
	"net/http"
	"slices"
	"strings"

	"github.com/labstack/echo/v4"

	"creasefit/api/ask"
	"creasefit/api/edge"
	"creasefit/api/tell"
	"creasefit/internal/fault"
)

// refused is a request that something is wrong with.
type refused interface {
	Faults() fault.Faults
	Hidden() int
	Corrected() (query string, ok bool)
}

// refusal puts together everything that is wrong with the values of a request,
// and a corrected address if every fault has a correction.
func refusal(r refused, path string) *problem {
	p := problemOf(r.Faults())
	p.hidden = r.Hidden()
	if query, ok := r.Corrected(); ok {
		p.try = path + "?" + query
	}
	return p
}

// problemFrom translates an error from below. What it does not know goes to
// the log and leaves a fixed sentence.
func (s *host) problemFrom(c echo.Context, err error) *problem {
	var faults fault.Faults
	switch other := faults.Add(err); {
	case other == nil && len(faults) > 0:
		hidden := max(0, len(faults)-ask.MostReported)
		p := problemOf(faults[:len(faults)-hidden])
		p.hidden = hidden
		return p
	case errors.Is(err, context.DeadlineExceeded):
		return single(codeTookTooLong, "the calculation takes longer than it may", "ask for a coarser ruler or fewer parts; /v1/limits has the time allowed")
	case errors.Is(err, context.Canceled):
		return single(codeCallerGone, "the caller went away", "")
	default:
		return s.internalProblem(c, "calculation failed", err)
	}
}

// internalProblem logs what happened and answers with the request id alone.
func (s *host) internalProblem(c echo.Context, what string, cause any) *problem {
	id := c.Response().Header().Get("Request-Id")
	s.log.Error(what, slog.String("request", id), slog.String("path", c.Request().URL.Path), slog.Any("cause", cause))
	return single(codeInternal, "an unexpected error; its request id is "+id, "")
}

// answerError answers what a handler or the router returned as an error.
func (s *host) answerError(err error, c echo.Context) {
	if c.Response().Committed {
		return
	}
	var h *echo.HTTPError
	if !errors.As(err, &h) {
		s.mustAnswer(c, s.problemFrom(c, err))
		return
	}
	switch h.Code {
	case http.StatusNotFound:
		s.mustAnswer(c, s.notFound(c))
	case http.StatusMethodNotAllowed:
		s.mustAnswer(c, single(codeMethod, c.Request().Method+" is not allowed here", "the Allow header lists the methods that are"))
	default:
		s.mustAnswer(c, s.internalProblem(c, "handler failed", err))
	}
}

// mustAnswer sends a problem; if even that fails the caller is gone.
func (s *host) mustAnswer(c echo.Context, p *problem) {
	if err := s.answerProblem(c, p); err != nil {
		s.log.Debug("answer not delivered", slog.Any("cause", err))
	}
}

// notFound is the problem of an address that names no call.
func (s *host) notFound(c echo.Context) *problem {
	path := c.Request().URL.Path
	nearest := fault.Nearest(path, s.paths)
	p := problemOf(fault.Faults{{Code: codeNotFound, Value: path, Detail: "there is no such address", Hint: cmp.Or(fault.Meant(nearest), "/openapi.json lists every call")}})
	if query := c.Request().URL.RawQuery; nearest != "" && query != "" {
		nearest += "?" + query
	}
	p.try = nearest
	return p
}

// retrySoon is in how many seconds a call is worth another try when the load may be over.
var retrySoon = []string{"1"}

// answerProblem sends a problem: never stored, and for a spreadsheet cell as
// one line with status 200. A caller that is still sending a body can read it.
func (s *host) answerProblem(c echo.Context, p *problem) error {
	h := c.Response().Header()
	h["Cache-Control"] = cacheNever
	if load := p.kind.status == http.StatusServiceUnavailable || p.kind.status == http.StatusTooManyRequests; load && h["Retry-After"] == nil {
		h["Retry-After"] = retrySoon
	}
	if wantsCell(c) {
		return send(c, http.StatusOK, plainText[0], []byte(p.cellLine()))
	}
	if browsing(c) && !strings.Contains(c.Request().URL.RawQuery, "format=") {
		h["Content-Security-Policy"] = documentPolicy
		return send(c, p.kind.status, "text/html; charset=utf-8", p.problemInPage())
	}
	body := s.overload
	if p.kind.code != codeOverloaded {
		body = tell.AppendJSON(nil, p.answer())
	}
	linger := edge.Lingering(c.Response(), c.Request(), s.config.ReadTimeout)
	defer linger()
	return send(c, p.kind.status, problemMediaType, body)
}

// wantsCell reports whether errors are to be a line in a cell. Only what the
// query says counts, since the problem may be that the rest cannot be read;
// cells have no bodies to send.
func wantsCell(c echo.Context) bool {
	query := c.Request().URL.RawQuery
	return query != "" && slices.Contains(strings.Split(query, "&"), "errors=cell")
}
