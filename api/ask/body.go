package ask

import (
	"bytes"
	"errors"
	"mime"
	"net"
	"net/http"
	"os"
	"strconv"
	"strings"
	"sync"

	"github.com/labstack/echo/v4"

	"creasefit/internal/fault"
)

// Codes of what can be wrong with a body as a whole. They extend those of
// package fault.
const (
	BodyTimeout  fault.Code = "body-timeout"
	BodyTooLarge fault.Code = "body-too-large"
	NoFormat     fault.Code = "unknown-format"
	MediaType    fault.Code = "media-type"
)

var bodies = sync.Pool{New: func() any { return new(bytes.Buffer) }}

// Arrived is a body that has been read whole.
type Arrived struct{ *bytes.Buffer }

// Close has nothing to close.
func (Arrived) Close() error { return nil }

// Binder reads requests as echo asks for it: the names of the query string,
// and by POST those of a JSON object or a form.
type Binder struct{ MostBody, MostLarge int64 } // bytes of a body

// Bind reads the request into one that a Form gave. An error is a fault of the
// request as a whole; what is wrong with values is kept for Validator.
func (b Binder) Bind(asked any, c echo.Context) error {
	a, ok := asked.(interface{ reading() *Reading })
	if !ok {
		return echo.ErrInternalServerError
	}
	r, request := a.reading(), c.Request()
	r.AddQuery(request.URL.RawQuery)
	if request.Method == http.MethodPost {
		if err := b.bindBody(r, c); err != nil {
			return err
		}
	}
	r.Parse()
	return nil
}

func (r *Reading) reading() *Reading { return r }

// bindBody adds the names of the body.
func (b Binder) bindBody(r *Reading, c echo.Context) error {
	request := c.Request()
	add, err := bodyReader(request, r)
	if err != nil {
		return err
	}
	most := b.MostBody
	if r.table.large {
		most = b.MostLarge
	}
	if arrived, ok := request.Body.(Arrived); ok && request.ContentLength <= most {
		add(arrived.Bytes())
		return nil
	}
	buffer := bodies.Get().(*bytes.Buffer)
	defer bodies.Put(buffer)
	buffer.Reset()
	if err := readBody(c, buffer, most); err != nil {
		return err
	}
	if buffer.Len() > 0 || request.ContentLength != 0 {
		add(buffer.Bytes())
	}
	return nil
}

// Uncompressed refuses a body that is compressed.
func Uncompressed(request *http.Request) error {
	if coding := request.Header.Get("Content-Encoding"); coding != "" && coding != "identity" {
		return fault.Fault{Code: MediaType, Detail: "compressed bodies are not read", Hint: "send the body as it is"}
	}
	return nil
}

// bodyReader chooses how to read the body by its media type.
func bodyReader(request *http.Request, r *Reading) (func([]byte), error) {
	if err := Uncompressed(request); err != nil {
		return nil, err
	}
	header := request.Header.Get("Content-Type")
	if header == echo.MIMEApplicationJSON {
		return r.AddJSON, nil
	}
	if header == "" && request.ContentLength == 0 {
		return func([]byte) {}, nil
	}
	media, parameters, err := mime.ParseMediaType(header)
	if charset := parameters["charset"]; err != nil || charset != "" && !strings.EqualFold(charset, "utf-8") {
		media = ""
	}
	switch media {
	case echo.MIMEApplicationJSON:
		return r.AddJSON, nil
	case echo.MIMEApplicationForm:
		return func(body []byte) { r.AddQuery(string(body)) }, nil
	case mediaCSV:
		if r.table.rows != "" {
			return r.addRows, nil
		}
	}
	if r.table.rows != "" {
		return nil, NotRead(header, "application/json, application/x-www-form-urlencoded or text/csv, in UTF-8", mediaCSV)
	}
	return nil, NotRead(header, "application/json or application/x-www-form-urlencoded, in UTF-8", echo.MIMEApplicationJSON)
}

// NotRead is the fault of a body of a media type that a call does not read.
func NotRead(header, expected, hint string) fault.Fault {
	f := fault.Fault{Code: MediaType, Value: header, Detail: "bodies of this media type are not read", Expected: expected, Hint: "Content-Type: " + hint}
	if header == "" {
		f.Detail = "the body has no media type"
	}
	return f
}

// readBody reads the whole body, but no more than is taken.
func readBody(c echo.Context, buffer *bytes.Buffer, most int64) error {
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
		return fault.Fault{Code: BodyTimeout, Detail: "the body did not arrive in time"}
	default:
		return fault.Fault{Code: fault.Unreadable, Detail: "the body ends before it is complete"}
	}
}

// tooLarge is the fault of a body beyond the limit.
func tooLarge(most int64) fault.Fault {
	return fault.Fault{Code: BodyTooLarge, Detail: "the body has more than " + strconv.FormatInt(most, 10) + " bytes"}
}
