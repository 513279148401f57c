// Command creasefit serves the API. Every setting is an environment variable
// CREASEFIT_*; without any it listens on 127.0.0.1:8080, and for operators on
// 127.0.0.1:8081.
//
// It computes nothing itself.
package main

import (
	"context"
	"fmt"
	"log/slog"
	"net"
	"os"
	"os/signal"
	"runtime/debug"
	"syscall"

	"github.com/caarlos0/env/v11"

	"creasefit/api"
)

// garbagePercent lets the heap grow to five times what is in use before it is
// swept, instead of twice. The service holds a few megabytes, so this costs
// little memory, and each request leaves garbage only.
const garbagePercent = 400

// mostMemory is what is swept for in time even so, beside the memory for
// recent answers: a stream of lines would else grow the heap to what a moment
// of many lines needs five times over.
const mostMemory = 48 << 20

func main() {
	if err := run(); err != nil {
		fmt.Fprintln(os.Stderr, "creasefit:", err)
		os.Exit(1)
	}
}

// run serves until it is told to stop.
func run() error {
	config, err := env.ParseAsWithOptions[api.Config](env.Options{Prefix: "CREASEFIT_"})
	if err != nil {
		return err
	}
	if err := config.Check(); err != nil {
		return err
	}
	log := slog.New(slog.NewTextHandler(os.Stderr, nil))
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
	greet(public, admin)
	return api.New(config, log).Serve(ctx, public, admin)
}

// listenAdmin opens the listener for operators, or none for "off".
func listenAdmin(address string) (net.Listener, error) {
	if address == "off" {
		return nil, nil
	}
	return net.Listen("tcp", address)
}

// greet prints where the service is and what to try first.
func greet(public, admin net.Listener) {
	fmt.Printf("creasefit %s on http://%s\n", api.Release, public.Addr())
	if admin != nil {
		fmt.Printf("metrics and probes on http://%s\n", admin.Addr())
	}
	fmt.Printf("try: curl 'http://%s%s'\n", public.Addr(), api.FirstRequest)
}
