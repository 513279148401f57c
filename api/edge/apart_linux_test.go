package edge

import (
	"os"
	"runtime"
	"strconv"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/sys/unix"
)

// niceness is how far back the thread stands that asks, from -20 to 19: the nineteenth
// field of its line, the second of which is a name in brackets (proc(5)).
func niceness(t *testing.T) int {
	t.Helper()
	text, err := os.ReadFile("/proc/thread-self/stat")
	require.NoError(t, err)
	fields := strings.Fields(string(text[strings.LastIndexByte(string(text), ')')+1:]))
	nice, err := strconv.Atoi(fields[16])
	require.NoError(t, err)
	return nice
}

// TestDearWorkStandsBack by five steps, on a thread that does nothing else: what comes after it stands
// where it stood. The system knows no step beyond 19.
func TestDearWorkStandsBack(t *testing.T) {
	before, within := niceness(t), 0
	apart(func() { within = niceness(t) })
	assert.Equal(t, min(before+5, 19), within)
	assert.Equal(t, before, niceness(t))
}

// turnOf is how long the thread's turns are, as the kernel has it.
func turnOf(t *testing.T) time.Duration {
	t.Helper()
	thread, err := unix.SchedGetAttr(0, 0)
	require.NoError(t, err)
	return time.Duration(thread.Runtime)
}

// TestDearWorkHasLongTurns: whoever has shorter ones need not wait for the end of it (the kernel's
// "EEVDF Scheduler": the task with the earlier deadline is next, and shorter turns make earlier deadlines).
func TestDearWorkHasLongTurns(t *testing.T) {
	runtime.LockOSThread()
	defer runtime.UnlockOSThread()
	before, within := turnOf(t), time.Duration(0)
	if before == 0 {
		t.Skip("the kernel is older than 6.12 and has no turns to ask for")
	}
	apart(func() { within = turnOf(t) })
	assert.Equal(t, 20*time.Millisecond, within)
	assert.Greater(t, within, before)
	assert.Equal(t, before, turnOf(t))
}

// BenchmarkWakeBesideDear counts, of a thousand short works that each wake a thread on the processor
// that dear work has, those that begin more than half a millisecond late. Other work on that
// processor holds them up as well.
func BenchmarkWakeBesideDear(b *testing.B) {
	var processor unix.CPUSet
	processor.Set(runtime.NumCPU() - 1)
	var ended atomic.Bool
	dear := make(chan struct{})
	go func() {
		defer close(dear)
		apart(func() {
			assert.NoError(b, unix.SchedSetaffinity(0, &processor))
			for !ended.Load() {
			}
		})
	}()
	cheap := make(chan int)
	go func() {
		runtime.LockOSThread() // for good, as it stays on that processor
		assert.NoError(b, unix.SchedSetaffinity(0, &processor))
		late, rest := 0, unix.NsecToTimespec(int64(time.Millisecond))
		for b.Loop() {
			began := time.Now()
			assert.NoError(b, unix.Nanosleep(&rest, nil))
			if woke := time.Now(); woke.Sub(began) > 1500*time.Microsecond {
				late++
			}
			for woke := time.Now(); time.Since(woke) < 300*time.Microsecond; {
			}
		}
		cheap <- late
	}()
	b.ReportMetric(1000*float64(<-cheap)/float64(b.N), "late-of-1000")
	ended.Store(true)
	<-dear
}
