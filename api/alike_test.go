package api

import (
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"io"
	"net/http"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// calculations are the calls that compute, each once: of kinds a few, since all of them are
// read and told by the same code.
func calculations() (list []CallSpec) {
	seen := map[string]bool{}
	for _, spec := range CallSpecs() {
		call, kind := strings.Join(strings.Split(spec.Path, "/")[:3], "/"), spec.Path[strings.LastIndex(spec.Path, "/")+1:]
		if spec.Body == "" || seen[spec.Path] || call == "/v1/drawing" || call == "/v1/guide" {
			continue
		}
		if spec.Annotated != "" && !slices.Contains([]string{"slotted-band", "prism-box", "own"}, kind) {
			continue
		}
		seen[spec.Path] = true
		list = append(list, spec)
	}
	return list
}

// membersOf are those of an answer in JSON.
func membersOf(t *testing.T, a answer) map[string]json.RawMessage {
	t.Helper()
	var members map[string]json.RawMessage
	require.NoError(t, json.Unmarshal(a.ok().Body.Bytes(), &members))
	return members
}

// TestAQueryIsAFormIsJSON: the same request by a query, by a form and, where its body says
// the same, by JSON, has the same answer and the same tag; and its canonical address leads to
// it again, as the same one.
func TestAQueryIsAFormIsJSON(t *testing.T) {
	for _, spec := range calculations() {
		if spec.Path == "/v1/yield" {
			continue // how it was proven may be told otherwise
		}
		byQuery := get(t, spec.Path+"?"+spec.Example)
		byForm := call(t, shared(), http.MethodPost, spec.Path, spec.Example, "Content-Type", "application/x-www-form-urlencoded")
		assert.Equal(t, membersOf(t, byQuery), membersOf(t, byForm), spec.Path)
		assert.Equal(t, byQuery.Header().Get("ETag"), byForm.Header().Get("ETag"), spec.Path)
		byJSON := postJSON(t, spec.Path, spec.Body)
		if byJSON.Header().Get("ETag") == byQuery.Header().Get("ETag") {
			assert.Equal(t, membersOf(t, get(t, spec.Path+"?"+spec.Example)), membersOf(t, byJSON), spec.Path)
		}
		var links struct {
			Links struct{ Self string }
		}
		require.NoError(t, json.Unmarshal(get(t, spec.Path+"?"+spec.Example).Body.Bytes(), &links))
		if self := links.Links.Self; self != "" {
			assert.Equal(t, withoutTexts(t, get(t, spec.Path+"?"+spec.Example)), withoutTexts(t, get(t, self)), "%s leads to another answer", self)
		}
	}
}

// withoutTexts is an answer without the texts of the request, which it repeats as they were
// given.
func withoutTexts(t *testing.T, a answer) (whole any) {
	t.Helper()
	require.NoError(t, json.Unmarshal(a.ok().Body.Bytes(), &whole))
	var strip func(node any)
	strip = func(node any) {
		switch n := node.(type) {
		case []any:
			for _, entry := range n {
				strip(entry)
			}
		case map[string]any:
			delete(n, "given")
			delete(n, "text")
			for _, member := range n {
				strip(member)
			}
		}
	}
	strip(whole)
	return whole
}

// TestALineIsACall: a line of a batch is answered as the call alone.
func TestALineIsACall(t *testing.T) {
	for _, spec := range calculations() {
		if spec.Path == "/v1/match" || spec.Path == "/v1/suggest" {
			continue // they compare many, and are asked one by one
		}
		alone := postJSON(t, spec.Path, spec.Body)
		line := `{"call":"` + spec.Path + `",` + spec.Body[1:]
		a := call(t, shared(), http.MethodPost, "/v1/batch", line+"\n", "Content-Type", "application/x-ndjson").ok()
		var told struct {
			Status int
			Answer map[string]json.RawMessage
		}
		require.NoError(t, json.NewDecoder(a.Body).Decode(&told), spec.Path)
		assert.Equal(t, http.StatusOK, told.Status, spec.Path)
		assert.Equal(t, membersOf(t, alone), told.Answer, spec.Path)
	}
}

// TestPickedMembersAreTheWhole: each member picked is that of the whole answer, and all of
// them shown together are the whole.
func TestPickedMembersAreTheWhole(t *testing.T) {
	for _, spec := range calculations() {
		whole := membersOf(t, get(t, spec.Path+"?"+spec.Example))
		var names []string
		for name, member := range whole {
			names = append(names, name)
			picked := get(t, spec.Path+"?"+spec.Example+"&pick=/"+name).ok().Body.String()
			var text string
			if json.Unmarshal(member, &text) == nil {
				assert.Equal(t, text, picked, "%s %s: a text is picked without its quotes", spec.Path, name)
			} else if name != "links" {
				assert.JSONEq(t, string(member), picked, "%s %s", spec.Path, name)
			}
		}
		shown := membersOf(t, get(t, spec.Path+"?"+spec.Example+"&show="+strings.Join(names, ",")))
		for name, member := range whole {
			if name != "links" { // the canonical address says what is shown
				assert.Equal(t, string(member), string(shown[name]), "%s %s", spec.Path, name)
			}
		}
		assert.Len(t, shown, len(whole))
	}
}

// TestATableInXMLIsThatInCSV: as many rows, with the same cells under the same names.
func TestATableInXMLIsThatInCSV(t *testing.T) {
	for _, spec := range calculations() {
		rows := rowsOf(t, get(t, spec.Path+".csv?"+spec.Example).ok().Body.String())
		elements := elementsOf(t, get(t, spec.Path+".xml?"+spec.Example).ok().Body)
		require.Len(t, elements, len(rows)-1, spec.Path)
		for i, e := range elements {
			for column, cell := range rows[i+1] {
				name := strings.ReplaceAll(rows[0][column], " ", "_")
				if name == "what" && e.XMLName.Local != "row" {
					assert.Equal(t, strings.ReplaceAll(cell, " ", "-"), e.XMLName.Local, spec.Path)
					continue
				}
				assert.Equal(t, strings.TrimPrefix(cell, "'"), strings.TrimPrefix(e.attribute(name), "'"), "%s row %d %s", spec.Path, i+1, name)
			}
		}
	}
}

// element is one element of an answer in XML.
type element struct {
	XMLName    xml.Name
	Attributes []xml.Attr `xml:",any,attr"`
}

// attribute is the value of an attribute, empty if there is none.
func (e *element) attribute(name string) string {
	for _, a := range e.Attributes {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// elementsOf reads the elements within that of a whole answer.
func elementsOf(t *testing.T, body io.Reader) []element {
	t.Helper()
	d := xml.NewDecoder(body)
	d.CharsetReader = func(_ string, in io.Reader) (io.Reader, error) { return in, nil } // ASCII is UTF-8
	var document struct {
		Elements []element `xml:",any"`
	}
	require.NoError(t, d.Decode(&document))
	return document.Elements
}

// TestNumbersOfATableAreThoseOfTheAnswer: inches and millimetres, chances and minutes of a
// table stand in the JSON of the same request.
func TestNumbersOfATableAreThoseOfTheAnswer(t *testing.T) {
	for _, spec := range calculations() {
		numbers := map[string]bool{}
		d := json.NewDecoder(get(t, spec.Path+"?"+spec.Example).ok().Body)
		d.UseNumber()
		for token, err := d.Token(); err == nil; token, err = d.Token() {
			if n, ok := token.(json.Number); ok {
				numbers[n.String()] = true
			}
		}
		rows := rowsOf(t, get(t, spec.Path+".csv?"+spec.Example).ok().Body.String())
		looked := 0
		for column, name := range rows[0] {
			if !slices.Contains([]string{"in", "mm", "exact mm", "length in", "length mm", "chance", "minutes", "limit", "value", "left"}, name) || strings.HasSuffix(spec.Path, "stock") {
				continue
			}
			for _, row := range rows[1:] {
				if _, err := strconv.ParseFloat(row[column], 64); err == nil {
					looked++
					assert.True(t, numbers[row[column]], "%s: %s %s is nowhere in the answer", spec.Path, name, row[column])
				}
			}
		}
		if slices.Contains(rows[0], "mm") {
			assert.Positive(t, looked, spec.Path)
		}
	}
}

// TestDecimalCommasChangeNoNumber: with decimal=comma cells are parted by semicolons, and are
// the same but for their decimal marks.
func TestDecimalCommasChangeNoNumber(t *testing.T) {
	for _, spec := range calculations() {
		if strings.Contains(spec.Example, ".") || strings.Contains(spec.Example, "%2C") {
			continue // the request itself would be read otherwise
		}
		plain := rowsOf(t, get(t, spec.Path+".csv?"+spec.Example).ok().Body.String())
		read := csv.NewReader(get(t, spec.Path+".csv?"+spec.Example+"&decimal=comma").ok().Body)
		read.Comma = ';'
		rows, err := read.ReadAll()
		require.NoError(t, err, spec.Path)
		require.Len(t, rows, len(plain), spec.Path)
		for i, row := range rows {
			for column, cell := range row {
				if want := plain[i][column]; cell != want {
					assert.Equal(t, want, strings.Replace(cell, ",", ".", 1), "%s %s", spec.Path, rows[0][column])
				}
			}
		}
	}
}
