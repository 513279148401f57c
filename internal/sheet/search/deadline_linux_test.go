package search

import (
	"context"
	"runtime"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/sheet"
	"creasefit/internal/sheet/verify"
)

// threadTime is what this thread has taken of a processor, as a time of day: what else
// the machine does, and other tests, are no part of it.
func threadTime() time.Time {
	var used syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_THREAD, &used) != nil {
		return time.Now()
	}
	return time.Unix(0, used.Utime.Nano()+used.Stime.Nano())
}

// The largest orders there may be, of many copies and of none alike, are answered within
// a tenth of a second of the time that they have, by a clock that counts work alone.
func TestDeadlinesAreKept(t *testing.T) {
	runtime.LockOSThread()
	defer runtime.UnlockOSThread()
	orders := map[string]sheet.Order{"none alike": repeated(t, 1, sheet.MostItems, 2*sheet.MostItems), "few": stallOrder(t)}
	many := repeated(t, 1, sheet.MostItems, 2*sheet.MostItems)
	for i := range many.Items {
		many.Items[i].Count = sheet.MostPieces / sheet.MostItems
	}
	orders["many copies"] = many
	for name, o := range orders {
		for _, effort := range []time.Duration{time.Millisecond, 30 * time.Millisecond, 200 * time.Millisecond} {
			began := threadTime()
			e := newEffort(context.Background(), began.Add(effort))
			e.clock = threadTime
			a, err := newProblem(o).planWith(e, nil)
			took := threadTime().Sub(began)
			require.NoError(t, err)
			require.NoError(t, verify.Plan(o, a))
			assert.Less(t, took, effort+100*time.Millisecond, "%s with %v", name, effort)
		}
	}
}
