package edge

import "sync/atomic"

// Flight bounds how many bytes of answers are held for callers who have not
// taken them yet.
type Flight struct {
	most int64
	held atomic.Int64
}

// NewFlight holds at most so many bytes, and one answer whatever its size.
func NewFlight(most int64) *Flight { return &Flight{most: most} }

// Enter holds an answer and reports whether there was room for it. It is let go
// by Leave.
func (f *Flight) Enter(size int) bool {
	held := f.held.Add(int64(size))
	if held <= f.most || held == int64(size) {
		return true
	}
	f.held.Add(-int64(size))
	return false
}

// Leave lets an answer go.
func (f *Flight) Leave(size int) { f.held.Add(-int64(size)) }

// Held is how many bytes are held.
func (f *Flight) Held() int64 { return f.held.Load() }
