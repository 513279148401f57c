package api

import (
	"bufio"
	"bytes"
	"cmp"
	"encoding/json"
	"errors"
	"io"
	"mime"
	"net/http"
	"strings"

	"github.com/labstack/echo/v4"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/api/wire"
	"creasefit/internal/fault"
)

// The media types of a batch.
const (
	mediaLines = "application/x-ndjson"
	mediaCSV   = "text/csv"
	mediaTabs  = "text/tab-separated-values"
)

// openBatch chooses how to read and to answer a batch by its media type.
func (s *batches) openBatch(c echo.Context, o *batchOrder) (source batchSource, output batchOutput, media string, p *problem) {
	request := c.Request()
	if err := ask.Uncompressed(request); err != nil {
		return nil, nil, "", s.problemFrom(c, err)
	}
	header := request.Header.Get("Content-Type")
	media, parameters, _ := mime.ParseMediaType(header)
	if p := o.withoutColumns(); p != nil && media != mediaCSV && media != mediaTabs {
		return nil, nil, "", p
	}
	switch media {
	case mediaLines, echo.MIMETextPlain: // plain text is what a page of another origin may send without asking first
		return &lineSource{in: bufio.NewReaderSize(request.Body, mostLine), usual: usualLine{s, o}}, lineOutput{}, mediaLines, nil
	case mediaCSV, mediaTabs:
		separator := map[string]rune{mediaTabs: '\t'}[media]
		t, p := s.openTable(request.Body, o, strings.ToLower(parameters["charset"]), separator)
		if p != nil {
			return nil, nil, "", p
		}
		c.Response().Header()["Table-Dialect"] = []string{t.said()}
		style := tell.Style{Bare: true, Comma: t.dialect.decimal == "comma", Separator: t.dialect.separator}
		return t, &tableOutput{source: t, style: style, columns: o.columns}, media + "; charset=utf-8", nil
	case echo.MIMEApplicationJSON:
		source, p = s.openArray(c, usualLine{s, o})
		return source, arrayOutput{}, echo.MIMEApplicationJSON, p
	default:
		return nil, nil, "", s.problemFrom(c, ask.NotRead(header, mediaLines+", application/json or "+mediaCSV, mediaLines))
	}
}

// withoutColumns refuses columns of what is no table.
func (o *batchOrder) withoutColumns() *problem {
	if len(o.columns) == 0 {
		return nil
	}
	return problemOf(fault.Faults{{Code: fault.Conflict, Field: "columns", Detail: "only a table has columns", Hint: "send " + mediaCSV + ", or show in the lines"}})
}

// lineSource reads one JSON object a line.
type lineSource struct {
	in     *bufio.Reader
	usual  usualLine
	number int
}

// chunk takes what has arrived, so that a caller who sends a line and waits
// is answered.
func (s *lineSource) chunk(lines []line) ([]line, bool, error) {
	for len(lines) < mostChunk {
		text, err := s.in.ReadSlice('\n')
		tooLong := errors.Is(err, bufio.ErrBufferFull)
		for errors.Is(err, bufio.ErrBufferFull) {
			_, err = s.in.ReadSlice('\n')
		}
		if text = bytes.TrimSpace(text); len(text) > 0 {
			s.number++
			lines = append(lines, s.usual.read(s.number, bytes.Clone(text), tooLong))
		}
		switch {
		case err == io.EOF:
			return lines, false, nil
		case err != nil:
			return nil, false, err
		case s.in.Buffered() == 0 && len(lines) > 0:
			return lines, true, nil
		}
	}
	return lines, true, nil
}

// usualLine is what holds for lines that do not say it themselves.
type usualLine struct {
	batches *batches
	order   *batchOrder
}

// read reads the number, the id and the call of a JSON object.
func (u usualLine) read(number int, text []byte, tooLong bool) line {
	l := line{number: number}
	if tooLong {
		l.wrong = lineTooLong()
		return l
	}
	f, ok := ask.UnreadableJSON(text)
	if !ok {
		l.wrong = problemOf(fault.Faults{f})
		return l
	}
	l.id = ask.Member(text, "id")
	call, kind := cmp.Or(ask.Member(text, "call"), u.order.call), cmp.Or(ask.Member(text, "kind"), u.order.kind)
	l.call = u.batches.pathOf(call, kind)
	l.add = func(r *ask.Reading) {
		r.AddMembers(text)
		r.Drop("id")
		r.Drop("call")
		if l.call != call { // the kind is part of the call
			r.Drop("kind")
		}
		r.AddUsual(&u.order.usual)
	}
	return l
}

// lineTooLong is the problem of a line or a row beyond the limit.
func lineTooLong() *problem {
	return single(ask.BodyTooLarge, "the line has more than "+wire.Count(mostLine, "byte", "bytes"), "")
}

// arraySource is a JSON array that has been read as a whole.
type arraySource struct{ items []line }

func (s *arraySource) chunk(lines []line) ([]line, bool, error) {
	n := min(mostChunk, len(s.items))
	lines, s.items = append(lines, s.items[:n]...), s.items[n:]
	return lines, len(s.items) > 0, nil
}

// openArray reads a JSON array of objects.
func (s *batches) openArray(c echo.Context, usual usualLine) (batchSource, *problem) {
	body, err := io.ReadAll(http.MaxBytesReader(c.Response(), c.Request().Body, mostArray*mostLine/16))
	var limit *http.MaxBytesError
	switch {
	case errors.As(err, &limit):
		return nil, single(ask.BodyTooLarge, "the array has more than "+wire.Count(int(limit.Limit), "byte", "bytes"), "send one object a line as "+mediaLines)
	case err != nil:
		return nil, single(fault.Unreadable, "the body ends before it is complete", "")
	}
	if ask.Depth(body) > ask.MostDepth || !json.Valid(body) || bytes.TrimSpace(body)[0] != '[' {
		return nil, problemOf(fault.Faults{{Code: fault.Unreadable, Detail: "the body is not a JSON array of objects",
			Expected: `an array such as [{"call":"/v1/ruler","length":"92.1 mm"}]`, Hint: "send one object a line as " + mediaLines}})
	}
	source := &arraySource{}
	for item := range ask.Items(body) {
		if len(source.items) == mostArray {
			return nil, single(fault.TooMany, "the array has more than "+wire.Count(mostArray, "request", "requests"), "send one object a line as "+mediaLines)
		}
		source.items = append(source.items, usual.read(len(source.items)+1, item, false))
	}
	return source, nil
}
