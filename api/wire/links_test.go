package wire

import (
	"context"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/ask"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
	"creasefit/internal/sheet"
	"creasefit/internal/solve"
)

// linked reads an address apart.
func linked(t *testing.T, link string) (path string, names url.Values) {
	t.Helper()
	u, err := url.Parse(link)
	require.NoError(t, err, link)
	names, err = url.ParseQuery(u.RawQuery)
	require.NoError(t, err, link)
	return u.Path, names
}

// TestLinksAreOfTheSameRequest: drawing and guide ask what the solution was asked, posts
// about its outside, the cut plan about its blanks on the sheet, and only if there is one.
func TestLinksAreOfTheSameRequest(t *testing.T) {
	everySolution(t, func(t *testing.T, s *told) {
		l, kind := s.answer.Links, s.Request.Kind.Name
		assert.Equal(t, "/v1/solve/"+kind+s.asked.Query, l.Self)
		assert.Equal(t, "/v1/drawing/"+kind+s.asked.Query, l.Drawing)
		assert.Equal(t, "/v1/guide/"+kind+s.asked.Query, l.Guide)
		assert.Equal(t, "/v1/kinds/"+kind, l.Kind)
		path, names := linked(t, l.Mail)
		assert.Equal(t, "/v1/mail", path)
		assert.Equal(t, s.answer.Unit, names.Get("unit"))
		for name, size := range map[string]Length{"width": s.answer.Outside.Width, "height": s.answer.Outside.Height, "thickness": s.answer.Outside.Thickness} {
			assert.InDelta(t, size.MM, on(measure.MustParse(names.Get(name))), 1e-6, name)
		}
		assert.False(t, names.Has("mass"), "that of the contents is not known")
		_, own := linked(t, s.answer.Links.Self)
		assert.Equal(t, own.Has("sheet"), l.Yield != "")
		assert.Equal(t, own.Has("sheet"), s.answer.Yield != nil)
	})
}

// TestTheCheckLinkIsOfTheReadings: the readings of an answer, cut as they are told, work.
func TestTheCheckLinkIsOfTheReadings(t *testing.T) {
	everySolution(t, func(t *testing.T, s *told) {
		path, _ := linked(t, s.answer.Links.Check)
		assert.Equal(t, "/v1/check/"+s.Request.Kind.Name, path)
		a := ask.NewCheck(s.Request.Kind).Take()
		a.AddQuery(s.answer.Links.Check[strings.Index(s.answer.Links.Check, "?")+1:])
		a.Parse()
		require.True(t, a.Check(), "%v", a.Faults())
		c, err := solve.CheckOwn(context.Background(), a.Q.Request, a.Q.Measurements())
		require.NoError(t, err)
		w := OfCheck(c, s.asked)
		assert.True(t, w.Works, "%s: %s %v", s.answer.Links.Check, w.Words, w.Findings)
		assert.Equal(t, bare(s.answer.Fit), bare(w.Fit), "as sure as it was solved")
		assert.Empty(t, w.Mend)
		assert.Equal(t, s.answer.Proof, w.Proof)
		for _, c := range w.Closures {
			assert.Zero(t, c.Off.MM, c.Name)
		}
		for _, l := range w.Limits {
			assert.True(t, l.Allowed[0].MM <= l.Value.MM && l.Value.MM <= l.Allowed[1].MM, "%s: %v", l.Name, l.Value)
		}
	})
}

// bare is what fits say of a pattern, whatever window was asked for and ruler they are
// written for.
func bare(list []Fit) [][]any {
	return Each(list, func(f Fit) []any {
		return []any{f.Axis, f.Between, f.Verdict, f.Chance, f.Nominal.MM, f.WorstCase[0].MM, f.WorstCase[1].MM, f.RSS[0].MM, f.RSS[1].MM}
	})
}

