package search

import (
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
)

// binOrder reads one of the published bin-packing cases (J. O. Berkey, P. Y.
// Wang, J. Opl. Res. Soc. 38 (1987) 423-429; S. Martello, D. Vigo, Management
// Science 44 (1998) 388-399); a unit of theirs is a millimetre here.
func binOrder(t testing.TB, name string, turning bool) sheet.Order {
	text, err := os.ReadFile(published(t, "bins/"+name))
	require.NoError(t, err)
	_, body, found := strings.Cut(string(text), "***\n1\n")
	require.True(t, found)
	n := wholeNumbers(body)
	ruler, err := measure.ParseStep("1 mm")
	require.NoError(t, err)
	mm := func(n int) measure.Length { return measure.Millimetres(int64(n)) }
	o := sheet.Order{Sheets: []sheet.Stock{{Width: mm(n[0]), Height: mm(n[1]), Grain: sheet.AlongWidth}}, Ruler: ruler}
	for at := 3; at+2 < len(n); at += 3 {
		it := sheet.Item{Name: fmt.Sprint("case ", at/3), Width: mm(n[at]), Height: mm(n[at+1]), Count: n[at+2]}
		if !turning {
			it.Grain = sheet.AlongWidth
		}
		o.Items = append(o.Items, it)
	}
	require.Len(t, o.Items, n[2])
	return o
}

// binRow is one row of H. Becker's table of proven optima (doctoral thesis).
type binRow struct {
	name    string
	turning bool
	least   int
}

// binRows reads the rows for so many pieces. Rows whose sheets would be
// smaller than the pieces they hold cannot be right and are left out.
func binRows(t *testing.T, pieces string) []binRow {
	var all []binRow
	for _, row := range rows(t, published(t, "known_bins.csv")) {
		if !strings.Contains(row[0], "_"+pieces+"_") {
			continue
		}
		least, err := strconv.Atoi(row[2])
		require.NoError(t, err)
		r := binRow{row[0], row[1] == "1", least}
		if o := binOrder(t, r.name, r.turning); piecesArea(o) > float64(least)*o.Sheets[0].Width.Millimetres()*o.Sheets[0].Height.Millimetres() {
			t.Logf("left out: the pieces of %s are larger than %d sheets", r.name, least)
			continue
		}
		all = append(all, r)
	}
	return all
}

// piecesArea is the area of all pieces in square millimetres.
func piecesArea(o sheet.Order) float64 {
	sum := 0.0
	for _, it := range o.Items {
		sum += float64(it.Count) * it.Width.Millimetres() * it.Height.Millimetres()
	}
	return sum
}

// Every published bin of twenty pieces is proven.
func TestPublishedBinsOfTwentyPieces(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("seconds of searching")
	}
	list := binRows(t, "020")
	require.Len(t, list, 83)
	for _, r := range list {
		a := proven(t, binOrder(t, r.name, r.turning), muchWork)
		assert.Equal(t, r.least, a.Sheets, "%+v", r)
		assert.True(t, a.Proven, "%+v", r)
	}
}

func TestPublishedBinsOfMorePieces(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("ten seconds of searching")
	}
	for _, pieces := range []string{"040", "060", "080", "100"} {
		for i, r := range binRows(t, pieces) {
			if i%14 != 0 {
				continue
			}
			a := proven(t, binOrder(t, r.name, r.turning), 100_000_000)
			assert.LessOrEqual(t, a.Sheets, r.least+1, "%+v", r)
			assert.LessOrEqual(t, a.LowerBound, int64(r.least), "%+v", r)
		}
	}
}
