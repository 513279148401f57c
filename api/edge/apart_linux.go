package edge

import (
	"time"

	"golang.org/x/sys/unix"
)

// yielding is how much lower the priority of dear work is. Of one processor a
// cheap work then takes three quarters; on a machine that is busy with
// other things too, dear work must still come to its end.
const yielding = 5

// turn is how long dear work asks to go on for, once it has a processor. Linux from 6.12 on takes a
// processor back at once for whoever asks for shorter turns, as all others do; with turns of the same
// length it waits for the end of one, some milliseconds. While the world stops for the garbage
// collector, on a machine that is busy with other things, it waits for dear work as long as its turn
// is: so it is no longer than needed.
const turn = 20 * time.Millisecond

// yieldToAll lowers the priority of the thread and lengthens its turns. What the system
// does not allow is left as it is.
func yieldToAll() {
	if thread, err := unix.SchedGetAttr(0, 0); err == nil {
		thread.Nice, thread.Runtime = min(thread.Nice+yielding, 19), uint64(turn)
		_ = unix.SchedSetAttr(0, thread, 0)
	}
}
