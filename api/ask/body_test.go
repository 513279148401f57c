package ask

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"slices"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/labstack/echo/v4"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/fault"
)

// sent binds a request of so many bytes, -1 if that is not said, to one about a band.
func sent(t *testing.T, body io.Reader, length int64, header ...string) (*Asked[*Enclosure], http.Header, error) {
	t.Helper()
	request := httptest.NewRequest(http.MethodPost, "/", body)
	request.ContentLength = length
	request.Header.Set("Content-Type", "application/json")
	for i := 0; i < len(header); i += 2 {
		request.Header.Set(header[i], header[i+1])
	}
	w, a := httptest.NewRecorder(), band()
	err := Binder{MostBody: 32, MostLarge: 64}.Bind(a, echo.New().NewContext(request, w))
	return a, w.Header(), err
}

// TestBodiesThatDoNotArrive: too many bytes, said or not, too late, cut off, or compressed; a
// connection that cannot be read on is closed.
func TestBodiesThatDoNotArrive(t *testing.T) {
	whole := `{"width":"3 in"}`
	filled := whole + strings.Repeat(" ", 32-len(whole))
	late := &slowNetwork{}
	for name, c := range map[string]struct {
		body   io.Reader
		length int64
		header []string
		code   fault.Code
		closes bool
	}{
		"as many as may be":          {strings.NewReader(filled), 32, nil, "", false},
		"as many, which is not said": {strings.NewReader(filled), -1, nil, "", false},
		"one more":                   {strings.NewReader(filled + " "), 33, nil, BodyTooLarge, true},
		"one more, not said":         {strings.NewReader(filled + " "), -1, nil, BodyTooLarge, false},
		"too late":                   {iotest.ErrReader(os.ErrDeadlineExceeded), 16, nil, BodyTimeout, true},
		"a network that waits":       {iotest.ErrReader(late), 16, nil, BodyTimeout, true},
		"cut off":                    {io.MultiReader(strings.NewReader(whole[:5]), iotest.ErrReader(io.ErrUnexpectedEOF)), 16, nil, fault.Unreadable, false},
		"compressed":                 {strings.NewReader(whole), 16, []string{"Content-Encoding", "gzip"}, MediaType, false},
		"as it is":                   {strings.NewReader(whole), 16, []string{"Content-Encoding", "identity"}, "", false},
		"of no media type":           {strings.NewReader(whole), 16, []string{"Content-Type", ""}, MediaType, false},
		"of a broken media type":     {strings.NewReader(whole), 16, []string{"Content-Type", "application/json; charset"}, MediaType, false},
		"in another encoding":        {strings.NewReader(whole), 16, []string{"Content-Type", "application/json; charset=UTF-16"}, MediaType, false},
		"in UTF-8":                   {strings.NewReader(whole), 16, []string{"Content-Type", "application/json; charset=UTF-8"}, "", false},
	} {
		a, header, err := sent(t, c.body, c.length, c.header...)
		var f fault.Fault
		if c.code == "" {
			require.NoError(t, err, name)
			assert.Equal(t, "3 in", a.Q.Contents.Width.Text, name)
		} else if assert.ErrorAs(t, err, &f, name) {
			assert.Equal(t, c.code, f.Code, name)
		}
		assert.Equal(t, c.closes, header.Get("Connection") == "close", name)
	}
	a, _, err := sent(t, http.NoBody, 0, "Content-Type", "")
	require.NoError(t, err, "nothing was sent, and nothing is wrong with it")
	assert.Empty(t, a.Faults())
	a, _, err = sent(t, http.NoBody, 0)
	require.NoError(t, err)
	assert.Empty(t, a.Faults(), "an empty body that is said to be JSON is none")
}

// slowNetwork is an error of a network that waits too long.
type slowNetwork struct{}

func (*slowNetwork) Error() string   { return "too late" }
func (*slowNetwork) Timeout() bool   { return true }
func (*slowNetwork) Temporary() bool { return false }

