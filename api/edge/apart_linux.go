package edge

import "syscall"

// yieldToAll gives the thread the lowest of the usual priorities.
func yieldToAll() {
	_ = syscall.Setpriority(syscall.PRIO_PROCESS, syscall.Gettid(), 19) // of a thread: Linux takes their numbers here too
}
