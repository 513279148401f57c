package api

import (
	"bytes"
	"io"
	"net/http"
	"sync"

	"github.com/labstack/echo/v4"

	"creasefit/api/ask"
	"creasefit/internal/fault"
)

// mostDescribed is how many designs are kept ready: somebody who works on one sends
// the same one again and again, with other sizes.
const mostDescribed = 64

// described is the calls about designs: each is read, and folded up once, before its
// request is.
type described struct {
	form  *ask.Form[*ask.Described]
	mutex sync.Mutex
	ready map[string]*kindEntry // by the text of the design
}

// ofRequest reads the design of a request, which is read once more as a whole.
func (d *described) ofRequest(s *host, c echo.Context) (*kindEntry, *problem) {
	request := c.Request()
	asked := d.form.Take()
	defer asked.Release()
	if request.Method != http.MethodPost {
		asked.AddQuery(request.URL.RawQuery)
		asked.Parse()
		return d.entry(s, c, asked.Q.Design.Text)
	}
	body, err := io.ReadAll(io.LimitReader(request.Body, s.config.MostBody+1))
	again := func() io.ReadCloser { return io.NopCloser(io.MultiReader(bytes.NewReader(body), failing{err})) }
	request.Body = again()
	wrong := ask.Binder{MostBody: s.config.MostBody}.Bind(asked, c)
	if request.Body = again(); wrong != nil {
		return nil, s.problemFrom(c, wrong)
	}
	for _, f := range asked.Faults() {
		if f.Field == "" && !asked.Q.Design.Given { // of the body as a whole, which no design was found in
			return nil, problemOf(fault.Faults{f})
		}
	}
	return d.entry(s, c, asked.Q.Design.Text)
}

// failing ends with an error, or gives nothing if there is none.
type failing struct{ err error }

func (f failing) Read([]byte) (int, error) {
	if f.err != nil {
		return 0, f.err
	}
	return 0, io.EOF
}

// entry makes the calls about a design, or finds those made before.
func (d *described) entry(s *host, c echo.Context, text string) (*kindEntry, *problem) {
	d.mutex.Lock()
	e := d.ready[text]
	d.mutex.Unlock()
	if e != nil {
		return e, nil
	}
	k, err := ask.KindOfDesign(text)
	if err != nil {
		return nil, s.problemFrom(c, err)
	}
	e = newKindEntry(k)
	d.mutex.Lock()
	defer d.mutex.Unlock()
	if len(d.ready) >= mostDescribed {
		clear(d.ready)
	}
	d.ready[text] = e
	return e, nil
}

// lines is the calls that a line of a batch may name about a design.
func (d *described) lines() map[string]lineCall {
	lines, bare := map[string]lineCall{}, newKindEntry(ask.BareKind())
	for _, name := range [...]string{"solve", "check", "guide", "drawing"} {
		lines["/v1/"+name+"/"+ask.OwnKind] = ownLine{bare.calls[name], d, name}
	}
	return lines
}

// ownLine is a call about the design that a line brings. Its words and columns are those
// of every design; the sizes of each stand in its own line.
type ownLine struct {
	lineCall
	*described
	name string
}

func (l ownLine) appendAnswer(s *host, c echo.Context, add func(*ask.Reading), as lineForm, dst []byte) ([]byte, *problem) {
	asked := l.form.Take()
	add(&asked.Reading)
	asked.Parse()
	e, p := l.entry(s, c, asked.Q.Design.Text)
	asked.Release()
	if p != nil {
		return dst, p
	}
	return e.calls[l.name].appendAnswer(s, c, add, as, dst)
}
