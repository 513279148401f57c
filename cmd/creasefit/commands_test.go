package main

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestCommands runs each of them.
func TestCommands(t *testing.T) {
	said := func(arguments ...string) string {
		var out strings.Builder
		require.NoError(t, run(arguments, &out))
		return out.String()
	}
	assert.Equal(t, "the settings are right\n", said("check-config"))
	assert.Regexp(t, `^creasefit \S+, build \S+, go1\.`, said("version"))
	assert.Regexp(t, `(?s)cf_[A-Z2-7]{26}\n.*stall [0-9a-f]{64}\n$`, said("key", "stall"))
	assert.Contains(t, said("help"), "check-config")
	for _, wrong := range [][]string{{"serve"}, {"key"}, {"key", "two words"}, {"version", "please"}} {
		assert.Error(t, run(wrong, &strings.Builder{}), wrong)
	}
	t.Setenv("CREASEFIT_MOST_RUNING", "5")
	assert.ErrorContains(t, run([]string{"check-config"}, &strings.Builder{}), "did you mean CREASEFIT_MOST_RUNNING?")
	assert.ErrorContains(t, run(nil, &strings.Builder{}), "CREASEFIT_MOST_RUNING")
}

// TestHealthcheckAsksReadiness, also of a service that listens everywhere.
func TestHealthcheckAsksReadiness(t *testing.T) {
	ready := true
	service := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		assert.Equal(t, "/readyz", r.URL.Path)
		if !ready {
			w.WriteHeader(http.StatusServiceUnavailable)
		}
	}))
	defer service.Close()
	port := service.URL[strings.LastIndex(service.URL, ":"):]
	for _, address := range []string{port, "0.0.0.0" + port, "[::]" + port, "127.0.0.1" + port} {
		t.Setenv("CREASEFIT_ADDR", address)
		assert.NoError(t, run([]string{"healthcheck"}, &strings.Builder{}), address)
	}
	ready = false
	assert.ErrorContains(t, run([]string{"healthcheck"}, &strings.Builder{}), "not ready: 503")
	service.Close()
	assert.Error(t, run([]string{"healthcheck"}, &strings.Builder{}))
}
