package api

import (
	"bytes"
	"fmt"
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/api/wire"
	"creasefit/internal/mail"
	"creasefit/internal/measure"
)

// square is a set of tasting cards in a square envelope.
const square = "unit=in&width=5-1/4&height=5-1/4&thickness=1/8&mass_oz=0.9"

// verdictOf finds what a post makes of the piece.
func verdictOf(t *testing.T, m wire.Mail, post string) wire.PostVerdict {
	t.Helper()
	for _, v := range m.Posts {
		if v.Post == post {
			return v
		}
	}
	require.Fail(t, "no verdict", post)
	return wire.PostVerdict{}
}

// A square envelope is nonmachinable in the United States (Quick Service Guide
// 201: aspect ratio 1) and a Großbrief in Germany (press, 2024 and 2025).
func TestMailOfASquare(t *testing.T) {
	m := decode[wire.Mail](get(t, "/v1/mail?"+square).ok())
	require.Len(t, m.Posts, len(mail.Posts()))
	us := verdictOf(t, m, "us")
	assert.Equal(t, "takes", us.Verdict)
	assert.Equal(t, "letter", us.Class)
	require.Len(t, us.Surcharges, 1)
	due := us.Surcharges[0]
	assert.Equal(t, "nonmachinable", due.Name)
	assert.True(t, due.Certain)
	assert.Equal(t, "the length divided by the height is 1 (at least 1.3): 0.3 under", due.Reasons[0].Detail)
	assert.InDelta(t, -0.3, *due.Reasons[0].Limit.Left.Ratio, 1e-9)
	de := verdictOf(t, m, "de")
	assert.Equal(t, "Großbrief", de.ClassTitle)
	assert.Len(t, de.NotIn, 2)
	assert.InDelta(t, -8.35, *de.NotIn[1].Reasons[0].Limit.Left.MM, 1e-9, "133.35 mm, at most 125 mm")
	assert.Equal(t, "none", verdictOf(t, m, "ca").Verdict)
	assert.Contains(t, m.Words, "us: letter, nonmachinable; uk: letter; ca: none; de: grossbrief;")
	assert.Contains(t, strings.ToLower(m.Advice), "confirm with your post office")
	for _, v := range m.Posts {
		assert.NotEmpty(t, v.Edition)
		for _, l := range v.Limits {
			assert.NotEmpty(t, l.Source)
		}
	}
}

func TestMailByPost(t *testing.T) {
	byQuery := get(t, "/v1/mail?"+square+"&post=us&post=de").ok()
	byBody := postJSON(t, "/v1/mail", `{"unit":"in","width":"5-1/4","height":5.25,"thickness":"1/8","mass_oz":0.9,"post":["us","de"]}`).ok()
	asked := decode[wire.Mail](byQuery)
	require.Len(t, asked.Posts, 2)
	assert.Equal(t, asked.Posts, decode[wire.Mail](byBody).Posts)
	assert.Contains(t, byBody.Header().Get("Content-Location"), "&post=us&post=de")
	again := decode[wire.Mail](get(t, asked.Links.Self).ok())
	assert.Equal(t, asked.Posts, again.Posts, "the link leads to the same answer")
	assert.Equal(t, "de", decode[wire.Mail](get(t, "/v1/mail?"+square+"&post=de").ok()).Posts[0].Post)
	assert.Equal(t, "grossbrief", get(t, "/v1/mail?"+square+"&post=de&pick=/posts/0/class").ok().Body.String())
}

