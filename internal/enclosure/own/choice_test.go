package own_test

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/enclosure/own"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// chosenSleeve is a sleeve that may be closed at its foot.
var chosenSleeve = sleeveWith(`"pieces":`, `"choices":[{"name":"foot","of":["open","closed"],"help":"What is below."}],"pieces":`,
	`{"panel":"lap"`, `{"panel":"foot","on":"back","edge":"bottom","narrower":"1/8 in","when":{"foot":"closed"}},{"panel":"lap"`,
	`{"glue":"lap","to":"front"}`, `{"glue":"lap","to":"front"},{"meet":"edge of foot","with":"outside of front","short":"a little","when":{"foot":"never"}}`)

// What a design is like with one choice and with another one is told by two requests that
// differ in nothing else.
func TestChoicesSayWhatIsThere(t *testing.T) {
	text := strings.Replace(chosenSleeve, `,{"meet":"edge of foot","with":"outside of front","short":"a little","when":{"foot":"never"}}`, "", 1)
	text = strings.Replace(text, `"narrower":"1/8 in",`, `"narrower":"1/8 in","reach":{"like":"right side"},`, 1)
	k, err := own.Read([]byte(text))
	require.NoError(t, err)
	panels := map[string]int{}
	for _, foot := range []string{"", "open", "closed"} {
		q := request(k, measure.Millimetre, things[1], 300)
		if foot != "" {
			q.Options["foot"] = enclosure.Value{Choice: foot}
		}
		s, err := solve.Solve(context.Background(), q)
		require.NoError(t, err, foot)
		panels[foot] = len(s.Pattern.Pieces[0].Panels)
	}
	assert.Equal(t, map[string]int{"": 5, "open": 5, "closed": 6}, panels)
	last := k.Params[len(k.Params)-1]
	assert.Equal(t, enclosure.Param{Name: "foot", Type: enclosure.ChoiceParam, Help: "What is below.", Choices: []string{"open", "closed"}}, last)
}

// Choices that cannot be made are told with their places, each once, whichever way they
// are wrong in.
func TestChoicesThatCannotBeMade(t *testing.T) {
	for name, c := range map[string]struct {
		design, place string
		code          fault.Code
	}{
		"no such word":   {chosenSleeve, "design.joins[1].when.foot", fault.Unknown},
		"no such choice": {strings.Replace(chosenSleeve, `{"foot":"closed"}`, `{"head":"closed"}`, 1), "design.pieces[0].panels[4].when.head", fault.Unknown},
		"nothing to say": {strings.Replace(chosenSleeve, `["open","closed"]`, `["open","open"]`, 1), "design.choices[0].of", fault.Missing},
		"a size's name":  {strings.Replace(chosenSleeve, `"name":"foot"`, `"name":"lap"`, 1), "design.choices[0]", fault.Repeated},
		"nine ways":      {strings.Replace(chosenSleeve, `"choices":[`, `"choices":[{"name":"a","of":["x","y","z"]},{"name":"b","of":["x","y","z"]},`, 1), "design.choices", fault.TooMany},
		"missing parent": {strings.Replace(chosenSleeve, `"on":"back","edge":"bottom"`, `"on":"backk","edge":"bottom"`, 1), "design.pieces[0].panels[4].on", fault.Unknown},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := own.Read([]byte(c.design))
			var faults fault.Faults
			require.NoError(t, faults.Add(err))
			found := 0
			for _, f := range faults {
				if f.Field == c.place && f.Code == c.code {
					found++
				}
			}
			assert.Equal(t, 1, found, "%+v", faults)
		})
	}
}

// Every example is proven with every choice that it leaves.
func TestExamplesAreProvenWithEveryChoice(t *testing.T) {
	chosen := 0
	for _, e := range own.Examples() {
		k, err := own.Read(e.Text)
		require.NoError(t, err)
		for i := range k.Params {
			for _, word := range k.Params[i].Choices {
				q := request(k, measure.Inch, things[0], 300)
				q.Options[k.Params[i].Name] = enclosure.Value{Choice: word}
				s, err := solve.Solve(context.Background(), q)
				if assert.NoError(t, err, "%s %s", e.Name, word) {
					assert.True(t, s.Proof.Closes && s.Proof.Holds)
					chosen++
				}
			}
		}
	}
	assert.NotZero(t, chosen)
}
