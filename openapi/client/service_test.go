package client_test

import (
	"context"
	"log/slog"
	"net"
	"net/http"
	"os"
	"testing"

	"github.com/stretchr/testify/require"
	"go.uber.org/goleak"

	"creasefit/api"
	"creasefit/openapi/client"
)

// address is where the examples find the service.
const address = "http://127.0.0.1:8080"

// TestMain serves on any free port, which stands for that of the examples.
func TestMain(m *testing.M) {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		panic(err)
	}
	config := api.DefaultConfig()
	config.DrainDelay = 0
	ctx, stop := context.WithCancel(context.Background())
	ended := make(chan error)
	go func() { ended <- api.New(config, slog.New(slog.DiscardHandler)).Serve(ctx, listener, nil) }()
	transport := http.DefaultTransport.(*http.Transport)
	transport.DialContext = func(ctx context.Context, network, _ string) (net.Conn, error) {
		return new(net.Dialer).DialContext(ctx, network, listener.Addr().String())
	}
	code := m.Run()
	transport.CloseIdleConnections()
	stop()
	<-ended
	if err := goleak.Find(); code == 0 && err != nil {
		panic(err)
	}
	os.Exit(code)
}

// dial returns a client of the service.
func dial(t *testing.T) *client.Client {
	t.Helper()
	c, err := client.New(address, nil)
	require.NoError(t, err)
	return c
}
