package api

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"mime"
	"net/http"

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
)

// openBatch chooses how to read and to answer a batch by its media type.
func (s *host) openBatch(c echo.Context) (source batchSource, output batchOutput, media string, p *problem) {
	request := c.Request()
	if err := ask.Uncompressed(request); err != nil {
		return nil, nil, "", s.problemFrom(c, err)
	}
	header := request.Header.Get("Content-Type")
	media, _, _ = mime.ParseMediaType(header)
	switch media {
	case mediaLines:
		return &lineSource{in: bufio.NewReaderSize(request.Body, mostLine)}, lineOutput{}, mediaLines, nil
	case mediaCSV:
		source, output, p = openCSV(request.Body)
		return source, output, tell.CSV.Media(), p
	case echo.MIMEApplicationJSON:
		source, p = s.openArray(c)
		return source, arrayOutput{}, echo.MIMEApplicationJSON, p
	default:
		return nil, nil, "", s.problemFrom(c, ask.NotRead(header, mediaLines+", application/json or "+mediaCSV, mediaLines))
	}
}

// lineSource reads one JSON object a line.
type lineSource struct {
	in     *bufio.Reader
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
			lines = append(lines, jsonLine(s.number, bytes.Clone(text), tooLong))
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

// jsonLine reads the number, the id and the call of a JSON object.
func jsonLine(number int, text []byte, tooLong bool) line {
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
	l.id, l.call = ask.Member(text, "id"), ask.Member(text, "call")
	l.add = func(r *ask.Reading) {
		r.AddMembers(text)
		r.Drop("id")
		r.Drop("call")
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
func (s *host) openArray(c echo.Context) (batchSource, *problem) {
	body, err := io.ReadAll(http.MaxBytesReader(c.Response(), c.Request().Body, mostArray*mostLine/16))
	var limit *http.MaxBytesError
	switch {
	case errors.As(err, &limit):
		return nil, single(ask.BodyTooLarge, "the array has more than "+wire.Count(int(limit.Limit), "byte", "bytes"), "send one object a line as "+mediaLines)
	case err != nil:
		return nil, single(fault.Unreadable, "the body ends before it is complete", "")
	}
	scanner := ask.Scanner{Text: body}
	if ask.Depth(body) > ask.MostDepth || !json.Valid(body) || scanner.Peek() != '[' {
		return nil, problemOf(fault.Faults{{Code: fault.Unreadable, Detail: "the body is not a JSON array of objects",
			Expected: `an array such as [{"call":"/v1/ruler","length":"92.1 mm"}]`, Hint: "send one object a line as " + mediaLines}})
	}
	source := &arraySource{}
	for scanner.Next(); scanner.Peek() != ']'; scanner.Expect(',') {
		if len(source.items) == mostArray {
			return nil, single(fault.TooMany, "the array has more than "+wire.Count(mostArray, "request", "requests"), "send one object a line as "+mediaLines)
		}
		source.items = append(source.items, jsonLine(len(source.items)+1, scanner.Skip(), false))
	}
	return source, nil
}
