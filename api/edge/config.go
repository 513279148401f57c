package edge

import (
	"cmp"
	"errors"
	"fmt"
	"net/http"
	"reflect"
	"runtime"
	"slices"
	"strings"
	"time"

	"github.com/caarlos0/env/v11"

	"creasefit/internal/fault"
)

// Prefix begins the name of every setting in the environment.
const Prefix = "CREASEFIT_"

// Config is every setting of the service. Each is read from the environment
// variable of its env tag with the prefix CREASEFIT_.
type Config struct {
	Addr      string `env:"ADDR" envDefault:"127.0.0.1:8080"`       // public listener
	AdminAddr string `env:"ADMIN_ADDR" envDefault:"127.0.0.1:8081"` // metrics, probes and profiles; "off" for none

	MostURL       int   `env:"MOST_URL" envDefault:"8000" least:"1"`           // bytes of path and query
	MostBody      int64 `env:"MOST_BODY" envDefault:"65536" least:"1"`         // bytes of a body
	MostYieldBody int64 `env:"MOST_YIELD_BODY" envDefault:"1048576" least:"1"` // bytes of the body of an order

	SolveTimeout time.Duration `env:"SOLVE_TIMEOUT" envDefault:"3s" least:"1"`  // of one calculation with its picture
	ReadTimeout  time.Duration `env:"READ_TIMEOUT" envDefault:"5s" least:"1"`   // of one request with its body
	WriteTimeout time.Duration `env:"WRITE_TIMEOUT" envDefault:"10s" least:"1"` // of one whole request
	IdleTimeout  time.Duration `env:"IDLE_TIMEOUT" envDefault:"2m" least:"1"`   // of a connection without a request
	DrainDelay   time.Duration `env:"DRAIN_DELAY" envDefault:"5s" least:"0"`    // between refusing readiness and closing the listener
	DrainTimeout time.Duration `env:"DRAIN_TIMEOUT" envDefault:"15s" least:"1"` // for requests still running after that

	MostRunning  int           `env:"MOST_RUNNING" envDefault:"0" least:"0"`          // cheap calculations at once; 0 for one a processor
	MostDear     int           `env:"MOST_DEAR" envDefault:"0" least:"0"`             // orders, PDFs and PNGs at once; 0 for all processors but one
	MostStreams  int           `env:"MOST_STREAMS" envDefault:"0" least:"0"`          // batches at once; 0 for 16 a processor
	MostWaiting  int           `env:"MOST_WAITING" envDefault:"256" least:"0"`        // calculations of a lane waiting for their turn
	QueueTimeout time.Duration `env:"QUEUE_TIMEOUT" envDefault:"100ms" least:"1"`     // a cheap calculation waits for its turn
	DearTimeout  time.Duration `env:"DEAR_QUEUE_TIMEOUT" envDefault:"2s" least:"1"`   // a dear one does
	Recent       int           `env:"RECENT_BYTES" envDefault:"16777216" least:"0"`   // memory for answers given lately; 0 for none
	MostInFlight int64         `env:"MOST_IN_FLIGHT" envDefault:"67108864" least:"1"` // bytes of answers that callers have not taken yet

	RateLimit      float64  `env:"RATE_LIMIT" envDefault:"0" least:"0"`  // calls a second of one caller; 0 for no limit
	RateBurst      int      `env:"RATE_BURST" envDefault:"50" least:"0"` // calls at once within that limit
	TrustedProxies []string `env:"TRUSTED_PROXIES"`                      // addresses and prefixes whose X-Forwarded-For is believed
	KeysFile       string   `env:"KEYS_FILE"`                            // of API keys; without it everybody may call
	AllowedOrigins []string `env:"ALLOWED_ORIGINS" envDefault:"*"`       // whose pages may read answers, parted by commas; * for everybody's

	LogRequests bool   `env:"LOG_REQUESTS" envDefault:"false"` // one line for each request
	LogFormat   string `env:"LOG_FORMAT" envDefault:"text"`    // text or json

	Collector  string  `env:"OTLP_ENDPOINT"`                        // that traces are sent to, such as http://127.0.0.1:4318; none without it
	TraceShare float64 `env:"TRACE_SHARE" envDefault:"1" least:"0"` // of the requests that begin a trace themselves, 0 to 1
}

// DefaultConfig returns the settings of an empty environment.
func DefaultConfig() Config {
	config, err := env.ParseAsWithOptions[Config](env.Options{Prefix: Prefix, Environment: map[string]string{}})
	if err != nil {
		panic(err) // the defaults stand in this file
	}
	return config
}

