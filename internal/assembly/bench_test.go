package assembly_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/assembly"
	"creasefit/internal/repertoire"
)

// usual are options with which a kind has an order for a tasting tin.
var usual = map[string][]string{
	"envelope": {"thickness=2"}, "diagonal-envelope": {"thickness=2"}, "folded-card": {"fold=letter"}, "mat-stack": {"thickness=2"}, "pocket": {"thickness=2"},
	"slipcase": {"thickness=12"},
}

// BenchmarkSearch finds the way apart of a kind at its ideal sizes.
func BenchmarkSearch(b *testing.B) { ofKinds(b, false) }

// BenchmarkReplay goes a known way at the actual sizes.
func BenchmarkReplay(b *testing.B) { ofKinds(b, true) }

// A replay allocates for what it keeps, not for each pair of plates that it compares.
func TestReplaysAllocateLittle(t *testing.T) {
	for _, k := range repertoire.Kinds() {
		s, _ := ordered(t, asked(t, k.Name, usual[k.Name]...))
		_, again := assembly.Parts(&s.Ideal, &s.Pattern, s.Proof.Tolerance)
		assert.Less(t, testing.AllocsPerRun(2, again), 700.0, k.Name)
	}
}

func ofKinds(b *testing.B, replay bool) {
	for _, k := range repertoire.Kinds() {
		b.Run(k.Name, func(b *testing.B) {
			s, _ := ordered(b, asked(b, k.Name, usual[k.Name]...))
			search, again := assembly.Parts(&s.Ideal, &s.Pattern, s.Proof.Tolerance)
			if replay {
				search = again
			}
			for b.Loop() {
				search()
			}
		})
	}
}
