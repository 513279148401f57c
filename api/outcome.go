package api

import (
	"net/http"
	"strconv"
	"sync"
	"time"

	"github.com/labstack/echo/v4"

	"creasefit/api/ask"
	"creasefit/api/edge"
	"creasefit/api/tell"
	"creasefit/api/wire"
	"creasefit/internal/fault"
)

// Header values that every answer shares. They are never changed.
var (
	cachePublic = []string{"public, max-age=86400, stale-while-revalidate=604800, stale-if-error=604800"}
	cacheNever  = []string{"no-store"}
	plainText   = []string{"text/plain; charset=utf-8"}

	documentPolicy = []string{edge.PolicyAlone}
)

// outcome is an answer that is being put together.
type outcome struct {
	*spelling
	s     *host
	c     echo.Context
	r     *ask.Reading // nil for a request that was recognized
	body  []byte
	fresh bool             // the body is new: it is to be remembered
	timed bool             // the answer depends on how fast the machine is
	times [3]time.Duration // read, solve, write

	values [6]string // of headers that are the answer's own, as many as set says
	set    int
}

// header sets a header to a value of its own, in the memory of the outcome.
func (o *outcome) header(name, value string) {
	at := o.set
	o.set++
	o.values[at] = value
	o.c.Response().Header()[name] = o.values[at:o.set:o.set]
}

// answerBuffer is reused between answers.
type answerBuffer struct{ bytes []byte }

var answerBuffers = sync.Pool{New: func() any { return &answerBuffer{make([]byte, 0, 16<<10)} }}

// mostKept is how large an answer's buffer may be to be kept for others.
const mostKept = 1 << 20

// giveBack keeps the buffer for another answer.
func (b *answerBuffer) giveBack() {
	if cap(b.bytes) <= mostKept {
		answerBuffers.Put(b)
	}
}

// newOutcome decides the encoding and the entity tag, before anything is
// computed.
func (s *host) newOutcome(c echo.Context, x *answering) *outcome {
	out := &outcome{spelling: &spelling{options: x.options, path: x.path}, s: s, c: c, r: x.Reading}
	out.key = keyOf(x.Reading, x.path, out.writtenAs(), out.names(wire.MemberOrder))
	out.encode()
	if c.Request().Method == http.MethodPost {
		out.location = x.location()
	}
	return out
}

// encode decides the encoding, and with it the entity tag.
func (o *outcome) encode() {
	if o.pick == "" && edge.AcceptsGzip(o.c.Request().Header.Get("Accept-Encoding")) {
		o.coding = "gzip"
	}
	o.tag = o.key.entityTag(&o.options, o.coding)
}

// writtenAs returns the format that the writer is asked for: a picked value
// and shown members are taken out of the JSON answer.
func (o *outcome) writtenAs() tell.Format {
	if o.pick != "" {
		return tell.JSON
	}
	return o.format
}

// unchanged reports whether the caller already has this answer. Whether there
// is any answer at all, which a star asks, is not known before it is computed.
func (o *outcome) unchanged() bool {
	request := o.c.Request()
	return request.Method != http.MethodPost && edge.Matches(request.Header.Get("If-None-Match"), o.tag)
}

// remembered reports whether the answer is among the recent ones, and takes it.
func (o *outcome) remembered() (known bool) {
	o.body, known = o.s.recent.find(o.key)
	o.s.metrics.Remembered(known)
	return known
}

// pickedAsTable reports whether the picked value is told as a table.
func (o *outcome) pickedAsTable() bool {
	return o.pick != "" && (o.format == tell.CSV || o.format == tell.XML)
}

// setCaching sets the headers that a 304 has in common with the full answer.
func (o *outcome) setCaching() http.Header {
	h := o.c.Response().Header()
	o.header("Etag", o.tag)
	h["Cache-Control"] = cachePublic
	if o.timed {
		h["Cache-Control"] = cacheNever
	}
	if o.byAccept {
		h["Vary"] = o.s.cross.VaryAccept
	}
	return h
}

// answerUnchanged answers 304.
func (o *outcome) answerUnchanged() error {
	o.setCaching()
	return o.c.NoContent(http.StatusNotModified)
}

// answer narrows and sends the body. A new one may be remembered only
// now that nothing can be wrong with the request any more.
func (o *outcome) answer() error {
	media, whole := o.format.Media(), o.body
	if p := o.narrow(); p != nil {
		return o.s.answerProblem(o.c, p)
	}
	switch {
	case o.timed:
		o.tag = "W/" + edge.Tag(whole, o.format.String(), o.coding) // nobody remembers it
	case o.fresh:
		o.s.recent.offer(o.key, whole)
	}
	if o.c.Request().Method != http.MethodPost && edge.AnyTag(o.c.Request().Header.Get("If-None-Match")) {
		return o.answerUnchanged()
	}
	size := len(o.body)
	if !o.s.flight.Enter(size) {
		return o.s.answerProblem(o.c, overloaded()) // with answers that wait for their callers
	}
	defer o.s.flight.Leave(size)
	if o.pick != "" && !o.pickedAsTable() {
		media = plainText[0]
	}
	if o.page {
		media, o.body = "text/html; charset=utf-8", o.answerPage(o.body)
	}
	return o.send(media)
}

// send encodes the body and sends it with its headers.
func (o *outcome) send(media string) error {
	h := o.setCaching()
	if o.location != "" {
		o.header("Content-Location", o.location)
	}
	o.header("Server-Timing", serverTiming(o.times))
	if edge.IsDocument(media) {
		h["Content-Security-Policy"] = documentPolicy
	}
	if o.download != "" {
		h["Content-Disposition"] = []string{`attachment; filename="` + o.download + "." + o.format.Extension() + `"`}
	}
	if o.coding != "" {
		o.body = edge.Gzip(o.body)
		h["Content-Encoding"] = []string{o.coding}
	}
	o.header("Content-Type", media)
	o.header("Content-Length", strconv.Itoa(len(o.body)))
	return write(o.c, http.StatusOK, o.body)
}

// narrow keeps the picked value or the shown members of the JSON answer.
func (o *outcome) narrow() *problem {
	var f fault.Fault
	switch {
	case o.pickedAsTable():
		var value []byte
		if value, f = find(o.body, o.pick); value != nil {
			o.body = tell.AppendPicked(nil, o.format, value, tell.Style{Bare: o.bare, Comma: o.comma})
		}
	case o.pick != "":
		o.body, f = pick(o.body, o.pick, o.comma)
	case o.show != nil:
		o.body, f = show(o.body, o.show)
	}
	if f.Code != "" {
		return problemOf(fault.Faults{f})
	}
	return nil
}

// send writes a whole body.
func send(c echo.Context, status int, media string, body []byte) error {
	h := c.Response().Header()
	h["Content-Type"] = []string{media}
	h["Content-Length"] = []string{strconv.Itoa(len(body))}
	return write(c, status, body)
}

// write writes a body whose headers are set.
func write(c echo.Context, status int, body []byte) error {
	w := c.Response()
	w.WriteHeader(status)
	return edge.WriteBody(w, c.Request(), body)
}

// serverTiming writes how long reading, solving and writing took, in
// milliseconds.
func serverTiming(times [3]time.Duration) string {
	b := make([]byte, 0, 64)
	for i, name := range [...]string{"read", "solve", "write"} {
		if i > 0 {
			b = append(b, ", "...)
		}
		b = append(append(b, name...), ";dur="...)
		b = tell.AppendNumber(b, float64(times[i].Microseconds())/1000)
	}
	return string(b)
}
