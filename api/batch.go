package api

import (
	"context"
	"net/http"
	"runtime"
	"strconv"
	"sync"
	"sync/atomic"
	"time"

	"github.com/labstack/echo/v4"

	"creasefit/api/tell"
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
	lines map[string]lineCall
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

// batchOutput writes the answers of a batch.
type batchOutput interface {
	begin(dst []byte) []byte
	answer(dst []byte, first bool, l *line, a []byte) []byte
	// end says that this is all, or why it is not.
	end(dst []byte, count, failed int, why string) []byte
}

// runBatch answers many requests at once.
//
//	@Summary		Many calculations at once
//	@Description	One JSON object a line, each with the path of its call, an id that is passed through, and the names of that call; or a JSON array of up to 500 such objects; or CSV with the names as its header. A line may name any calculation: solve, check, guide, drawing (answered as FOLD), ruler, stock and yield. Answers come in the same order as they are computed, a line that fails has its problem and does not stop the others.
//	@ID				batch
//	@Tags			batch
//	@Accept			application/x-ndjson
//	@Param			lines	body	string	true	"one JSON object a line"
//	@Produce		application/x-ndjson
//	@Success		200	{string}	string
//	@Produce		application/problem+json
//	@Failure		400,408,413,414,415,429,500,503	{object}	wire.Problem
//	@Produce		json
//	@Router			/v1/batch [post]
func (s *batches) runBatch(c echo.Context) error {
	source, output, media, p := s.openBatch(c)
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
	b.buffer = b.output.begin(nil)
	why := ""
	for more && why == "" {
		select {
		case next := <-chunks:
			more = next.more
			b.answer(next.lines, control)
		case <-b.batches.stopping:
			why = "the service is going down: send what is missing again"
		case <-ctx.Done():
			panic(http.ErrAbortHandler)
		}
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
		done := b.work(rest)
		for i := range done {
			b.take(&rest[i], &b.answers[i])
		}
		rest = rest[done:]
		b.send(control, len(rest) > 0 || len(lines) < mostChunk)
	}
}

// take puts the answer to a line into the buffer.
func (b *batch) take(l *line, a *lineAnswer) {
	b.buffer = b.output.answer(b.buffer, b.count == 0, l, a.bytes)
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

// lineOutput writes one answer a line, and at the end how many there were.
type lineOutput struct{}

func (lineOutput) begin(dst []byte) []byte { return dst }

func (lineOutput) answer(dst []byte, _ bool, _ *line, a []byte) []byte {
	return append(append(dst, a...), '\n')
}

func (lineOutput) end(dst []byte, count, failed int, why string) []byte {
	dst = strconv.AppendBool(append(dst, `{"done":`...), why == "")
	dst = strconv.AppendInt(append(dst, `,"count":`...), int64(count), 10)
	dst = strconv.AppendInt(append(dst, `,"failed":`...), int64(failed), 10)
	if why != "" {
		dst = tell.AppendString(append(dst, `,"why":`...), why)
	}
	return append(dst, "}\n"...)
}

// arrayOutput writes the answers as one JSON array.
type arrayOutput struct{}

func (arrayOutput) begin(dst []byte) []byte { return append(dst, '[') }

func (arrayOutput) answer(dst []byte, first bool, _ *line, a []byte) []byte {
	if !first {
		dst = append(dst, ',')
	}
	return append(dst, a...)
}

// end cuts an array off that is not whole: it has no place to say so.
func (arrayOutput) end(dst []byte, _, _ int, why string) []byte {
	if why != "" {
		panic(http.ErrAbortHandler)
	}
	return append(dst, ']')
}
