package api

import (
	"context"
	"net/http"
	"time"

	"github.com/labstack/echo/v4"

	"creasefit/api/ask"
	"creasefit/api/tell"
)

// calculation is one kind of call: the form that a request is read with, how
// its answer is computed, and one writer a format. A new call is one value of
// this type and one handler that serves it.
type calculation[Q ask.Request, A any] struct {
	form    *ask.Form[Q]
	path    string        // canonical, without an extension
	formats []tell.Format // the first is the default
	compute func(context.Context, Q) (A, error)
	write   func(dst []byte, f tell.Format, a A, x *answering) []byte
	// allow is the time that a request may be computed for; nil for the
	// service's own. Calculations that have it take turns of their own.
	allow func(Q) time.Duration
}

// answering is what writers know beside the answer itself.
type answering struct {
	*ask.Reading
	options
	path string
}

// serve reads, computes and answers one request.
func (k *calculation[Q, A]) serve(s *Service, c echo.Context, extension string) error {
	began := time.Now()
	asked := k.form.Take()
	defer asked.Release()
	if err := c.Bind(asked); err != nil {
		return s.answerProblem(c, s.problemFrom(c, err))
	}
	r := &asked.Reading
	o := optionsOf(r, extension, c.Request().Header.Get("Accept"), k.formats)
	if err := c.Validate(asked); err != nil {
		return s.answerProblem(c, refusal(r, k.path))
	}
	out := s.newOutcome(c, r, k.path, o)
	if out.unchanged() {
		return out.answerUnchanged()
	}
	wasRead := time.Now()
	out.times[0] = wasRead.Sub(began)
	if known, ok := s.recent.find(out.key); ok {
		out.body = known
		return out.answer()
	}
	a, p := k.computeInTurn(s, c, asked.Q)
	if p != nil {
		return s.answerProblem(c, p)
	}
	solved := time.Now()
	buffer := answerBuffers.Get().(*answerBuffer)
	defer buffer.giveBack()
	buffer.bytes = k.write(buffer.bytes[:0], out.writtenAs(), a, &answering{r, o, k.path})
	out.body, out.fresh = buffer.bytes, true
	out.times[1], out.times[2] = solved.Sub(wasRead), time.Since(solved)
	return out.answer()
}

// computeInTurn computes when there is a free place, within the time allowed.
func (k *calculation[Q, A]) computeInTurn(s *Service, c echo.Context, q Q) (a A, p *problem) {
	turn, allowed := k.turnOf(s, q)
	if k.allow != nil {
		// A long calculation moves the end of the time to answer with it; where
		// there is no connection there is none to move.
		_ = http.NewResponseController(c.Response()).SetWriteDeadline(time.Now().Add(allowed + s.config.WriteTimeout))
	}
	if !turn.enter(c.Request().Context()) {
		return a, single(codeOverloaded, "too many calculations are running", "")
	}
	defer turn.leave()
	return k.computeWithin(s, c, q, allowed)
}

// turnOf returns where a request takes its turn, and how long it may be
// computed for.
func (k *calculation[Q, A]) turnOf(s *Service, q Q) (*turnstile, time.Duration) {
	if k.allow == nil {
		return s.turn, s.config.SolveTimeout
	}
	return s.planning, k.allow(q)
}

// computeWithin computes within the time allowed.
func (k *calculation[Q, A]) computeWithin(s *Service, c echo.Context, q Q, allowed time.Duration) (a A, p *problem) {
	ctx, cancel := context.WithTimeout(c.Request().Context(), allowed)
	defer cancel()
	a, err := k.compute(ctx, q)
	if err != nil {
		return a, s.problemFrom(c, err)
	}
	return a, nil
}
