package api

import (
	"context"
	"encoding/csv"
	"fmt"
	"io"
	"net/http"
	"runtime"
	"strings"
	"sync/atomic"
	"testing"

	"github.com/labstack/echo/v4"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"

	"creasefit/api/ask"
)

// postTable sends a table to a batch and reads the table that comes back.
func postTable(t *testing.T, query, media, body string) (header []string, rows [][]string, a answer) {
	t.Helper()
	a = call(t, shared(), http.MethodPost, "/v1/batch"+query, body, "Content-Type", media).ok()
	r := csv.NewReader(strings.NewReader(strings.TrimPrefix(a.Body.String(), byteOrderMark)))
	for name, c := range map[string]rune{"semicolon": ';', "tab": '\t', "bar": '|'} {
		if strings.Contains(a.Header().Get("Table-Dialect"), "separator="+name) {
			r.Comma = c
		}
	}
	rows, err := r.ReadAll() // each row as long as the header, as RFC 4180 wants it
	require.NoError(t, err, a.Body.String())
	return rows[0], rows[1:], a
}

// inEncoding writes a text in another encoding.
func inEncoding(t *testing.T, e encoding.Encoding, text string) string {
	t.Helper()
	out, err := e.NewEncoder().String(text)
	require.NoError(t, err)
	return out
}

// plainTable is an export with columns of the shop's own: the second line is bad.
const plainTable = "sku,title,price,width,thickness,caliper\r\n" +
	"T-1,\"Tasting cards, set\",4.50,89.5 mm,2.5 mm,0.3 mm\r\nT-2,Honig fürs Brot,12.00,oops,3 mm,0.3 mm\r\nT-3,Teebeutel,3.20,70.5 mm,20 mm,0.25 mm\r\n"

// commaTable is the same where numbers are written with a comma.
var commaTable = strings.NewReplacer(`"Tasting cards, set"`, "Tasting cards, set", ",", ";", "89.5", "89,5", "2.5", "2,5", "0.3", "0,3", "0.25", "0,25", "70.5", "70,5",
	"4.50", "4,50", "12.00", "12,00", "3.20", "3,20").Replace(strings.Replace(plainTable, `"Tasting cards, set"`, "Tasting cards", 1))

