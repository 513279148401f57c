// Package golden compares what tests get with files that somebody has looked at. It is
// imported by tests only.
package golden

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"testing"
)

var update = flag.Bool("update", false, "write the golden files anew; look at them before they are kept")

// Updating reports whether the tests run with -update.
func Updating() bool { return *update }

// Check compares bytes with a file, which it writes first if the tests run with -update.
func Check(t testing.TB, path string, got []byte) {
	t.Helper()
	if *update {
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if difference := Difference(string(want), string(got)); difference != "" {
		t.Errorf("%s is not as it was (look at both, then run this test with -update)%s", path, difference)
	}
}

// Difference shows where two texts part, with what stands around; "" if they are the same.
func Difference(want, got string) string {
	if want == got {
		return ""
	}
	i := 0
	for i < min(len(want), len(got)) && want[i] == got[i] {
		i++
	}
	around := func(text string) string { return text[max(0, i-120):min(len(text), i+120)] }
	return fmt.Sprintf(": was ...%q..., is ...%q...", around(want), around(got))
}
