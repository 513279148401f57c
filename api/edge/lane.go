package edge

import (
	"context"
	"sync"
	"time"
)

// Lane lets a number of works of one sort run at once. Others wait a short
// while; the places are shared fairly between callers, however many works each
// of them brings. What finds no room is turned away at once.
type Lane struct {
	Name     string
	mutex    sync.Mutex
	free     int
	most     int // waiting
	patience time.Duration
	waiting  int
	queues   map[string][]*ticket
	turn     []string // callers with a queue, the next one first
	shed     uint64
}

// ticket is one work that waits.
type ticket struct{ ready chan struct{} }

// NewLane returns a lane with all places free.
func NewLane(name string, places, waiting int, patience time.Duration) *Lane {
	return &Lane{Name: name, free: max(1, places), most: waiting, patience: patience, queues: map[string][]*ticket{}}
}

// Enter takes a place for a caller and reports whether there was one in time.
// The place is given back by Leave.
func (l *Lane) Enter(ctx context.Context, caller string) bool {
	t := l.queue(caller, l.most)
	if t == nil || t == taken {
		return t == taken
	}
	timer := time.NewTimer(l.patience)
	defer timer.Stop()
	select {
	case <-t.ready:
		return true
	case <-timer.C:
	case <-ctx.Done():
	}
	return l.giveUp(caller, t)
}

// Await takes a place as soon as the lane's fairness allows, and reports
// whether there was one before the caller went away. It is for parts of a work
// that was let in already and bounds how many of them wait.
func (l *Lane) Await(ctx context.Context, caller string) bool {
	t := l.queue(caller, 1<<30)
	select {
	case <-t.ready:
		return true
	case <-ctx.Done():
		return l.giveUp(caller, t)
	}
}

// taken is the ticket of a work that need not wait.
var taken = func() *ticket {
	t := &ticket{make(chan struct{})}
	close(t.ready)
	return t
}()

// queue returns a ticket, nil if there is no room to wait. When the lane is full
// the last of the caller that has most waiting makes room for one with less.
func (l *Lane) queue(caller string, most int) *ticket {
	l.mutex.Lock()
	defer l.mutex.Unlock()
	if l.free > 0 {
		l.free--
		return taken
	}
	if l.waiting >= most && !l.makeRoom(caller) {
		l.shed++
		return nil
	}
	t := &ticket{make(chan struct{})}
	if len(l.queues[caller]) == 0 {
		l.turn = append(l.turn, caller)
	}
	l.queues[caller] = append(l.queues[caller], t)
	l.waiting++
	return t
}

// makeRoom turns the last work away of the caller with most waiting, if that is
// more than one above what this caller has.
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
	l.queues[longest] = queue[:n-1]
	l.waiting--
	l.shed++
	return true // the one turned away finds out when its patience ends
}

// giveUp takes a ticket back whose owner no longer waits. It reports whether
// the place came in the same moment.
func (l *Lane) giveUp(caller string, t *ticket) bool {
	l.mutex.Lock()
	defer l.mutex.Unlock()
	queue := l.queues[caller]
	for i := range queue {
		if queue[i] == t {
			l.queues[caller] = append(queue[:i:i], queue[i+1:]...)
			l.waiting--
			l.shed++
			l.forget(caller)
			return false
		}
	}
	select {
	case <-t.ready:
		return true
	default:
		return false // it made room for another one
	}
}

// forget ends the turn of a caller who has nothing waiting.
func (l *Lane) forget(caller string) {
	if len(l.queues[caller]) > 0 {
		return
	}
	delete(l.queues, caller)
	for i, other := range l.turn {
		if other == caller {
			l.turn = append(l.turn[:i:i], l.turn[i+1:]...)
			return
		}
	}
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
