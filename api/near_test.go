package api

import (
	"net/http"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/wire"
)

// A card measured with a ruler is that of ISO/IEC 7810 (85.60 x 53.98 mm), an
// envelope of 9 1/2 x 4 1/8 in the American no. 10, a sheet of 8 1/4 x 11 3/4 in
// A4 (ISO 216), whichever way up they are measured.
func TestPresetsAreFoundBySize(t *testing.T) {
	for query, want := range map[string]struct {
		name   string
		off    float64
		turned bool
	}{
		"near=86+x+54+mm":           {"id-1", 0.4, false},
		"near=54x86mm&top=3":        {"id-1", 0.4, true},
		"near=9-1/2x4-1/8in":        {"envelope-us-10", 0, true},
		"unit=mm&near=85x55&top=50": {"business-card-eu", 0, false},
	} {
		list := decode[wire.ContentsList](get(t, "/v1/contents?"+query).ok()).Contents
		assert.Equal(t, want.name, list[0].Name, query)
		assert.InDelta(t, want.off, list[0].Off.MM, 1e-9, query)
		assert.Equal(t, want.turned, list[0].Turned, query)
		for i := range list[1:] {
			assert.LessOrEqual(t, list[i].Off.MM, list[i+1].Off.MM, query)
		}
	}
	sheets := decode[wire.SheetList](get(t, "/v1/sheets/sizes?near=11-3/4x8-1/4in&top=2").ok()).Sheets
	require.Len(t, sheets, 2)
	assert.Equal(t, "a4", sheets[0].Name)
	assert.True(t, sheets[0].Turned)
}

func TestListsAreWholeUnlessSearched(t *testing.T) {
	whole := decode[wire.ContentsList](get(t, "/v1/contents").ok()).Contents
	near := decode[wire.ContentsList](get(t, "/v1/contents?near=1x1in").ok()).Contents
	assert.Len(t, near, len(whole), "the order changes, not what there is")
	assert.Equal(t, "id-1", whole[0].Name)
	assert.Nil(t, whole[0].Off)
	assert.Len(t, decode[wire.ContentsList](get(t, "/v1/contents?top=4").ok()).Contents, 4)
	for query, code := range map[string]string{"near=86": "unreadable", "near=0x5mm": "out-of-range", "near=86x54": "no-unit", "top=0": "out-of-range", "size=1x1in": "unknown"} {
		assert.Equal(t, code, get(t, "/v1/contents?"+query).problem(http.StatusBadRequest).Errors[0].Code, query)
	}
}
