package api

import (
	"net/http"
	"slices"
	"strconv"
	"strings"

	"github.com/labstack/echo/v4"

	"creasefit/api/edge"
	"creasefit/internal/fault"
	"creasefit/internal/repertoire"
)

// caller is who calls: lanes and rates are shared between callers.
type caller struct {
	id  string
	key edge.Key // zero without keys
}

// callerName is where a caller is kept for the length of a request.
const callerName = "creasefit.caller"

// callerOf returns who sent the request: the holder of its key, or its address.
func (s *host) callerOf(c echo.Context) *caller {
	if known, ok := c.Get(callerName).(*caller); ok {
		return known
	}
	who := &caller{}
	if s.keys != nil {
		who.key, _ = s.keys.Find(c.Request())
	}
	if who.id = "key " + who.key.Name; who.key.Name == "" {
		who.id = s.proxies.Address(c.Request())
	}
	c.Set(callerName, who)
	return who
}

// probes are asked by whatever keeps the service running: they are answered whoever
// asks and however often.
var probes = []string{"/livez", "/readyz", "/healthz"}

// admit says why a request is not let in, or nothing.
func (s *host) admit(c echo.Context) *problem {
	path := c.Request().URL.Path
	if s.keys == nil && s.limiter == nil || slices.Contains(probes, path) {
		return nil
	}
	who, h := s.callerOf(c), c.Response().Header()
	if s.keys != nil && who.key.Name == "" && strings.HasPrefix(path, "/v1/") {
		h["Www-Authenticate"] = []string{`Bearer realm="creasefit"`}
		return single(codeNoKey, "this service answers callers with a key alone", "send Authorization: Bearer and the key")
	}
	if s.limiter == nil {
		return nil
	}
	verdict := s.limiter.Take(who.id, who.key)
	h["Ratelimit-Policy"], h["Ratelimit"] = []string{verdict.Policy}, []string{verdict.Limit}
	if verdict.Allowed {
		return nil
	}
	h["Retry-After"] = []string{strconv.Itoa(verdict.RetrySeconds())}
	return single(codeTooManyCalls, "this caller has sent too many calls", "wait for as long as Retry-After says")
}

// codeNoKey is of a call without a key where keys are needed.
const codeNoKey fault.Code = "no-key"

// routeOf returns the route and the kind that an answer is counted under; both
// are one of a few, whatever callers write.
func (s *host) routeOf(c echo.Context, status int) (route, kind string) {
	route = c.Path()
	if status == http.StatusNotFound || route == "" {
		route = "none"
	}
	kind, _, _ = strings.Cut(c.Param("kind"), ".")
	if _, known := repertoire.Lookup(kind); !known {
		kind = ""
	}
	return route, kind
}
