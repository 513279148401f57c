package deploy_test

import (
	"bufio"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/peer"
)

// replica is one running service.
type replica struct {
	*exec.Cmd
	address string
}

// startReplicas builds the program and starts it so many times.
func startReplicas(t *testing.T, count int) []replica {
	t.Helper()
	program := filepath.Join(t.TempDir(), "creasefit")
	output, err := exec.Command("go", "build", "-o", program, "../cmd/creasefit").CombinedOutput()
	require.NoError(t, err, string(output))
	list := make([]replica, count)
	for i := range list {
		command := exec.Command(program)
		command.Env = append(os.Environ(), "CREASEFIT_ADDR=127.0.0.1:0", "CREASEFIT_ADMIN_ADDR=off", "CREASEFIT_DRAIN_DELAY=300ms")
		out, err := command.StdoutPipe()
		require.NoError(t, err)
		require.NoError(t, command.Start())
		t.Cleanup(func() { _, _ = command.Process.Kill(), command.Wait() }) // it may have ended
		greeting, err := bufio.NewReader(out).ReadString('\n')
		require.NoError(t, err)
		_, address, found := strings.Cut(greeting, "http://")
		require.True(t, found, greeting)
		address, _, found = strings.Cut(address, "/")
		require.True(t, found, greeting)
		list[i] = replica{command, address}
	}
	return list
}

// configure writes the configuration of nginx with addresses of this machine into
// a folder, and no rate for one caller, who is everybody here.
func configure(t *testing.T, folder, listen string, replicas ...string) {
	t.Helper()
	write := func(name, text string) {
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte(text), 0o600))
	}
	write("creasefit.conf", strings.NewReplacer("/var/cache/nginx", folder, "listen 80;", "listen "+listen+";", "rate=50r/s", "rate=100000r/s").Replace(string(read(t, "nginx/creasefit.conf"))))
	named := string(read(t, "nginx/replicas.conf"))
	for i, address := range replicas {
		named = strings.Replace(named, fmt.Sprintf("creasefit-%d:8080", i+1), address, 1)
	}
	write("replicas.conf", named)
	http := "access_log off;\n"
	for _, kind := range []string{"client_body", "proxy", "fastcgi", "uwsgi", "scgi"} {
		http += kind + "_temp_path " + folder + "/" + kind + ";\n"
	}
	user := ""
	if os.Geteuid() == 0 {
		user = "user root;\n" // whose folder it is
	}
	write("nginx.conf", user+"daemon off;\nworker_processes 1;\npid "+folder+"/pid;\nerror_log "+folder+"/errors;\nevents {}\nhttp {\n"+http+"include "+folder+"/creasefit.conf;\n}\n")
}

// freeAddress is an address that nobody listens on.
func freeAddress(t *testing.T) string {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	defer l.Close()
	return l.Addr().String()
}

// startNginx puts nginx before the replicas and returns its address.
func startNginx(t *testing.T, program string, replicas []replica) string {
	t.Helper()
	folder, listen := t.TempDir(), freeAddress(t)
	configure(t, folder, listen, replicas[0].address, replicas[1].address, replicas[2].address)
	command := exec.Command(program, "-p", folder, "-c", "nginx.conf", "-e", folder+"/errors")
	require.NoError(t, command.Start())
	t.Cleanup(func() {
		_, _ = command.Process.Signal(syscall.SIGTERM), command.Wait()
		if t.Failed() {
			errors, _ := os.ReadFile(folder + "/errors")
			t.Logf("nginx: %s", errors)
		}
	})
	require.Eventually(t, func() bool {
		connection, err := net.Dial("tcp", listen)
		if err == nil {
			_ = connection.Close()
		}
		return err == nil
	}, 20*time.Second, 10*time.Millisecond)
	return "http://" + listen
}

// calculate asks for a picture that nobody asked for before, every other time by
// POST, and says what was wrong with the answer. Pictures take their turn in the
// lane of dear work, so that some are always under way.
func calculate(base string, number int64) error {
	const path = "/v1/drawing/slotted-band.png"
	caliper := fmt.Sprintf("0.%d", 200_000+number)
	var response *http.Response
	var err error
	if number%2 == 0 {
		response, err = http.Get(base + path + "?unit=mm&width=89&thickness=2.3&pixels=1000&caliper=" + caliper)
	} else {
		response, err = http.Post(base+path, "application/json", strings.NewReader(`{"unit":"mm","width":89,"thickness":2.3,"pixels":1000,"caliper":`+caliper+`}`))
	}
	if err != nil {
		return err
	}
	defer response.Body.Close()
	body, err := io.ReadAll(response.Body)
	if err == nil && (response.StatusCode != http.StatusOK || !strings.HasPrefix(string(body), "\x89PNG")) {
		err = fmt.Errorf("%s: %.200s", response.Status, body)
	}
	return err
}

// TestReplicasFailUnnoticed puts nginx before three replicas, as it is
// configured here, and under load kills one of them and tells another to end:
// no GET and no POST of a calculation fails at the client.
func TestReplicasFailUnnoticed(t *testing.T) {
	if testing.Short() {
		t.Skip("three replicas")
	}
	program := peer.Path(t, "nginx", "apt-get install nginx-light")
	replicas := startReplicas(t, 3)
	base := startNginx(t, program, replicas)
	const callers, calls = 9, 240
	var last atomic.Int64
	var all sync.WaitGroup
	for range callers {
		all.Go(func() {
			for n := last.Add(1); n <= calls; n = last.Add(1) {
				switch n {
				case calls / 3:
					assert.NoError(t, replicas[0].Process.Kill())
				case 2 * calls / 3:
					assert.NoError(t, replicas[1].Process.Signal(syscall.SIGTERM))
				}
				assert.NoError(t, calculate(base, n), "call %d", n)
			}
		})
	}
	all.Wait()
	assert.NoError(t, replicas[1].Wait(), "the one that was told to has ended by itself")
	assert.NoError(t, calculate(base, 0), "the last one goes on")
}
