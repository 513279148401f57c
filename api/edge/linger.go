package edge

import (
	"io"
	"net/http"
	"time"
)

// mostLingered is how much of a refused body is still read, in bytes.
const mostLingered = 64 << 20

// Lingering prepares the answer to a request whose body is not wanted: a caller
// that is still sending would see its connection reset instead of the answer.
// The function returned is called once the answer is written; it reads on,
// within bounds, and forgets what it reads.
func Lingering(w http.ResponseWriter, r *http.Request, patience time.Duration) func() {
	if r.ContentLength == 0 || r.Body == nil || r.Body == http.NoBody || r.ProtoMajor != 1 || r.Header.Get("Expect") != "" {
		return func() {}
	}
	control := http.NewResponseController(w)
	if control.EnableFullDuplex() != nil {
		return func() {}
	}
	w.Header()["Connection"] = []string{"close"}
	return func() {
		_ = control.Flush()
		_ = control.SetReadDeadline(time.Now().Add(patience))
		// Whatever ends it, there is nothing more to say.
		_, _ = io.CopyN(io.Discard, r.Body, mostLingered)
	}
}
