package api

import (
	"bytes"
	"errors"
	"mime"
	"net"
	"net/http"
	"os"
	"strings"
	"sync"

	"github.com/labstack/echo/v4"

	"creasefit/internal/fault"
)

var bodies = sync.Pool{New: func() any { return new(bytes.Buffer) }}

// readRequest adds the names of the query string and of the body. A problem
// is returned if the request cannot be read as a whole.
func (s *Service) readRequest(c echo.Context, r *reading) *problem {
	request := c.Request()
	r.addQuery(request.URL.RawQuery)
	if request.Method != http.MethodPost {
		return nil
	}
	add, p := bodyReader(request, r)
	if p != nil {
		return p
	}
	buffer := bodies.Get().(*bytes.Buffer)
	defer bodies.Put(buffer)
	buffer.Reset()
	if p := s.readBody(c, buffer, s.bodyLimit(r.table)); p != nil {
		return p
	}
	if buffer.Len() > 0 || request.ContentLength != 0 {
		add(buffer.Bytes())
	}
	return nil
}

// bodyReader chooses how to read the body by its media type.
func bodyReader(request *http.Request, r *reading) (func([]byte), *problem) {
	if coding := request.Header.Get("Content-Encoding"); coding != "" && coding != "identity" {
		return nil, single(codeMediaType, "compressed bodies are not read", "send the body as it is")
	}
	header := request.Header.Get("Content-Type")
	if header == echo.MIMEApplicationJSON {
		return r.addJSON, nil
	}
	if header == "" && request.ContentLength == 0 {
		return func([]byte) {}, nil
	}
	media, parameters, err := mime.ParseMediaType(header)
	if charset := parameters["charset"]; err != nil || charset != "" && !strings.EqualFold(charset, "utf-8") {
		return nil, mediaTypeProblem(header)
	}
	switch media {
	case echo.MIMEApplicationJSON:
		return r.addJSON, nil
	case echo.MIMEApplicationForm:
		return func(body []byte) { r.addQuery(string(body)) }, nil
	default:
		return nil, mediaTypeProblem(header)
	}
}

// mediaTypeProblem is the answer to a body that is neither JSON nor a form.
func mediaTypeProblem(header string) *problem {
	f := fault.Fault{Code: codeMediaType, Value: header, Detail: "bodies of this media type are not read",
		Expected: "application/json or application/x-www-form-urlencoded, in UTF-8", Hint: "Content-Type: application/json"}
	if header == "" {
		f.Detail = "the body has no media type"
	}
	return problemOf(fault.Faults{f})
}

// bodyLimit is the most bytes of a body that a call takes.
func (s *Service) bodyLimit(t *table) int64 {
	if t.large {
		return s.config.MostYieldBody
	}
	return s.config.MostBody
}

// readBody reads the whole body, but no more than is taken.
func (s *Service) readBody(c echo.Context, buffer *bytes.Buffer, most int64) *problem {
	request := c.Request()
	if request.ContentLength > most {
		c.Response().Header().Set("Connection", "close")
		return tooLarge(most)
	}
	_, err := buffer.ReadFrom(http.MaxBytesReader(c.Response(), request.Body, most))
	var limit *http.MaxBytesError
	var network net.Error
	switch {
	case err == nil:
		return nil
	case errors.As(err, &limit):
		return tooLarge(most)
	case errors.Is(err, os.ErrDeadlineExceeded), errors.As(err, &network) && network.Timeout():
		c.Response().Header().Set("Connection", "close")
		return single(codeBodyTimeout, "the body did not arrive in time", "")
	default:
		return single(fault.Unreadable, "the body ends before it is complete", "")
	}
}

// tooLarge is the answer to a body beyond the limit.
func tooLarge(most int64) *problem {
	return single(codeBodyTooLarge, "the body has more than "+count(int(most), "byte", "bytes"), "")
}
