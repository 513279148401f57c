package edge

import (
	"bytes"
	"compress/gzip"
	"sync"

	"creasefit/api/tell"
)

// compressor is a gzip writer with the buffer that it fills.
type compressor struct {
	buffer bytes.Buffer
	gzip   *gzip.Writer
}

var compressors = sync.Pool{New: func() any { return &compressor{gzip: gzip.NewWriter(nil)} }}

// Gzip returns the body in gzip coding.
func Gzip(body []byte) []byte {
	z := compressors.Get().(*compressor)
	defer compressors.Put(z)
	z.buffer.Reset()
	z.gzip.Reset(&z.buffer)
	// A bytes.Buffer takes every write.
	_, _ = z.gzip.Write(body)
	_ = z.gzip.Close()
	return bytes.Clone(z.buffer.Bytes())
}

// AcceptsGzip reads an Accept-Encoding header (RFC 9110, 12.5.3).
func AcceptsGzip(header string) bool { return tell.Quality(header, "*", "gzip") > 0 }
