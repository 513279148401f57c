package tell

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/api/wire"
)

// TestAKindToRead: what it needs and where to ask, then a line a name with what it takes; how
// an answer is wanted is the same for all kinds and not told.
func TestAKindToRead(t *testing.T) {
	bound := func(mm float64) *wire.Bound { return &wire.Bound{MM: new(mm), In: new(mm / 25.4)} }
	number := func(x float64) *wire.Bound { return &wire.Bound{Number: new(x)} }
	k := wire.Kind{Name: "band", Title: "Belly band", Help: "A band.", Needs: []string{"width", "thickness"}, Links: wire.KindLinks{Solve: "/v1/solve/band"},
		Parameters: []wire.Parameter{
			{Name: "width", Type: "length", About: "calculation", Help: "How wide.", Least: bound(0.1), Greatest: bound(5000)},
			{Name: "caliper", Type: "length", About: "calculation", Help: "How thick.", Least: bound(0), Greatest: bound(2.5), Default: &wire.ParameterDefault{In: "0.012 in", MM: "0.3 mm"}},
			{Name: "stock", Type: "preset", About: "calculation", Help: "The paper.", Catalogue: "/v1/stocks", Choices: []string{"index-110"}},
			{Name: "fit", Type: "choice", About: "calculation", Help: "How close.", Choices: []string{"snug", "easy"}, Default: &wire.ParameterDefault{In: "easy", MM: "easy"}},
			{Name: "sides", Type: "count", About: "calculation", Help: "How many.", Least: number(3), Greatest: number(12), List: true},
			{Name: "format", Type: "choice", About: "answer", Help: "Never told."},
		}}
	assert.Equal(t, []string{
		"band: Belly band. A band.", "needs width, thickness", "GET or POST /v1/solve/band",
		"width (length, 0.1 to 5000 mm): How wide.",
		"caliper (length, 0 to 2.5 mm, default 0.012 in or 0.3 mm): How thick.",
		"stock (preset, /v1/stocks): The paper.",
		"fit (snug|easy, default easy): How close.",
		"sides (count, 3 to 12, several): How many.", "",
	}, strings.Split(string(Append(nil, Text, k, Style{})), "\n"))
}

// TestALimitThatIsNoneOfTheRest: numbers at the ends of what is written as whole millionths
// are written as any others.
func TestALimitThatIsNoneOfTheRest(t *testing.T) {
	for text, x := range map[string]float64{
		"1000000000": 1e9, "-1000000000": -1e9, "999999999": 999999999, "-999999999.5": -999999999.5, "1000000000.5": 1000000000.5, "-1000000000.5": -1000000000.5,
		"0.000001": 1e-6, "0.0000015": 1.5e-6, "-0.25": -0.25, "100.100001": 100.100001, "7": 7,
	} {
		assert.Equal(t, text, string(AppendNumber(nil, x)))
	}
}

// TestTextsAreReadInOneLineARow: of two columns the value alone, of more each by its name, and
// nothing of what is empty.
func TestTextsAreReadInOneLineARow(t *testing.T) {
	type entry struct {
		Name  string  `json:"name"`
		Title string  `json:"title"`
		Mass  float64 `json:"mass,omitempty"`
	}
	list := struct {
		Entries []entry `json:"entries"`
	}{[]entry{{"index-110", "index, 110 lb", 199.5}, {"unknown", "", 0}}}
	assert.Equal(t, "index-110: title index, 110 lb, mass 199,5\nunknown\n", string(Append(nil, Text, list, Style{Comma: true})))
	p := &wire.Paper{Grammage: 200.5, Source: "a table"}
	lines := strings.Split(string(Append(nil, Text, p, Style{})), "\n")
	assert.Contains(t, lines, "/grammage: 200.5")
	assert.Contains(t, lines, "/source: a table")
}

// TestAPiecesOwnOutlineIsTold: a rectangle is its blank and is told already, whatever is cut
// into it makes it another.
func TestAPiecesOwnOutlineIsTold(t *testing.T) {
	p := &wire.Piece{Blank: wire.Blank{Width: mm("90 mm", 90), Height: mm("60 mm", 60)}}
	corner := func(x, y float64) wire.Corner { return wire.Corner{X: mm("", x), Y: mm("", y)} }
	whole := []wire.Corner{corner(0, 0), corner(90, 0), corner(90, 60), corner(0, 60)}
	for name, c := range map[string]struct {
		outline []wire.Corner
		is      bool
	}{
		"itself": {whole, true}, "none": {nil, true}, "a corner off": {append(whole[:3:3], corner(1, 60)), false}, "another off": {append(whole[:3:3], corner(0, 59)), false},
		"an arc": {append(whole[:3:3], wire.Corner{X: mm("", 0), Y: mm("", 60), Bulge: 0.2}), false},
	} {
		p.Outline = c.outline
		assert.Equal(t, c.is, wholeBlank(p), name)
	}
	assert.Equal(t, "corner 3", cornerName(&wire.Corner{}, 2))
	assert.Equal(t, "corner 3 of ring 2, bulge -0.25", cornerName(&wire.Corner{Ring: 1, Bulge: -0.25}, 2))
}
