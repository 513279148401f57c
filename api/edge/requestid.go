package edge

import (
	"crypto/rand"
	"strconv"
	"strings"
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

// Take returns the caller's id if it is a sane one, 8 to 64 characters that are
// safe in headers and logs, or else the next.
func (r IDs) Take(given string) string {
	if len(given) >= 8 && len(given) <= 64 && IsWord(given) {
		return given
	}
	return r.process + strconv.FormatUint(r.last.Add(1), 36)
}

// IsWord reports whether a text is safe in headers, logs and file names:
// letters, digits, hyphens and underscores.
func IsWord(text string) bool {
	return strings.Trim(text, "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_") == ""
}
