package main

import (
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"runtime"
	"time"

	"creasefit/api"
	"creasefit/api/edge"
)

// checkConfig says everything that is wrong with the settings.
func checkConfig(out io.Writer) error {
	if _, err := edge.ReadConfig(os.Environ()); err != nil {
		return err
	}
	_, err := fmt.Fprintln(out, "the settings are right")
	return err
}

// version says which build this is.
func version(out io.Writer) error {
	_, err := fmt.Fprintf(out, "creasefit %s, build %s, %s\n", api.Release, api.Revision(), runtime.Version())
	return err
}

// newKey makes an API key.
func newKey(out io.Writer, name string) error {
	if !edge.IsWord(name) || name == "" {
		return errors.New("the name of a key has letters, digits, hyphens and underscores")
	}
	key, line := edge.NewKey(name)
	_, err := fmt.Fprintf(out, "key, shown this once:  %s\nline for the file:     %s\n", key, line)
	return err
}

// healthcheck asks the service that these settings start whether it is ready.
func healthcheck(out io.Writer) error {
	config, err := edge.ReadConfig(os.Environ())
	if err != nil {
		return err
	}
	host, port, err := net.SplitHostPort(config.Addr)
	if err != nil {
		return err
	}
	if ip := net.ParseIP(host); host == "" || ip != nil && ip.IsUnspecified() {
		host = "127.0.0.1"
	}
	client := http.Client{Timeout: 2 * time.Second}
	response, err := client.Get("http://" + net.JoinHostPort(host, port) + "/readyz")
	if err != nil {
		return err
	}
	defer response.Body.Close()
	if response.StatusCode != http.StatusOK {
		return fmt.Errorf("not ready: %s", response.Status)
	}
	_, err = fmt.Fprintln(out, "ready")
	return err
}
