package edge

import (
	"crypto/rand"
	"strconv"
	"sync/atomic"
)

// IDs hands out one id a request: a random part for the process and a
// counter.
type IDs struct {
	process string
	last    *atomic.Uint64
}

// NewIDs returns ids that start at one.
func NewIDs() IDs {
	return IDs{process: rand.Text()[:8] + "-", last: new(atomic.Uint64)}
}

// Take returns the caller's id if it is a sane one, or else the next.
func (r IDs) Take(given string) string {
	if isRequestID(given) {
		return given
	}
	b := make([]byte, 0, 24)
	b = append(b, r.process...)
	return string(strconv.AppendUint(b, r.last.Add(1), 36))
}

// isRequestID accepts 8 to 64 characters that are safe in headers and logs.
func isRequestID(id string) bool { return len(id) >= 8 && len(id) <= 64 && IsWord(id) }

// IsWord reports whether a text is safe in headers, logs and file names:
// letters, digits, hyphens and underscores.
func IsWord(text string) bool {
	for _, c := range []byte(text) {
		switch {
		case 'a' <= c && c <= 'z', 'A' <= c && c <= 'Z', '0' <= c && c <= '9', c == '-', c == '_':
		default:
			return false
		}
	}
	return true
}
