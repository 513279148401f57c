package edge

import "runtime"

// apart does a work on a thread of its own, which stands back behind the other work
// of the machine. A panic of the work is one of the caller.
//
// The runtime shares processors in turns of ten milliseconds, in which a cheap
// call is done thirty times over; the system takes a processor back at once.
func apart(work func()) {
	done := make(chan any)
	go func() {
		runtime.LockOSThread() // for good: a priority that was lowered stays so, and the thread ends with its work
		yieldToAll()
		defer func() { done <- recover() }()
		work()
	}()
	if cause := <-done; cause != nil {
		panic(cause)
	}
}
