package drawtest

import (
	"path/filepath"
	"testing"

	"creasefit/internal/draw"
	"creasefit/internal/golden"
	"creasefit/internal/measure"
)

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

// CheckGolden compares bytes with the file of the given name under testdata/draw.
func CheckGolden(t *testing.T, name string, got []byte) {
	t.Helper()
	golden.Check(t, filepath.Join("..", "..", "..", "testdata", "draw", name), got)
}
