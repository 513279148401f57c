package edge

import "syscall"

// yielding is how much lower the priority of dear work is. Of one processor a
// cheap work then takes three quarters, at once; on a machine that is busy with
// other things too, dear work must still come to its end.
const yielding = 5

// yieldToAll lowers the priority of the thread, whose number Linux takes for that
// of a process here.
func yieldToAll() {
	thread := syscall.Gettid()
	if left, err := syscall.Getpriority(syscall.PRIO_PROCESS, thread); err == nil {
		// The system call tells 20 less the priority.
		_ = syscall.Setpriority(syscall.PRIO_PROCESS, thread, min(20-left+yielding, 19))
	}
}
