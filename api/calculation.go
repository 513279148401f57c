package api

import (
	"cmp"
	"context"
	"net/http"
	"time"

	"github.com/labstack/echo/v4"

	"creasefit/api/ask"
	"creasefit/api/edge"
	"creasefit/api/tell"
)

// calculation is one kind of call: the form that a request is read with, how
// its answer is computed, and what is told of it. A new call is one value of
// this type and one handler that serves it.
type calculation[Q ask.Request, A any] struct {
	form    *ask.Form[Q]
	path    string        // canonical, without an extension
	formats []tell.Format // the first is the default
	table   []string      // the columns of the answer's table; nil if it has none of its own
	compute func(context.Context, Q) (A, error)
	// price says before an answer is written whether that takes more than one
	// call may ask for; nil if none can.
	price func(A, tell.Format) error
	// timed says of an answer that it depends on how fast the machine is: it is
	// not kept by anybody, and its tag is weak. Nil if none does.
	timed func(A) bool
	// answer makes the value that is told in every format; write writes
	// pictures, and all formats of a call without such a value.
	answer func(a A, x *answering) any
	// over gives an answer's memory back once it is written; nil if none has any.
	over  func(A)
	write func(dst []byte, f tell.Format, a A, x *answering) []byte
	// allow is the time that a request may be worked on; nil for the service's
	// own. Calculations that have it run in the lane of dear work.
	allow func(Q) time.Duration
	// follow tells what there is on the way, to callers that ask for lines; the
	// zero value for calculations that have none of them among their formats.
	follow following[Q, A]
}

// serve reads, computes and answers one request.
func (k *calculation[Q, A]) serve(s *host, c echo.Context, extension string) error {
	began := time.Now()
	if s.cheap.Crowded(func() string { return s.callerOf(c).id }) {
		return s.answerProblem(c, overloaded())
	}
	name, recognizable := s.spelt(c)
	if recognizable {
		if answered, err := s.answerAsSpelt(c, name, began); answered {
			return err
		}
	}
	asked := k.form.Take()
	defer asked.Release()
	if err := c.Bind(asked); err != nil {
		return s.answerProblem(c, s.problemFrom(c, err))
	}
	r := &asked.Reading
	o := k.options(c, r, extension)
	if err := c.Validate(asked); err != nil {
		return s.answerProblem(c, refusal(asked, ending(k.path, extension)))
	}
	x := &answering{Reading: r, options: o, path: k.path}
	if o.format == tell.Lines {
		return k.serveLines(s, c, asked.Q, x)
	}
	out := s.newOutcome(c, x)
	if out.unchanged() {
		return out.answerUnchanged()
	}
	out.times[0] = time.Since(began)
	if !out.remembered() {
		return k.answerAfresh(out, asked.Q, x)
	}
	if recognizable {
		s.spellings.keep(name, out.spelling, out.size())
	}
	return out.answer()
}

// ending is a path with the extension that it was asked with.
func ending(path, extension string) string {
	if extension == "" {
		return path
	}
	return path + "." + extension
}

// answerAfresh works an answer out and gives it.
func (k *calculation[Q, A]) answerAfresh(out *outcome, q Q, x *answering) error {
	began := time.Now()
	buffer := answerBuffers.Get().(*answerBuffer)
	defer buffer.giveBack()
	if p := k.workInTurn(out.s, out.c, q, buffer, out.writtenAs(), x); p != nil {
		return out.s.answerProblem(out.c, p)
	}
	out.body, out.fresh, out.timed = buffer.bytes, true, x.timed
	out.times[1], out.times[2] = x.computed.Sub(began), time.Since(x.computed)
	return out.answer()
}

// options are how the request is to be answered.
func (k *calculation[Q, A]) options(c echo.Context, r *ask.Reading, extension string) options {
	o := optionsOf(r, extension, c.Request().Header.Get("Accept"), k.formats)
	if browsing(c) {
		o.asPage(k.formats)
	}
	return o
}

// computing is a calculation, whatever it is asked and answers.
type computing interface {
	lineCall
	where() string // its path, without an extension
	spec() CallSpec
	serve(s *host, c echo.Context, extension string) error
	at(s *host) echo.HandlerFunc
}

func (k *calculation[Q, A]) where() string { return k.path }

// at serves the calculation under an address whose extension is a format.
func (k *calculation[Q, A]) at(s *host) echo.HandlerFunc {
	return func(c echo.Context) error { return k.serve(s, c, c.Param("extension")) }
}

// append appends the answer in a format.
func (k *calculation[Q, A]) append(dst []byte, f tell.Format, a A, x *answering) []byte {
	if k.answer == nil || f.IsPicture() {
		return k.write(dst, f, a, x)
	}
	dst = tell.Append(dst, f, k.answer(a, x), x.style())
	if x.repeated != nil {
		x.repeated.Release()
	}
	return dst
}

// workInTurn computes and writes when there is a free place, within the time
// allowed.
func (k *calculation[Q, A]) workInTurn(s *host, c echo.Context, q Q, to *answerBuffer, f tell.Format, x *answering) *problem {
	lane, allowed := k.laneOf(s, q, f)
	if k.allow != nil {
		// A long calculation moves the end of the time to answer with it; where
		// there is no connection there is none to move.
		_ = http.NewResponseController(c.Response()).SetWriteDeadline(time.Now().Add(allowed + s.config.DearTimeout + s.config.WriteTimeout))
	}
	if !lane.Take() && !lane.Enter(c.Request().Context(), s.callerOf(c).id) {
		return overloaded()
	}
	defer lane.Leave()
	var p *problem
	lane.Do(func() { to.bytes, p = k.work(s, c, q, allowed, to.bytes[:0], f, x) })
	return p
}

// laneOf returns the lane that a request is worked on in, and how long it may
// take.
func (k *calculation[Q, A]) laneOf(s *host, q Q, f tell.Format) (*edge.Lane, time.Duration) {
	switch {
	case k.allow != nil:
		return s.dear, k.allow(q)
	case f == tell.PDF || f == tell.PNG:
		return s.dear, s.config.SolveTimeout
	default:
		return s.cheap, s.config.SolveTimeout
	}
}

// work computes and appends the answer, within the time allowed and within the
// budget of one call. One context goes through all of it: a caller that leaves
// ends it.
func (k *calculation[Q, A]) work(s *host, c echo.Context, q Q, allowed time.Duration, dst []byte, f tell.Format, x *answering) ([]byte, *problem) {
	ctx := &until{c.Request().Context(), time.Now().Add(allowed)}
	a, err := k.compute(ctx, q)
	if err == nil && k.price != nil {
		err = k.price(a, f)
	}
	x.ctx, x.computed = ctx, time.Now()
	if err == nil {
		x.timed = k.timed != nil && k.timed(a)
		dst = k.append(dst, f, a, x)
		err = cmp.Or(x.err, ctx.Err())
		if k.over != nil {
			k.over(a)
		}
	}
	if err != nil {
		return dst, s.problemFrom(c, err)
	}
	return dst, nil
}

// until is a context that is over at a time. Whoever works looks at its error now
// and then; nobody waits for it to be done, so that most calls, which take a tenth
// of a millisecond, need no timer.
type until struct {
	context.Context
	end time.Time
}

// Err returns why the work is to stop.
func (u *until) Err() error {
	if err := u.Context.Err(); err != nil || time.Now().Before(u.end) {
		return err
	}
	return context.DeadlineExceeded
}

// Deadline returns when the work is to stop.
func (u *until) Deadline() (time.Time, bool) { return u.end, true }