// What is said of the piece reaches the rules of the posts.
func TestMailTraits(t *testing.T) {
	card := "unit=in&width=4&height=6&thickness=0.012&mass=5&post=us"
	for query, words := range map[string]string{
		card:                          "us: letter",
		card + "&card=single":         "us: postcard",
		card + "&card=folded":         "us: letter",
		card + "&rigid=yes":           "us: letter, nonmachinable",
		card + "&uneven=yes":          "us: letter, nonmachinable",
		card + "&clasp=yes":           "us: letter, nonmachinable",
		card + "&plastic=yes":         "us: letter, nonmachinable",
		card + "&clasp=no":            "us: letter",
		card + "&shape=other":         "us: none",
		card + "&address_along=width": "us: none",
		card + "&mass_tolerance=95":   "us: perhaps letter",
		"unit=in&width=5&height=6&post=us&address_along=width":                       "us: letter, nonmachinable",
		"unit=in&width=5&height=6&post=us&address_along=height&thickness=1/2":        "us: flat",
		"unit=in&width=5&height=6&post=us&thickness=1/2&box=yes":                     "us: none",
		"unit=mm&width=114&height=162&thickness=4.8&thickness_tolerance=0.3&post=uk": "uk: perhaps letter",
		"unit=mm&width=114&height=162&thickness=4.8&thickness_tolerance=0.2&post=uk": "uk: letter",
		"unit=mm&width=239&height=162&size_tolerance=1.5&post=uk":                    "uk: perhaps letter",
		"unit=in&width=6.5&height=5&size_tolerance=1/64&post=us":                     "us: letter, perhaps nonmachinable",
	} {
		assert.Equal(t, words, get(t, "/v1/mail?pick=/words&"+query).ok().Body.String(), query)
	}
}

func TestMailUnknown(t *testing.T) {
	v := decode[wire.Mail](get(t, "/v1/mail?unit=mm&width=114&height=162&post=de").ok()).Posts[0]
	assert.Equal(t, []string{"thickness", "mass"}, v.Unknown)
	assert.Equal(t, "standardbrief", v.Class)
	require.NotNil(t, v.Nearest)
	assert.Equal(t, "ratio", v.Nearest.Of, "162 : 114 is 1.4211, at least 1.4")
	assert.Contains(t, get(t, "/v1/mail.txt?unit=mm&width=114&height=162&post=de").ok().Body.String(), "the mass is not known (at most 20 g).")
}

func TestMailProblems(t *testing.T) {
	for query, want := range map[string][2]string{
		"":                                  {"missing", "width"},
		"unit=in&width=5":                   {"missing", "height"},
		"unit=in&width=5&height=7&post=usa": {"unknown", "post"},
		"unit=in&width=5&height=7&post=us&post=xx":    {"unknown", "post"},
		"unit=in&width=5&height=7&post=":              {"missing", "post"},
		"unit=in&width=0&height=7":                    {"out-of-range", "width"},
		"unit=in&width=500&height=7":                  {"out-of-range", "width"},
		"width=5&height=7in":                          {"no-unit", "width"},
		"unit=in&width=5&height=7&mass=1&mass_oz=1":   {"conflict", "mass_oz"},
		"unit=in&width=5&height=7&mass=0":             {"out-of-range", "mass"},
		"unit=in&width=5&height=7&mass=-1":            {"unreadable", "mass"},
		"unit=in&width=5&height=7&mass=12g":           {"unreadable", "mass"},
		"unit=in&width=5&height=7&rigid=maybe":        {"unknown", "rigid"},
		"unit=in&width=5&height=7&rigid=yes&rigid=no": {"repeated", "rigid"},
		"unit=in&width=5&height=7&stamp=1":            {"unknown", "stamp"},
		"unit=in&width=5&height=7&format=svg":         {"unknown-format", "format"},
		"unit=in&width=5&height=7&address_along=left": {"unknown", "address_along"},
	} {
		p := get(t, "/v1/mail?"+query).problem(http.StatusBadRequest)
		assert.Equal(t, want, [2]string{p.Errors[0].Code, p.Errors[0].Name}, query)
	}
	postJSON(t, "/v1/mail", `{"unit":"in","width":5,"height":7,"post":"us"}`).ok()
	assert.Equal(t, "unreadable", postJSON(t, "/v1/mail", `{"unit":"in","width":5,"height":7,"rigid":["yes"]}`).problem(http.StatusBadRequest).Errors[0].Code)
	call(t, shared(), http.MethodDelete, "/v1/mail", "").problem(http.StatusMethodNotAllowed)
}

