package main

import (
	"context"
	"fmt"
	"io"
	"log/slog"
	"net"
	"os"
	"os/signal"
	"runtime"
	"runtime/debug"
	"syscall"

	"creasefit/api"
	"creasefit/api/edge"
)

// garbagePercent lets the heap grow to five times what is in use before it is
// swept, instead of twice. The service holds a few megabytes, so this costs
// little memory, and each request leaves garbage only.
const garbagePercent = 400

// mostMemory is what is swept for in time even so, beside the memory for
// recent answers: a stream of lines would else grow the heap to what a moment
// of many lines needs five times over.
const mostMemory = 48 << 20

// serve serves until it is told to stop.
func serve(out io.Writer) error {
	config, err := edge.ReadConfig(os.Environ())
	if err != nil {
		return err
	}
	log := slog.New(logHandler(config.LogFormat))
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	context.AfterFunc(ctx, stop) // a second signal ends the process at once
	public, err := net.Listen("tcp", config.Addr)
	if err != nil {
		return err
	}
	admin, err := listenAdmin(config.AdminAddr)
	if err != nil {
		return err
	}
	if _, own := os.LookupEnv("GOGC"); !own {
		debug.SetGCPercent(garbagePercent)
	}
	if _, own := os.LookupEnv("GOMEMLIMIT"); !own {
		debug.SetMemoryLimit(mostMemory + int64(config.Recent))
	}
	// Dear work has threads of its own, which take no place from the others.
	config.MostRunning, config.MostDear, config.MostStreams = config.Places()
	runtime.GOMAXPROCS(runtime.GOMAXPROCS(0) + config.MostDear)
	greet(out, public, admin)
	return api.New(config, log).Serve(ctx, public, admin)
}

// logHandler writes the log in a format that was checked.
func logHandler(format string) slog.Handler {
	if format == "json" {
		return slog.NewJSONHandler(os.Stderr, nil)
	}
	return slog.NewTextHandler(os.Stderr, nil)
}

// listenAdmin opens the listener for operators, or none for "off".
func listenAdmin(address string) (net.Listener, error) {
	if address == "off" {
		return nil, nil
	}
	return net.Listen("tcp", address)
}

// greet prints where the service is and what to try first.
func greet(out io.Writer, public, admin net.Listener) {
	fmt.Fprintf(out, "http://%s/ in a browser: begin with the thing\n", public.Addr())
	fmt.Fprintf(out, "creasefit %s on http://%s\n", api.Release, public.Addr())
	if admin != nil {
		fmt.Fprintf(out, "metrics and probes on http://%s\n", admin.Addr())
	}
	fmt.Fprintf(out, "or try: curl 'http://%s%s'\n", public.Addr(), api.FirstRequest)
}