// TestTwelveDialects sends exports in the habits that RFC 4180 and the CSV
// dialects of spreadsheets in use have: separators, marks, encodings, quotes and
// line ends. Each comes back with its columns in order and its bad line named.
func TestTwelveDialects(t *testing.T) {
	change := func(text string, pairs ...string) string { return strings.NewReplacer(pairs...).Replace(text) }
	tabs := change(strings.Replace(plainTable, `"Tasting cards, set"`, "Tasting cards", 1), ",", "\t")
	for name, c := range map[string]struct{ media, body, found string }{
		"RFC 4180":                      {"text/csv", plainTable, "separator=comma, encoding=utf-8, decimal=point"},
		"line feeds, none at the end":   {"text/csv", strings.TrimSuffix(change(plainTable, "\r", ""), "\n"), "separator=comma, encoding=utf-8, decimal=point"},
		"semicolons and decimal commas": {"text/csv", commaTable, "separator=semicolon, encoding=utf-8, decimal=comma"},
		"tabs":                          {"text/csv", tabs, "separator=tab, encoding=utf-8, decimal=point"},
		"tabs by their media type":      {"text/tab-separated-values", tabs, "separator=tab, encoding=utf-8, decimal=point"},
		"bars":                          {"text/csv", change(tabs, "\t", "|"), "separator=bar, encoding=utf-8, decimal=point"},
		"UTF-8 with a byte order mark":  {"text/csv; charset=utf-8", byteOrderMark + commaTable, "separator=semicolon, encoding=utf-8, decimal=comma"},
		"UTF-16, little endian, tabs":   {"text/csv", inEncoding(t, unicode.UTF16(unicode.LittleEndian, unicode.UseBOM), tabs), "separator=tab, encoding=utf-16le, decimal=point"},
		"UTF-16, big endian, no mark":   {"text/csv", inEncoding(t, unicode.UTF16(unicode.BigEndian, unicode.IgnoreBOM), commaTable), "separator=semicolon, encoding=utf-16be, decimal=comma"},
		"Windows-1252":                  {"text/csv", inEncoding(t, charmap.Windows1252, commaTable), "separator=semicolon, encoding=windows-1252, decimal=comma"},
		"carriage returns alone":        {"text/csv", change(plainTable, "\n", ""), "separator=comma, encoding=utf-8, decimal=point"},
		"a first line with sep=":        {"text/csv", "sep=;\r\n" + commaTable, "separator=semicolon, encoding=utf-8, decimal=comma"},
		"headings with capitals, all quoted, a line break in a cell": {"text/csv", change(plainTable, "width", `"Width"`, "thickness", `"Thickness"`, "Teebeutel", "\"Tee-\nbeutel\""),
			"separator=comma, encoding=utf-8, decimal=point"},
		"inch marks that nothing quotes": {"text/csv", change(plainTable, "89.5 mm", `3 1/2"`, "70.5 mm", `2 3/4"`), "separator=comma, encoding=utf-8, decimal=point"},
	} {
		header, rows, a := postTable(t, "?call=/v1/solve/band&unit=mm&columns=/pieces/0/blank/width/mm,/given/caliper/mm,/pieces/7/name", c.media, c.body)
		said := a.Header().Get("Table-Dialect")
		assert.True(t, strings.HasPrefix(said, c.found), "%s: %s", name, said)
		assert.Contains(t, said, `read=("width" "thickness" "caliper"), passed=("sku" "title" "price")`, name)
		assert.Equal(t, []string{"sku", "title", "price", "width", "thickness", "caliper", "line", "problem", "/pieces/0/blank/width/mm", "/given/caliper/mm", "/pieces/7/name"},
			lowered(header), name)
		require.Len(t, rows, 3, name)
		assert.Equal(t, "T-1 T-2 T-3", rows[0][0]+" "+rows[1][0]+" "+rows[2][0], name)
		assert.Equal(t, "Honig fürs Brot", rows[1][1], name)
		assert.Equal(t, "2", rows[1][6], name)
		assert.True(t, strings.HasPrefix(rows[1][7], "! width: cannot read 'oops'"), "%s: %s", name, rows[1][7])
		assert.Empty(t, rows[0][7]+rows[2][7]+rows[0][10], name)
		assert.NotEmpty(t, rows[0][8], name)
		assert.Equal(t, map[bool]string{true: "0,25", false: "0.25"}[strings.Contains(c.found, "decimal=comma")], rows[2][9], name)
		assert.Equal(t, strings.HasPrefix(c.body, byteOrderMark) || strings.HasPrefix(c.body, "\xff\xfe"), strings.HasPrefix(a.Body.String(), byteOrderMark), name)
	}
}

// lowered writes headings in lower case.
func lowered(list []string) []string {
	return strings.Split(strings.ToLower(strings.Join(list, "\x00")), "\x00")
}

// TestTableComesBackAndGoesInAgain sends what came back once more: it has more
// columns and gives the same values.
func TestTableComesBackAndGoesInAgain(t *testing.T) {
	const query = "?call=solve&kind=band&columns=/pieces/0/blank/width/mm"
	_, once, a := postTable(t, query, mediaCSV, commaTable)
	_, twice, _ := postTable(t, query, mediaCSV, a.Body.String())
	for i := range once {
		assert.Equal(t, once[i], twice[i][:len(once[i])])
		assert.Equal(t, once[i][len(once[i])-1], twice[i][len(twice[i])-1])
	}
}

