package sheet

import (
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
)

func TestRepeatReport(t *testing.T) {
	if os.Getenv("SHEET_CRAFT") == "" {
		t.Skip("report")
	}
	for _, kinds := range []int{2, 3, 5, 8} {
		for _, pieces := range []int{25, 70, 300, 3000} {
			bad, worst, gap := 0, time.Duration(0), 0
			for seed := range uint64(10) {
				r := rand.New(rand.NewPCG(seed, 3))
				o := Order{Sheets: []Stock{{Width: measure.Inches(12), Height: measure.Inches(12)}}, Ruler: sixteenth(t)}
				for k := range kinds {
					o.Items = append(o.Items, Item{Name: fmt.Sprint(k), Width: measure.Sixtyfourths(16 * (8 + r.Int64N(36))), Height: measure.Sixtyfourths(16 * (6 + r.Int64N(20))), Count: 1 + r.IntN(2*pieces/kinds)})
				}
				o.Effort = 100 * time.Millisecond
				if pieces > 25 {
					o.Effort = 2 * time.Second
				}
				start := time.Now()
				a, err := Plan(context.Background(), o)
				require.NoError(t, err)
				took := time.Since(start)
				require.NoError(t, Verify(o, a))
				worst = max(worst, took)
				if !a.Proven {
					bad++
					gap += a.Sheets - int(a.LowerBound)
				}
			}
			fmt.Println("kinds", kinds, "pieces", pieces, "unproven", bad, "gap", gap, "worst", worst)
		}
	}
}
