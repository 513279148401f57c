package edge

import (
	"context"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// waiting waits until that many works wait in the lane.
func waiting(t require.TestingT, l *Lane, n int) {
	require.Eventually(t, func() bool { return l.State().Waiting == n }, 10*time.Second, 100*time.Microsecond)
}

// TestLaneServesCallersInTurn: a caller with many works waits no longer for one
// with few, and the other way round.
func TestLaneServesCallersInTurn(t *testing.T) {
	l := NewLane("cheap", 1, 100, time.Minute)
	require.True(t, l.Enter(context.Background(), "first"))
	order := make(chan string, 10)
	var all sync.WaitGroup
	for i, caller := range []string{"many", "many", "many", "many", "few", "other", "few"} {
		all.Go(func() {
			require.True(t, l.Enter(context.Background(), caller))
			order <- caller
			l.Leave()
		})
		waiting(t, l, i+1)
	}
	l.Leave()
	all.Wait()
	close(order)
	var served []string
	for caller := range order {
		served = append(served, caller)
	}
	assert.Equal(t, []string{"many", "few", "other", "many", "few", "many", "many"}, served)
	assert.Equal(t, State{Free: 1}, l.State())
}

// TestPartsOfAWorkMakeNoRoom: lines of a batch that wait for their turn are not
// turned away for somebody else's call; one of them once was, and its stream
// stood still until its caller left. What does make room hears of it at once.
func TestPartsOfAWorkMakeNoRoom(t *testing.T) {
	l := NewLane("cheap", 1, 3, time.Hour)
	require.True(t, l.Enter(context.Background(), "one"))
	lines, call := make(chan bool, 2), make(chan bool)
	for i := range 2 {
		go func() { lines <- l.Await(context.Background(), "stream") }()
		waiting(t, l, i+1)
	}
	go func() { call <- l.Enter(context.Background(), "stream") }()
	waiting(t, l, 3)
	go l.Enter(context.Background(), "two")
	assert.False(t, <-call, "it made room, long before its patience ended")
	for range 3 {
		l.Leave()
	}
	assert.True(t, <-lines)
	assert.True(t, <-lines)
}

// TestCrowdedIsWhoHasItsShare: when there is no room, one more work of a caller
// who waits already need not be read; that of another caller may find room.
func TestCrowdedIsWhoHasItsShare(t *testing.T) {
	l := NewLane("cheap", 1, 1, time.Hour)
	crowded := func(caller string) bool { return l.Crowded(func() string { return caller }) }
	assert.False(t, crowded("one"), "there is a place")
	require.True(t, l.Enter(context.Background(), "one"))
	assert.False(t, crowded("one"), "there is room to wait")
	ctx, leave := context.WithCancel(context.Background())
	go l.Enter(ctx, "one")
	waiting(t, l, 1)
	assert.True(t, crowded("one"))
	assert.False(t, crowded("two"))
	assert.EqualValues(t, 1, l.State().Shed)
	leave()
	waiting(t, l, 0)
	assert.Empty(t, l.queues, "who went away has no queue")
	assert.Empty(t, l.turn)
}

// TestNobodyWaitsForNothing: no more wait than get their turn in time. Else all of
// them would wait nearly to the end of their patience, and be turned away.
func TestNobodyWaitsForNothing(t *testing.T) {
	l := NewLane("cheap", 2, 100, 100*time.Millisecond)
	assert.Equal(t, 100, l.room(), "nothing is known yet")
	for range 400 {
		l.note(10 * time.Millisecond)
	}
	assert.Equal(t, 10, l.room(), "2 places get 10 works of 10 ms done in 50 ms")
	for range 400 {
		l.note(time.Hour)
	}
	assert.Equal(t, 2, l.room(), "as many as there are places may wait in any case")
	for range 2000 {
		l.note(time.Microsecond)
	}
	assert.Equal(t, 100, l.room())
}

// TestOneHeldUpIsNoRule: a work that the machine held up takes little of the room
// of those to come; that all of them take longer is learnt from two dozen.
func TestOneHeldUpIsNoRule(t *testing.T) {
	l := NewLane("cheap", 2, 256, 100*time.Millisecond)
	for range 400 {
		l.note(200 * time.Microsecond)
	}
	require.Equal(t, 256, l.room())
	l.note(time.Second)
	assert.Equal(t, 256, l.room(), "one of a second among works of 0.2 ms")
	for range 24 {
		l.note(20 * time.Millisecond)
	}
	assert.Less(t, l.room(), 20, "2 places get 5 works of 20 ms done in 50 ms")
}

// TestWorkApartIsLikeAnyOther: done before Do returns, its panics are the
// caller's, and the caller's own thread keeps its priority.
func TestWorkApartIsLikeAnyOther(t *testing.T) {
	l := NewLane("dear", 1, 0, time.Second)
	l.Apart = true
	done := false
	l.Do(func() { done = true })
	assert.True(t, done)
	assert.PanicsWithValue(t, "a fault of the work", func() { l.Do(func() { panic("a fault of the work") }) })
}

// TestLaneTurnsAwayWhatHasNoRoom: at once when as much waits as may, and after
// its patience; a caller with little waiting goes before one with much.
func TestLaneTurnsAwayWhatHasNoRoom(t *testing.T) {
	l := NewLane("cheap", 1, 2, time.Minute)
	ctx, leave := context.WithCancel(context.Background())
	require.True(t, l.Enter(ctx, "one"))
	answers := make(chan bool, 3)
	for i := range 2 {
		go func() { answers <- l.Enter(ctx, "one") }()
		waiting(t, l, i+1)
	}
	assert.False(t, l.Enter(ctx, "one"), "there is no room")
	go func() { answers <- l.Enter(ctx, "two") }()
	require.Eventually(t, func() bool { l.mutex.Lock(); defer l.mutex.Unlock(); return len(l.queues["two"]) == 1 }, 10*time.Second, time.Millisecond)
	assert.Equal(t, 2, l.State().Waiting, "one of the first caller's made room")
	leave()
	for range 3 {
		assert.False(t, <-answers)
	}
	l.Leave()
	assert.Equal(t, 1, l.State().Free)
	assert.Empty(t, l.queues)
	assert.Empty(t, l.turn)
}

// TestLaneKeepsItsPlaces enters, waits, gives up and leaves at random: never
// more run than there are places, and in the end all are free.
func TestLaneKeepsItsPlaces(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		places := rapid.IntRange(1, 3).Draw(rt, "places")
		l := NewLane("any", places, rapid.IntRange(0, 4).Draw(rt, "most"), time.Millisecond)
		var running, most int
		var mutex sync.Mutex
		var all sync.WaitGroup
		for _, caller := range rapid.SliceOfN(rapid.SampledFrom([]string{"a", "b", "c"}), 1, 30).Draw(rt, "callers") {
			all.Go(func() {
				if !l.Enter(context.Background(), caller) {
					return
				}
				mutex.Lock()
				running++
				most = max(most, running)
				mutex.Unlock()
				time.Sleep(100 * time.Microsecond)
				mutex.Lock()
				running--
				mutex.Unlock()
				l.Leave()
			})
		}
		all.Wait()
		assert.LessOrEqual(rt, most, places)
		state := l.State()
		assert.Equal(rt, places, state.Free)
		assert.Zero(rt, state.Waiting)
	})
}
