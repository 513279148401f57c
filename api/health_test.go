package api

import (
	"net/http"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestWhatIsToGoSaysSo: a year before at least, in the forms of RFC 9745 and RFC
// 8594, and what takes its place answers the same.
func TestWhatIsToGoSaysSo(t *testing.T) {
	old, present := get(t, "/healthz").ok(), get(t, "/livez").ok()
	assert.Equal(t, present.Body.String(), old.Body.String())
	assert.Empty(t, present.Header().Get("Deprecation"))
	seconds, err := strconv.ParseInt(strings.TrimPrefix(old.Header().Get("Deprecation"), "@"), 10, 64)
	require.NoError(t, err)
	gone, err := time.Parse(http.TimeFormat, old.Header().Get("Sunset"))
	require.NoError(t, err)
	assert.GreaterOrEqual(t, gone.Sub(time.Unix(seconds, 0)), 365*24*time.Hour)
	assert.Equal(t, `</livez>; rel="successor-version"`, old.Header().Get("Link"))
}
