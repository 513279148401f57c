package api

import (
	"encoding/csv"
	"encoding/xml"
	"io"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/wire"
)

// rowsOf reads a table as RFC 4180 has it.
func rowsOf(t *testing.T, text string) [][]string {
	t.Helper()
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	require.NoError(t, err, text)
	return rows
}

// TestOneRuleForFormats asks each call that can be a table for each form of it,
// by the extension and by the name.
func TestOneRuleForFormats(t *testing.T) {
	for _, spec := range CallSpecs() {
		path := strings.ReplaceAll(spec.Path, "{kind}", "sleeve")
		if strings.HasPrefix(path, "/v1/drawing/") || strings.HasPrefix(path, "/v1/guide/") {
			continue // pictures and pages, not tables
		}
		for extension, format := range map[string]string{"json": "json", "csv": "csv", "xml": "xml", "txt": "text"} {
			byPath := get(t, path+"."+extension+"?"+spec.Example).ok()
			byName := get(t, path+"?"+spec.Example+"&format="+format).ok()
			if spec.Path != "/v1/yield" { // how it was proven may be told otherwise
				assert.Equal(t, byPath.Body.String(), byName.Body.String(), path)
			}
			switch format {
			case "csv":
				assert.Greater(t, len(rowsOf(t, byPath.Body.String())), 1, path)
			case "xml":
				d := xml.NewDecoder(byPath.Body)
				d.CharsetReader = func(_ string, in io.Reader) (io.Reader, error) { return in, nil } // ASCII is UTF-8
				var root struct{ XMLName xml.Name }
				require.NoError(t, d.Decode(&root), path)
			}
		}
	}
}

// TestTextsWarn: whoever reads an answer as text reads every warning of it, before the
// first measurement.
func TestTextsWarn(t *testing.T) {
	const doubtful = "unit=in&width=3-1/2&height=2&thickness=1/2&grammage=300"
	for query, code := range map[string]string{
		"/v1/solve/sleeve?" + doubtful + "&sheet=4x5":                                                                            "larger-than-sheet",
		"/v1/solve/lidded-box?" + doubtful + "&contents_tolerance=1/8":                                                           "unsure-fit",
		"/v1/solve/portfolio?" + doubtful + "&layers=tray&layers=sleeve":                                                         "estimated-caliper",
		"/v1/check/slotted-band?" + cards + "&blank=8-1/4x1-3/4&marks=1/2&marks=2-1/4&marks=5-7/8&marks=7-5/8&depths=1&depths=1": "one-score",
		"/v1/yield?unit=mm&sheet=210x297&blank=80.0123x50.00377":                                                                 "coarse-grid",
	} {
		text, codes := get(t, query+"&format=text").ok().Body.String(), []string{}
		for _, w := range decode[[]wire.Warning](get(t, query+"&pick=/warnings").ok()) {
			codes = append(codes, w.Code)
			at := strings.Index(text, w.Detail+"\n")
			require.GreaterOrEqual(t, at, 0, query)
			if strings.HasPrefix(query, "/v1/solve") {
				assert.Less(t, at, strings.Index(text, " width: "), query)
			}
		}
		assert.Contains(t, codes, code, query)
	}
}

// TestPlansWarnInGerman: what a plan warns of is said in its language, of the enclosures in
// it as their guides say it.
func TestPlansWarnInGerman(t *testing.T) {
	const order = "/v1/yield?unit=mm&sheet=210x297&language=de&items="
	solved := order + url.QueryEscape(`{"kind":"sleeve","width":"80mm","height":"50mm","thickness":"10mm","grammage":300,"count":1}`)
	guide := get(t, "/v1/guide/sleeve.txt?unit=mm&width=80&height=50&thickness=10&grammage=300&language=de").ok().Body.String()
	warned := decode[[]wire.Warning](get(t, solved+"&pick=/warnings").ok())
	require.Len(t, warned, 1)
	said, of := strings.CutPrefix(warned[0].Detail, "sleeve: ")
	assert.True(t, of)
	assert.Contains(t, strings.Join(strings.Fields(guide), " "), strings.Join(strings.Fields(said), " "))
	coarse := order + url.QueryEscape(`{"blank":"80.0123x50.00377"}`)
	assert.Regexp(t, `Vielfache von 0,\d+ mm`, get(t, coarse+"&format=text").ok().Body.String())
}