// TestTableHasTheRowsOfTheCall: without columns a line has the rows that its
// call alone answers with, in every table there is.
func TestTableHasTheRowsOfTheCall(t *testing.T) {
	for _, c := range []struct{ path, header, row, query string }{
		{"/v1/solve/band", "sku,unit,width,thickness,caliper", "a,mm,90,10,0.3", "unit=mm&width=90&thickness=10&caliper=0.3"},
		{"/v1/mail", "sku,unit,width,height,thickness,post", "a,mm,114,162,3,us; de", "unit=mm&width=114&height=162&thickness=3&post=us&post=de"},
		{"/v1/ruler", "sku,length", "a,92.1 mm | 1 in", "length=92.1mm&length=1in"},
		{"/v1/yield", "sku,unit,sheet,blank,count", "a,in,12x12,8-1/4x1-3/4,25", "unit=in&sheet=12x12&blank=8-1/4x1-3/4&count=25"},
		{"/v1/stock", "sku,unit,grammage,caliper", "a,mm,270,0.3", "unit=mm&grammage=270&caliper=0.3"},
		{"/v1/check/slotted-band", "sku,unit,width,thickness,caliper,fit,blank,marks,depths", `a,in,3.5,0.09,0.012,snug,8-1/4x1-1/2,"1/2, 2-1/4, 5-7/8, 7-3/4","[""7/8"",""7/8""]"`,
			"unit=in&width=3.5&thickness=0.09&caliper=0.012&fit=snug&blank=8-1/4x1-1/2&marks=1/2&marks=2-1/4&marks=5-7/8&marks=7-3/4&depths=7/8&depths=7/8"},
	} {
		header, rows, _ := postTable(t, "?call="+c.path, mediaCSV, c.header+"\r\n"+c.row+"\r\n")
		alone := get(t, c.path+".csv?"+c.query).ok().Body.String()
		own := len(strings.Split(c.header, ","))
		var back strings.Builder
		w := csv.NewWriter(&back)
		w.UseCRLF = true
		require.NoError(t, w.Write(header[own+2:]))
		for _, row := range rows {
			assert.Equal(t, []string{"a", "1", ""}, []string{row[0], row[own], row[own+1]}, "%v", row)
			require.NoError(t, w.Write(row[own+2:]))
		}
		w.Flush()
		assert.Equal(t, alone, back.String(), c.path)
	}
}

// TestWhatABatchSaysForAllLines: names of the address hold for lines that have
// none of their own, in every form, and are refused where no line could have
// them.
func TestWhatABatchSaysForAllLines(t *testing.T) {
	const query = "/v1/batch?call=/v1/solve&kind=band&unit=in&caliper=0.012&thickness=0.09"
	lines := readLines(t, call(t, shared(), http.MethodPost, query, `{"width":3.5}`+"\n"+`{"kind":"sleeve","width":3.5,"height":5,"caliper":"0.02 in"}`+"\n"+
		`{"call":"/v1/ruler","length":"1 in"}`, "Content-Type", mediaLines).ok().Body.String())
	assert.Contains(t, string(lines[0].Answer), `"kind":"band"`)
	assert.Contains(t, string(lines[1].Answer), `"kind":"sleeve"`)
	assert.Contains(t, string(lines[1].Answer), `"caliper":{"text":"0.02 in"`)
	assert.Equal(t, http.StatusBadRequest, lines[2].Status, "the ruler has no caliper")
	array := call(t, shared(), http.MethodPost, query, `[{"width":3.5,"pick":"/pieces/0/blank/width/in"},{"width":"3.5","show":"kind"}]`, "Content-Type", "application/json").ok().Body.String()
	assert.JSONEq(t, `[{"line":1,"status":200,"answer":7.875},{"line":2,"status":200,"answer":{"kind":"band"}}]`, array)
	for bad, name := range map[string]string{"?nonsense=1": "nonsense", "?call=/v1/solve/band&blank=3x4": "blank", "?call=/v1/solve/bend": "call", "?kind=band&call=solve&columns=/a,b": "columns",
		"?format=json": "format"} {
		p := call(t, shared(), http.MethodPost, "/v1/batch"+bad, "width\n3", "Content-Type", mediaCSV).problem(http.StatusBadRequest)
		assert.Equal(t, name, p.Errors[0].Name, bad)
	}
	p := call(t, shared(), http.MethodPost, "/v1/batch?widht=3", "{}", "Content-Type", mediaLines).problem(http.StatusBadRequest)
	assert.Equal(t, "did you mean width?", p.Errors[0].Hint)
	call(t, shared(), http.MethodPost, "/v1/batch?columns=/unit", "{}", "Content-Type", mediaLines).problem(http.StatusBadRequest)
	call(t, shared(), http.MethodPost, "/v1/batch", "width\n3", "Content-Type", "text/csv; charset=koi8-r").problem(http.StatusUnsupportedMediaType)
}

