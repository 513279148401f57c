package guide_test

import (
	"encoding/json"
	"net/url"
	"os"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/guide"
	"creasefit/internal/repertoire"
)

// vocabulary is what the published vocabulary says of the terms that a HowTo uses.
type vocabulary struct {
	Classes    map[string][]string
	Properties map[string]struct{ Domain, Range []string }
}

// is reports whether a class is one of some, or below one.
func (v *vocabulary) is(class string, of []string) bool {
	return slices.Contains(of, class) || slices.ContainsFunc(v.Classes[class], func(above string) bool { return v.is(above, of) })
}

// check checks that every property of an object belongs to its class, and every value
// to the range of its property.
func (v *vocabulary) check(t *testing.T, object map[string]any) {
	class, _ := object["@type"].(string)
	require.Contains(t, v.Classes, class)
	for name, value := range object {
		if name == "@type" || name == "@context" {
			continue
		}
		p, known := v.Properties[name]
		require.True(t, known, "%s has no %s", class, name)
		assert.True(t, v.is(class, p.Domain), "%s is no property of %s", name, class)
		values, list := value.([]any)
		if !list {
			values = []any{value}
		}
		for _, value := range values {
			v.value(t, name, p.Range, value)
		}
	}
}

func (v *vocabulary) value(t *testing.T, name string, of []string, value any) {
	switch value := value.(type) {
	case map[string]any:
		class, _ := value["@type"].(string)
		assert.True(t, v.is(class, of), "%s takes no %s", name, class)
		v.check(t, value)
	case string:
		if slices.Contains(of, "Text") {
			return
		}
		at, err := url.Parse(value)
		assert.True(t, slices.Contains(of, "URL") && err == nil && at.Path != "", "%s takes no text: %q", name, value)
	case float64:
		assert.True(t, slices.Contains(of, "Integer") && value == float64(int(value)), "%s takes no number", name)
	default:
		assert.Fail(t, "no value of the vocabulary", "%s: %v", name, value)
	}
}

// The HowTo of every kind is one by the published vocabulary, with a picture a step that
// the order of work has.
func TestHowToIsOfTheVocabulary(t *testing.T) {
	text, err := os.ReadFile("../../testdata/guide/howto-terms.json")
	require.NoError(t, err)
	var v vocabulary
	require.NoError(t, json.Unmarshal(text, &v))
	for _, k := range repertoire.Kinds() {
		eachWay(t, solved(t, k.Name, 1), func(g guide.Guide) {
			page, err := g.HTML(guide.Pictures{Link: func(step int) string { return "/v1/drawing/" + k.Name + ".svg?view=step&picture=" + strconv.Itoa(step) }})
			require.NoError(t, err)
			var how map[string]any
			require.NoError(t, json.Unmarshal(parsePage(t, page).data, &how))
			v.check(t, how)
			for i, step := range how["step"].([]any) {
				_, pictured := step.(map[string]any)["image"]
				assert.Equal(t, len(g.Steps[i].Order) > 0, pictured)
			}
		})
	}
}
