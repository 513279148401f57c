// Package peer finds the outside programs that tests check the project
// against. It is imported by tests only and runs nothing itself.
package peer

import (
	"os"
	"os/exec"
	"testing"
)

// Path returns where the program is. When it is missing the test is skipped
// with the command that installs it, or fails if CREASEFIT_PEERS=require.
func Path(t testing.TB, program, install string) string {
	t.Helper()
	path, err := exec.LookPath(program)
	switch {
	case err == nil:
		return path
	case os.Getenv("CREASEFIT_PEERS") == "require":
		t.Fatalf("%s is required here and missing; install it with: %s", program, install)
	default:
		t.Skipf("%s is not installed; install it with: %s", program, install)
	}
	return ""
}
