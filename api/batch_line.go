package api

import (
	"bytes"
	"fmt"
	"net/http"
	"runtime/debug"
	"slices"
	"strconv"
	"strings"

	"github.com/labstack/echo/v4"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/internal/fault"
)

// line is one calculation of a batch.
type line struct {
	number int    // from 1
	id     string // passed through, if any
	call   string // the path of the call
	add    func(*ask.Reading)
	wrong  *problem // what keeps the line from being read
}

// lineCall is a calculation that a line may name.
type lineCall interface {
	// appendAnswer appends the JSON answer to the names that add gives; c is the
	// request of the whole batch.
	appendAnswer(s *host, c echo.Context, add func(*ask.Reading), dst []byte) ([]byte, *problem)
}

// appendAnswer reads, computes and writes one request as JSON.
func (k *calculation[Q, A]) appendAnswer(s *host, c echo.Context, add func(*ask.Reading), dst []byte) ([]byte, *problem) {
	asked := k.form.Take()
	defer asked.Release()
	add(&asked.Reading)
	asked.Parse()
	o := optionsOf(&asked.Reading, "", "", k.formats)
	if asked.Answer.Format.Given && o.format != k.inLine() || o.pick != "" {
		asked.Report(fault.Fault{Code: fault.Conflict, Field: "format", Detail: "the lines of a batch are answered in JSON", Hint: "leave format and pick out"}, "")
	}
	if !asked.Check() {
		return dst, refusal(&asked.Reading, k.path)
	}
	lane, allowed := k.laneOf(s, asked.Q, k.inLine())
	if !lane.Await(c.Request().Context(), s.callerOf(c).id) {
		return dst, single(codeCallerGone, "the caller is gone", "")
	}
	defer lane.Leave()
	from := len(dst)
	dst, p := k.work(s, c, asked.Q, allowed, dst, k.inLine(), &answering{Reading: &asked.Reading, options: o, path: k.path})
	if p != nil {
		return dst[:from], p
	}
	dst = bytes.TrimSuffix(dst, []byte("\n"))
	if o.show == nil {
		return dst, nil
	}
	shown, f := show(dst[from:], o.show)
	if f.Code != "" {
		return dst[:from], problemOf(fault.Faults{f})
	}
	return append(dst[:from], shown...), nil
}

// inLine is the format of the answer to a line: the first one that is JSON.
func (k *calculation[Q, A]) inLine() tell.Format {
	i := slices.IndexFunc(k.formats, func(f tell.Format) bool { return f.MediaType() == echo.MIMEApplicationJSON })
	return k.formats[i]
}

// appendLine answers one line: its number, its id, and the answer or the
// problem. A fault of the service in one line does not end the others.
func (b *batch) appendLine(dst []byte, l *line) (out []byte, failed bool) {
	from := len(dst)
	defer func() {
		if cause := recover(); cause != nil {
			p := b.batches.internalProblem(b.c, "panic", fmt.Sprintf("%v\n%s", cause, debug.Stack()))
			out, failed = b.appendProblem(dst[:from], l, p), true
		}
	}()
	if l.wrong != nil {
		return b.appendProblem(dst, l, l.wrong), true
	}
	call, ok := b.batches.lines[l.call]
	if !ok {
		return b.appendProblem(dst, l, b.noSuchCall(l.call)), true
	}
	if limiter, who := b.batches.limiter, b.batches.callerOf(b.c); limiter != nil && limiter.Wait(b.c.Request().Context(), who.id, who.key) != nil {
		return b.appendProblem(dst, l, single(codeCallerGone, "the caller is gone", "")), true
	}
	dst = strconv.AppendInt(appendLineHead(dst, l), http.StatusOK, 10)
	dst, p := call.appendAnswer(b.batches.host, b.c, l.add, append(dst, `,"answer":`...))
	if p != nil {
		return b.appendProblem(dst[:from], l, p), true
	}
	return append(dst, '}'), false
}

// appendLineHead appends the beginning of an answer up to its status.
func appendLineHead(dst []byte, l *line) []byte {
	dst = strconv.AppendInt(append(dst, `{"line":`...), int64(l.number), 10)
	if l.id != "" {
		dst = tell.AppendString(append(dst, `,"id":`...), l.id)
	}
	return append(dst, `,"status":`...)
}

// appendProblem answers a line with what is wrong with it.
func (b *batch) appendProblem(dst []byte, l *line, p *problem) []byte {
	dst = strconv.AppendInt(appendLineHead(dst, l), int64(p.kind.status), 10)
	return append(tell.AppendJSON(append(dst, `,"problem":`...), p.answer()), '}')
}

// noSuchCall is the problem of a line that names no call.
func (b *batch) noSuchCall(name string) *problem {
	f := fault.Fault{Code: codeNotFound, Field: "call", Value: ask.Cut(name, ask.MostValue), Detail: "a line names no such call", Expected: "a path such as /v1/solve/slotted-band"}
	if name == "" {
		f.Code, f.Detail = fault.Missing, "the line does not say what to calculate"
	}
	names := make([]string, 0, len(b.batches.lines))
	for path := range b.batches.lines {
		names = append(names, path)
	}
	if nearest := fault.Nearest(strings.ToLower(name), names); nearest != "" {
		f.Hint = "did you mean " + nearest + "?"
	}
	return problemOf(fault.Faults{f})
}
