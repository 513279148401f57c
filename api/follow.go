package api

import (
	"context"
	"net/http"
	"time"

	"github.com/labstack/echo/v4"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/api/wire"
)

// following is how a long calculation tells what it has on the way.
type following[Q ask.Request, A any] struct {
	// compute gives each better answer away, and returns the last.
	compute func(ctx context.Context, q Q, each func(A)) (A, error)
	// line is an answer so far; done says that it is the last.
	line func(a A, x *answering, took time.Duration, done bool) *wire.PlanLine
}

// stream is a calculation that is being told line by line.
type stream[A any] struct {
	c       echo.Context
	x       *answering
	began   time.Time
	buffer  []byte
	sent    bool
	line    func(a A, x *answering, took time.Duration, done bool) *wire.PlanLine
	control *http.ResponseController
}

// serveLines answers line by line while the calculation goes on. A caller that
// leaves ends it. What goes wrong before the first line is answered as always,
// what goes wrong later is the last line.
func (k *calculation[Q, A]) serveLines(s *host, c echo.Context, q Q, x *answering) error {
	lane, allowed := k.laneOf(s, q, tell.Lines)
	control := http.NewResponseController(c.Response())
	_ = control.SetWriteDeadline(time.Now().Add(allowed + s.config.DearTimeout + s.config.WriteTimeout))
	if !lane.Enter(c.Request().Context(), s.callerOf(c).id) {
		return s.answerProblem(c, overloaded())
	}
	defer lane.Leave()
	ctx, cancel := context.WithTimeout(c.Request().Context(), allowed)
	defer cancel()
	out := &stream[A]{c: c, x: x, began: time.Now(), line: k.follow.line, control: control}
	a, err := k.follow.compute(ctx, q, func(a A) {
		if k.price == nil || k.price(a, tell.JSON) == nil {
			out.send(out.line(a, x, time.Since(out.began), false))
		}
	})
	if err == nil && k.price != nil {
		err = k.price(a, tell.JSON)
	}
	switch {
	case err == nil:
		out.send(out.line(a, x, time.Since(out.began), true))
	case out.sent:
		out.send(&wire.PlanLine{Seconds: wire.Seconds(time.Since(out.began)), Done: true, Problem: s.problemFrom(c, err).answer()})
	default:
		return s.answerProblem(c, s.problemFrom(c, err))
	}
	return nil
}

// send writes one line and sends it on. A caller that is gone is noticed by the
// calculation, whose context ends.
func (s *stream[A]) send(l *wire.PlanLine) {
	if !s.sent {
		h := s.c.Response().Header()
		h["Content-Type"], h["Cache-Control"] = []string{tell.Lines.Media()}, cacheNever
		if s.x.byAccept {
			h.Add("Vary", "Accept")
		}
		s.sent = true
	}
	s.buffer = append(tell.AppendJSON(s.buffer[:0], l), '\n')
	if _, err := s.c.Response().Write(s.buffer); err == nil {
		_ = s.control.Flush()
	}
}
