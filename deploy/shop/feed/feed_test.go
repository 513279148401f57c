package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"log/slog"
	"net/http/httptest"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api"
)

// asked runs the feed over a list.
func asked(t *testing.T, list string) []*kit {
	t.Helper()
	service := httptest.NewServer(api.New(api.DefaultConfig(), slog.New(slog.DiscardHandler)).Handler())
	t.Cleanup(service.Close)
	f := feed{service: service.URL, sheet: "a3", sheetPrice: 0.45, batch: 20, hour: 24, glue: 0.03}
	kits, err := f.read(strings.NewReader(list))
	require.NoError(t, err)
	return kits
}

// TestKitsOfTheStall packs the list of the stall: what is packed is larger than
// its contents and costs more than its glue.
func TestKitsOfTheStall(t *testing.T) {
	list, err := os.ReadFile("../kits.csv")
	require.NoError(t, err)
	kits := asked(t, string(list)+"K-9;Wrong;1;sleeve;oops;1 mm;1 mm;index-110;;;\n")
	require.Len(t, kits, 5)
	for _, k := range kits[:4] {
		require.Empty(t, k.problem, k.cells["id"])
		assert.GreaterOrEqual(t, k.length, k.width)
		assert.Greater(t, k.weight, number(k.cells["weight"]), "the paper counts")
		assert.Greater(t, k.empty, 0.0)
		assert.Less(t, k.empty, 0.5)
		assert.InDelta(t, k.paper+k.minutes/60*24+0.03, k.cost, 1e-9)
		assert.Greater(t, k.paper, 0.0)
	}
	assert.GreaterOrEqual(t, kits[0].length, 114.3+0.5, "two sides of card more than the tin")
	assert.Contains(t, kits[4].problem, "! width")

	var table bytes.Buffer
	require.NoError(t, writeTable(&table, kits))
	rows, err := csv.NewReader(&table).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, "Tin sleeve", rows[1][1])
	cost, err := strconv.ParseFloat(rows[1][10], 64)
	require.NoError(t, err)
	assert.InDelta(t, kits[0].cost, cost, 0.005)
	assert.Equal(t, []string{"", "", ""}, rows[5][3:6])
}

// TestFeedIsStructuredData: the sizes are told as schema.org has them, and can be
// read back.
func TestFeedIsStructuredData(t *testing.T) {
	kits := asked(t, "id,title,kind,unit,width,height,thickness,caliper\nA,Sleeve,sleeve,mm,95,60,24,0.3\n")
	var out bytes.Buffer
	require.NoError(t, writeProducts(&out, kits))
	var list struct {
		ItemListElement []product `json:"itemListElement"`
	}
	require.NoError(t, json.Unmarshal(out.Bytes(), &list))
	require.Len(t, list.ItemListElement, 1, kits[0].problem)
	p := list.ItemListElement[0]
	assert.Equal(t, "MMT", p.Width.Unit)
	assert.InDelta(t, kits[0].length, p.Depth.Value, 0.05)
	assert.Nil(t, p.Weight, "that of its contents is not known")
}

// TestListThatIsNone is refused with the service's own words.
func TestListThatIsNone(t *testing.T) {
	service := httptest.NewServer(api.New(api.DefaultConfig(), slog.New(slog.DiscardHandler)).Handler())
	t.Cleanup(service.Close)
	_, err := (&feed{service: service.URL}).read(strings.NewReader(""))
	assert.ErrorContains(t, err, "no readable header row")
}