// anyJSON draws a JSON value with spaces in it.
func anyJSON(depth int) *rapid.Generator[string] {
	space := rapid.SampledFrom([]string{"", " ", "\n\t", "  "})
	return rapid.Custom(func(t *rapid.T) string {
		kind := rapid.IntRange(0, 5).Draw(t, "kind")
		if depth == 0 {
			kind %= 4
		}
		s := func() string { return space.Draw(t, "space") }
		switch kind {
		case 0:
			text, _ := json.Marshal(rapid.StringOfN(rapid.RuneFrom([]rune(`a"\ {}[],:ü`)), 0, 6, -1).Draw(t, "text"))
			return string(text)
		case 1:
			return rapid.SampledFrom([]string{"0", "-1.5e3", "12"}).Draw(t, "number")
		case 2, 3:
			return rapid.SampledFrom([]string{"true", "false", "null"}).Draw(t, "word")
		case 4:
			list := rapid.SliceOfN(anyJSON(depth-1), 0, 3).Draw(t, "list")
			return "[" + s() + strings.Join(list, s()+","+s()) + s() + "]"
		default:
			var members []string
			for i, v := range rapid.SliceOfN(anyJSON(depth-1), 0, 3).Draw(t, "members") {
				members = append(members, `"n`+string(rune('a'+i))+`"`+s()+":"+s()+v)
			}
			return "{" + s() + strings.Join(members, s()+","+s()) + s() + "}"
		}
	})
}

// TestTheScannerReadsWhatTheStandardDecoderReads: members, what they are without their spaces,
// and how deep they are nested.
func TestTheScannerReadsWhatTheStandardDecoderReads(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := anyJSON(3).Draw(t, "json")
		require.True(t, json.Valid([]byte(text)), text)
		var want bytes.Buffer
		require.NoError(t, json.Compact(&want, []byte(text)))
		assert.Equal(t, want.String(), compact([]byte(text)))
		assert.Equal(t, depthOf(t, text), Depth([]byte(text)), text)
		s := Scanner{Text: []byte(" " + text + "\n")}
		assert.Equal(t, text, string(s.Skip()))
		assert.Zero(t, s.Peek())
		var members map[string]json.RawMessage
		if json.Unmarshal([]byte(text), &members) != nil {
			members = nil
		}
		for _, name := range []string{"na", "nb", "nc", "none"} {
			member := string(members[name])
			var plain string
			if json.Unmarshal([]byte(member), &plain) == nil && strings.HasPrefix(member, `"`) {
				member = plain
			}
			assert.Equal(t, member, Member([]byte(text), name), "%s of %s", name, text)
		}
	})
}

// depthOf is how deep a value is nested by the standard decoder.
func depthOf(t require.TestingT, text string) int {
	d, deep, deepest := json.NewDecoder(strings.NewReader(text)), 0, 0
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return deepest
		}
		require.NoError(t, err)
		if bracket, ok := token.(json.Delim); ok {
			if bracket == '{' || bracket == '[' {
				deep++
			} else {
				deep--
			}
			deepest = max(deepest, deep)
		}
	}
}

// holdersOf are the holders that the rows of a table come to.
func holdersOf(body string) ([]string, fault.Faults) {
	a := NewMatch(func(string) ([]string, bool) { return nil, false }, "json").Take()
	a.addRows([]byte(body))
	a.Parse()
	return slices.Clone(a.Q.Holders.Texts), a.Faults()
}

// TestRowsAreObjects: each cell under the name above it, blank ones left out, in the dialects
// that spreadsheets save (RFC 4180; semicolons beside decimal commas; a byte order mark).
func TestRowsAreObjects(t *testing.T) {
	want := []string{`{"id":"a","width":"4 in","note":"6\" tin"}`, `{"id":"b","width":"5 in"}`}
	for name, table := range map[string]string{
		"as the standard has it": "id,width,note\r\na,4 in,\"6\"\" tin\"\r\nb,5 in,\r\n",
		"bare line ends":         "id,width,note\na,4 in,\"6\"\" tin\"\nb,5 in,\n",
		"spaces about":           " id , width , note \na , 4 in ,\"6\"\" tin\"\nb, 5 in , \n",
		"semicolons":             "id;width;note\na;4 in;\"6\"\" tin\"\nb;5 in;\n",
		"a byte order mark":      "\ufeffid,width,note\na,4 in,\"6\"\" tin\"\nb,5 in,",
	} {
		rows, faults := holdersOf(table)
		assert.Equal(t, want, rows, name)
		assert.Empty(t, faults, name)
	}
	for table, detail := range map[string]string{
		"": "the table has no header with two names and more", "id\na\n": "the table has no header with two names and more",
		"id,width\na,b,c\n": "the table cannot be read: record on line 2: wrong number of fields", "id,width\n\"a,4 in\n": "the table cannot be read: ",
	} {
		_, faults := holdersOf(table)
		require.Len(t, faults, 1, table)
		assert.Equal(t, "holders", faults[0].Field)
		assert.True(t, strings.HasPrefix(faults[0].Detail, detail), faults[0].Detail)
		assert.Equal(t, "id,width,height,thickness", faults[0].Hint)
	}
}

