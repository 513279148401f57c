package api

import (
	"bytes"
	"context"
	"fmt"
	"net"
	"net/http"
	"strconv"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/go-playground/validator/v10"
	"github.com/labstack/echo/v4"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/tell"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// The requests that both sides of the comparison read; so many millionths of a
// millimetre of the caliper change from one to the next.
const (
	bandBody     = `{"unit":"in","width":"3 1/2","thickness":"0.09","caliper":"0.%06d mm","band_height":"1 3/4","tab":"1/2","fit":"snug","ruler":"1/8 in"}`
	boxBody      = `{"unit":"in","width":"3 1/2","height":"5","thickness":"3/4","caliper":"0.%06d mm","fit":"easy","ruler":"1/16 in"}`
	dividersBody = `{"unit":"in","width":"6","height":"4","thickness":"2","caliper":"0.%06d mm","columns":3,"rows":2,"fit":"easy","ruler":"1/16 in"}`
)

// floorRequest is the same request as a struct for echo to bind and validate.
type floorRequest struct {
	Unit       string `json:"unit" validate:"required,oneof=in mm"`
	Width      string `json:"width" validate:"required,max=32"`
	Height     string `json:"height" validate:"max=32"`
	Thickness  string `json:"thickness" validate:"required,max=32"`
	Caliper    string `json:"caliper" validate:"required,max=32"`
	BandHeight string `json:"band_height" validate:"max=32"`
	Tab        string `json:"tab" validate:"max=32"`
	Columns    int    `json:"columns" validate:"max=64"`
	Rows       int    `json:"rows" validate:"max=64"`
	Fit        string `json:"fit" validate:"oneof=snug easy loose"`
	Ruler      string `json:"ruler" validate:"max=32"`
}

// structValidator lets echo call the validator.
type structValidator struct{ v *validator.Validate }

func (s structValidator) Validate(x any) error { return s.v.Struct(x) }

// floorHandler is the least that any JSON call does with echo: bind, validate
// and write the given bytes.
func floorHandler(path string, answer []byte) http.Handler {
	e, length := echo.New(), strconv.Itoa(len(answer))
	e.Validator = structValidator{validator.New(validator.WithRequiredStructEnabled())}
	e.POST(path, func(c echo.Context) error {
		var q floorRequest
		if err := c.Bind(&q); err != nil {
			return err
		}
		if err := c.Validate(&q); err != nil {
			return err
		}
		c.Response().Header().Set(echo.HeaderContentLength, length)
		return c.Blob(http.StatusOK, "application/json", answer)
	})
	return e
}

// BenchmarkSolveCall measures a whole call over loopback connections that are kept
// open, and beside it the floor: solved anew, no request like another; and answered
// lately. The ratios are what a call of the floor takes of processors, callers and
// all, as a part of what each does, from turns that alternate: on a machine that
// does nothing else, of the throughput; and on others nearly the same.
func BenchmarkSolveCall(b *testing.B) {
	patient := with(func(c *Config) { c.QueueTimeout = time.Minute }) // on a busy machine 64 callers are too many
	service := serve(b, patient)
	for _, of := range []struct{ kind, body string }{{"slotted-band", bandBody}, {"tray", boxBody}, {"tuck-carton", boxBody}, {"dividers", dividersBody}} {
		b.Run(of.kind, func(b *testing.B) {
			path, body := "/v1/solve/"+of.kind, of.body
			answer := answerOnce(b, service, newAsking(path, body, true))
			floorAt := listen(b, floorHandler(path, answer))
			floor, fresh, known := newCrowd(b, 64, floorAt, path, body, false), newCrowd(b, 64, service, path, body, false), newCrowd(b, 64, service, path, body, true)
			var took [3]float64
			for done := 0; done < b.N; done += round {
				for i, crowd := range []*crowd{floor, fresh, known} {
					began := processorTime(b)
					require.EqualValues(b, round, crowd.ask(b, round))
					took[i] += (processorTime(b) - began).Seconds()
				}
			}
			b.ReportMetric(0, "ns/op")
			b.ReportMetric(took[0]/took[1], "fresh-of-floor")
			b.ReportMetric(took[0]/took[2], "repeated-of-floor")
		})
	}
}

// round is how many calls go to one side before the other has its turn.
const round = 1000

// spent is time on the clock, in seconds.
type spent struct{ wall float64 }

// add measures what the calls take.
func (s *spent) add(calls func()) {
	began := time.Now()
	calls()
	s.wall += time.Since(began).Seconds()
}

// listen serves a handler on a free port until the benchmark ends.
func listen(b testing.TB, h http.Handler) string {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(b, err)
	server := &http.Server{Handler: h}
	go func() { _ = server.Serve(listener) }()
	b.Cleanup(func() { _ = server.Close() })
	return "http://" + listener.Addr().String()
}

// serve serves a service as it is served, until the benchmark ends.
func serve(b testing.TB, s *Service) string {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(b, err)
	ctx, stop := context.WithCancel(b.Context())
	s.config.DrainDelay = 0
	done := make(chan error, 1)
	go func() { done <- s.Serve(ctx, listener, nil) }()
	b.Cleanup(func() {
		stop()
		assert.NoError(b, <-done)
	})
	return "http://" + listener.Addr().String()
}

// crowd is callers who ask at once, one after another each.
type crowd struct {
	callers []*visitor
	askings []*asking
}

// newCrowd connects so many callers to a service.
func newCrowd(b testing.TB, n int, address, path, body string, same bool) *crowd {
	c := &crowd{}
	for range n {
		c.callers, c.askings = append(c.callers, dial(b, address)), append(c.askings, newAsking(path, body, same))
	}
	return c
}

// ask asks n times and returns how often there was an answer.
func (c *crowd) ask(b testing.TB, n int) int64 {
	var left, answered atomic.Int64
	left.Store(int64(n))
	var wait sync.WaitGroup
	for i, caller := range c.callers {
		wait.Go(func() {
			for left.Add(-1) >= 0 {
				status, _, err := caller.ask(c.askings[i].next())
				assert.NoError(b, err)
				if status == http.StatusOK {
					answered.Add(1)
				}
			}
		})
	}
	wait.Wait()
	return answered.Load()
}

// answerOnce returns the answer to a request.
func answerOnce(b testing.TB, address string, a *asking) []byte {
	status, body, err := dial(b, address).ask(a.next())
	require.NoError(b, err)
	require.Equal(b, http.StatusOK, status, string(body))
	return bytes.Clone(body)
}

// benchBand is one request of those.
var benchBand = fmt.Sprintf(bandBody, 304_800)

// BenchmarkParts measures the parts of a call in the process: reading the
// request, and writing the solution.
func BenchmarkParts(b *testing.B) {
	band, _ := repertoire.Lookup("slotted-band")
	k := newSolve(band)
	asked := k.form.Take()
	asked.AddJSON([]byte(benchBand))
	asked.Parse()
	require.True(b, asked.Check())
	q := asked.Q.Request
	s, err := solve.Solve(b.Context(), q)
	require.NoError(b, err)
	b.Run("read", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			asked := k.form.Take()
			asked.AddJSON([]byte(benchBand))
			asked.Parse()
			asked.Check()
			asked.Release()
		}
	})
	b.Run("solve", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_, err := solve.Solve(b.Context(), q)
			require.NoError(b, err)
		}
	})
	b.Run("write", func(b *testing.B) {
		b.ReportAllocs()
		var body []byte
		for b.Loop() {
			body = k.append(body[:0], tell.JSON, s, &answering{Reading: &asked.Reading, path: "/v1/solve/slotted-band"})
		}
		b.SetBytes(int64(len(body)))
	})
}