// TestColumnsThatAreNoNamesPass keeps a mistake apart from a column of the
// shop's: a name of another kind is refused, what no kind knows passes.
func TestColumnsThatAreNoNamesPass(t *testing.T) {
	_, rows, a := postTable(t, "?call=solve&columns=/kind,/pieces/0/blank/widht", mediaCSV, "Titel,kind,unit,width,height,thickness,caliper,lid_depth,title\n"+
		"\"=1+1\",band,in,3,5,1,0.01,,x\nä,band,in,3,5,1,0.01,1,y\nb,tray,in,3,5,1,0.01,,z\nc,tray,in,3,5,1,0.01,,z,surplus\nd,nothing,in,3,5,1,0.01\n")
	assert.Contains(t, a.Header().Get("Table-Dialect"), `passed=("Titel" "title")`)
	assert.Equal(t, []string{"'=1+1", "band"}, []string{rows[0][0], rows[0][11]})
	assert.Contains(t, rows[0][10], `! columns: the answer has no member "widht" there`, "and the other values are told all the same")
	assert.Contains(t, rows[1][10], "! lid_depth: no such name")
	assert.Equal(t, "tray", rows[2][11])
	assert.Contains(t, rows[3][10], "more cells than the header")
	assert.Contains(t, rows[4][10], "no such call")
}

// TestTableOfSeveralCalls: what is no table like the first line's is said to be
// none, and columns tell values of any.
func TestTableOfSeveralCalls(t *testing.T) {
	const table = "id,call,unit,width,thickness,caliper,sheet,blank,count,height\r\na,/v1/solve/band,in,3,1,0.012,,,,\r\nb,/v1/yield,in,,,,12x12,8-1/4x1-3/4,25,\r\n" +
		"c,/v1/drawing/band,in,3,1,0.012,,,,\r\n"
	_, rows, _ := postTable(t, "", mediaCSV, table)
	for _, row := range rows[len(rows)-2:] {
		assert.Contains(t, row[11], "! call: its answer is no table like that of the first line")
	}
	_, rows, _ = postTable(t, "?columns=/kind", mediaCSV, table)
	require.Len(t, rows, 3)
	assert.Equal(t, "band", rows[0][12])
	_, rows, _ = postTable(t, "?columns=/sheets", mediaCSV, table)
	assert.Equal(t, "4", rows[1][12])
}

// TestTableIsPickedByColumns: what narrows a single answer is refused in a table, in
// the address as in a column of it.
func TestTableIsPickedByColumns(t *testing.T) {
	for _, query := range []string{"?call=/v1/ruler&pick=/unit", "?call=/v1/ruler&show=unit&columns=/unit"} {
		_, rows, _ := postTable(t, query, mediaCSV, "length\r\n1 in\r\n")
		assert.Contains(t, rows[0][2], "the values of a table are picked by columns", query)
	}
	_, rows, _ := postTable(t, "?call=/v1/ruler", mediaCSV, "length,pick\r\n1 in,/unit\r\n1 in,\r\n")
	assert.Contains(t, rows[0][3], "picked by columns")
	assert.Empty(t, rows[1][3])
}

// TestDecimalOfATable: the address goes before what is found, and what can be
// read in two ways is not guessed.
func TestDecimalOfATable(t *testing.T) {
	const query, table = "?call=/v1/solve/band&unit=mm&columns=/given/width/mm", "width;thickness;caliper\n1,234;2;1\n"
	_, rows, _ := postTable(t, query, mediaCSV, table)
	assert.Contains(t, rows[0][4], "decimal mark or group thousands", "1,234 alone may be thousands")
	_, rows, _ = postTable(t, query+"&decimal=comma", mediaCSV, strings.Replace(table, "1,234", "21,234", 1))
	assert.Equal(t, "21,234", rows[0][5])
	_, rows, _ = postTable(t, query, mediaCSV, strings.Replace(table, "1,234;2;1", "21,234;2,5;0,3", 1))
	assert.Equal(t, "21,234", rows[0][5], "the other numbers say it")
}

// hasty is a calculation that runs out of time once.
type hasty struct{ tries atomic.Int32 }

func (*hasty) words() []string   { return nil }
func (*hasty) columns() []string { return nil }

func (h *hasty) lasting() bool { return false }

