package assembly_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/assembly"
	"creasefit/internal/pattern"
	"creasefit/internal/solve"
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

// An order leads to patterns of its own shape, whatever their sizes, and to no others.
func TestOrdersLeadToTheirShapeOnly(t *testing.T) {
	for kind, less := range map[string]func(p *pattern.Pattern){
		"lidded-box": func(p *pattern.Pattern) { p.Nests = nil },
		"dividers":   func(p *pattern.Pattern) { p.Locks = nil },
		"sleeve":     func(p *pattern.Pattern) { p.Bonds = nil },
		"tray":       func(p *pattern.Pattern) { p.Pieces = nil },
	} {
		t.Run(kind, func(t *testing.T) {
			r := asked(t, kind, "width=61")
			if kind == "sleeve" {
				give(t, r, "join", "two-pieces")
			}
			s, o := ordered(t, r)
			assert.True(t, o.Leads(&s.Pattern, s.Proof.Tolerance))
			give(t, r, "width", "64")
			wider, err := solve.Solve(t.Context(), r)
			require.NoError(t, err)
			assert.True(t, o.Leads(&wider.Pattern, wider.Proof.Tolerance))
			less(&wider.Pattern)
			assert.False(t, o.Leads(&wider.Pattern, wider.Proof.Tolerance))
		})
	}
}
