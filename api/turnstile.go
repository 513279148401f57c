package api

import (
	"context"
	"sync/atomic"
	"time"
)

// turnstile lets a number of calculations run at once and a number of others
// wait a short while; all beyond that are turned away at once.
type turnstile struct {
	places   chan struct{}
	waiting  atomic.Int64
	most     int64
	patience time.Duration
}

// newTurnstile returns a turnstile with all places free.
func newTurnstile(running, waiting int, patience time.Duration) *turnstile {
	return &turnstile{places: make(chan struct{}, max(1, running)), most: int64(waiting), patience: patience}
}

// enter takes a place and reports whether there was one in time.
func (t *turnstile) enter(ctx context.Context) bool {
	select {
	case t.places <- struct{}{}:
		return true
	default:
		return t.wait(ctx)
	}
}

// wait waits for a place.
func (t *turnstile) wait(ctx context.Context) bool {
	defer t.waiting.Add(-1)
	if t.waiting.Add(1) > t.most {
		return false
	}
	timer := time.NewTimer(t.patience)
	defer timer.Stop()
	select {
	case t.places <- struct{}{}:
		return true
	case <-timer.C:
		return false
	case <-ctx.Done():
		return false
	}
}

// await takes a place as soon as there is one, and reports whether there was
// one before the caller went away.
func (t *turnstile) await(ctx context.Context) bool {
	for ctx.Err() == nil {
		if t.enter(ctx) {
			return true
		}
		time.Sleep(10 * time.Millisecond) // the queue is full
	}
	return false
}

// leave gives the place back.
func (t *turnstile) leave() { <-t.places }
