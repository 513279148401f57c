package api

import (
	"bytes"
	"context"
	"encoding/json"
	"io"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"net/url"
	"path"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/getkin/kin-openapi/openapi3"
	"github.com/getkin/kin-openapi/openapi3filter"
	"github.com/getkin/kin-openapi/routers"
	"github.com/getkin/kin-openapi/routers/gorillamux"
	"github.com/stretchr/testify/require"

	"creasefit/api/wire"
	"creasefit/openapi"
)

// specRouter finds the operation of a request in the committed specification.
var specRouter = sync.OnceValue(func() routers.Router {
	for _, media := range []string{"text/csv", "text/plain", "text/html", "text/markdown", "application/xml", "application/yaml", mediaTabs, "image/svg+xml", "image/png", "image/vnd.dxf", "model/gltf-binary", "application/pdf", mediaLines} {
		openapi3filter.RegisterBodyDecoder(media, readText)
	}
	spec, err := openapi3.NewLoader().LoadFromData(openapi.JSON())
	if err != nil {
		panic(err)
	}
	router, err := gorillamux.NewRouter(spec)
	if err != nil {
		panic(err)
	}
	return router
})

// readText takes a body as one text.
func readText(body io.Reader, _ http.Header, _ *openapi3.SchemaRef, _ openapi3filter.EncodingFn) (any, error) {
	text, err := io.ReadAll(body)
	return string(text), err
}

// quiet is a service with default settings and no log.
func quiet() *Service { return New(DefaultConfig(), slog.New(slog.DiscardHandler)) }

// shared is the service that tests without settings of their own call. It may work for
// long on one call: how busy the machine is decides no test.
var shared = sync.OnceValue(func() *Service { return with(func(c *Config) { c.SolveTimeout = time.Minute }) })

// answer is what a call was answered with.
type answer struct {
	t *testing.T
	*httptest.ResponseRecorder
}

// headers are set on a request, name and value in turn.
type headers []string

// get calls the shared service by GET.
func get(t *testing.T, target string, set ...string) answer {
	t.Helper()
	return call(t, shared(), http.MethodGet, target, "", set...)
}

// postJSON calls the shared service by POST.
func postJSON(t *testing.T, target, body string, set ...string) answer {
	t.Helper()
	return call(t, shared(), http.MethodPost, target, body, append(headers{"Content-Type", "application/json"}, set...)...)
}

// call sends a request and holds it and its answer to the specification: an
// answer always, a request when it was taken.
func call(t *testing.T, s *Service, method, target, body string, set ...string) answer {
	t.Helper()
	request := newRequest(method, target, body, set)
	w := httptest.NewRecorder()
	s.Handler().ServeHTTP(w, request)
	checkAlways(t, w)
	if method != http.MethodOptions {
		checkSpec(t, newRequest(method, withoutExtension(t, target), body, set), w)
	}
	return answer{t, w}
}

// newRequest builds the request.
func newRequest(method, target, body string, set headers) *http.Request {
	var reader io.Reader
	if body != "" {
		reader = strings.NewReader(body)
	}
	request := httptest.NewRequest(method, target, reader)
	for i := 0; i+1 < len(set); i += 2 {
		request.Header.Set(set[i], set[i+1])
	}
	return request
}

// withoutExtension is the address that the specification describes: a format
// as the extension of a path is another spelling of the name format.
func withoutExtension(t *testing.T, target string) string {
	t.Helper()
	u, err := url.Parse(target)
	require.NoError(t, err)
	if extension := path.Ext(u.Path); strings.HasPrefix(u.Path, "/v1/") {
		u.Path = strings.TrimSuffix(u.Path, extension)
	}
	return u.String()
}

// checkAlways checks what every answer carries.
func checkAlways(t *testing.T, w *httptest.ResponseRecorder) {
	t.Helper()
	h := w.Header()
	require.Equal(t, "*", h.Get("Access-Control-Allow-Origin"))
	require.Contains(t, h.Get("Access-Control-Expose-Headers"), "Request-Id")
	require.NotEmpty(t, h.Get("Request-Id"))
	require.Contains(t, h.Get("Vary"), "Accept-Encoding")
	if w.Code >= 400 {
		require.Equal(t, "no-store", h.Get("Cache-Control"))
		require.Equal(t, problemMediaType, h.Get("Content-Type"))
	}
}

// checkSpec validates the answer, and the request unless it was refused.
func checkSpec(t *testing.T, request *http.Request, w *httptest.ResponseRecorder) {
	t.Helper()
	route, parameters, err := specRouter().FindRoute(request)
	if err != nil {
		require.Contains(t, []int{http.StatusNotFound, http.StatusMethodNotAllowed, http.StatusOK, http.StatusInternalServerError}, w.Code, "%s is not in the specification", request.URL)
		return
	}
	input := &openapi3filter.RequestValidationInput{Request: request, PathParams: parameters, Route: route,
		Options: &openapi3filter.Options{IncludeResponseStatus: true, MultiError: true}}
	if w.Code < 400 && !bytes.HasPrefix(w.Body.Bytes(), []byte("! ")) {
		require.NoError(t, openapi3filter.ValidateRequest(context.Background(), input), "request")
	}
	if w.Code == http.StatusNotModified || request.Method == http.MethodHead || w.Header().Get("Content-Encoding") != "" || narrowed(request) {
		return
	}
	require.NoError(t, openapi3filter.ValidateResponse(context.Background(), &openapi3filter.ResponseValidationInput{
		RequestValidationInput: input, Status: w.Code, Header: w.Header(), Body: io.NopCloser(bytes.NewReader(w.Body.Bytes())), Options: input.Options,
	}), "answer %s", w.Body)
}

// narrowed reports whether only some members were asked for, which the schema
// of the whole answer does not describe.
func narrowed(request *http.Request) bool { return request.URL.Query().Has("show") }

// decode reads a JSON answer into one of the shapes that the specification is
// made from; unknown members are a mistake.
func decode[T any](a answer) T {
	a.t.Helper()
	var shape T
	d := json.NewDecoder(a.Body)
	d.DisallowUnknownFields()
	require.NoError(a.t, d.Decode(&shape))
	return shape
}

// ok checks that the call was answered.
func (a answer) ok() answer {
	a.t.Helper()
	require.Equal(a.t, http.StatusOK, a.Code, a.Body.String())
	return a
}

// problem checks the status and reads the problem.
func (a answer) problem(status int) wire.Problem {
	a.t.Helper()
	require.Equal(a.t, status, a.Code, a.Body.String())
	p := decode[wire.Problem](a)
	require.Equal(a.t, status, p.Status)
	return p
}
