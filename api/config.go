package api

import (
	"errors"
	"fmt"
	"net/http"
	"time"

	"creasefit/api/edge"
)

// Config is every setting of the service. Each is read from the environment
// variable of its env tag with the prefix CREASEFIT_.
type Config struct {
	Addr      string `env:"ADDR" envDefault:"127.0.0.1:8080"`       // public listener
	AdminAddr string `env:"ADMIN_ADDR" envDefault:"127.0.0.1:8081"` // metrics, probes and profiles; "off" for none

	MostURL  int   `env:"MOST_URL" envDefault:"8000"`   // bytes of path and query
	MostBody int64 `env:"MOST_BODY" envDefault:"65536"` // bytes of a body

	MostYieldBody int64 `env:"MOST_YIELD_BODY" envDefault:"1048576"` // bytes of the body of an order

	SolveTimeout time.Duration `env:"SOLVE_TIMEOUT" envDefault:"3s"`      // of one calculation with its picture
	ReadTimeout  time.Duration `env:"READ_TIMEOUT" envDefault:"5s"`       // of one request with its body
	WriteTimeout time.Duration `env:"WRITE_TIMEOUT" envDefault:"10s"`     // of one whole request
	IdleTimeout  time.Duration `env:"IDLE_TIMEOUT" envDefault:"2m"`       // of a connection without a request
	DrainDelay   time.Duration `env:"DRAIN_DELAY" envDefault:"5s"`        // between refusing readiness and closing the listener
	DrainTimeout time.Duration `env:"DRAIN_TIMEOUT" envDefault:"15s"`     // for requests still running after that
	QueueTimeout time.Duration `env:"QUEUE_TIMEOUT" envDefault:"100ms"`   // a calculation waits for its turn
	MostRunning  int           `env:"MOST_RUNNING" envDefault:"64"`       // calculations at once
	MostWaiting  int           `env:"MOST_WAITING" envDefault:"256"`      // calculations waiting for their turn
	Recent       int           `env:"RECENT_BYTES" envDefault:"16777216"` // memory for answers given lately; 0 for none
	MostPlanning int           `env:"MOST_PLANNING" envDefault:"8"`       // orders planned at once
	RateLimit    float64       `env:"RATE_LIMIT" envDefault:"0"`          // calls a second from one address; 0 for no limit
	RateBurst    int           `env:"RATE_BURST" envDefault:"50"`         // calls at once within that limit
	LogRequests  bool          `env:"LOG_REQUESTS" envDefault:"false"`    // one line for each request

	AllowedOrigins []string `env:"ALLOWED_ORIGINS" envDefault:"*"` // whose pages may read answers, parted by commas; * for everybody's
}

// DefaultConfig returns the settings of an empty environment.
func DefaultConfig() Config {
	return Config{
		Addr: "127.0.0.1:8080", AdminAddr: "127.0.0.1:8081", MostURL: 8000, MostBody: 64 << 10, MostYieldBody: 1 << 20, MostPlanning: 8,
		SolveTimeout: 3 * time.Second, ReadTimeout: 5 * time.Second, WriteTimeout: 10 * time.Second,
		IdleTimeout: 2 * time.Minute, DrainDelay: 5 * time.Second, DrainTimeout: 15 * time.Second,
		QueueTimeout: 100 * time.Millisecond, MostRunning: 64, MostWaiting: 256, Recent: 16 << 20, RateBurst: 50, AllowedOrigins: []string{edge.AnyOrigin},
	}
}

// server returns the HTTP server of a listener, with every timeout set.
func (c Config) server(h http.Handler) *http.Server {
	return &http.Server{
		Handler: h, ReadHeaderTimeout: c.ReadTimeout, ReadTimeout: c.ReadTimeout,
		WriteTimeout: c.WriteTimeout, IdleTimeout: c.IdleTimeout, MaxHeaderBytes: c.MostURL + 16<<10,
	}
}

// Check says what is wrong with settings that would not work.
func (c Config) Check() error {
	var err error
	for _, limit := range []struct {
		name  string
		value int64
	}{
		{"MOST_URL", int64(c.MostURL)}, {"MOST_BODY", c.MostBody}, {"MOST_YIELD_BODY", c.MostYieldBody}, {"MOST_PLANNING", int64(c.MostPlanning)}, {"MOST_RUNNING", int64(c.MostRunning)},
		{"SOLVE_TIMEOUT", int64(c.SolveTimeout)}, {"READ_TIMEOUT", int64(c.ReadTimeout)}, {"WRITE_TIMEOUT", int64(c.WriteTimeout)},
		{"IDLE_TIMEOUT", int64(c.IdleTimeout)}, {"DRAIN_TIMEOUT", int64(c.DrainTimeout)}, {"QUEUE_TIMEOUT", int64(c.QueueTimeout)},
	} {
		if limit.value <= 0 {
			err = errors.Join(err, errors.New("CREASEFIT_"+limit.name+" must be above zero"))
		}
	}
	if c.MostWaiting < 0 || c.DrainDelay < 0 || c.Recent < 0 || c.RateLimit < 0 || c.RateBurst < 0 {
		err = errors.Join(err, errors.New("CREASEFIT_MOST_WAITING, CREASEFIT_DRAIN_DELAY, CREASEFIT_RECENT_BYTES, CREASEFIT_RATE_LIMIT and CREASEFIT_RATE_BURST must not be below zero"))
	}
	if wrong := edge.CheckOrigins(c.AllowedOrigins); wrong != nil {
		err = errors.Join(err, fmt.Errorf("CREASEFIT_ALLOWED_ORIGINS: %w", wrong))
	}
	return err
}
