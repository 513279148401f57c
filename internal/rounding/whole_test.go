package rounding_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
	"creasefit/internal/rounding"
)

// minors returns the greatest common divisor of the two by two minors of two rows.
func minors(a, b []int64) int64 {
	var all int64
	for i := range a {
		for j := range i {
			for x, y := all, a[i]*b[j]-a[j]*b[i]; ; x, y = y, x%y {
				if all = x; y == 0 {
					break
				}
			}
		}
	}
	return max(all, -all)
}

// Two equations have a solution in whole numbers just if the minors of their coefficients have the same
// greatest common divisor as those with the goals (I. Heger, 1856, for equations that do not depend on
// one another).
func TestWholeSolutionsAreThoseOfHeger(t *testing.T) {
	random := rand.New(rand.NewPCG(1856, 2))
	inch := measure.Marks(measure.Inch)[0]
	var whole, broken int
	for whole+broken < 20_000 {
		n := 2 + random.IntN(4)
		var rows [2][]int64
		p := &rounding.Problem{Readings: make([]rounding.Reading, n)}
		for i := range p.Readings {
			p.Readings[i] = rounding.Reading{Min: inch.Size().Times(random.Int64N(9)), Max: inch.Size().Times(9 + random.Int64N(9))}
		}
		for k := range rows {
			f := rounding.Form{}
			for i := range n {
				rows[k] = append(rows[k], random.Int64N(13)-6)
				f.Terms = append(f.Terms, rounding.Term{Reading: i, Coefficient: rows[k][i]})
			}
			goal := random.Int64N(60) - 30
			f.Constant, rows[k] = inch.Size().Times(-goal), append(rows[k], goal)
			p.Closures = append(p.Closures, rounding.Closure{Form: f})
		}
		of := minors(rows[0][:n], rows[1][:n])
		if of == 0 {
			continue // one depends on the other
		}
		want := of == minors(rows[0], rows[1])
		require.Equal(t, want, rounding.NewSearch(p).Whole(inch), "%v", rows)
		if want {
			whole++
		} else {
			broken++
		}
	}
	require.Greater(t, min(whole, broken), 4_000)
}
