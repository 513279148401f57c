package own_test

import (
	"context"
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure/own"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// document is a design as a tree that a test may change.
type document struct {
	Design, Help string
	Sizes        []map[string]any `json:"sizes"`
	Choices      []map[string]any `json:"choices"`
	Holds        string           `json:"holds"`
	Open, Into   []string
	Pieces       []struct {
		Piece  string           `json:"piece"`
		Over   string           `json:"over,omitempty"`
		Round  string           `json:"round,omitempty"`
		Fit    string           `json:"fit,omitempty"`
		High   string           `json:"high,omitempty"`
		Panels []map[string]any `json:"panels"`
	} `json:"pieces"`
	Joins []map[string]any `json:"joins"`
}

func (d *document) text(t *testing.T) []byte {
	whole := map[string]any{"design": d.Design, "help": d.Help, "sizes": append([]map[string]any{}, d.Sizes...), "choices": append([]map[string]any{}, d.Choices...), "pieces": d.Pieces, "joins": append([]map[string]any{}, d.Joins...), "open": append([]string{}, d.Open...), "into": append([]string{}, d.Into...)}
	if d.Holds != "" {
		whole["holds"] = d.Holds
	}
	text, err := json.Marshal(whole)
	require.NoError(t, err)
	return text
}

// sizesOf solves a design and returns the sizes of its panels by name.
func sizesOf(t *testing.T, text []byte, unit measure.Unit, thing [3]float64) (map[string]measure.Length, *solve.Solution) {
	t.Helper()
	k, err := own.Read(text)
	require.NoError(t, err, "%s", text)
	s, err := solve.Solve(context.Background(), request(k, unit, thing, 300))
	require.NoError(t, err, "%s", text)
	sizes := map[string]measure.Length{}
	for _, p := range s.Pattern.Pieces {
		for _, strip := range p.Strips {
			for _, c := range strip.Cells {
				if !strings.HasSuffix(c.Name, " height") {
					sizes[c.Name] = c.Size
				}
			}
		}
	}
	return sizes, s
}

// all lists every design that is kept.
func all() []own.Example { return append(own.Examples(), own.Kinds()...) }

// each calls a check with every design as a document, and with its sizes.
func each(t *testing.T, check func(t *testing.T, d *document, want map[string]measure.Length, s *solve.Solution, unit measure.Unit, thing [3]float64)) {
	for _, e := range all() {
		for _, unit := range []measure.Unit{measure.Inch, measure.Millimetre} {
			thing := things[1]
			if strings.Contains(e.Name, "scores-one") {
				thing[2] = 2
			}
			t.Run(e.Name+"/"+unit.String(), func(t *testing.T) {
				var d document
				require.NoError(t, json.Unmarshal(e.Text, &d))
				want, s := sizesOf(t, e.Text, unit, thing)
				check(t, &d, want, s, unit, thing)
			})
		}
	}
}

// What the panels are called is nothing to the sizes.
func TestRenamedDesignsAreAsLarge(t *testing.T) {
	each(t, func(t *testing.T, d *document, want map[string]measure.Length, s *solve.Solution, unit measure.Unit, thing [3]float64) {
		text := string(d.text(t))
		for _, p := range d.Pieces {
			for i, panel := range p.Panels {
				name := panel["panel"].(string)
				other := "x" + string(rune('a'+i)) + p.Piece
				text = strings.ReplaceAll(text, `"`+name+`"`, `"`+other+`"`)
				text = strings.ReplaceAll(text, `of `+name+`"`, `of `+other+`"`)
			}
		}
		got, g := sizesOf(t, []byte(text), unit, thing)
		assert.Len(t, got, len(want))
		assert.Equal(t, s.Step, g.Step)
		assert.Equal(t, s.Outside, g.Outside)
		assert.InDelta(t, s.Sure.Chance, g.Sure.Chance, 1e-12)
	})
}

// A design in the mirror comes to the same sizes.
func TestMirroredDesignsAreAsLarge(t *testing.T) {
	mirrored := map[any]string{"left": "right", "right": "left"}
	each(t, func(t *testing.T, d *document, want map[string]measure.Length, s *solve.Solution, unit measure.Unit, thing [3]float64) {
		for _, p := range d.Pieces {
			for _, panel := range p.Panels {
				if to := mirrored[panel["edge"]]; to != "" {
					panel["edge"] = to
				}
				if w, ok := panel["window"].(map[string]any); ok {
					w["left"], w["right"] = w["right"], w["left"]
				}
			}
		}
		for _, j := range d.Joins {
			for name, line := range j {
				text, _ := line.(string)
				side, of, ok := strings.Cut(text, " edge of ")
				if to := mirrored[side]; ok && to != "" {
					j[name] = to + " edge of " + of
				}
			}
		}
		got, g := sizesOf(t, d.text(t), unit, thing)
		assert.Equal(t, want, got)
		assert.Equal(t, s.Step, g.Step)
		assert.Equal(t, s.Outside, g.Outside)
	})
}

// A design that begins at another panel of its row comes to the same sizes.
func TestDesignsBeginAnywhere(t *testing.T) {
	each(t, func(t *testing.T, d *document, want map[string]measure.Length, s *solve.Solution, unit measure.Unit, thing [3]float64) {
		panels := d.Pieces[0].Panels
		root := slices.IndexFunc(panels, func(p map[string]any) bool { return p["on"] == nil })
		at := slices.IndexFunc(panels, func(p map[string]any) bool {
			return p["on"] == panels[root]["panel"] && (p["edge"] == "left" || p["edge"] == "right") && p["narrower"] == nil
		})
		if at < 0 {
			t.Skip("nothing hangs at a side of its root")
		}
		name := "of " + panels[at]["panel"].(string)
		if strings.Contains(string(d.text(t)), name+`"`) || len(d.Pieces) > 1 || slices.ContainsFunc(panels, func(p map[string]any) bool {
			return (p["edge"] == "bottom" || p["edge"] == "top") && p["on"] == panels[root]["panel"]
		}) {
			t.Skip("its fold has another name then, or other panels hang on its root")
		}
		if d.Holds == "" {
			d.Holds = panels[root]["panel"].(string)
		}
		reroot(panels[root], panels[at])
		got, g := sizesOf(t, d.text(t), unit, thing)
		for n, size := range got {
			assert.Equal(t, want[n], size, n)
		}
		assert.Equal(t, s.Step, g.Step)
		assert.Equal(t, s.Outside, g.Outside)
	})
}

// reroot lets a panel that hangs on the root at a side be the root.
func reroot(root, to map[string]any) {
	root["on"], root["edge"] = to["panel"], map[any]string{"left": "right", "right": "left"}[to["edge"]]
	for _, key := range []string{"fold", "angle"} {
		if to[key] != nil {
			root[key] = to[key]
		}
	}
	if root["across"] != nil {
		root["reach"] = root["across"]
	}
	if root["up"] != nil {
		to["up"] = root["up"]
	}
	if to["reach"] != nil {
		to["across"] = to["reach"]
	}
	for _, key := range []string{"across", "up"} {
		delete(root, key)
	}
	for _, key := range []string{"on", "edge", "fold", "angle", "reach"} {
		delete(to, key)
	}
}
