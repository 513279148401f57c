package api

import (
	"net/http"
	"time"

	"github.com/labstack/echo/v4"

	"creasefit/api/edge"
)

// healthz says what livez does, by an older name.
var healthz = edge.Deprecated{
	Told: time.Date(2026, time.November, 29, 0, 0, 0, 0, time.UTC), Gone: time.Date(2027, time.November, 30, 0, 0, 0, 0, time.UTC), Instead: "/livez",
}

// healthy answers as live does.
//
//	@Summary	Whether the process runs, by an older name: ask /livez
//	@ID			healthz
//	@Tags		service
//	@Deprecated
//	@Produce	plain
//	@Success	200	{string}	string
//	@Router		/healthz [get]
func (s *host) healthy(c echo.Context) error {
	healthz.Say(c.Response().Header())
	return s.live(c)
}

// live answers as long as the process runs, by the name that containers ask for.
//
//	@Summary	Whether the process runs
//	@ID			livez
//	@Tags		service
//	@Produce	plain
//	@Success	200	{string}	string
//	@Router		/livez [get]
func (s *host) live(c echo.Context) error { return s.answerProbe(c, "ok\n") }

// ready answers as long as new requests are welcome.
//
//	@Summary	Whether new requests are welcome
//	@ID			readyz
//	@Tags		service
//	@Produce	plain
//	@Success	200	{string}	string
//	@Produce	application/problem+json
//	@Failure	503	{object}	wire.Problem
//	@Produce	json
//	@Router		/readyz [get]
func (s *host) ready(c echo.Context) error {
	if s.draining.Load() {
		return s.answerProblem(c, single(codeDraining, "this instance is going down", ""))
	}
	return s.answerProbe(c, "ready\n")
}

// answerProbe answers a probe; nobody may store it.
func (s *host) answerProbe(c echo.Context, text string) error {
	c.Response().Header()["Cache-Control"] = cacheNever
	return send(c, http.StatusOK, plainText[0], []byte(text))
}
