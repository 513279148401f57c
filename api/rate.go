package api

import (
	"github.com/labstack/echo/v4"
	"github.com/labstack/echo/v4/middleware"
	"golang.org/x/time/rate"
)

// limitRate turns away callers that send more than the allowed calls a second
// from one address. It is off unless configured, since whole offices and the
// fetchers of web spreadsheets share addresses. The address behind a proxy on
// a private or loopback address is the one that the proxy names.
func (s *Service) limitRate() echo.MiddlewareFunc {
	s.echo.IPExtractor = echo.ExtractIPFromXFFHeader()
	store := middleware.NewRateLimiterMemoryStoreWithConfig(middleware.RateLimiterMemoryStoreConfig{
		Rate: rate.Limit(s.config.RateLimit), Burst: s.config.RateBurst,
	})
	return middleware.RateLimiterWithConfig(middleware.RateLimiterConfig{
		Store:               store,
		IdentifierExtractor: func(c echo.Context) (string, error) { return c.RealIP(), nil },
		DenyHandler: func(c echo.Context, _ string, _ error) error {
			return s.answerProblem(c, single(codeTooManyCalls, "this address has sent too many calls", "wait for as long as Retry-After says"))
		},
	})
}