// ReadConfig reads the settings of an environment and says everything that is
// wrong with it: values that cannot be read or would not work, and names that
// begin like a setting and are none.
func ReadConfig(environ []string) (Config, error) {
	config, err := env.ParseAsWithOptions[Config](env.Options{Prefix: Prefix, Environment: env.ToMap(environ)})
	wrong := unknownSettings(environ)
	var parse env.AggregateError
	switch {
	case errors.As(err, &parse):
		for _, one := range parse.Errors {
			wrong = errors.Join(wrong, one)
		}
	case err != nil:
		wrong = errors.Join(wrong, err)
	default:
		wrong = errors.Join(wrong, config.Check())
	}
	return config, wrong
}

// unknownSettings names every variable that a misspelling may have made.
func unknownSettings(environ []string) error {
	var known []string
	for setting := range reflect.TypeFor[Config]().Fields() {
		known = append(known, Prefix+setting.Tag.Get("env"))
	}
	var wrong error
	for _, variable := range environ {
		name, _, _ := strings.Cut(variable, "=")
		if !strings.HasPrefix(name, Prefix) || slices.Contains(known, name) || strings.HasPrefix(name, Prefix+"PEERS") || strings.HasPrefix(name, Prefix+"CUTTING_SETS") {
			continue // the last two are for tests
		}
		hint := strings.TrimSuffix("; "+fault.Meant(fault.Nearest(name, known)), "; ")
		wrong = errors.Join(wrong, fmt.Errorf("%s is no setting%s", name, hint))
	}
	return wrong
}

// Server returns the HTTP server of a listener, with every timeout set.
func (c Config) Server(h http.Handler) *http.Server {
	return &http.Server{
		Handler: h, ReadHeaderTimeout: c.ReadTimeout, ReadTimeout: c.ReadTimeout,
		WriteTimeout: c.WriteTimeout, IdleTimeout: c.IdleTimeout, MaxHeaderBytes: c.MostURL + 16<<10, ConnContext: withHolder,
	}
}

// Places returns how many works run at once in each lane. Dear work never has
// all processors, unless there is only one.
func (c Config) Places() (cheap, dear, streams int) {
	cores := runtime.GOMAXPROCS(0)
	return cmp.Or(c.MostRunning, cores), cmp.Or(c.MostDear, max(1, cores-1)), cmp.Or(c.MostStreams, 16*cores)
}

// Check says what is wrong with settings that would not work: those below what their
// least tag says, and texts.
func (c Config) Check() error {
	var err error
	settings := reflect.ValueOf(c)
	for i := range settings.NumField() {
		tag := settings.Type().Field(i).Tag
		least, bound := tag.Lookup("least")
		value := settings.Field(i)
		if !bound {
			continue
		}
		below := value.CanFloat() && !(value.Float() >= 0) || value.CanInt() && value.Int() < 0 // not a number is neither
		switch {
		case below && least == "0":
			err = errors.Join(err, errors.New(Prefix+tag.Get("env")+" must not be below zero"))
		case least == "1" && value.Int() <= 0:
			err = errors.Join(err, errors.New(Prefix+tag.Get("env")+" must be above zero"))
		}
	}
	return errors.Join(err, c.checkTexts())
}

// checkTexts checks the settings that are no numbers.
func (c Config) checkTexts() error {
	var err error
	note := func(name string, wrong error) {
		if wrong != nil {
			err = errors.Join(err, fmt.Errorf("%s%s: %w", Prefix, name, wrong))
		}
	}
	note("ALLOWED_ORIGINS", CheckOrigins(c.AllowedOrigins))
	_, wrong := ParseProxies(c.TrustedProxies)
	note("TRUSTED_PROXIES", wrong)
	if c.KeysFile != "" {
		_, wrong = OpenKeys(c.KeysFile, nil)
		note("KEYS_FILE", wrong)
	}
	note("OTLP_ENDPOINT", checkCollector(c.Collector))
	if c.TraceShare > 1 {
		note("TRACE_SHARE", errors.New("it must not be above one"))
	}
	if c.RateLimit > mostRate {
		note("RATE_LIMIT", fmt.Errorf("it must not be above %d; 0 is no limit", mostRate))
	}
	if c.LogFormat != "text" && c.LogFormat != "json" {
		note("LOG_FORMAT", fmt.Errorf("%q is neither text nor json", c.LogFormat))
	}
	return err
}
