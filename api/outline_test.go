package api

import (
	"encoding/json"
	"flag"
	"math"
	"net/http"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
)

var outlines = flag.Int("outlines", 3, "of how many random solutions of each kind the outline is rebuilt from the text")

// TestOutlineIsRebuiltFromText rebuilds the cut edge of every piece of every kind
// from the lines of the text answer alone, and compares it with that of the FOLD
// file: each corner is a vertex of its boundary, and both enclose the same paper.
// Every choice of a kind is taken in turn, then random requests.
func TestOutlineIsRebuiltFromText(t *testing.T) {
	if testing.Short() {
		t.Skip("hundreds of requests, one after another")
	}
	for _, k := range repertoire.Kinds() {
		t.Run(k.Name, func(t *testing.T) {
			compared := 0
			for _, query := range outlineQueries(k) {
				compared += rebuilt(t, k.Name, query)
			}
			assert.Positive(t, compared)
			random := rapid.Custom(func(rt *rapid.T) string { return drawQuery(rt, k).Encode() })
			for tries, found := 0, 0; found < *outlines; tries++ {
				require.Less(t, tries, 1000**outlines, "hardly any request has a solution")
				found += rebuilt(t, k.Name, random.Example(tries))
			}
		})
	}
}

// rebuilt compares the outlines of a request; 0 if nothing can be made of it, else 1.
func rebuilt(t *testing.T, kind, query string) int {
	answer := get(t, "/v1/solve/"+kind+"?format=text&"+query)
	if answer.Code != http.StatusOK {
		return 0
	}
	drawn := get(t, "/v1/drawing/"+kind+"?format=fold&"+query)
	require.Equal(t, http.StatusOK, drawn.Code)
	compareOutlines(t, kind+"?"+query, answer.Body.String(), drawn.Body.String())
	return 1
}

// outlineQueries are requests for thin and thick contents on both rulers, with every
// choice of the kind in turn.
func outlineQueries(k *enclosure.Kind) []string {
	choices := []string{""}
	for _, p := range k.Params {
		for _, c := range p.Choices {
			choices = append(choices, "&"+p.Name+"="+c)
		}
	}
	var queries []string
	for _, base := range []string{"unit=mm&width=120&thickness=2&caliper=0.3", "unit=mm&width=120&thickness=60&caliper=0.3", "unit=in&width=5&thickness=2&caliper=0.06"} {
		for _, c := range choices {
			if strings.Contains(c, "inscribed") || k.Name == "prism-box" {
				queries = append(queries, base+c)
			} else {
				queries = append(queries, base+heightFor(base)+c)
			}
		}
	}
	return queries
}

func heightFor(base string) string {
	if strings.Contains(base, "unit=in") {
		return "&height=4"
	}
	return "&height=90"
}

// cornerLine is one corner in the text answer, blankLine one side of a blank.
var (
	cornerLine = regexp.MustCompile(`^(.*), outline corner (\d+)(?: of ring (\d+))?(?:, bulge (-?[0-9.]+))?: (.*) from the left, (.*) from the bottom$`)
	blankLine  = regexp.MustCompile(`^(.*), blank (width|height): (.*)$`)
	withPapers = regexp.MustCompile(` (?:and|less) \d papers? \(([0-9.]+) (mm|in)\)$`)
)

// told is a corner as the text has it.
type told struct {
	x, y, bulge float64
	ring        int
}

// toldLength reads a length of the text in millimetres.
func toldLength(t *testing.T, text string) float64 {
	if m := withPapers.FindStringSubmatch(text); m != nil {
		exact, err := strconv.ParseFloat(m[1], 64)
		require.NoError(t, err, text)
		if m[2] == "in" {
			exact *= 25.4
		}
		return exact
	}
	l, err := measure.Parse(text, measure.NoUnit, measure.ClearComma)
	require.NoError(t, err, text)
	return l.Millimetres()
}

