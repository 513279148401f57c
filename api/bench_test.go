package api

import (
	"bytes"
	"io"
	"log/slog"
	"net"
	"net/http"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/go-playground/validator/v10"
	"github.com/labstack/echo/v4"
	"github.com/stretchr/testify/require"

	"creasefit/api/tell"
	"creasefit/internal/solve"
)

// benchBody is the request that both sides of the comparison read.
const benchBody = `{"unit":"in","width":"3 1/2","thickness":"0.09","caliper":"0.012","band_height":"1 3/4","tab":"1/2","fit":"snug","ruler":"1/8 in"}`

// floorRequest is the same request as a struct for echo to bind and validate.
type floorRequest struct {
	Unit       string `json:"unit" validate:"required,oneof=in mm"`
	Width      string `json:"width" validate:"required,max=32"`
	Thickness  string `json:"thickness" validate:"required,max=32"`
	Caliper    string `json:"caliper" validate:"required,max=32"`
	BandHeight string `json:"band_height" validate:"max=32"`
	Tab        string `json:"tab" validate:"max=32"`
	Fit        string `json:"fit" validate:"oneof=snug easy loose"`
	Ruler      string `json:"ruler" validate:"max=32"`
}

// structValidator lets echo call the validator.
type structValidator struct{ v *validator.Validate }

func (s structValidator) Validate(x any) error { return s.v.Struct(x) }

// floorHandler is the least that any JSON call does with echo: bind, validate
// and write the given bytes.
func floorHandler(answer []byte) http.Handler {
	e := echo.New()
	e.Validator = structValidator{validator.New(validator.WithRequiredStructEnabled())}
	e.POST("/v1/solve/slotted-band", func(c echo.Context) error {
		var q floorRequest
		if err := c.Bind(&q); err != nil {
			return err
		}
		if err := c.Validate(&q); err != nil {
			return err
		}
		return c.Blob(http.StatusOK, "application/json", answer)
	})
	return e
}

// BenchmarkSolveCall measures a whole call over a loopback connection that is
// kept open, and beside it the floor: once when every request is solved anew,
// once when the same request was answered lately. ratio reports the
// throughput of each as a part of that of the floor, from turns that alternate.
func BenchmarkSolveCall(b *testing.B) {
	url := listen(b, New(DefaultConfig(), slog.New(slog.DiscardHandler)).Handler()) + "/v1/solve/slotted-band"
	forgetful := DefaultConfig()
	forgetful.Recent = 0
	freshURL := listen(b, New(forgetful, slog.New(slog.DiscardHandler)).Handler()) + "/v1/solve/slotted-band"
	answer := post(b, http.DefaultClient, url)
	floorURL := listen(b, floorHandler(answer)) + "/v1/solve/slotted-band"
	require.Equal(b, answer, post(b, http.DefaultClient, floorURL))
	client := &http.Client{Transport: &http.Transport{MaxIdleConnsPerHost: 16, DisableCompression: true}}
	defer client.CloseIdleConnections()
	b.Run("floor", func(b *testing.B) { b.ReportAllocs(); hammer(b, client, floorURL, b.N) })
	b.Run("fresh", func(b *testing.B) { b.ReportAllocs(); hammer(b, client, freshURL, b.N) })
	b.Run("repeated", func(b *testing.B) { b.ReportAllocs(); hammer(b, client, url, b.N) })
	b.Run("ratio", func(b *testing.B) {
		var floor, fresh, repeated spent
		for done := 0; done < b.N; done += round {
			floor.add(func() { hammer(b, client, floorURL, round) })
			fresh.add(func() { hammer(b, client, freshURL, round) })
			repeated.add(func() { hammer(b, client, url, round) })
		}
		b.ReportMetric(floor.wall/fresh.wall, "fresh-of-floor")
		b.ReportMetric(floor.wall/repeated.wall, "repeated-of-floor")
	})
}

// round is how many calls go to one side before the other has its turn, so
// that whatever else the machine does slows both down alike.
const round = 400

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

// hammer posts n times from a few connections at once.
func hammer(b *testing.B, client *http.Client, url string, n int) {
	var left atomic.Int64
	left.Store(int64(n))
	var wait sync.WaitGroup
	for range 8 {
		wait.Go(func() {
			for left.Add(-1) >= 0 {
				post(b, client, url)
			}
		})
	}
	wait.Wait()
}

// post sends the request and returns the answer.
func post(b testing.TB, client *http.Client, url string) []byte {
	response, err := client.Post(url, "application/json", strings.NewReader(benchBody))
	if err != nil {
		b.Error(err)
		return nil
	}
	defer response.Body.Close()
	var body bytes.Buffer
	if _, err := io.Copy(&body, response.Body); err != nil || response.StatusCode != http.StatusOK {
		b.Errorf("status %d: %v %s", response.StatusCode, err, body.String())
	}
	return body.Bytes()
}

// BenchmarkParts measures the parts of a call in the process: reading the
// request, and writing the solution.
func BenchmarkParts(b *testing.B) {
	e := quiet().kinds.byName["slotted-band"]
	asked := e.solve.form.Take()
	asked.AddJSON([]byte(benchBody))
	asked.Parse()
	require.True(b, asked.Check())
	q := asked.Q.Request
	s, err := solve.Solve(b.Context(), q)
	require.NoError(b, err)
	b.Run("read", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			asked := e.solve.form.Take()
			asked.AddJSON([]byte(benchBody))
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
			body = e.solve.append(body[:0], tell.JSON, s, &answering{Reading: &asked.Reading, path: "/v1/solve/slotted-band"})
		}
		b.SetBytes(int64(len(body)))
	})
}