// TestACellMayHoldAList of a name that takes several, parted as people write it; of any other
// name it is one text.
func TestACellMayHoldAList(t *testing.T) {
	for cell, want := range map[string][]string{
		"1in": {"1in"}, "1in|2in": {"1in", "2in"}, "1in; 2in;": {"1in", "2in"}, "1in\n2in": {"1in", "2in"}, "1in, 2in": {"1in", "2in"}, "1,5in": {"1,5in"},
		`["1in", "2in"]`: {"1in", "2in"}, ` ["1in"] `: {"1in"}, "1in | 2in, 3in": {"1in", "2in, 3in"}, "[1in": {"[1in"}, "{}": {"{}"}, "": nil,
	} {
		a := New[Ruler]("json").Take()
		a.AddCell("length", cell)
		var texts []string
		for _, f := range a.fields {
			texts = append(texts, f.text)
		}
		assert.Equal(t, want, texts, "%q", cell)
	}
	a := band()
	a.AddCell("width", "1in|2in")
	a.AddCell("no name", "1|2")
	assert.Equal(t, []field{{"width", "1in|2in"}, {"no name", "1|2"}}, a.fields)
}

// TestUsualNamesHoldWhereALineHasNone, and can be taken out.
func TestUsualNamesHoldWhereALineHasNone(t *testing.T) {
	u, faults := ReadUsual("call=/v1/ruler&unit=in&length=1in&length=2in&_=7")
	require.Empty(t, faults)
	assert.Empty(t, u.Take("call", func(text string) bool { return text == "/v1/mail" }), "another one is wanted")
	assert.Equal(t, "/v1/ruler", u.Take("call", func(string) bool { return true }))
	assert.False(t, u.Has("call"))
	assert.False(t, u.Has("_"), "a cache buster")
	u.Add("unit", "mm")
	u.Add("decimal", "comma")
	var all []string
	u.Each(func(name, text string) { all = append(all, name+"="+text) })
	assert.Equal(t, []string{"unit=in", "length=1in", "length=2in", "decimal=comma"}, all)
	a := New[Ruler]("json").Take()
	a.AddQuery("length=5in")
	a.AddUsual(&u)
	assert.Equal(t, []field{{"length", "5in"}, {"unit", "in"}, {"decimal", "comma"}}, a.fields)
	a = New[Ruler]("json").Take()
	a.AddUsual(&u)
	assert.Len(t, a.fields, 4, "all of a list, where the line has none of it")
	_, faults = ReadUsual("unit=%zz")
	assert.Len(t, faults, 1)
}

// TestWhatOneRequestMayHave: 64 names, values of 64 characters, and twenty faults that are
// told; one more of each is refused, or counted.
func TestWhatOneRequestMayHave(t *testing.T) {
	names := func(n int) fault.Faults {
		a := New[Ruler]("json").Take()
		a.AddQuery(strings.TrimSuffix(strings.Repeat("x-pad=1&length=1in&", n), "&"))
		return a.Faults()
	}
	assert.Empty(t, names(64))
	assert.Equal(t, fault.Faults{tooManyFields()}, names(65))
	member := func(n int) fault.Faults {
		a := New[Ruler]("json").Take()
		a.AddJSON([]byte("{" + strings.TrimSuffix(strings.Repeat(`"x-pad":1,`, n), ",") + "}"))
		return a.Faults()
	}
	assert.Empty(t, member(64))
	assert.Equal(t, fault.Faults{tooManyFields()}, member(65))
	value := func(text string) fault.Faults {
		a := band()
		a.Add("width", text)
		a.Parse()
		return a.Faults()
	}
	long := strings.Repeat("0", 60) + "3 in"
	assert.Contains(t, value(long)[0].Detail, "a length has at most 32 characters", "it is looked at")
	assert.Equal(t, "the value is too long", value("ü" + long)[0].Detail)
	assert.Equal(t, "at most 64 characters", value("ü" + long)[0].Expected)
	a := band()
	for range 23 {
		a.Add("nothing", "x")
	}
	a.Parse()
	assert.Len(t, a.Faults(), 20)
	assert.Equal(t, 3, a.Hidden())
	for text, want := range map[string]string{"": "", "tea": "tea", "tins": "tin...", "grüne": "grü..."} {
		assert.Equal(t, want, Cut(text, 3))
	}
}
