package web_test

import (
	"fmt"
	"log/slog"
	"net/http"
	"testing"

	"creasefit/api"
	"creasefit/internal/browser"
)

func TestMain(m *testing.M) { browser.Main(m) }

// service runs the service behind a gate, with further pages of the test's own.
func service(t *testing.T, pages map[string]string) (string, *browser.Gate) {
	t.Helper()
	own := api.New(api.DefaultConfig(), slog.New(slog.DiscardHandler)).Handler()
	return browser.Serve(t, http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if page, ok := pages[r.URL.Path]; ok {
			w.Header().Set("Content-Type", "text/html; charset=utf-8")
			fmt.Fprint(w, page)
			return
		}
		own.ServeHTTP(w, r)
	}))
}
