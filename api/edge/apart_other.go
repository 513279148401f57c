//go:build !linux

package edge

// yieldToAll does nothing: only Linux has priorities of threads by their number.
func yieldToAll() {}
