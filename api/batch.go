package api

import (
	"context"
	"net/http"
	"runtime"
	"sync"
	"sync/atomic"
	"time"

	"github.com/labstack/echo/v4"
)

// Limits of a batch.
const (
	mostLine  = 64 << 10               // bytes of one line
	mostArray = 500                    // requests in a JSON array
	mostChunk = 256                    // lines that are worked on together
	flushSize = 16 << 10               // bytes after which an answer is sent on
	flushTime = 100 * time.Millisecond // after which it is, however short
)

// batchPatience is how long a batch waits for its next line, and for the
// caller to take what was answered.
const batchPatience = 30 * time.Second

// batches is the call that makes many calculations: those that a line may name,
// by their paths.
type batches struct {
	*host
	lines    map[string]lineCall
	families func() map[string]map[string]bool // the names of calls that differ in their kind alone
}

// batch is many calculations in one request, answered in their order.
type batch struct {
	batches *batches
	c       echo.Context
	output  batchOutput
	answers []lineAnswer
	buffer  []byte // answers that are not sent yet
	count   int
	failed  int
}

// lineAnswer is the answer to one line of a chunk.
type lineAnswer struct {
	bytes  []byte
	failed bool
}

// batchSource reads the lines of a batch.
type batchSource interface {
	// chunk appends the lines that have arrived, at least one and at most
	// mostChunk, and reports whether there may be more. An error means that the
	// caller is gone, or has stalled.
	chunk(lines []line) ([]line, bool, error)
}

// runBatch answers many requests at once.
//
//	@Summary		Many calculations at once
//	@Description	One JSON object a line (application/x-ndjson, or text/plain, which pages of other origins may send without a preflight), each with the path of its call, an id that is passed through, and the names of that call; or a JSON array of up to 500 such objects; or a table with the names as its header. A line may name any calculation: solve, check, guide, drawing (answered as FOLD, with format=svg as SVG in a JSON text), ruler, stock and yield. What the address of the batch says (call, kind and any name of the call) holds for every line that does not say it itself. Answers come in the same order as they are computed, a line that fails has its problem and does not stop the others.
//	@Description	Of a table the separator, the encoding and the decimal mark are found out from its first 64 KiB and told in the header Table-Dialect (a dictionary, RFC 9651). Columns that are no names of the call pass through. A cell may hold a list: 1/2; 2-1/4; 5-7/8. Every row comes back as it was, with its line number, its problem, and the answer behind; with columns, which is a list of JSON Pointers, one row a line with those values.
//	@ID				batch
//	@Tags			batch
//	@Accept			application/x-ndjson
//	@Param			lines	body	string	true	"one JSON object a line"
//	@Param			call	query	string	false	"the call of lines that name none: a path, or its part before the kind"
//	@Param			kind	query	string	false	"the kind of lines that name none"
//	@Param			columns	query	string	false	"of a table: JSON Pointers parted by commas, for one row a line with these values of its answer"
//	@Param			header	query	string	false	"0 leaves the header row of a table out"
//	@Produce		application/x-ndjson
//	@Success		200	{string}	string
//	@Router			/v1/batch [post]
func (s *batches) runBatch(c echo.Context) error {
	order, faults := s.readOrder(c.Request().URL.RawQuery)
	if len(faults) > 0 {
		return s.answerProblem(c, problemOf(faults))
	}
	source, output, media, p := s.openBatch(c, &order)
	if p != nil {
		return s.answerProblem(c, p)
	}
	if !s.streams.Enter(c.Request().Context(), s.callerOf(c).id) {
		return s.answerProblem(c, single(codeOverloaded, "too many batches are running", ""))
	}
	defer s.streams.Leave()
	control := http.NewResponseController(c.Response())
	_ = control.EnableFullDuplex() // needed by HTTP/1 only; others always have it
	h := c.Response().Header()
	h["Content-Type"], h["Cache-Control"] = []string{media}, cacheNever
	b := &batch{batches: s, c: c, output: output}
	return b.run(source, control)
}

