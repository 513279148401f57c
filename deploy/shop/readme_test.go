package shop_test

import (
	"fmt"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api"
	"creasefit/internal/browser"
	"creasefit/internal/peer"
)

// example returns a block of the README.
func example(t *testing.T, language string) string {
	t.Helper()
	found := regexp.MustCompile("(?s)```"+language+"\n(.*?)```").FindAllStringSubmatch(read(t, "README.md"), -1)
	require.Len(t, found, 1, language)
	return found[0][1]
}

// TestReadmeListsOrigins reads the list of origins that the README sets.
func TestReadmeListsOrigins(t *testing.T) {
	_, value, ok := strings.Cut(example(t, "sh"), "CREASEFIT_ALLOWED_ORIGINS=")
	require.True(t, ok)
	config := api.DefaultConfig()
	config.AllowedOrigins = strings.Split(strings.Fields(value)[0], ",")
	assert.NoError(t, config.Check())
	assert.Len(t, config.AllowedOrigins, 2)
}

// TestNginxServesTheShop runs the README's server and asks from its page, under
// its policy, a service that lets that page alone read its answers.
func TestNginxServesTheShop(t *testing.T) {
	program := peer.Path(t, "nginx", "apt-get install -y nginx-light")
	shop := "http://" + freeAddress(t)
	service, _ := serviceFor(t, shop)
	folder, err := filepath.Abs(".")
	require.NoError(t, err)
	server := example(t, "nginx")
	for written, here := range map[string]string{"listen 8082": "listen " + strings.TrimPrefix(shop, "http://"), "/srv/tidewater": folder, "https://creasefit.example": service} {
		require.Equal(t, 1, strings.Count(server, written), "the README says it once: %s", written)
		server = strings.ReplaceAll(server, written, here)
	}
	run(t, program, server)
	require.Eventually(t, func() bool {
		response, err := http.Get(shop)
		return err == nil && response.Body.Close() == nil
	}, 10*time.Second, 20*time.Millisecond)
	p := browser.Open(t, shop+"/#card-band")
	p.Until(painted)
	submit(t, p, map[string]string{"width": "3 1/2", "thickness": "1/4"})
	p.Until(stamped("Yes: your set of cards fits snugly."))
	p.Sound() // nothing was refused by the policy
	for _, address := range p.Requests() {
		own := strings.HasPrefix(address, shop+"/") || strings.HasPrefix(address, service+"/") || strings.HasPrefix(address, "data:")
		assert.True(t, own, address)
	}
}

// freeAddress is an address that nobody listens on.
func freeAddress(t *testing.T) string {
	t.Helper()
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	defer listener.Close()
	return listener.Addr().String()
}

// run runs nginx with one server until the test ends.
func run(t *testing.T, program, server string) {
	t.Helper()
	folder := t.TempDir()
	var paths strings.Builder
	for _, name := range []string{"client_body", "proxy", "fastcgi", "uwsgi", "scgi"} {
		fmt.Fprintf(&paths, "%s_temp_path %s/%s;\n", name, folder, name)
	}
	file := filepath.Join(folder, "nginx.conf")
	require.NoError(t, os.WriteFile(file, []byte("daemon off;\nmaster_process off;\npid "+folder+"/pid;\nevents {}\nhttp {\ninclude /etc/nginx/mime.types;\naccess_log off;\n"+paths.String()+server+"}\n"), 0o644))
	command := exec.Command(program, "-p", folder, "-c", file, "-e", "stderr")
	output := &strings.Builder{}
	command.Stdout, command.Stderr = output, output
	require.NoError(t, command.Start())
	t.Cleanup(func() {
		_ = command.Process.Kill()
		_ = command.Wait()
		if t.Failed() {
			t.Log(output)
		}
	})
}
