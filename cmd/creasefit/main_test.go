package main

import (
	"bufio"
	"io"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/caarlos0/env/v11"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api"
)

// TestDefaultsAreThoseOfAnEmptyEnvironment keeps the two statements of the
// default settings the same.
func TestDefaultsAreThoseOfAnEmptyEnvironment(t *testing.T) {
	config, err := env.ParseAsWithOptions[api.Config](env.Options{Prefix: "CREASEFIT_", Environment: map[string]string{}})
	require.NoError(t, err)
	assert.Equal(t, api.DefaultConfig(), config)
}

// TestServesAndDrains builds the program, starts it, sends the request that it
// says to try and stops it by a signal.
func TestServesAndDrains(t *testing.T) {
	program := filepath.Join(t.TempDir(), "creasefit")
	output, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput()
	require.NoError(t, err, string(output))
	command := exec.Command(program)
	command.Env = append(os.Environ(), "CREASEFIT_ADDR=127.0.0.1:0", "CREASEFIT_ADMIN_ADDR=off", "CREASEFIT_DRAIN_DELAY=10ms")
	out, err := command.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, command.Start())
	lines := bufio.NewScanner(out)
	address := ""
	for address == "" && lines.Scan() {
		if _, quoted, ok := strings.Cut(lines.Text(), "curl '"); ok {
			address = strings.TrimSuffix(quoted, "'")
		}
	}
	response, err := http.Get(address)
	require.NoError(t, err)
	body, err := io.ReadAll(response.Body)
	require.NoError(t, err)
	require.NoError(t, response.Body.Close())
	assert.Equal(t, http.StatusOK, response.StatusCode)
	assert.Contains(t, string(body), "8 1/4 in")
	require.NoError(t, command.Process.Signal(syscall.SIGTERM))
	ended := make(chan error, 1)
	go func() { ended <- command.Wait() }()
	select {
	case err := <-ended:
		assert.NoError(t, err, "a drained service ends with status 0")
	case <-time.After(20 * time.Second):
		require.NoError(t, command.Process.Kill())
		assert.Fail(t, "the service does not end")
	}
}

// TestOriginsAreAList reads the list of origins as operators write it.
func TestOriginsAreAList(t *testing.T) {
	t.Setenv("CREASEFIT_ALLOWED_ORIGINS", "https://tidewater.example, https://www.tidewater.example")
	config, err := env.ParseAsWithOptions[api.Config](env.Options{Prefix: "CREASEFIT_"})
	require.NoError(t, err)
	assert.Len(t, config.AllowedOrigins, 2)
	assert.NoError(t, config.Check())
}

// TestBadSettingsEndTheProgram gives settings that cannot work.
func TestBadSettingsEndTheProgram(t *testing.T) {
	for name, value := range map[string]string{"CREASEFIT_MOST_URL": "0", "CREASEFIT_SOLVE_TIMEOUT": "soon", "CREASEFIT_ADDR": "nowhere", "CREASEFIT_ALLOWED_ORIGINS": "https://tidewater.example/"} {
		t.Run(name, func(t *testing.T) {
			t.Setenv(name, value)
			assert.Error(t, run())
		})
	}
}
