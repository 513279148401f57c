package api

import (
	"bytes"
	"fmt"
	"maps"
	"runtime/debug"
	"slices"
	"strings"

	"github.com/labstack/echo/v4"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/api/wire"
	"creasefit/internal/fault"
)

// line is one calculation of a batch.
type line struct {
	number int      // from 1
	id     string   // passed through, if any
	cells  []string // of a row of a table, which come back
	call   string   // the path of the call
	add    func(*ask.Reading)
	wrong  *problem // what keeps the line from being read
}

// lineCall is a calculation that a line may name.
type lineCall interface {
	// appendAnswer appends the answer to the names that add gives, as JSON or as
	// rows of a table; c is the request of the whole batch.
	appendAnswer(s *host, c echo.Context, add func(*ask.Reading), as lineForm, dst []byte) ([]byte, *problem)
	words() []string   // the names that it knows
	columns() []string // of its table; nil if its answer is none
	lasting() bool     // its answer depends on nothing but the request
}

// lineForm is how the answer to a line is written.
type lineForm struct {
	rows  bool // of the table of the answer, else JSON
	table bool // the answer, in either form, goes into a table
	style tell.Style
	again bool // the line has run out of time once
}

// moreTime is how many times longer than usual a line may take that has run out
// of time once, since that may have been the load and not the line.
const moreTime = 4

func (k *calculation[Q, A]) columns() []string { return k.table }

func (k *calculation[Q, A]) lasting() bool { return k.timed == nil }

func (k *calculation[Q, A]) words() []string {
	return wire.Each(k.form.Names(), func(n ask.Name) string { return n.Name })
}

// appendAnswer reads, computes and writes one request.
func (k *calculation[Q, A]) appendAnswer(s *host, c echo.Context, add func(*ask.Reading), as lineForm, dst []byte) ([]byte, *problem) {
	asked := k.form.Take()
	defer asked.Release()
	add(&asked.Reading)
	asked.Parse()
	o := optionsOf(&asked.Reading, "", "", k.formats)
	drawn := asked.Answer.Format.Given && o.format == tell.SVG && !as.table
	if reportForm(&asked.Reading, as, drawn || o.format == k.inLine()); !asked.Check() {
		return dst, refusal(asked, k.path)
	}
	format := k.lineFormat(as, drawn)
	lane, allowed := k.laneOf(s, asked.Q, format)
	if as.again {
		allowed *= moreTime
	}
	if !lane.Await(c.Request().Context(), s.callerOf(c).id) {
		return dst, single(codeCallerGone, "the caller is gone", "")
	}
	defer lane.Leave()
	from := len(dst)
	var p *problem
	x := &answering{Reading: &asked.Reading, options: o, path: k.path, inTable: &as.style}
	lane.Do(func() { dst, p = k.work(s, c, asked.Q, allowed, dst, format, x) })
	switch {
	case p != nil:
		return dst[:from], p
	case as.rows:
		return dst, nil
	case drawn:
		picture := string(dst[from:])
		return tell.AppendString(dst[:from], picture), nil
	default:
		return narrowLine(bytes.TrimSuffix(dst, []byte("\n")), from, &o)
	}
}

// reportForm reports names that ask for another form than lines are answered in.
func reportForm(r *ask.Reading, as lineForm, inForm bool) {
	if r.Answer.Format.Given && !inForm {
		r.Report(fault.Fault{Code: fault.Conflict, Field: "format", Detail: "the lines of a batch are answered in JSON, those of a table as one", Hint: "leave format out"}, "")
	}
	narrowing := &r.Answer.Pick.Field
	if !narrowing.Given {
		narrowing = &r.Answer.Show.Field
	}
	if as.table && narrowing.Given {
		r.ReportAnswer(narrowing, "the values of a table are picked by columns", "columns=/pieces/0/blank/width/reading,/sure/chance in the address")
	}
}

// narrowLine keeps the picked value or the shown members of the JSON answer that
// begins at from; both stay JSON.
func narrowLine(dst []byte, from int, o *options) ([]byte, *problem) {
	value, f := dst[from:], fault.Fault{}
	switch {
	case o.pick != "":
		value, f = find(value, o.pick)
	case o.show != nil:
		value, f = show(value, o.show)
	}
	if f.Code != "" {
		return dst[:from], problemOf(fault.Faults{f})
	}
	return append(dst[:from], value...), nil
}

// inLine is the format of the answer to a line: the first one that is JSON.
func (k *calculation[Q, A]) inLine() tell.Format {
	i := slices.IndexFunc(k.formats, func(f tell.Format) bool { return f.MediaType() == echo.MIMEApplicationJSON })
	return k.formats[i]
}

// lineFormat is the format of the answer to a line; drawn is a picture that goes
// into the JSON as text.
func (k *calculation[Q, A]) lineFormat(as lineForm, drawn bool) tell.Format {
	switch {
	case as.rows:
		return tell.CSV
	case drawn:
		return tell.SVG
	default:
		return k.inLine()
	}
}

// appendLine answers one line with its answer or its problem. A fault of the
// service in one line does not end the others.
func (b *batch) appendLine(dst []byte, l *line) (out []byte, failed bool) {
	from := len(dst)
	defer func() {
		if cause := recover(); cause != nil {
			p := b.batches.internalProblem(b.c, "panic", fmt.Sprintf("%v\n%s", cause, debug.Stack()))
			out, failed = b.output.problem(dst[:from], l, p), true
		}
	}()
	call, p := b.callOf(l)
	if p != nil {
		return b.output.problem(dst, l, p), true
	}
	out, p = b.output.answer(dst, l, call, func(dst []byte, as lineForm) ([]byte, *problem) { return b.workLine(dst, l, call, as) })
	if p != nil {
		return b.output.problem(out[:from], l, p), true
	}
	return out, false
}

// callOf finds the call of a line, and waits until the caller may call again.
func (b *batch) callOf(l *line) (lineCall, *problem) {
	call, ok := b.batches.lines[l.call]
	limiter, who := b.batches.limiter, b.batches.callerOf(b.c)
	switch {
	case l.wrong != nil:
		return nil, l.wrong
	case !ok:
		return nil, problemOf(fault.Faults{b.batches.noSuchCall(l.call)})
	case limiter != nil && limiter.Wait(b.c.Request().Context(), who.id, who.key) != nil:
		return nil, single(codeCallerGone, "the caller is gone", "")
	default:
		return call, nil
	}
}

// workLine answers a line, a second time with more time if it ran out of time.
func (b *batch) workLine(dst []byte, l *line, call lineCall, as lineForm) ([]byte, *problem) {
	from := len(dst)
	dst, p := call.appendAnswer(b.batches.host, b.c, l.add, as, dst)
	if p == nil || p.kind.code != codeTookTooLong {
		return dst, p
	}
	as.again = true
	return call.appendAnswer(b.batches.host, b.c, l.add, as, dst[:from])
}

// noSuchCall is the fault of a line that names no call.
func (s *batches) noSuchCall(name string) fault.Fault {
	f := fault.Fault{Code: codeNotFound, Field: "call", Value: ask.Cut(name, ask.MostValue), Detail: "a line names no such call", Expected: "a path such as /v1/solve/slotted-band"}
	if name == "" {
		f.Code, f.Detail = fault.Missing, "the line does not say what to calculate"
		f.Hint = "add ?call=/v1/solve/band to the address of the batch for all lines"
	} else {
		f.Hint = fault.Meant(fault.Nearest(strings.ToLower(name), slices.Sorted(maps.Keys(s.lines))))
	}
	return f
}