// TestTheYieldLinkIsOfTheBlanks: one item a piece with its size and how many there are of
// it, and the grain as the main folds want it where the sheet's is known.
func TestTheYieldLinkIsOfTheBlanks(t *testing.T) {
	everySolution(t, func(t *testing.T, s *told) {
		if s.answer.Yield == nil {
			return
		}
		_, names := linked(t, s.answer.Links.Yield)
		assert.Equal(t, string(s.asked.AppendValue(nil, "sheet")), names.Get("sheet"))
		assert.Equal(t, s.Request.Grain != sheet.AnySide, names.Has("sheet_grain"))
		items := names["items"]
		if len(items) == 0 {
			items = []string{`{"name":"` + names.Get("name") + `","blank":"` + names.Get("blank") + `","count":1}`}
		}
		require.Len(t, items, len(s.answer.Pieces))
		for i, p := range s.answer.Pieces {
			size := measure.MustParseSize(between(items[i], `"blank":"`, `"`))
			assert.Equal(t, [2]float64{p.Blank.Width.MM, p.Blank.Height.MM}, [2]float64{on(size[0]), on(size[1])})
			assert.Contains(t, items[i], `"name":"`+p.Name+`"`)
			assert.Contains(t, items[i], `"count":`+number(float64(p.Quantity), 0))
			grain := names.Get("grain") + between(items[i], `"grain":"`, `"`)
			assert.Equal(t, s.Yields[i].Grain == solve.GrainAlong, grain != "", "%s: the grain is asked for where the sheet keeps it", p.Name)
			if grain != "" {
				assert.Equal(t, solve.FoldSide(&s.Pattern.Pieces[i]).String(), grain)
			}
			y := s.answer.Yield.Pieces[i]
			assert.Equal(t, p.Name, y.Piece)
			if y.PerSheet != nil && *y.PerSheet > 0 {
				sheet := s.answer.Yield.Sheet
				used := float64(*y.PerSheet) * p.Blank.Width.MM * p.Blank.Height.MM / (sheet.Width.MM * sheet.Height.MM)
				assert.InDelta(t, used, *y.Used, 1e-6, "the part of the sheet that the blanks are")
				assert.LessOrEqual(t, *y.Turned, *y.PerSheet)
			}
		}
	})
}

// between is what stands between two texts.
func between(text, before, after string) string {
	_, rest, _ := strings.Cut(text, before)
	found, _, _ := strings.Cut(rest, after)
	return found
}

// TestTraitsOfWhatIsMailed: a box neither bends nor is it flat, board does not bend, and what
// has curved sides is uneven; the address for posts says so.
func TestTraitsOfWhatIsMailed(t *testing.T) {
	const tea, board = "unit=in&width=4in&height=5in&thickness=1in", "&caliper=0.06in&board_from=0.05in"
	for _, c := range []struct {
		kind, query string
		traits      []string
	}{
		{"sleeve", tea + "&caliper=0.012in", nil}, {"sleeve", tea + board, []string{"rigid"}}, {"tray", tea + "&caliper=0.012in", []string{"box", "rigid"}},
		{"pillow-pack", tea + "&caliper=0.012in", []string{"uneven"}},
	} {
		k, _ := repertoire.Lookup(c.kind)
		_, names := linked(t, solved(t, k, c.query).answer.Links.Mail)
		var traits []string
		for _, name := range []string{"box", "rigid", "uneven"} {
			if names.Get(name) == "yes" {
				traits = append(traits, name)
			}
		}
		assert.Equal(t, c.traits, traits, "%s %s", c.kind, c.query)
	}
}

// TestWarningsSayWhatToTry: the address is that of the same request with another word.
func TestWarningsSayWhatToTry(t *testing.T) {
	k, _ := repertoire.Lookup("sleeve")
	s := solved(t, k, "unit=in&width=7&height=9&thickness=2&caliper=0.03&sheet=12x12in")
	var tried []string
	for i, w := range s.answer.Warnings {
		assert.Equal(t, s.Warnings[i].Code, w.Code)
		if w.Try != "" {
			tried = append(tried, w.Code)
			_, names := linked(t, w.Try)
			assert.Equal(t, "two-pieces", names.Get("join"))
		}
	}
	assert.Equal(t, []string{"larger-than-sheet"}, tried)
}

// TestGivensAreFoundByName and read back from an answer.
func TestGivensAreFoundByName(t *testing.T) {
	both := InBoth(measure.MustParse("3 1/2 in"))
	assert.Equal(t, Both{MM: 88.9, In: 3.5}, both)
	list := Givens{{Name: "width", Text: "3 1/2 in", Both: &both}, {Name: "fit", Text: "easy", From: "default"}}
	assert.Equal(t, "default", list.Of("fit").From)
	assert.Zero(t, list.Of("nothing"))
	var back Givens
	require.NoError(t, back.UnmarshalJSON([]byte(`{"width":{"text":"3 1/2 in","mm":88.9,"in":3.5},"fit":{"text":"easy","from":"default"}}`)))
	assert.Equal(t, Givens{list[1], list[0]}, back, "in the order of their names")
	assert.Error(t, back.UnmarshalJSON([]byte(`[]`)))
}