// begin begins the answer, which may depend on the first line.
func (b *batch) begin(lines []line) {
	var first lineCall
	if len(lines) > 0 {
		first = b.batches.lines[lines[0].call]
	}
	b.buffer = b.output.begin(nil, first)
}

// chunk is lines that have arrived together.
type chunk struct {
	lines []line
	more  bool
}

// run answers and sends chunk after chunk while the next one is read. A caller
// that is gone ends it, with whatever is being worked on: the stream is cut off
// without its last piece, so that nobody takes a part for the whole.
func (b *batch) run(source batchSource, control *http.ResponseController) error {
	ctx, gone := context.WithCancel(b.c.Request().Context())
	b.c.SetRequest(b.c.Request().WithContext(ctx))
	chunks := make(chan chunk)
	var reading sync.WaitGroup
	reading.Go(func() { readChunks(ctx, gone, source, control, chunks) })
	defer reading.Wait()
	more := true
	defer func() {
		gone()
		if more { // what is still read is not awaited; a whole body leaves its connection to the next call
			_ = control.SetReadDeadline(time.Now())
		}
	}()
	why, begun := "", false
	for more && why == "" {
		select {
		case next := <-chunks:
			more = next.more
			if !begun {
				begun = true
				b.begin(next.lines)
			}
			b.answer(next.lines, control)
		case <-b.batches.stopping:
			why = "the service is going down: send what is missing again"
		case <-ctx.Done():
			panic(http.ErrAbortHandler)
		}
	}
	if !begun {
		b.begin(nil)
	}
	b.buffer = b.output.end(b.buffer, b.count, b.failed, why)
	b.send(control, true)
	return nil
}

// readChunks reads on while there is more; a body that breaks off means that the
// caller is gone.
func readChunks(ctx context.Context, gone func(), source batchSource, control *http.ResponseController, chunks chan<- chunk) {
	for more := true; more; {
		_ = control.SetReadDeadline(time.Now().Add(batchPatience))
		var next chunk
		var err error
		if next.lines, next.more, err = source.chunk(nil); err != nil {
			gone()
			return
		}
		more = next.more
		select {
		case chunks <- next:
		case <-ctx.Done():
			return
		}
	}
}

// answer works on lines and sends what is ready.
func (b *batch) answer(lines []line, control *http.ResponseController) {
	for rest := lines; len(rest) > 0; {
		rest = b.some(rest)
		b.send(control, len(rest) > 0 || len(lines) < mostChunk)
	}
}

// some answers lines until it is time to send something, and returns the rest.
func (b *batch) some(lines []line) (rest []line) {
	done := b.work(lines)
	for i := range done {
		b.take(&b.answers[i])
	}
	return lines[done:]
}

// take puts the answer to a line into the buffer.
func (b *batch) take(a *lineAnswer) {
	b.buffer = b.output.join(b.buffer, b.count == 0, a.bytes)
	b.count++
	if a.failed {
		b.failed++
	}
}

// send writes the buffer, and sends it on if it is large or awaited.
func (b *batch) send(control *http.ResponseController, awaited bool) {
	_ = control.SetWriteDeadline(time.Now().Add(batchPatience))
	if _, err := b.c.Response().Write(b.buffer); err != nil || b.c.Request().Context().Err() != nil {
		panic(http.ErrAbortHandler)
	}
	if awaited || len(b.buffer) >= flushSize {
		b.c.Response().Flush()
	}
	b.buffer = b.buffer[:0]
}

// work answers lines from the first one on, on all processors, until it is
// time to send something, and returns how many it has answered.
func (b *batch) work(lines []line) int {
	for len(b.answers) < len(lines) {
		b.answers = append(b.answers, lineAnswer{})
	}
	end := time.Now().Add(flushTime)
	var next atomic.Int64
	var wait sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(lines)) {
		wait.Go(func() {
			for early := true; early; early = time.Now().Before(end) {
				i := int(next.Add(1)) - 1
				if i >= len(lines) {
					return
				}
				a := &b.answers[i]
				a.bytes, a.failed = b.appendLine(a.bytes[:0], &lines[i])
			}
		})
	}
	wait.Wait()
	return min(int(next.Load()), len(lines))
}
