package api

import (
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
)

// TestEveryOptionIsTakenAndTells sets every parameter of every kind in turn, in
// both units: it comes back as it was given, and with some value, about some
// contents, alone or with one other parameter, it changes what is to be made and
// not only the addresses.
func TestEveryOptionIsTakenAndTells(t *testing.T) {
	if testing.Short() {
		t.Skip("thousands of requests, one after another")
	}
	for _, k := range repertoire.Kinds() {
		for _, unit := range []measure.Unit{measure.Inch, measure.Millimetre} {
			for _, p := range k.Params {
				t.Run(k.Name+"/"+p.Name+"/"+unit.String(), func(t *testing.T) {
					assert.True(t, tells(t, k, p, unit), "no value changes the answer")
				})
			}
		}
	}
}

// optionBases are contents that kinds can be made round: thin and thick ones,
// and some that are too large for one piece of the sheet.
var optionBases = []url.Values{
	{"width": {"3.5in"}, "height": {"5in"}, "thickness": {"0.09in"}, "caliper": {"0.012in"}},
	{"width": {"4in"}, "height": {"5in"}, "thickness": {"1in"}, "caliper": {"0.02in"}},
	{"width": {"4in"}, "height": {"4in"}, "thickness": {"4in"}, "caliper": {"0.012in"}},
	{"width": {"4in"}, "thickness": {"3in"}, "caliper": {"0.012in"}},
	{"width": {"7in"}, "height": {"9in"}, "thickness": {"2in"}, "caliper": {"0.03in"}, "sheet": {"12x12in"}},
}

// tells looks for a request to which some value of the parameter makes a
// difference: first with nothing else said, then with one other parameter.
func tells(t *testing.T, k *enclosure.Kind, p enclosure.Param, unit measure.Unit) bool {
	t.Helper()
	known := namesOf(k)
	for _, base := range optionBases {
		query := url.Values{"unit": {unit.String()}, "ruler": {measure.Finest(unit).String()}}
		for name, values := range base {
			if known[name] {
				query[name] = values
			}
		}
		if differs(t, k, p, unit, query) {
			return true
		}
		for _, other := range k.Params {
			if other.Name == p.Name {
				continue
			}
			for _, value := range optionValues(other, unit) {
				query.Set(other.Name, value)
				if differs(t, k, p, unit, query) {
					return true
				}
			}
			query.Del(other.Name)
		}
	}
	return false
}

// differs reports whether some value of the parameter changes the answer to a
// query without it.
func differs(t *testing.T, k *enclosure.Kind, p enclosure.Param, unit measure.Unit, query url.Values) bool {
	t.Helper()
	defer query.Del(p.Name)
	_, without, ok := madeOf(t, k, query)
	if !ok {
		return false
	}
	for _, value := range optionValues(p, unit) {
		query.Set(p.Name, value)
		given, with, ok := madeOf(t, k, query)
		if ok {
			require.Equal(t, value, given[p.Name].(map[string]any)["text"])
		}
		if ok && with != without {
			return true
		}
	}
	return false
}

// namesOf are the names that a solution of the kind knows.
func namesOf(k *enclosure.Kind) map[string]bool {
	known := map[string]bool{}
	for _, n := range newSolve(k).form.Names() {
		known[n.Name] = true
	}
	return known
}

// optionValues are values of a parameter but its default.
func optionValues(p enclosure.Param, unit measure.Unit) []string {
	var values []string
	switch p.Type {
	case enclosure.ChoiceParam:
		return p.Choices[1:]
	case enclosure.CountParam:
		for n := p.LeastCount; n <= min(p.GreatestCount, p.LeastCount+7); n++ {
			if n != p.DefaultCount {
				values = append(values, strconv.FormatInt(n, 10))
			}
		}
	case enclosure.LengthParam:
		for _, sixtyfourths := range []int64{48, 64, 96, 32, 128, 24, 192, 16, 256, 8, 384, 4, 2} {
			l := measure.Finest(unit).Nearest(measure.Sixtyfourths(sixtyfourths))
			if !l.Less(p.Least) && !p.Greatest.Less(l) && l != p.DefaultLength(unit) {
				values = append(values, measure.Finest(unit).Format(l))
			}
		}
	}
	return values
}

// madeOf asks for a solution and its pattern: how each value was understood,
// and all of the answers but that and the addresses.
func madeOf(t *testing.T, k *enclosure.Kind, query url.Values) (given map[string]any, made string, ok bool) {
	t.Helper()
	solution := quickly("/v1/solve/" + k.Name + "?" + query.Encode())
	if solution.Code != http.StatusOK {
		require.Less(t, solution.Code, http.StatusInternalServerError, solution.Body)
		return nil, "", false
	}
	var answer map[string]any
	require.NoError(t, json.Unmarshal(solution.Body.Bytes(), &answer))
	given = answer["given"].(map[string]any)
	delete(answer, "given")
	delete(answer, "links")
	withoutLinks(answer)
	text, err := json.Marshal(answer)
	require.NoError(t, err)
	return given, string(text) + quickly("/v1/drawing/"+k.Name+".fold?"+query.Encode()).Body.String(), true
}

// quickly asks without looking the answer up in the specification.
func quickly(target string) *httptest.ResponseRecorder {
	w := httptest.NewRecorder()
	shared().Handler().ServeHTTP(w, httptest.NewRequest(http.MethodGet, target, nil))
	return w
}

// withoutLinks takes the addresses out of an answer.
func withoutLinks(node any) {
	switch n := node.(type) {
	case []any:
		for _, entry := range n {
			withoutLinks(entry)
		}
	case map[string]any:
		delete(n, "link")
		delete(n, "try")
		for _, member := range n {
			withoutLinks(member)
		}
	}
}

// A member that takes work of its own is worked out for whoever names it, alone, in a
// list with spaces, as a whole or for a part, and for nobody else.
func TestMembersAreNamedInAnyWay(t *testing.T) {
	for _, c := range []struct {
		o     options
		named bool
	}{
		{options{}, false}, {options{show: []string{"step", " order "}}, true}, {options{show: []string{"orders"}}, false},
		{options{pick: "/order"}, true}, {options{pick: "/order/4/do"}, true}, {options{pick: "/orders"}, false}, {options{pick: "/steps/order"}, false},
	} {
		assert.Equal(t, c.named, c.o.names("order"), "%+v", c.o)
	}
}
