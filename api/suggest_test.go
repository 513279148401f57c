package api

import (
	"encoding/csv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/ask"
	"creasefit/api/wire"
	"creasefit/internal/repertoire"
)

// jar is a square honey jar in the packet's card and on the packet's sheet.
const jar = "/v1/suggest?contents=honey-jar&stock=index-110&sheet=letter"

// Every link keeps all values and leads to what was said of the kind, or to the
// problem that it was refused for.
func TestSuggestionsLeadToTheirSolve(t *testing.T) {
	all := decode[wire.Suggestions](get(t, jar+"&wish=no-glue&post=us&bench=trimmer").ok())
	require.Len(t, all.Kinds, len(repertoire.Kinds()))
	assert.Greater(t, all.Works, 8)
	assert.Greater(t, len(all.Designs), 3)
	for i, k := range append(all.Kinds, all.Designs...) {
		assert.Equal(t, i < all.Works || k.Kind == ask.OwnKind, k.Works, "what works stands first, and designs that do not work nowhere")
		assert.Contains(t, k.Link, "contents=honey-jar&stock=index-110&sheet=letter")
		assert.Contains(t, k.Link, "bench=trimmer")
		require.NotEmpty(t, k.Why, k.Kind)
		answer := get(t, k.Link)
		if !k.Works {
			var details []string
			for _, e := range decode[wire.Problem](answer).Errors {
				details = append(details, e.Detail)
			}
			for _, why := range k.Why {
				assert.Contains(t, details, why.Detail, k.Kind)
			}
			assert.Nil(t, k.Chance)
			continue
		}
		s := decode[wire.Solution](answer.ok())
		assert.Equal(t, s.Step, k.Step)
		assert.InDelta(t, s.Sure.Chance, *k.Chance, 1e-9)
		assert.Equal(t, s.Outside, *k.Outside)
		assert.Equal(t, "us", k.Post.Post)
		assert.Contains(t, k.Post.Advice, "Confirm with your post office")
		assert.Empty(t, k.Picture)
	}
}

func TestSuggestionsInEveryFormat(t *testing.T) {
	rows, err := csv.NewReader(strings.NewReader(get(t, jar+"&format=csv").ok().Body.String())).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, len(repertoire.Kinds())+1)
	assert.Equal(t, "yes", rows[1][1])
	assert.Equal(t, "no", rows[len(rows)-1][1])
	assert.Contains(t, get(t, jar+"&format=text").ok().Body.String(), "Tray works: Goes in at least 99 times in 100.")
	byBody := postJSON(t, "/v1/suggest", `{"contents":"honey-jar","stock":"index-110","sheet":"letter","wish":["no-glue","reusable"]}`).ok()
	assert.Contains(t, byBody.Header().Get("Content-Location"), "wish=no-glue&wish=reusable")
	for _, k := range decode[wire.Suggestions](byBody).Kinds {
		if len(k.Missed) == 0 && k.Works {
			assert.NotContains(t, k.Why, wire.Reason{Code: "glue", Detail: "It is glued."}, k.Kind)
		}
	}
}

// Pictures are of this thing: a flatter one has another picture.
func TestSuggestionsHavePictures(t *testing.T) {
	tall := decode[wire.Suggestions](get(t, jar+"&pictures=light").ok())
	flat := decode[wire.Suggestions](get(t, strings.Replace(jar, "contents=honey-jar", "width=58mm&height=78mm&thickness=20mm", 1)+"&pictures=dark&language=de").ok())
	for _, all := range []wire.Suggestions{tall, flat} {
		for _, k := range all.Kinds[:all.Works] {
			require.True(t, strings.HasPrefix(k.Picture, "<svg "), k.Kind)
			assert.Contains(t, k.Picture, "</svg>")
			assert.Less(t, len(k.Picture), 20_000, k.Kind)
		}
	}
	assert.Contains(t, get(t, jar+"&pictures=light&language=de").ok().Body.String(), "Offener Kasten")
	assert.NotEqual(t, tall.Kinds[0].Picture, flat.Kinds[0].Picture)
}

// The link about mailing says what is known of the piece.
func TestMailLinkSaysWhatThePieceIs(t *testing.T) {
	link := decode[wire.Solution](get(t, "/v1/solve/tuck-carton?unit=in&width=5&height=4&thickness=1/2&caliper=0.012").ok()).Links.Mail
	assert.Contains(t, link, "&rigid=yes&box=yes")
	assert.Contains(t, get(t, link+"&post=us&format=text").ok().Body.String(), "is a box")
	assert.NotContains(t, decode[wire.Solution](get(t, "/v1/solve/sleeve?unit=in&width=5&height=4&thickness=1/2&caliper=0.012").ok()).Links.Mail, "box")
}

// Three stacks of sachets side by side are as wide as three, and vary as three.
func TestSuggestionsForSeveralThings(t *testing.T) {
	const rest = "&stock=index-110&sheet=letter"
	three := decode[wire.Suggestions](get(t, "/v1/suggest?contents=tea-sachets&width=3+of+them"+rest).ok())
	same := decode[wire.Suggestions](get(t, "/v1/suggest?unit=in&width=8.25&height=2-3/8&thickness=5/8"+rest).ok())
	for i, k := range three.Kinds {
		assert.Equal(t, same.Kinds[i].Works, k.Works, k.Kind)
		if k.Works {
			assert.Contains(t, k.Link, "width=3+of+them")
			assert.Equal(t, *k.Chance, decode[wire.Solution](get(t, k.Link).ok()).Sure.Chance, k.Kind)
		}
	}
}
