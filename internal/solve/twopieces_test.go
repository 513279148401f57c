package solve_test

import (
	"context"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// inTwo are the kinds that can be made in two pieces.
func inTwo() []string {
	var names []string
	for _, k := range repertoire.Kinds() {
		if _, ok := k.InTwoPieces(); ok {
			names = append(names, k.Name)
		}
	}
	return names
}

// pieces are what a request comes to in two pieces.
func pieces(t *testing.T, r *solve.Request) *solve.Solution {
	askTwo(r)
	s, err := solve.Solve(context.Background(), r)
	require.NoError(t, err)
	return s
}

// askTwo asks for two pieces.
func askTwo(r *solve.Request) {
	option, _ := r.Kind.InTwoPieces()
	r.Options[option.Name] = enclosure.Value{Choice: option.Choice}
}

// TestRandomRequestsInTwoPieces folds up random requests that are all to be made
// in two pieces, which the random tests of all kinds do of every sixth, and
// makes mutants of some.
func TestRandomRequestsInTwoPieces(t *testing.T) {
	for _, name := range inTwo() {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			kind, _ := repertoire.Lookup(name)
			r, solved := wide{rand.New(rand.NewPCG(17, uint64(len(name))))}, 0
			for tries := 0; solved < 400 && tries < 40*400; tries++ {
				q := r.request(kind)
				askTwo(q)
				s, err := solve.Solve(context.Background(), q)
				if err != nil {
					checkRefusal(t, q, err)
					continue
				}
				solved++
				checkFolded(t, s)
				require.NotEmpty(t, s.Pattern.Bonds)
				if solved <= 20 {
					assert.Positive(t, mutate(t, s.Request))
				}
			}
			assert.Equal(t, 400, solved)
		})
	}
}

// TestHalvesMustMeet moves one half on the other: the glued laps and the edges
// beside them no longer come to lie where they must.
func TestHalvesMustMeet(t *testing.T) {
	for _, name := range inTwo() {
		t.Run(name, func(t *testing.T) {
			s := pieces(t, thick(t, name))
			bond := &s.Ideal.Bonds[0]
			require.True(t, fold.Prove(&s.Ideal, measure.Length{}).Closes)
			for i := range s.Ideal.Places {
				place := &s.Ideal.Places[i]
				if place.Piece != bond.B || place.On != bond.A {
					continue
				}
				for _, by := range []*measure.Length{&place.X, &place.Y, &place.Above} {
					old := *by
					*by = old.Add(measure.Micrometres(50))
					assert.False(t, fold.Prove(&s.Ideal, measure.Length{}).Closes)
					*by = old
				}
			}
		})
	}
}

// TestOfferOfTwoPieces names a sheet that the halves just come out of, and the
// blank in one piece does not: the warning says so, but not of a smaller sheet.
func TestOfferOfTwoPieces(t *testing.T) {
	for _, name := range inTwo() {
		t.Run(name, func(t *testing.T) {
			halves := pieces(t, thick(t, name))
			var width, height measure.Length
			for i := range halves.Pattern.Pieces {
				p := &halves.Pattern.Pieces[i]
				width, height = measure.Max(width, p.Width), measure.Max(height, p.Height)
			}
			r := thick(t, name)
			r.SheetWidth, r.SheetHeight = width, height
			s, err := solve.Solve(context.Background(), r)
			require.NoError(t, err)
			for _, w := range s.Warnings {
				if w.Code == "larger-than-sheet" {
					assert.Equal(t, enclosure.Option{Name: "join", Choice: "two-pieces"}, w.Try)
					assert.Contains(t, w.Detail, "In two pieces it does: join=two-pieces.")
				}
			}
			assert.NotEmpty(t, warned(s, "larger-than-sheet"))
			askTwo(r)
			s, err = solve.Solve(context.Background(), r)
			require.NoError(t, err)
			assert.Empty(t, warned(s, "larger-than-sheet"))
			require.NoError(t, s.CountYields(context.Background()))
			assert.Len(t, s.Yields, len(s.Pattern.Pieces))

			r = thick(t, name)
			r.SheetWidth, r.SheetHeight = width.Over(2), height.Over(2)
			s, err = solve.Solve(context.Background(), r)
			require.NoError(t, err)
			for _, w := range s.Warnings {
				assert.True(t, w.Try.Name == "" || w.Code == "unsure-fit")
				assert.NotContains(t, w.Detail, "two pieces")
			}
			assert.NotEmpty(t, warned(s, "larger-than-sheet"))
		})
	}
}

func BenchmarkSolveInTwoPieces(b *testing.B) {
	for _, name := range inTwo() {
		b.Run(name, func(b *testing.B) {
			r := thick(b, name)
			askTwo(r)
			benchmarkSolve(b, r)
		})
	}
}
