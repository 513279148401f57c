package search

import (
	"context"
	"path/filepath"
	"strconv"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"creasefit/internal/sheet"
	"creasefit/internal/sheet/verify"
)

// processorTime is what the process has taken of processors, as a time of day.
func processorTime() time.Time {
	var used syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &used) != nil {
		return time.Now()
	}
	return time.Unix(0, used.Utime.Nano()+used.Stime.Nano())
}

// plannedIn plans with so much processor time, whatever else the machine does, but
// makes no plan easier that is proven; it returns how much too late it was, too.
func plannedIn(t testing.TB, o sheet.Order, effort time.Duration) (a sheet.Answer, late time.Duration) {
	e := newEffort(context.Background(), processorTime().Add(effort))
	e.clock = processorTime
	hands := &easier{planner: newProblem(o).newPlanner(e)}
	hands.count()
	late = processorTime().Sub(e.end)
	a = hands.answer()
	require.NoError(t, verify.Plan(o, a))
	return a, late
}

// BenchmarkBins plans the published bins of 20 to 100 pieces with two seconds of
// a processor each, and reports how many are proven, how many of the known optima
// are met, how many parts of the sheets are above the bounds and how much too late
// the latest plan was.
func BenchmarkBins(b *testing.B) {
	known := map[string]int{}
	for _, row := range rows(b, published(b, "known_bins.csv")) {
		least, err := strconv.Atoi(row[2])
		require.NoError(b, err)
		known[row[0]+" "+row[1]] = least
	}
	files, err := filepath.Glob(published(b, "bins") + "/cl_*")
	require.NoError(b, err)
	for b.Loop() {
		var proven, met, sheets, bounds float64
		var latest time.Duration
		for _, file := range files {
			for _, turning := range []string{"0", "1"} {
				name := filepath.Base(file)
				a, late := plannedIn(b, binOrder(b, name, turning == "1"), 2*time.Second)
				latest = max(latest, late)
				least := known[name+" "+turning]
				sheets, bounds = sheets+float64(a.Sheets), bounds+float64(a.LowerBound)
				if a.Proven {
					proven++
				} else {
					b.Logf("%s %s: %d sheets of at least %d, %d known", name, turning, a.Sheets, a.LowerBound, least)
				}
				if a.Sheets <= least {
					met++
				}
			}
		}
		b.ReportMetric(proven, "proven")
		b.ReportMetric(met, "met")
		b.ReportMetric(sheets/bounds-1, "above")
		b.ReportMetric(float64(latest.Milliseconds()), "late-ms")
	}
}

// BenchmarkMany plans the published orders of few kinds with many copies in as much
// counted work as two seconds of a quiet machine are, and reports how many are
// proven and the most sheets above a bound.
func BenchmarkMany(b *testing.B) {
	for b.Loop() {
		proven, most := 0, int64(0)
		for name, o := range manyOrders(b) {
			e := endless()
			e.left = 600_000_000
			hands := &easier{planner: newProblem(o).newPlanner(e)}
			hands.count()
			gap := hands.planner.cost - hands.lower
			if most = max(most, gap); gap == 0 {
				proven++
			} else {
				b.Logf("%s: %d sheets of at least %d", name, hands.planner.cost, hands.lower)
			}
		}
		b.ReportMetric(float64(proven), "proven")
		b.ReportMetric(float64(most), "most-above")
	}
}
