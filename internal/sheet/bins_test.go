package sheet

import (
	"context"
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
)

// binOrder reads one of the published bin-packing cases (J. O. Berkey, P. Y.
// Wang, J. Opl. Res. Soc. 38 (1987) 423-429; S. Martello, D. Vigo, Management
// Science 44 (1998) 388-399); a unit of theirs is a millimetre here.
func binOrder(t testing.TB, name string, turning bool) Order {
	text, err := os.ReadFile(published(t, "bins/"+name))
	require.NoError(t, err)
	_, body, found := strings.Cut(string(text), "***\n1\n")
	require.True(t, found)
	n := wholeNumbers(body)
	ruler, err := measure.ParseStep("1 mm")
	require.NoError(t, err)
	mm := func(n int) measure.Length { return measure.Millimetres(int64(n)) }
	o := Order{Sheets: []Stock{{Width: mm(n[0]), Height: mm(n[1]), Grain: AlongWidth}}, Ruler: ruler}
	for at := 3; at+2 < len(n); at += 3 {
		it := Item{Name: fmt.Sprint("case ", at/3), Width: mm(n[at]), Height: mm(n[at+1]), Count: n[at+2]}
		if !turning {
			it.Grain = AlongWidth
		}
		o.Items = append(o.Items, it)
	}
	require.Len(t, o.Items, n[2])
	return o
}

// The least sheets of H. Becker's doctoral thesis.
func TestPublishedBins(t *testing.T) {
	pieces := os.Getenv("SHEET_PIECES")
	if pieces == "" {
		pieces = "020"
	}
	effort := 10 * time.Second
	if e := os.Getenv("SHEET_EFFORT"); e != "" {
		effort, _ = time.ParseDuration(e)
	}
	for _, row := range rows(t, published(t, "known_bins.csv")) {
		if !strings.Contains(row[0], "_"+pieces+"_") {
			continue
		}
		t.Run(row[0]+"/"+row[1], func(t *testing.T) {
			o := binOrder(t, row[0], row[1] == "1")
			o.Effort = effort
			want, err := strconv.Atoi(row[2])
			require.NoError(t, err)
			start := time.Now()
			a, err := Plan(context.Background(), o)
			require.NoError(t, err)
			took := time.Since(start)
			require.NoError(t, Verify(o, a))
			assert.Equal(t, want, a.Sheets)
			assert.True(t, a.Proven, "lower bound %d", a.LowerBound)
			if took > 100*time.Millisecond || !a.Proven || a.Sheets != want {
				t.Logf("SLOW %s/%s want %d got %d lower %d in %v: %s", row[0], row[1], want, a.Sheets, a.LowerBound, took, a.Proof)
			}
		})
	}
}
