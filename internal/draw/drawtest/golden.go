package drawtest

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"creasefit/internal/draw"
	"creasefit/internal/measure"
)

var update = flag.Bool("update", false, "write the golden files anew; look at them before they are kept")

// Goldens returns the drawings whose files are kept, by name.
func Goldens() map[string]*draw.Drawing {
	kept := map[string]*draw.Drawing{
		"sleeve": draw.New(Sleeve(), draw.Options{Title: "Sleeve for a tin of tea", Step: measure.Marks(measure.Millimetre)[3]}),
	}
	for _, s := range Every() {
		switch s.Name {
		case "slotted-band-thin-in", "band-thick-mm", "envelope-thin-in":
			kept[s.Name] = s.Draw()
		}
	}
	return kept
}

// CheckGolden compares bytes with the file of the given name under
// testdata/draw, or writes it if the tests run with -update.
func CheckGolden(t *testing.T, name string, got []byte) {
	t.Helper()
	path := filepath.Join("..", "..", "..", "testdata", "draw", name)
	if *update {
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(want, got) {
		t.Errorf("%s differs from what is written now; look at both, then run this test with -update", path)
	}
}
