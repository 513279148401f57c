package api

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
	"io"
	"time"

	"github.com/labstack/echo/v4"

	"creasefit/api/ask"
)

// spelling is what was understood of a request: how it is to be answered, and
// under which key and tag.
type spelling struct {
	options
	path     string
	coding   string
	tag      string
	key      requestKey // of recent answers
	location string     // the equivalent GET of a POST
}

// size is about how much memory a spelling takes.
func (p *spelling) size() int { return 400 + len(p.location) }

// mostSpelt is how long a body may be, in bytes, to be recognized.
const mostSpelt = 2 << 10

// spelt returns the key of everything that decides how a request is understood, as
// it was sent, and whether it is one to be recognized. Its body can still be read.
func (s *host) spelt(c echo.Context) (name requestKey, ok bool) {
	request := c.Request()
	n := request.ContentLength
	if n < 0 || n > mostSpelt || s.config.Recent == 0 || browsing(c) {
		return name, false
	}
	b := ask.AppendParts(make([]byte, 0, 1<<10), request.Method, request.RequestURI)
	for _, header := range [...]string{"Content-Type", "Content-Encoding", "Accept", "Accept-Encoding"} {
		values := request.Header[header]
		b = ask.AppendParts(binary.AppendUvarint(b, uint64(len(values))), values...)
	}
	if n == 0 {
		return sha256.Sum256(b), true
	}
	at := len(b)
	b = append(b, make([]byte, n)...)
	read, err := io.ReadFull(request.Body, b[at:])
	if err != nil {
		request.Body = io.NopCloser(io.MultiReader(bytes.NewReader(b[at:at+read]), request.Body))
		return name, false
	}
	request.Body = ask.Arrived{Buffer: bytes.NewBuffer(b[at:])}
	return sha256.Sum256(b), true
}

// answerAsSpelt answers a request that was understood before, and reports whether
// it could: whether the answer is still remembered.
func (s *host) answerAsSpelt(c echo.Context, name requestKey, began time.Time) (answered bool, err error) {
	p, ok := s.spellings.find(name, (*spelling).size)
	if !ok {
		return false, nil
	}
	out := &outcome{spelling: p, s: s, c: c}
	if out.unchanged() {
		return true, out.answerUnchanged()
	}
	if out.body, ok = s.recent.find(out.key); !ok {
		return false, nil
	}
	s.metrics.Remembered(true)
	out.times[0] = time.Since(began)
	return true, out.answer()
}
