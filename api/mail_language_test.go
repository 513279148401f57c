package api

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/wire"
	"creasefit/internal/guide"
	"creasefit/internal/mail"
)

// Every text of the tables is said in every language, but for the names of classes, which
// each post prints in its own, and for sources.
func TestMailTablesInEveryLanguage(t *testing.T) {
	for _, language := range guide.Languages()[1:] {
		say, err := guide.Words(language)
		require.NoError(t, err)
		said := func(texts ...string) {
			for _, text := range texts {
				assert.NotEqual(t, text, say(text), language)
			}
		}
		rules := func(list []mail.Rule) {
			for _, r := range list {
				said("it " + r.Why)
			}
		}
		limits := func(list mail.Limits) {
			for _, l := range list {
				if l.Doubt != "" {
					said(l.Doubt)
				}
			}
		}
		for _, p := range mail.Posts() {
			said(append([]string{p.Title, p.Edition}, p.NotConfirmed...)...)
			for _, c := range p.Classes {
				said(c.Conditions...)
				rules(c.Rules)
				limits(c.Limits)
				for _, s := range c.Surcharges {
					rules(s.Rules)
					limits(s.Limits)
				}
			}
		}
	}
}

// english are words that no text in German has, whatever it is about.
var english = regexp.MustCompile(`(?i)\b(the|of|and|is|not|with|left|over|under|at|it|by|may|none|perhaps|known|mass|length|thickness|surcharge|note)\b`)

// quoted are the names that posts and documents have in their own language.
var quoted = regexp.MustCompile(`Domestic Mail Manual|First-Class Mail|Royal Mail|Large envelope \(flat\)|Other Lettermail \(Non-standard and Oversize\)|Small letter or postcard`)

// What posts say of a piece is German throughout, of pieces that every class, limit and rule
// is met by, and names the same classes as in English.
func TestMailInGerman(t *testing.T) {
	sizes := []string{"width=90&height=55", "width=140&height=140&thickness=4.8&thickness_tolerance=0.3", "width=235.5&height=125&thickness=5&size_tolerance=2&mass=22.5",
		"width=250&height=176&thickness=6&mass=600", "width=381&height=250&thickness=19&mass=101", "width=600&height=100&thickness=30&mass=3000"}
	said := []string{"", "&card=single", "&card=folded&plastic=yes", "&shape=other&clasp=yes", "&rigid=yes&uneven=yes&address_along=height", "&box=yes&address_along=width"}
	for _, size := range sizes {
		for _, about := range said {
			for _, unit := range []string{"mm", "in"} {
				query := "/v1/mail?unit=" + unit + "&" + regexp.MustCompile(`((?:width|height|thickness|tolerance)=[\d.]+)`).ReplaceAllString(size, "${1}mm") + about
				german, plain := decode[wire.Mail](get(t, query+"&language=de").ok()), decode[wire.Mail](get(t, query).ok())
				assert.Equal(t, plain.Posts, decode[wire.Mail](get(t, query+"&language=en").ok()).Posts)
				for i, v := range german.Posts {
					assert.Equal(t, plain.Posts[i].Class, v.Class)
					assert.Equal(t, plain.Posts[i].ClassTitle, v.ClassTitle, "as the post prints it")
				}
				for _, text := range []string{german.Words, german.Advice, get(t, strings.Replace(query, "mail?", "mail.txt?", 1)+"&language=de").ok().Body.String()} {
					assert.Empty(t, english.FindAllString(quoted.ReplaceAllString(text, ""), -1), text)
					assert.NotRegexp(t, `\d\.\d+ (mm|g|oz|Zoll)\b|\d in\b`, text, "numbers and units are German")
				}
			}
		}
	}
}