// compareOutlines rebuilds the outlines and looks for them in the drawing. A piece
// that has no corners is its blank.
func compareOutlines(t *testing.T, what, text, drawing string) {
	t.Helper()
	var order []string
	pieces, blanks := map[string][]told{}, map[string][2]float64{}
	for line := range strings.Lines(text) {
		line = strings.TrimRight(line, "\n")
		if m := blankLine.FindStringSubmatch(line); m != nil {
			size := blanks[m[1]]
			if m[2] == "width" {
				order, size[0] = append(order, m[1]), toldLength(t, m[3])
			} else {
				size[1] = toldLength(t, m[3])
			}
			blanks[m[1]] = size
			continue
		}
		m := cornerLine.FindStringSubmatch(line)
		if m == nil {
			require.NotContains(t, line, "outline corner")
			continue
		}
		c := told{x: toldLength(t, m[5]), y: toldLength(t, m[6])}
		c.ring, _ = strconv.Atoi(m[3])
		c.bulge, _ = strconv.ParseFloat(m[4], 64)
		pieces[m[1]] = append(pieces[m[1]], c)
	}
	for name, size := range blanks {
		if pieces[name] == nil {
			pieces[name] = []told{{}, {x: size[0]}, {x: size[0], y: size[1]}, {y: size[1]}}
		}
	}
	require.NotEmpty(t, order, what)
	frames := foldFrames(t, drawing)
	if strings.Contains(what, "ornament_width=") { // is traced from the drawing: one frame more, the last
		frames = frames[:len(frames)-1]
	}
	require.Len(t, frames, len(order), what)
	for i, name := range order {
		area, off := 0.0, 0.01
		corners := pieces[name]
		for j, c := range corners {
			assert.True(t, frames[i].has(c.x, c.y), "%s: %s has no corner at %v, %v", what, name, c.x, c.y)
			next := corners[(j+1)%len(corners)]
			if j+1 == len(corners) || next.ring != c.ring {
				next = corners[first(corners, c.ring)]
			}
			area += (c.x*next.y-next.x*c.y)/2 + segment(c, next)
			wide := math.Hypot(next.x-c.x, next.y-c.y)
			switch {
			case c.bulge == 0:
			case strings.HasPrefix(what, "pillow-pack"):
				off += wide * wide / 1200 // the facets that its panels bend in have chords within 1/800 of their width
			default:
				off += 0.02 * wide // the drawing has chords within 0.01 mm
			}
		}
		assert.InDelta(t, frames[i].area(), area, off, "%s: %s", what, name)
	}
}

func first(corners []told, ring int) int {
	for i, c := range corners {
		if c.ring == ring {
			return i
		}
	}
	return 0
}

// segment is the area between an arc and its chord.
func segment(a, b told) float64 {
	if a.bulge == 0 {
		return 0
	}
	turn, chord := 4*math.Atan(a.bulge), math.Hypot(b.x-a.x, b.y-a.y)
	radius := chord / (2 * math.Sin(turn/2))
	return radius * radius * (turn - math.Sin(turn)) / 2
}

// foldFrame is one piece of a FOLD file.
type foldFrame struct {
	Coords     [][2]float64 `json:"vertices_coords"`
	Edges      [][2]int     `json:"edges_vertices"`
	Assignment []string     `json:"edges_assignment"`
	Faces      [][]int      `json:"faces_vertices"`
	Frames     []foldFrame  `json:"file_frames"`
}

func foldFrames(t *testing.T, text string) []foldFrame {
	t.Helper()
	var f foldFrame
	require.NoError(t, json.Unmarshal([]byte(text), &f))
	return append([]foldFrame{f}, f.Frames...)
}

// has reports whether the boundary has a vertex at a place, to a hundredth of a
// micrometre.
func (f *foldFrame) has(x, y float64) bool {
	for i, e := range f.Edges {
		if f.Assignment[i] != "B" {
			continue
		}
		for _, v := range e {
			if math.Hypot(f.Coords[v][0]-x, f.Coords[v][1]-y) < 2e-5 { // texts have six decimals of an inch
				return true
			}
		}
	}
	return false
}

// area is that of all faces.
func (f *foldFrame) area() (sum float64) {
	for _, face := range f.Faces {
		for i, v := range face {
			a, b := f.Coords[v], f.Coords[face[(i+1)%len(face)]]
			sum += (a[0]*b[1] - b[0]*a[1]) / 2
		}
	}
	return sum
}
