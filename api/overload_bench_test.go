package api

import (
	"bytes"
	"context"
	"encoding/json"
	"net"
	"net/http"
	"os"
	"os/exec"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// offered is what becomes of cheap calls that are offered from another process.
type offered struct {
	Address string
	Rate    float64 // a second; 0 for eight callers who ask as soon as they are answered
	Most    time.Duration

	Answered, Shed int
	Took           time.Duration
	Slow           time.Duration // the slowest but one in a hundred, from when it was due

	processor time.Duration // of this process meanwhile
}

// offeredName is the variable that tells a test process to offer calls.
const offeredName = "OFFERED_CALLS"

// mostOffering is how many callers offer calls at a rate: as many connections as
// may wait for an answer at once before one comes late.
const mostOffering = 512

// offer has another process send cheap calls, so that what they cost the callers
// is not counted with what they cost the service.
func offer(b testing.TB, address string, rate float64, most time.Duration) offered {
	o := offered{Address: address, Rate: rate, Most: most}
	text, err := json.Marshal(o)
	require.NoError(b, err)
	command := exec.Command(os.Args[0], "-test.run", "^TestOffering$")
	command.Env = append(os.Environ(), offeredName+"="+string(text))
	command.Stderr = os.Stderr
	began := processorTime(b)
	out, err := command.Output()
	require.NoError(b, err, string(out))
	o.processor = processorTime(b) - began
	line, _, _ := bytes.Cut(out, []byte("\n"))
	require.NoError(b, json.Unmarshal(line, &o))
	return o
}

// add adds what became of further calls.
func (o *offered) add(further offered) {
	o.Answered, o.Shed, o.Took, o.processor = o.Answered+further.Answered, o.Shed+further.Shed, o.Took+further.Took, o.processor+further.processor
}

// perSecond is how many calls were answered a second.
func (o *offered) perSecond() float64 { return float64(o.Answered) / o.Took.Seconds() }

// perProcessor is how many were answered in a second of a processor.
func (o *offered) perProcessor() float64 { return float64(o.Answered) / o.processor.Seconds() }

// TestOffering offers calls as the variable says, in a process of its own, and
// prints what became of them.
func TestOffering(t *testing.T) {
	text := os.Getenv(offeredName)
	if text == "" {
		t.Skip("it is the other side of a benchmark")
	}
	var o offered
	require.NoError(t, json.Unmarshal([]byte(text), &o))
	o.offer(t)
	said, err := json.Marshal(o)
	require.NoError(t, err)
	_, err = os.Stdout.Write(append(said, '\n'))
	require.NoError(t, err)
}

// offer offers them.
func (o *offered) offer(t *testing.T) {
	callers := make([]*visitor, mostOffering)
	if o.Rate == 0 {
		callers = callers[:8]
	}
	for i := range callers {
		callers[i] = dial(t, o.Address)
	}
	var mutex sync.Mutex
	var took []time.Duration
	var all sync.WaitGroup
	var next atomic.Int64
	asked.Store(time.Now().UnixNano()) // what no other process asked for
	began := time.Now()
	for _, caller := range callers {
		what := newAsking("/v1/solve/slotted-band", bandBody, false)
		all.Go(func() {
			for {
				due := time.Since(began)
				if o.Rate > 0 {
					due = time.Duration(float64(next.Add(1)) / o.Rate * float64(time.Second))
				}
				if due > o.Most {
					return
				}
				time.Sleep(time.Until(began.Add(due)))
				status, _, err := caller.ask(what.next())
				assert.NoError(t, err)
				mutex.Lock()
				if status == http.StatusOK {
					took = append(took, time.Since(began)-due)
				} else {
					o.Shed++
				}
				mutex.Unlock()
			}
		})
	}
	all.Wait()
	slices.Sort(took)
	o.Took, o.Answered = time.Since(began), len(took)
	if len(took) > 0 {
		o.Slow = took[len(took)*99/100]
	}
}

// BenchmarkOverload measures what the service answers alone, at half of that
// quietly and beside dear work without limit, and at four times of it, in one
// run: the cheap calls kept, and their slowest hundredth beside the quiet one.
// What the flood leaves is told twice: by the clock, where callers and whatever
// else the machine does take their part, and by answers to a second of the
// service's own processors.
func BenchmarkOverload(b *testing.B) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	for b.Loop() {
		s := unremembering()
		_, dear, _ := s.config.Places()
		runtime.GOMAXPROCS(runtime.NumCPU() + dear) // as the program has it
		address := serving(b, s)
		const each = 2 * time.Second
		alone := offer(b, address, 0, each)
		quiet := offer(b, address, alone.perSecond()/2, each)
		stop := besides(s, 16, dearCall)
		beside := offer(b, address, alone.perSecond()/2, each)
		stop()
		var peak, flood offered
		for range 4 { // in turn, since whatever else the machine does changes
			peak.add(offer(b, address, 0, each/2))
			flood.add(offer(b, address, 4*alone.perSecond(), each/2))
		}
		after := offer(b, address, alone.perSecond()/2, each)
		b.ReportMetric(alone.perSecond(), "alone/s")
		b.ReportMetric(beside.perSecond()/quiet.perSecond(), "kept")
		b.ReportMetric(float64(beside.Slow)/float64(quiet.Slow), "p99-ratio")
		b.ReportMetric(float64(quiet.Slow.Microseconds()), "quiet-p99-us")
		b.ReportMetric(flood.perSecond()/peak.perSecond(), "flooded")
		b.ReportMetric(flood.perProcessor()/peak.perProcessor(), "flooded-of-processor")
		b.ReportMetric(float64(flood.Shed)/float64(flood.Answered), "shed-of-answered")
		b.ReportMetric(after.perSecond()/quiet.perSecond(), "after")
		b.ReportMetric(float64(after.Slow)/float64(quiet.Slow), "after-p99-ratio")
	}
}

// BenchmarkShed measures what a call that finds no room takes of the service's
// processors, beside one that is answered.
func BenchmarkShed(b *testing.B) {
	for b.Loop() {
		s := with(func(c *Config) { c.Recent, c.MostRunning, c.MostWaiting, c.QueueTimeout = 0, 2, 1, time.Hour })
		address := serving(b, s)
		const each = time.Second
		alone := offer(b, address, 0, each)
		full, leave := context.WithCancel(b.Context())
		for s.cheap.Take() {
		}
		var waits sync.WaitGroup
		waits.Go(func() { s.cheap.Enter(full, "127.0.0.1") })
		require.Eventually(b, func() bool { return s.cheap.State().Waiting == 1 }, time.Minute, time.Millisecond)
		shed := offer(b, address, 20_000, each) // more than there are: each connection takes a breath
		leave()
		waits.Wait()
		answered, turned := alone.processor.Seconds()/float64(alone.Answered), shed.processor.Seconds()/float64(shed.Shed)
		b.ReportMetric(1e6*answered, "answered-us")
		b.ReportMetric(1e6*turned, "shed-us")
		b.ReportMetric(turned/answered, "shed-of-answered")
	}
}

// serving serves on a free port, as the program does, until the benchmark ends.
func serving(b testing.TB, s *Service) (address string) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(b, err)
	ctx, stop := context.WithCancel(context.Background())
	ended := make(chan error)
	go func() { ended <- s.Serve(ctx, l, nil) }()
	b.Cleanup(func() { stop(); assert.NoError(b, <-ended) })
	return "http://" + l.Addr().String()
}
