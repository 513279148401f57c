package edge

import (
	"net/http"
	"strings"
)

// WantsPage reports whether a request is that of a browser which opens an address:
// a GET whose Accept header begins with HTML.
func WantsPage(method, accept string) bool {
	first, _, _ := strings.Cut(accept, ",")
	first, _, _ = strings.Cut(first, ";")
	return (method == http.MethodGet || method == http.MethodHead) && strings.TrimSpace(first) == "text/html"
}
