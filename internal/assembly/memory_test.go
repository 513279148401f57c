package assembly_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/assembly"
)

// An order hangs on its own pattern alone: not on what was asked for before it,
// even of the same structure, and it is the same when it is found again.
func TestOrdersHangOnNothingAskedBefore(t *testing.T) {
	for _, kind := range []string{"slotted-band", "tuck-carton", "tray", "lidded-box"} {
		t.Run(kind, func(t *testing.T) {
			assembly.Forget()
			first := asked(t, kind, "width=61", "thickness=22")
			s, fresh := ordered(t, first)
			want := told(&s.Pattern, fresh)
			assembly.Forget()
			for _, width := range []string{"width=70", "width=93", "width=140"} {
				ordered(t, asked(t, kind, width, "thickness=22"))
			}
			for range 2 {
				s, o := ordered(t, first)
				assert.Equal(t, want, told(&s.Pattern, o))
			}
		})
	}
}
