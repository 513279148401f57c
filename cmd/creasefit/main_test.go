package main

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/edge"
)

// start builds the program and starts it with the settings; it returns the
// request that it says to try. What a test does not end is killed with it.
func start(t *testing.T, settings ...string) (*exec.Cmd, string) {
	t.Helper()
	program := filepath.Join(t.TempDir(), "creasefit")
	output, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput()
	require.NoError(t, err, string(output))
	return startProgram(t, program, settings...)
}

// startProgram starts a program that was built.
func startProgram(t *testing.T, program string, settings ...string) (*exec.Cmd, string) {
	t.Helper()
	command := exec.Command(program)
	command.Env = append(append(os.Environ(), "CREASEFIT_ADDR=127.0.0.1:0", "CREASEFIT_ADMIN_ADDR=off", "CREASEFIT_DRAIN_DELAY=10ms"), settings...)
	out, err := command.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, command.Start())
	t.Cleanup(func() { _ = command.Process.Kill() }) // it may have ended
	lines := bufio.NewScanner(out)
	for lines.Scan() {
		if _, quoted, ok := strings.Cut(lines.Text(), "curl '"); ok {
			return command, strings.TrimSuffix(quoted, "'")
		}
	}
	require.Fail(t, "the program says no request to try")
	return nil, ""
}

// TestServesAndDrains starts the program, sends the request that it says to try
// and stops it by a signal.
func TestServesAndDrains(t *testing.T) {
	command, address := start(t)
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
		assert.Fail(t, "the service does not end")
	}
}

// TestLongStreamHoldsNoMemory streams lines through the program that are all
// different: all are answered, and it never took more than 96 MiB.
func TestLongStreamHoldsNoMemory(t *testing.T) {
	const count = 100_000
	if testing.Short() {
		t.Skip("a long stream")
	}
	command, address := start(t)
	base, _, _ := strings.Cut(address, "/v1/")
	in, out := io.Pipe()
	go func() {
		for i := range count {
			fmt.Fprintf(out, `{"id":"%d","call":"/v1/solve/slotted-band","unit":"mm","width":89,"thickness":2.3,"caliper":0.%d}`+"\n", i, 200_000+i)
		}
		_ = out.Close()
	}()
	response, err := http.Post(base+"/v1/batch", "application/x-ndjson", in)
	require.NoError(t, err)
	defer response.Body.Close()
	lines, last := bufio.NewScanner(response.Body), ""
	lines.Buffer(nil, 1<<20)
	answered := 0
	for lines.Scan() {
		last = lines.Text()
		answered++
	}
	require.NoError(t, lines.Err())
	assert.Equal(t, count+1, answered)
	assert.Contains(t, last, `"done":true`)
	assert.Contains(t, last, `"failed":0`)
	assert.Less(t, mostMebibytes(t, command), 96.0)
}

// mostMebibytes is how much memory a program held at most.
func mostMebibytes(t *testing.T, command *exec.Cmd) float64 {
	t.Helper()
	status, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", command.Process.Pid))
	if err != nil {
		t.Skip("this system does not tell how much memory a process took")
	}
	peak := regexp.MustCompile(`VmHWM:\s+(\d+) kB`).FindSubmatch(status)
	require.NotNil(t, peak)
	kilobytes, err := strconv.ParseFloat(string(peak[1]), 64)
	require.NoError(t, err)
	t.Logf("VmHWM %.0f kB", kilobytes)
	return kilobytes / 1024
}

// TestAllDearestRequestsAtOnce sends the dearest request of every call at the same
// moment, three times each: all are answered, or turned away, within 256 MiB.
func TestAllDearestRequestsAtOnce(t *testing.T) {
	if testing.Short() {
		t.Skip("the dearest requests")
	}
	command, address := start(t, "CREASEFIT_RECENT_BYTES=0")
	base, _, _ := strings.Cut(address, "/v1/")
	text, err := os.ReadFile("../../api/testdata/dearest.json")
	require.NoError(t, err)
	var list []struct{ Target, Media, Body string }
	require.NoError(t, json.Unmarshal(text, &list))
	var all sync.WaitGroup
	for _, d := range append(append(list, list...), list...) {
		all.Go(func() {
			var response *http.Response
			var err error
			if d.Body == "" {
				response, err = http.Get(base + d.Target)
			} else {
				response, err = http.Post(base+d.Target, d.Media, strings.NewReader(d.Body))
			}
			if !assert.NoError(t, err) {
				return
			}
			defer response.Body.Close()
			_, err = io.Copy(io.Discard, response.Body)
			assert.NoError(t, err)
			assert.Contains(t, []int{http.StatusOK, http.StatusServiceUnavailable}, response.StatusCode, d.Target)
		})
	}
	all.Wait()
	assert.Less(t, mostMebibytes(t, command), 256.0)
}

// TestIdleConnectionsKeepNobodyOut opens ten thousand connections that say
// nothing, or as many as this system allows a program: others are answered
// meanwhile, readiness among them.
func TestIdleConnectionsKeepNobodyOut(t *testing.T) {
	if testing.Short() {
		t.Skip("ten thousand connections")
	}
	command, address := start(t, "CREASEFIT_READ_TIMEOUT=1m")
	base, _, _ := strings.Cut(address, "/v1/")
	var open syscall.Rlimit
	require.NoError(t, syscall.Getrlimit(syscall.RLIMIT_NOFILE, &open))
	count := int(min(10_000, open.Cur-200))
	for range count {
		connection, err := net.Dial("tcp", strings.TrimPrefix(base, "http://"))
		require.NoError(t, err)
		defer connection.Close()
	}
	for _, target := range []string{address, base + "/readyz", base + "/livez"} {
		response, err := http.Get(target)
		require.NoError(t, err)
		require.NoError(t, response.Body.Close())
		assert.Equal(t, http.StatusOK, response.StatusCode, target)
	}
	t.Logf("%d connections", count)
	assert.Less(t, mostMebibytes(t, command), 256.0)
}

// TestOriginsAreAList reads the list of origins as operators write it.
func TestOriginsAreAList(t *testing.T) {
	t.Setenv("CREASEFIT_ALLOWED_ORIGINS", "https://tidewater.example, https://www.tidewater.example")
	config, err := edge.ReadConfig(os.Environ())
	require.NoError(t, err)
	assert.Len(t, config.AllowedOrigins, 2)
}

// TestBadSettingsEndTheProgram gives settings that cannot work.
func TestBadSettingsEndTheProgram(t *testing.T) {
	for name, value := range map[string]string{"CREASEFIT_MOST_URL": "0", "CREASEFIT_SOLVE_TIMEOUT": "soon", "CREASEFIT_ADDR": "nowhere", "CREASEFIT_ALLOWED_ORIGINS": "https://tidewater.example/"} {
		t.Run(name, func(t *testing.T) {
			t.Setenv(name, value)
			assert.Error(t, run(nil, io.Discard))
		})
	}
}
