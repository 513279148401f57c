package api

import (
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A byte order mark goes before what the media type says, that before what the bytes
// look like (RFC 2781 for the marks of UTF-16).
func TestEncodingsAreFound(t *testing.T) {
	for _, c := range []struct {
		sample, charset, want string
		marked                bool
	}{
		{"a,b", "", "utf-8", false},
		{"a,b", "windows-1252", "windows-1252", false},
		{byteOrderMark + "a", "windows-1252", "utf-8", true},
		{"\xff\xfea\x00", "utf-8", "utf-16le", true},
		{"\xfe\xff\x00a", "utf-8", "utf-16be", true},
		{"a\x00,\x00", "", "utf-16le", false},
		{"\x00a\x00,", "", "utf-16be", false},
		{"\x00a\x00,", "us-ascii", "us-ascii", false},
		{"fürs", "", "utf-8", false},
		{"f\xfcrs", "", "windows-1252", false},
		{"fü"[:2], "", "utf-8", false}, // the sample ends within a character
		{"f\xfc", "", "windows-1252", false},
		{strings.Repeat("a", 200) + "\x00", "", "utf-8", false},
	} {
		var d dialect
		d.findEncoding([]byte(c.sample), c.charset)
		assert.Equal(t, c.want, d.encoding, "%q as %q", c.sample, c.charset)
		assert.Equal(t, c.marked, d.marked, "%q as %q", c.sample, c.charset)
	}
	d := dialect{encoding: "utf-16be", bareCR: true}
	text, err := io.ReadAll(d.reader(strings.NewReader("\x00a\x00\r\x00b")))
	require.NoError(t, err)
	assert.Equal(t, "a\nb", string(text))
}

// What keeps a table from being read at all, by its problem.
func TestTablesThatCannotBeRead(t *testing.T) {
	const from = "/v1/batch?call=/v1/solve/band"
	for name, c := range map[string]struct {
		body, said string
		status     int
		set        []string
	}{
		"nothing":          {"", "the table has no readable header row", 400, nil},
		"too many columns": {strings.Repeat("a,", mostColumns) + "a\n", "the table has no readable header row", 400, nil},
		"an endless quote": {`"` + strings.Repeat("a", mostSample), "the header row is too long", 400, nil},
		"a long header":    {strings.Repeat("\xfc", mostLine/2+1) + "\nb\n", "the header row is too long", 400, nil},
		"compressed":       {"width\n1\n", "compressed bodies are not read", 415, []string{"Content-Encoding", "gzip"}},
	} {
		p := call(t, shared(), "POST", from, c.body, append([]string{"Content-Type", mediaCSV}, c.set...)...).problem(c.status)
		assert.Contains(t, p.Detail, c.said, name)
	}
	odd := call(t, shared(), "POST", from+"&unit=mm&thickness=3&caliper=0.3", "\xff\xfew\x00i\x00d\x00t\x00h\x00\n\x009\x000\x00\n\x00x", "Content-Type", mediaCSV).ok()
	assert.Contains(t, odd.Body.String(), "cannot read '\ufffd'", "half of a character is an unknown one")
}

// The examples of RFC 9651: inner lists of strings (3.1.1), and a text that is no ASCII
// (3.3.8).
func TestListsInAHeaderField(t *testing.T) {
	assert.Equal(t, `("foo" "bar")`, innerList([]string{"foo", "bar"}))
	assert.Equal(t, `()`, innerList(nil))
	assert.Equal(t, `("a\\b\"c" "~ ")`, innerList([]string{`a\b"c`, "~ "}))
	assert.Equal(t, `(%"This is intended for display to %c3%bcsers.")`, innerList([]string{"This is intended for display to üsers."}))
	assert.Equal(t, `(%"%25%22%7f%0a")`, innerList([]string{"%\"\x7f\n"}))
	d := dialect{encoding: "utf-8", separator: '|'}
	assert.Equal(t, `separator=bar, encoding=utf-8, read=("width"), passed=()`, d.field([]string{"width"}, nil))
	d.decimal = "comma"
	assert.Equal(t, `separator=bar, encoding=utf-8, decimal=comma, read=(), passed=("sku")`, d.field(nil, []string{"sku"}))
}

// A separator explains a table by the names that it finds, then by rows as long as the
// header, then by its columns; a decimal mark by what can be read in one way only.
func TestHabitsAreFound(t *testing.T) {
	known := func(name string) bool { return name == "width" || name == "band_height" }
	for _, c := range []struct {
		text, decimal string
		separator     rune
		header        int
	}{
		{"width,x\n1.5,2\n", "point", ',', 2},
		{"width;x\n1,5;2\n", "comma", ';', 2},
		{"Width ;a,b,c,d\n1,5;2\n", "comma", ';', 2},
		{"a;b\n1;2\n1;2\n1,2,3;4\n", "", ';', 2},
		{"a,b\n1,2\n", "", ',', 2},
		{"Band-height|x\r1 1/2|2\r", "", '|', 2},
		{"sep=\t\nwidth\tx\n1.25\t2\n", "point", '\t', 2},
		{"sep=?\nwidth;x\n1,234;2\n", "", ';', 2},
		{"\"sep=;\"\nwidth,y;x\n1,50;2\n", "", ';', 2},
		{"width;x\n1.5;2\n1,5;2\n", "", ';', 2},
	} {
		var d dialect
		rows := d.findHabits(c.text, known)
		require.NotEmpty(t, rows, c.text)
		d.findDecimal(rows[1:], func(column int) bool { return known(columnName(rows[0][column])) })
		assert.Equal(t, string(c.separator), string(d.separator), c.text)
		assert.Equal(t, c.decimal, d.decimal, c.text)
		assert.Len(t, rows[0], c.header, c.text)
	}
	var d dialect
	assert.Empty(t, d.findHabits("", known))
}

// One more name says more than all rows, one more row in a thousand more than all columns.
func TestNamesGoBeforeRowsBeforeColumns(t *testing.T) {
	known := func(name string) bool { return name == "width" || name == "height" }
	row := func(n int) []string { return make([]string, n) }
	many := func(rows ...[]string) [][]string { return append([][]string{make([]string, 3)}, rows...) }
	ascending := [][][]string{
		nil,
		{row(1)}, {row(2)}, {row(999)},
		many(row(2), row(1), row(3)), append(many(row(3)), row(3), row(2)), many(row(3), row(3)),
		{{"width"}, row(2)}, {{"width", ""}, row(1)}, {{"width"}, row(1)},
		{{"Height ", "width"}, row(1)}, {{"width", "height"}, row(2)},
	}
	for i, rows := range ascending[1:] {
		assert.Greater(t, scoreOf(rows, known), scoreOf(ascending[i], known), "%v", rows)
	}
	assert.Equal(t, scoreOf(many(row(3)), known), scoreOf(many(row(3), row(3)), known), "the share of the rows counts, not their number")
	assert.Equal(t, scoreOf([][]string{row(999)}, known), scoreOf([][]string{row(2000)}, known), "columns never count as a row")
	var d dialect
	d.findHabits("width;a,b,c\n1;2;3,4,5\n", known)
	assert.Equal(t, ";", string(d.separator), "the name is found with it, though commas make all rows even")
}
