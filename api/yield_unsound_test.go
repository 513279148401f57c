package api

import (
	"errors"
	"fmt"
	"log/slog"
	"net/http"
	"strings"
	"testing"

	"github.com/labstack/echo/v4"
	"github.com/stretchr/testify/assert"

	"creasefit/internal/sheet"
)

// A plan that did not stand verification is never given out: the caller gets
// the fixed sentence, the log the order.
func TestUnsoundPlansAreRefused(t *testing.T) {
	var log strings.Builder
	s := New(DefaultConfig(), slog.New(slog.NewTextHandler(&log, nil)))
	s.get("/v1/unsound", func(echo.Context) error {
		return &sheet.Unsound{Order: sheet.Order{Items: []sheet.Item{{Name: "honey jar band", Count: 7}}}, Wrong: errors.New("3 are made")}
	})
	p := call(t, s, http.MethodGet, "/v1/unsound", "", "Request-Id", "stall-42-abc").problem(http.StatusInternalServerError)
	assert.Contains(t, p.Detail, "stall-42-abc")
	assert.NotContains(t, fmt.Sprint(p), "made")
	for _, told := range []string{"3 are made", "honey jar band", "stall-42-abc"} {
		assert.Contains(t, log.String(), told)
	}
}
