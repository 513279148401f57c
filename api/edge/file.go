package edge

import (
	"bytes"
	"net/http"
	"strconv"
	"strings"

	"github.com/labstack/echo/v4"
)

// File is a page or file that never changes while the service runs, kept plain
// and compressed.
type File struct {
	plain, packed variant
	media         []string
	cache         []string
	policy        []string // of what a page may load; nil for files that are no pages
}

// variant is a file in one encoding.
type variant struct {
	body   []byte
	tag    []string
	length []string
}

func newVariant(body []byte, coding string) variant {
	return variant{body, []string{Tag(body, coding)}, []string{strconv.Itoa(len(body))}}
}

// NewFile keeps a body of a media type; cache is its Cache-Control. A body that
// compressing makes no smaller is kept plain alone.
func NewFile(media string, body []byte, cache string) *File {
	f := &File{plain: newVariant(body, ""), media: []string{media}, cache: []string{cache}}
	f.packed = f.plain
	if packed := Gzip(bytes.Clone(body)); len(packed) < len(body) {
		f.packed = newVariant(packed, "gzip")
	}
	return f
}

// Page returns the file as a page that loads no more than a Content-Security-
// Policy allows.
func (f *File) Page(policy string) *File {
	page := *f
	page.policy = []string{policy}
	return &page
}

var noReferrer = []string{"no-referrer"}

// Serve sends the file the way that the caller reads it, or 304.
func (f *File) Serve(c echo.Context) error {
	request, h := c.Request(), c.Response().Header()
	v, gzipped := &f.plain, false
	if AcceptsGzip(request.Header.Get("Accept-Encoding")) && len(f.packed.body) < len(f.plain.body) {
		v, gzipped = &f.packed, true
	}
	h["Etag"], h["Cache-Control"] = v.tag, f.cache
	if f.policy != nil {
		h["Content-Security-Policy"], h["Referrer-Policy"] = f.policy, noReferrer
	}
	if asked := request.Header.Get("If-None-Match"); AnyTag(asked) || Matches(asked, v.tag[0]) {
		return c.NoContent(http.StatusNotModified)
	}
	if gzipped {
		h["Content-Encoding"] = []string{"gzip"}
	}
	h["Content-Type"], h["Content-Length"] = f.media, v.length
	c.Response().WriteHeader(http.StatusOK)
	if request.Method == http.MethodHead {
		return nil
	}
	_, err := c.Response().Write(v.body)
	return err
}

// PolicyAlone is the policy of a page or a picture that loads nothing and has
// its style in it.
const PolicyAlone = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'"

// IsDocument reports whether browsers show a media type as a document that
// could load others.
func IsDocument(media string) bool {
	return strings.HasPrefix(media, "text/html") || strings.HasPrefix(media, "image/svg+xml") || strings.HasPrefix(media, "application/xml")
}
