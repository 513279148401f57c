package measure_test

import (
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
	"creasefit/internal/peer"
)

// GNU units, given the same lengths in its own notation, gets the same
// millimetres.
func TestGNUUnitsAgrees(t *testing.T) {
	units := peer.Path(t, "units", "apt-get install -y units")
	for ours, theirs := range map[string]string{
		"3 5/8 in": "(3+5|8) inch", "3⅝″": "(3+5|8) inch", "63/64 in": "63|64 inch", ".09 in": "0.09 inch",
		"92.1 mm": "92.1 mm", "9.21cm": "9.21 cm", "0.012in": "12 mil", "85,6mm": "85.6 mm", "12 in": "1 foot",
		"36 in": "1 yard", "8 1/2 in": "8.5 inch",
	} {
		out, err := exec.Command(units, "-t", "-o", "%.12g", theirs, "mm").Output()
		require.NoError(t, err, theirs)
		want, err := strconv.ParseFloat(strings.TrimSpace(string(out)), 64)
		require.NoError(t, err)
		l, err := measure.Parse(ours, measure.NoUnit, measure.ClearComma)
		require.NoError(t, err, ours)
		assert.InDelta(t, want, l.Millimetres(), 1e-7, ours)
	}
}

// Words for a unit are known whatever they are written like, and what is ten of one
// is told apart.
func TestUnitNamed(t *testing.T) {
	for word, want := range map[string]measure.Unit{
		"in": measure.Inch, "Inches": measure.Inch, "ZOLL": measure.Inch, `"`: measure.Inch, " mm ": measure.Millimetre, "Millimeters": measure.Millimetre,
		"m": measure.NoUnit, "pt": measure.NoUnit, "furlong": measure.NoUnit, "": measure.NoUnit,
	} {
		unit, whole := measure.UnitNamed(word)
		assert.Equal(t, want, unit, word)
		assert.Equal(t, want != measure.NoUnit, whole, word)
	}
	unit, whole := measure.UnitNamed("cm")
	assert.Equal(t, measure.Millimetre, unit)
	assert.False(t, whole)
}