// The tables are German throughout, but for what posts print themselves and for sources, and
// state the same limits.
func TestPostTablesInGerman(t *testing.T) {
	german, plain := decode[wire.PostList](get(t, "/v1/posts?language=de").ok()), decode[wire.PostList](get(t, "/v1/posts").ok())
	require.Len(t, german.Posts, len(plain.Posts))
	for i, p := range german.Posts {
		text := strings.Join(append([]string{p.Title, p.Edition}, p.NotConfirmed...), " ")
		assert.NotEqual(t, plain.Posts[i].Title, p.Title)
		require.Len(t, p.Classes, len(plain.Posts[i].Classes))
		for n, c := range p.Classes {
			text += " " + strings.Join(c.Conditions, " ")
			for _, r := range c.Rules {
				text += " " + r.Detail
			}
			require.Len(t, c.Limits, len(plain.Posts[i].Classes[n].Limits))
			for l := range c.Limits {
				text += " " + c.Limits[l].At.Text
				assert.Equal(t, plain.Posts[i].Classes[n].Limits[l].At.MM, c.Limits[l].At.MM)
			}
		}
		assert.Empty(t, english.FindAllString(quoted.ReplaceAllString(text, ""), -1), text)
	}
}

// A sentence whole, held to the German of the trade: Standardbrief, 20 g and 5 mm.
func TestMailSentencesInGerman(t *testing.T) {
	const letter = "/v1/mail?width=229mm&height=114mm&thickness=5.5mm&mass=18.5&post=de&language=de"
	m := decode[wire.Mail](get(t, letter).ok())
	assert.Equal(t, "die Dicke ist 5,5 mm (höchstens 5 mm): 0,5 mm darüber", m.Posts[0].NotIn[0].Reasons[0].Detail)
	assert.Equal(t, "5,5 mm", m.Posts[0].NotIn[0].Reasons[0].Limit.Value.Text)
	assert.Equal(t, "de: kompaktbrief", m.Words)
	assert.Equal(t, "de: vielleicht standardbrief", get(t, strings.Replace(letter, "5.5mm", "5mm&thickness_tolerance=0.5mm", 1)+"&pick=/words").ok().Body.String())
	inches := decode[wire.Mail](get(t, "/v1/mail?unit=in&width=5&height=5&thickness=1/8&mass_oz=0.9&post=us&language=de").ok())
	due := inches.Posts[0].Surcharges[0].Reasons[0]
	assert.Equal(t, "die Länge geteilt durch die Höhe ist 1 (mindestens 1,3): 0,3 darunter", due.Detail)
	assert.Contains(t, fmt.Sprint(wire.Each(inches.Posts[0].Limits, func(l wire.MailStanding) string { return l.Detail })), "1/8 Zoll übrig")
}

// What is suggested is German throughout, but for what is wrong with what does not work, which
// a solve of it says likewise; the same kinds are suggested as in English.
func TestSuggestionsInGerman(t *testing.T) {
	for _, about := range []string{"", "&wish=reusable", "&cut_tolerance=1/8", "&shape=round"} {
		query := "/v1/suggest?unit=in&width=2&height=2&thickness=2&caliper=0.012&sheet=6x9in&post=de" + about
		german, plain := decode[wire.Suggestions](get(t, query+"&language=de").ok()), decode[wire.Suggestions](get(t, query).ok())
		text := get(t, query+"&language=de&format=text").ok().Body.String()
		require.Positive(t, plain.Works)
		for i, k := range german.Kinds {
			assert.Equal(t, plain.Kinds[i].Kind, k.Kind)
			assert.NotEqual(t, plain.Kinds[i].Title, k.Title)
			if !k.Works {
				assert.Equal(t, plain.Kinds[i].Why, k.Why)
				assert.Contains(t, text, k.Title+" geht nicht: ")
				continue
			}
			said := k.Title + " geht: "
			assert.Contains(t, text, said)
			for n, why := range k.Why {
				assert.NotEqual(t, plain.Kinds[i].Why[n].Detail, why.Detail)
				assert.Contains(t, text, why.Detail)
				said += why.Detail
			}
			assert.Empty(t, english.FindAllString(said+k.Post.Advice, -1), said)
			assert.NotEqual(t, plain.Kinds[i].Post.Advice, k.Post.Advice)
		}
	}
}
