package api

import (
	"crypto/rand"
	"strconv"
	"sync/atomic"

	"creasefit/api/ask"
)

// requestIDs hands out one id a request: a random part for the process and a
// counter.
type requestIDs struct {
	process string
	last    *atomic.Uint64
}

// newRequestIDs returns ids that start at one.
func newRequestIDs() requestIDs {
	return requestIDs{process: rand.Text()[:8] + "-", last: new(atomic.Uint64)}
}

// take returns the caller's id if it is a sane one, or else the next.
func (r requestIDs) take(given string) string {
	if isRequestID(given) {
		return given
	}
	b := make([]byte, 0, 24)
	b = append(b, r.process...)
	return string(strconv.AppendUint(b, r.last.Add(1), 36))
}

// isRequestID accepts 8 to 64 characters that are safe in headers and logs.
func isRequestID(id string) bool { return len(id) >= 8 && len(id) <= ask.MostValue && isFileName(id) }