func (h *hasty) appendAnswer(_ *host, _ echo.Context, _ func(*ask.Reading), as lineForm, dst []byte) ([]byte, *problem) {
	if h.tries.Add(1); !as.again {
		return dst, single(codeTookTooLong, "the calculation takes longer than it may", "")
	}
	return append(dst, `{"kind":"hasty"}`...), nil
}

// TestLineThatRanOutOfTimeIsWorkedAgain: one more time, in any form.
func TestLineThatRanOutOfTimeIsWorkedAgain(t *testing.T) {
	s, h := quiet(), &hasty{}
	s.batches.lines["/v1/hasty"] = h
	lines := readLines(t, call(t, s, http.MethodPost, "/v1/batch", `{"call":"/v1/hasty"}`, "Content-Type", mediaLines).ok().Body.String())
	assert.Equal(t, http.StatusOK, lines[0].Status)
	assert.EqualValues(t, 2, h.tries.Load())
	a := call(t, s, http.MethodPost, "/v1/batch?columns=/kind&call=hasty", "sku\nx\n", "Content-Type", mediaCSV).ok()
	assert.Equal(t, "sku,line,problem,/kind\r\nx,1,,hasty\r\n", a.Body.String())
}

// wideTable is a table of n products, and the same as lines.
func wideTable(n int) (table, lines string) {
	var t, l strings.Builder
	t.WriteString("sku,width\n")
	for i := range n {
		fmt.Fprintf(&t, "p%d,%d %d/8\n", i, 3+i%5, i%7+1)
		l.WriteString(cardLine(i, fmt.Sprintf("%d %d/8", 3+i%5, i%7+1)) + "\n")
	}
	return t.String(), l.String()
}

const wideQuery = "/v1/batch?call=/v1/solve/slotted-band&unit=in&thickness=0.09&caliper=0.012&columns=/pieces/0/blank/width/reading,/sure/chance"

// BenchmarkWideTable compares 10 000 products as a wide table with the same as
// JSON lines, in turns: wide-of-lines is the ratio of their times.
func BenchmarkWideTable(b *testing.B) {
	url := listen(b, quiet().Handler())
	table, lines := wideTable(10_000)
	send := func(query, media, body string) {
		response, err := http.Post(url+query, media, strings.NewReader(body))
		require.NoError(b, err)
		_, err = io.Copy(io.Discard, response.Body)
		require.NoError(b, err)
		response.Body.Close()
		require.Equal(b, http.StatusOK, response.StatusCode)
	}
	var wide, plain spent
	for b.Loop() {
		plain.add(func() { send("/v1/batch", mediaLines, lines) })
		wide.add(func() { send(wideQuery, mediaCSV, table) })
	}
	b.ReportMetric(wide.wall/plain.wall, "wide-of-lines")
}

// TestTableOfAnyLengthNeedsLittleMemory streams rows that nobody keeps: what the
// process holds does not grow with their number.
func TestTableOfAnyLengthNeedsLittleMemory(t *testing.T) {
	rows := 100_000
	if testing.Short() {
		rows = 5_000
	}
	s := quiet()
	s.batches.lines["/v1/hasty"] = &hasty{}
	url := listen(t, s.Handler())
	reader, writer := io.Pipe()
	go func() {
		_, _ = io.WriteString(writer, "sku,title\n")
		for i := range rows {
			_, _ = fmt.Fprintf(writer, "p%d,%s\n", i, strings.Repeat("x", 100))
		}
		_ = writer.Close()
	}()
	request, err := http.NewRequestWithContext(context.Background(), http.MethodPost, url+"/v1/batch?call=hasty&columns=/kind", reader)
	require.NoError(t, err)
	request.Header.Set("Content-Type", mediaCSV)
	response, err := http.DefaultClient.Do(request)
	require.NoError(t, err)
	defer response.Body.Close()
	read := csv.NewReader(response.Body)
	read.ReuseRecord = true
	most, count := uint64(0), 0
	for ; ; count++ {
		if _, err := read.Read(); err == io.EOF {
			break
		} else {
			require.NoError(t, err)
		}
		if count%(rows/10) == 0 {
			var m runtime.MemStats
			runtime.GC()
			runtime.ReadMemStats(&m)
			most = max(most, m.HeapAlloc)
		}
	}
	assert.Equal(t, rows+1, count)
	assert.Less(t, most, uint64(96<<20))
}
