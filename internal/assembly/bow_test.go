package assembly_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A tuck that slides in between the front and contents that reach up to the lid must
// bow about L squared over 8 lids, less the room that it has: a hand coaxes thin
// stock past, as long as it springs back.
func TestLongTucksBowAsTheySlideIn(t *testing.T) {
	rows := []struct {
		tuck, caliper string
		least, most   float64 // mm
	}{
		{"15", "0.165", 0, 0},
		{"41", "0.165", 0, 41.0 / 6}, // had no order: giving way stopped at 1.5 mm
		{"60", "0.165", 1.5, 60.0 / 6},
		{"75", "0.165", 1.5, 75.0 / 6},
		{"75", "0.7", 1.5, 75 * 75 / (800 * 0.7)},
	}
	for _, row := range rows {
		t.Run(row.tuck+" in "+row.caliper, func(t *testing.T) {
			_, o := ordered(t, asked(t, "tuck-carton", "width=93", "height=157", "thickness=62.5", "caliper="+row.caliper, "tuck="+row.tuck))
			flex := 0.0
			for _, s := range o.Steps {
				flex = max(flex, s.Flex)
			}
			assert.GreaterOrEqual(t, flex, row.least)
			assert.LessOrEqual(t, flex, row.most+1e-3)
		})
	}
}
