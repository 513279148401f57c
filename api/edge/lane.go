package edge

import (
	"context"
	"slices"
	"sync"
	"time"
)

// Lane lets a number of works of one sort run at once. Others wait a short
// while; the places are shared fairly between callers, however many works each
// of them brings. What finds no room is turned away at once.
type Lane struct {
	Name     string
	Apart    bool // its work stands back behind that of other lanes
	mutex    sync.Mutex
	places   int
	free     int
	most     int           // waiting
	usual    time.Duration // that a work takes, by the last dozens of them
	patience time.Duration
	waiting  int
	queues   map[string][]*ticket
	turn     []string // callers with a queue, the next one first
	shed     uint64
}

// ticket is one work that waits.
type ticket struct {
	ready   chan struct{} // closed when it need not wait any longer
	steady  bool          // it was let in already: it makes room for nobody
	refused bool          // it made room for another one; set before ready is closed
}

// NewLane returns a lane with all places free.
func NewLane(name string, places, waiting int, patience time.Duration) *Lane {
	places = max(1, places)
	return &Lane{Name: name, places: places, free: places, most: waiting, patience: patience, queues: map[string][]*ticket{}}
}

// Take takes a place if one is free, whoever calls.
func (l *Lane) Take() bool {
	l.mutex.Lock()
	defer l.mutex.Unlock()
	if l.free == 0 {
		return false
	}
	l.free--
	return true
}

// Enter takes a place for a caller and reports whether there was one in time.
// The place is given back by Leave.
func (l *Lane) Enter(ctx context.Context, caller string) bool {
	t := l.queue(caller, false)
	if t == nil || t == taken {
		return t == taken
	}
	timer := time.NewTimer(l.patience)
	defer timer.Stop()
	select {
	case <-t.ready:
		return !t.refused
	case <-timer.C:
	case <-ctx.Done():
	}
	return l.giveUp(caller, t)
}

// Await takes a place as soon as the lane's fairness allows, and reports
// whether there was one before the caller went away. It is for parts of a work
// that was let in already and bounds how many of them wait.
func (l *Lane) Await(ctx context.Context, caller string) bool {
	t := l.queue(caller, true)
	select {
	case <-t.ready:
		return true
	case <-ctx.Done():
		return l.giveUp(caller, t)
	}
}

// taken is the ticket of a work that need not wait.
var taken = func() *ticket {
	t := &ticket{ready: make(chan struct{})}
	close(t.ready)
	return t
}()

// queue returns a ticket, nil if there is no room to wait. When the lane is full
// the last of the caller that has most waiting makes room for one with less; a
// steady one always finds room.
func (l *Lane) queue(caller string, steady bool) *ticket {
	l.mutex.Lock()
	defer l.mutex.Unlock()
	if l.free > 0 {
		l.free--
		return taken
	}
	if !steady && l.waiting >= l.room() && !l.makeRoom(caller) {
		l.shed++
		return nil
	}
	t := &ticket{ready: make(chan struct{}), steady: steady}
	if len(l.queues[caller]) == 0 {
		l.turn = append(l.turn, caller)
	}
	l.queues[caller] = append(l.queues[caller], t)
	l.waiting++
	return t
}

// room is how many may wait: what the lane gets done in half of their patience.
// In a longer queue everybody would be turned away shortly before their turn, and
// the lane would answer next to nobody.
func (l *Lane) room() int {
	if l.usual == 0 {
		return l.most
	}
	return min(l.most, max(l.places, int(time.Duration(l.places)*l.patience/2/l.usual)))
}

// Crowded reports whether there is no room and the caller has its share of what
// waits: one more work of it would be turned away, so that it need not be read.
func (l *Lane) Crowded(caller func() string) bool {
	l.mutex.Lock()
	defer l.mutex.Unlock()
	if l.free > 0 || l.waiting < l.room() || len(l.queues[caller()]) == 0 {
		return false
	}
	l.shed++
	return true
}

// makeRoom turns the last work away of the caller with most waiting, if that is
// more than one above what this caller has. It hears of that at once.
func (l *Lane) makeRoom(caller string) bool {
	longest, n := "", 0
	for _, other := range l.turn {
		if waiting := len(l.queues[other]); waiting > n {
			longest, n = other, waiting
		}
	}
	if n <= len(l.queues[caller])+1 {
		return false
	}
	queue := l.queues[longest]
	for i, t := range slices.Backward(queue) {
		if !t.steady {
			l.queues[longest] = slices.Delete(queue, i, i+1)
			l.waiting--
			l.shed++
			t.refused = true
			close(t.ready)
			return true
		}
	}
	return false
}

// giveUp takes a ticket back whose owner no longer waits. It reports whether
// the place came in the same moment.
func (l *Lane) giveUp(caller string, t *ticket) bool {
	l.mutex.Lock()
	defer l.mutex.Unlock()
	i := slices.Index(l.queues[caller], t)
	if i < 0 {
		return !t.refused
	}
	l.queues[caller] = slices.Delete(l.queues[caller], i, i+1)
	l.waiting--
	l.shed++
	l.forget(caller)
	return false
}

// forget ends the turn of a caller who has nothing waiting.
func (l *Lane) forget(caller string) {
	if len(l.queues[caller]) > 0 {
		return
	}
	delete(l.queues, caller)
	l.turn = slices.DeleteFunc(l.turn, func(other string) bool { return other == caller })
}

// Leave gives the place to the first work of the next caller.
func (l *Lane) Leave() {
	l.mutex.Lock()
	defer l.mutex.Unlock()
	for len(l.turn) > 0 {
		caller := l.turn[0]
		queue := l.queues[caller]
		if len(queue) == 0 {
			l.forget(caller)
			continue
		}
		l.queues[caller] = queue[1:]
		l.turn = append(l.turn[1:], caller)
		l.waiting--
		close(queue[0].ready)
		if len(queue) == 1 {
			l.forget(caller)
		}
		return
	}
	l.free++
}

// Do does a work that has a place in the lane.
func (l *Lane) Do(work func()) {
	began := time.Now()
	if l.Apart {
		apart(work)
	} else {
		work()
	}
	l.note(time.Since(began))
}

// farOff is how many times the usual a single work counts at most: one that was
// held up, by the machine or by itself, says little of those to come, while a
// lane whose works have all become longer learns it from a dozen of them.
const farOff = 8

// note learns how long works take.
func (l *Lane) note(took time.Duration) {
	l.mutex.Lock()
	defer l.mutex.Unlock()
	if l.usual > 0 {
		took = min(took, farOff*l.usual)
	}
	l.usual = max(1, l.usual+(took-l.usual)/32)
}

// State is how a lane stands.
type State struct {
	Free, Waiting int
	Shed          uint64 // works turned away so far
}

// State returns how the lane stands.
func (l *Lane) State() State {
	l.mutex.Lock()
	defer l.mutex.Unlock()
	return State{l.free, l.waiting, l.shed}
}