// Any piece is answered in every format, with plain numbers.
func TestMailOfAnyPiece(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		size := func(name string, greatest int64) string {
			l := measure.Nanometres(rapid.Int64Range(1_000_000, greatest).Draw(rt, name))
			return "&" + name + "=" + measure.Finest(rapid.SampledFrom([]measure.Unit{measure.Inch, measure.Millimetre}).Draw(rt, "unit")).FormatURL(l)
		}
		query := size("width", 400_000_000) + size("height", 400_000_000) + size("thickness", 60_000_000) + size("size_tolerance", 3_000_000) +
			fmt.Sprintf("&mass=%.3f", rapid.Float64Range(0.01, 2500).Draw(rt, "mass"))
		a := get(t, "/v1/mail?"+query[1:]).ok()
		checkNumbers(t, bytes.NewReader(a.Body.Bytes()))
		m := decode[wire.Mail](a)
		require.Len(t, m.Posts, len(mail.Posts()))
		table := get(t, "/v1/mail.csv?"+query[1:]).ok().Body.String()
		assert.Equal(t, len(m.Posts)+1, strings.Count(table, "\r\n"))
		text := get(t, "/v1/mail.txt?"+query[1:]).ok().Body.String()
		for _, v := range m.Posts {
			assert.Contains(t, table, v.Post+","+v.Class+","+v.Verdict+",")
			assert.Contains(t, text, v.Title+": ")
			assert.Contains(t, text, v.ClassTitle)
		}
	})
}

// The outside of a solved envelope goes on to the posts, its mass does not.
func TestSolutionLeadsToThePosts(t *testing.T) {
	s := decode[wire.Solution](get(t, "/v1/solve/slotted-band?"+cards).ok())
	m := decode[wire.Mail](get(t, s.Links.Mail).ok())
	assert.InDelta(t, s.Outside.Width.MM, m.Given.Of("width").MM, 0)
	assert.InDelta(t, s.Outside.Thickness.MM, m.Given.Of("thickness").MM, 0)
	assert.Contains(t, m.Posts[0].Unknown, "mass")
	p := decode[wire.Portfolio](get(t, "/v1/solve/portfolio?unit=in&width=5&height=4&thickness=2&caliper=0.012&layers=tray&layers=sleeve").ok())
	m = decode[wire.Mail](get(t, p.Links.Mail).ok())
	assert.InDelta(t, p.Outside.Height.MM, m.Given.Of("height").MM, 0)
}

func TestMailInABatch(t *testing.T) {
	lines := postBatch(t, mediaLines, `{"id":"jar","call":"/v1/mail","unit":"mm","width":100,"height":150,"post":["de","uk"],"show":"words"}`).ok().Body.String()
	assert.Contains(t, lines, `"answer":{"words":"uk: letter; de: standardbrief"}`)
	table := postBatch(t, "text/csv", "id,call,unit,width,height,post\r\njar,/v1/mail,mm,100,150,de\r\n").ok().Body.String()
	assert.Contains(t, table, "\r\njar,/v1/mail,mm,100,150,de,1,,de,standardbrief,")
}

// Every limit of the tables is listed with its source.
func TestPostsAreListed(t *testing.T) {
	list := decode[wire.PostList](get(t, "/v1/posts").ok())
	require.Len(t, list.Posts, len(mail.Posts()))
	limits := 0
	for i, p := range list.Posts {
		require.Len(t, p.Classes, len(mail.Posts()[i].Classes))
		for _, c := range p.Classes {
			for _, l := range c.Limits {
				assert.NotEmpty(t, l.Source)
				limits++
			}
		}
	}
	assert.Greater(t, limits, 80)
	flat := list.Posts[0].Classes[2]
	assert.Equal(t, "Large envelope (flat)", flat.Title)
	last := flat.Limits[len(flat.Limits)-1]
	assert.False(t, last.Confirmed)
	assert.Equal(t, "13 oz", last.At.Text)
}
