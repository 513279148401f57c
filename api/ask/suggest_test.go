package ask

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/fault"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// wanted is what the names of a suggestion come to.
func wanted(q *Suggest) any {
	post := ""
	if q.Wishes.Post != nil {
		post = q.Wishes.Post.Name
	}
	w := q.Wishes
	w.Post = nil
	r := *q.Request
	r.Kind = repertoire.Kinds()[0] // it is of none
	return struct {
		Request            solve.Request
		Wishes             solve.Wishes
		Post               string
		Pictures, Language string
	}{r, w, post, q.Pictures.Word, q.Language.Word}
}

func TestEveryNameOfASuggestion(t *testing.T) {
	var effects []effect
	for _, e := range commonEffects() {
		changes := map[string]string{}
		for path, value := range e.changes {
			changes["Request."+path] = value
		}
		e.changes = changes
		effects = append(effects, e)
	}
	checkEffects(t, New[Suggest]("json"), enclosureBase, wanted, append(effects,
		effect{"shape", "round", "", "thickness", map[string]string{"Request.Options[shape].Choice": "round", "Request.Options[shape].Length": "0", "Request.Options[shape].Count": "0", "Request.Thickness": nm("3.5 in")}},
		effect{"wish", "reusable", "", "", map[string]string{"Wishes.Reusable": "true"}},
		effect{"wish", "no-glue", "", "", map[string]string{"Wishes.NoGlue": "true"}},
		effect{"wish", "few-cuts", "", "", map[string]string{"Wishes.FewCuts": "true"}},
		effect{"wish", "one-sheet", "sheet=letter", "", map[string]string{"Wishes.OneSheet": "true"}},
		effect{"post", "us", "", "", map[string]string{"Post": "us"}},
		effect{"class", "letter", "post=us", "", map[string]string{"Wishes.Class": "1"}},
		effect{"minutes", "10", "", "", map[string]string{"Wishes.Within": "10m0s"}},
		effect{"pictures", "dark", "", "", map[string]string{"Pictures": "dark"}},
		effect{"language", "de", "", "", map[string]string{"Language": "de"}}))
}

// What a suggestion cannot be asked is said with a hint that was tried.
func TestBadSuggestions(t *testing.T) {
	for query, want := range map[string]fault.Fault{
		"unit=in&caliper=0.012":                                  {Code: fault.Missing, Field: "width", Hint: "give width, or contents by name"},
		"unit=in&width=3":                                        {Code: fault.Missing, Field: "caliper"},
		enclosureBase + "&wish=one-sheet":                        {Code: fault.Missing, Field: "sheet", Hint: "add sheet=letter"},
		enclosureBase + "&class=letter":                          {Code: fault.Missing, Field: "post", Hint: "add post=us"},
		enclosureBase + "&post=us&class=lettr":                   {Code: fault.Unknown, Field: "class", Hint: "letter"},
		enclosureBase + "&wish=cheap":                            {Code: fault.Unknown, Field: "wish"},
		enclosureBase + "&minutes=0":                             {Code: fault.OutOfRange, Field: "minutes"},
		enclosureBase + "&band_height=2in":                       {Code: fault.Unknown, Field: "band_height"},
		"unit=in&width=3&thickness=1&caliper=0.012&pictures=red": {Code: fault.Unknown, Field: "pictures"},
	} {
		a := New[Suggest]("json").Take()
		a.AddQuery(query)
		a.Parse()
		require.False(t, a.Check(), query)
		require.Len(t, a.Faults(), 1, "%s: %v", query, a.Faults())
		f := a.Faults()[0]
		assert.Equal(t, want.Code, f.Code, query)
		assert.Equal(t, want.Field, f.Field, query)
		if want.Hint != "" {
			assert.Equal(t, want.Hint, f.Hint, query)
		}
	}
}
