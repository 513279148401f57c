package api

import (
	"fmt"
	"log/slog"
	"net/http"
	"runtime/debug"
	"time"

	"github.com/labstack/echo/v4"
	"go.opentelemetry.io/otel/trace"

	"creasefit/api/ask"
	"creasefit/api/edge"
	"creasefit/api/wire"
)

// Header values that every answer carries. They are never changed.
var (
	exposed        = []string{"ETag, Retry-After, RateLimit, RateLimit-Policy, Server-Timing, Content-Location, Request-Id, Deprecation, Sunset, Link, Table-Dialect"}
	allowMethods   = []string{"GET, HEAD, POST, OPTIONS"}
	allowHeaders   = []string{"Authorization, Content-Type, If-None-Match, Request-Id, Traceparent"}
	preflightAge   = []string{"86400"}
	noSniff        = []string{"nosniff"}
	connectionDone = []string{"close"}
)

// around is what every request passes through: a request id, the headers that
// all answers share, preflight requests, the limit of the address, panics,
// counting. It is one function so that it costs one call.
func (s *host) around(next echo.HandlerFunc) echo.HandlerFunc {
	return func(c echo.Context) error {
		began := time.Now()
		s.setCommonHeaders(c)
		defer s.finish(c, began, s.tracer.Begin(c.Request()))
		request := c.Request()
		switch {
		case request.Method == http.MethodOptions:
			return answerPreflight(c)
		case len(request.RequestURI) > s.config.MostURL:
			return s.answerProblem(c, single(codeURLTooLong, "the address has more than "+wire.Count(s.config.MostURL, "byte", "bytes"), ""))
		}
		if p := s.admit(c); p != nil {
			return s.answerProblem(c, p)
		}
		if err := next(c); err != nil {
			s.answerError(err, c)
		}
		return nil
	}
}

// setCommonHeaders sets what every answer carries, whatever becomes of it.
func (s *host) setCommonHeaders(c echo.Context) {
	h := c.Response().Header()
	if allowed := s.cross.Allow(c.Request().Header); allowed != nil {
		h["Access-Control-Allow-Origin"] = allowed
	}
	h["Access-Control-Expose-Headers"] = exposed
	h["Vary"] = s.cross.Vary
	h["X-Content-Type-Options"] = noSniff
	h["Request-Id"] = []string{s.ids.Take(c.Request().Header.Get("Request-Id"))}
	if s.draining.Load() {
		h["Connection"] = connectionDone
	}
}

// answerPreflight answers a browser that asks what it may send.
func answerPreflight(c echo.Context) error {
	h := c.Response().Header()
	h["Access-Control-Allow-Methods"] = allowMethods
	h["Access-Control-Allow-Headers"] = allowHeaders
	h["Access-Control-Max-Age"] = preflightAge
	h["Allow"] = allowMethods
	return c.NoContent(http.StatusNoContent)
}

// finish turns a panic into a problem, counts the answer, ends its span and logs
// it if requests are logged.
func (s *host) finish(c echo.Context, began time.Time, span trace.Span) {
	if cause := recover(); cause != nil {
		if cause == http.ErrAbortHandler {
			panic(cause) // the caller is gone; there is nobody to answer and nothing to mend
		}
		p := s.internalProblem(c, "panic", fmt.Sprintf("%v\n%s", cause, debug.Stack()))
		if c.Response().Committed {
			panic(http.ErrAbortHandler)
		}
		s.mustAnswer(c, p)
	}
	took := time.Since(began)
	route, kind := s.routeOf(c, c.Response().Status)
	s.metrics.Count(route, kind, c.Response().Status, took)
	edge.End(span, c.Request().Method, route, kind, c.Response().Status)
	if s.config.LogRequests {
		s.logRequest(c, took)
	}
}

// logRequest writes one line for the request, with the trace that it is part of.
func (s *host) logRequest(c echo.Context, took time.Duration) {
	r, w := c.Request(), c.Response()
	about := []any{slog.String("method", r.Method), slog.String("uri", ask.Cut(r.RequestURI, 500)), slog.Int("status", w.Status),
		slog.Int64("bytes", w.Size), slog.Duration("took", took), slog.String("request", w.Header().Get("Request-Id")), slog.String("caller", s.callerOf(c).id)}
	if from := edge.Trace(r.Header); from.IsValid() {
		about = append(about, slog.String("trace", from.TraceID().String()), slog.String("span", from.SpanID().String()))
	}
	s.log.Info("request", about...)
}
