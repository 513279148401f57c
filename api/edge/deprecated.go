package edge

import (
	"net/http"
	"strconv"
	"time"
)

// Deprecated is what a caller is told of an address that is to go.
type Deprecated struct {
	Told, Gone time.Time // when that was said first, and when it goes at the earliest
	Instead    string    // the address that takes its place
}

// Say writes the headers Deprecation (RFC 9745, a structured date), Sunset (RFC
// 8594, a date of HTTP) and Link (RFC 8288) of an answer.
func (d Deprecated) Say(h http.Header) {
	h["Deprecation"] = []string{"@" + strconv.FormatInt(d.Told.Unix(), 10)}
	h["Sunset"] = []string{d.Gone.UTC().Format(http.TimeFormat)}
	h["Link"] = []string{"<" + d.Instead + `>; rel="successor-version"`}
}