// TestListsAsTables: a row an entry, for drop-downs.
func TestListsAsTables(t *testing.T) {
	rows := rowsOf(t, get(t, "/v1/contents.csv").ok().Body.String())
	assert.Equal(t, []string{"name", "title", "width_reading", "width_in", "width_mm"}, rows[0][:5])
	card := rows[1]
	assert.Equal(t, "id-1", card[0])
	assert.Equal(t, "85.6", card[4], "ISO/IEC 7810: an ID-1 card is 85.60 mm wide")
	kinds := rowsOf(t, get(t, "/v1/kinds.csv?header=0").ok().Body.String())
	assert.Equal(t, "slotted-band", kinds[0][0])
	posts := rowsOf(t, get(t, "/v1/posts.csv").ok().Body.String())
	assert.Equal(t, "name", posts[0][0])
	assert.Contains(t, get(t, "/v1/kinds.json").ok().Body.String(), `"kinds":[`)
	assert.Contains(t, get(t, "/v1/limits.txt").ok().Body.String(), "/batch_line_bytes: 65536\n")
	get(t, "/v1/contents.pdf").problem(http.StatusBadRequest)
	comma := get(t, "/v1/sheets/sizes.csv?decimal=comma").ok().Body.String()
	assert.Contains(t, comma, ";215,9;")
}

// TestPickedTables: a picked list is a table with a row an item, a picked object
// one with a row a member, a single value one cell.
func TestPickedTables(t *testing.T) {
	const base = "/v1/solve/slotted-band.csv?" + cards
	scores := rowsOf(t, get(t, base+"&pick=/pieces/0/scores").ok().Body.String())
	assert.Equal(t, "name", scores[0][0])
	assert.Len(t, scores, 5)
	assert.Equal(t, "value\r\n2.25\r\n", get(t, base+"&pick=/pieces/0/scores/1/at/in").ok().Body.String())
	assert.Equal(t, "2,25\r\n", get(t, base+"&pick=/pieces/0/scores/1/at/in&header=0&decimal=comma").ok().Body.String())
	assert.Equal(t, "/width/reading", rowsOf(t, get(t, base+"&pick=/pieces/0/blank").ok().Body.String())[1][0])
	assert.Equal(t, "text/csv; charset=utf-8", get(t, base+"&pick=/pieces/0/scores").ok().Header().Get("Content-Type"), "a table is no plain text")
	assert.Equal(t, "application/xml", get(t, strings.Replace(base, ".csv", ".xml", 1)+"&pick=/step").ok().Header().Get("Content-Type"))
	get(t, base+"&pick=/nothing").problem(http.StatusBadRequest)
}

// TestCheckAsTable has a verdict, the clearances, and what would mend it.
func TestCheckAsTable(t *testing.T) {
	rows := rowsOf(t, get(t, "/v1/check/slotted-band.csv?unit=in&width=3.5&thickness=0.09&caliper=0.012&fit=snug&blank=8-1/4x1-3/4&marks=1/2&marks=2-1/4&marks=5-7/8&marks=7-5/8&depths=1&depths=1").ok().Body.String())
	assert.Equal(t, []string{"what", "name", "says", "chance", "reading", "in", "mm"}, rows[0])
	assert.Equal(t, []string{"verdict", "", "no"}, rows[1][:3])
	assert.Contains(t, rows, []string{"mend", "right front", "from 1 3/4 in", "", "1 7/8 in", "1.875", "47.625"})
}

// Texts to read aloud have the decimal mark that was asked for, in sentences too.
func TestSentencesHaveTheDecimalMark(t *testing.T) {
	point := regexp.MustCompile(`\d\.\d+ ?(mm|in|g|%|x)`)
	for _, target := range []string{
		"/v1/check/sleeve?unit=mm&width=90&height=60&thickness=5&caliper=0,25&blank=205,5x60&marks=92,5&marks=99&marks=191&marks=198&decimal=comma",
		"/v1/yield?unit=mm&blank=60,5x40&sheet=210x297&margin=3,5&decimal=comma",
		"/v1/mail?unit=mm&width=120,5&height=90,5&thickness=3,2&mass=20&decimal=comma",
	} {
		text := get(t, target+"&format=text").ok().Body.String()
		assert.NotRegexp(t, point, text)
		assert.Regexp(t, `\d,\d+ ?(mm|in|g|%|x)`, text, target)
	}
}
