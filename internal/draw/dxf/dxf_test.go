package dxf_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/draw"
	"creasefit/internal/draw/drawtest"
	"creasefit/internal/draw/dxf"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/peer"
)

func encode(t *testing.T, d *draw.Drawing) []byte {
	var b bytes.Buffer
	require.NoError(t, dxf.Encode(&b, d))
	return b.Bytes()
}

func sleeve() *draw.Drawing {
	return draw.New(drawtest.Sleeve(), draw.Options{Step: measure.Marks(measure.Millimetre)[3]})
}

// corner is a corner of an entity as a reader finds it.
type corner struct {
	layer   string
	x, y, z float64 // z is the bulge
	of      int     // the entity
}

// corners reads the entities' corners from group codes.
func corners(t *testing.T, b []byte) []corner {
	lines := strings.Split(strings.TrimSuffix(string(b), "\r\n"), "\r\n")
	require.Zero(t, len(lines)%2, "codes and values come in pairs")
	_, body, found := strings.Cut(strings.Join(lines, "\n"), "\n2\nENTITIES\n")
	require.True(t, found)
	lines = strings.Split(body, "\n")
	var all []corner
	kind, layer, of := "", "", 0
	for i := 0; i+1 < len(lines); i += 2 {
		value, _ := strconv.ParseFloat(lines[i+1], 64)
		switch lines[i] {
		case "0":
			if kind = lines[i+1]; kind != "VERTEX" {
				of++
			}
		case "8":
			layer = lines[i+1]
		case "10", "11":
			if kind != "POLYLINE" {
				all = append(all, corner{layer: layer, x: value, of: of})
			}
		case "20", "21":
			if kind != "POLYLINE" {
				all[len(all)-1].y = value
			}
		case "42":
			all[len(all)-1].z = value
		}
	}
	return all
}

func has(all []corner, layers []string, p pattern.Point) bool {
	for _, c := range all {
		near := math.Hypot(c.x-p.X.Millimetres(), c.y-p.Y.Millimetres()) < 1e-3
		for _, l := range layers {
			if near && c.layer == l {
				return true
			}
		}
	}
	return false
}

// Every end of a crease and of a slit is read back within 1 um on a layer that
// it may be on: where a slit covers a crease, or the outline cuts it off, that
// one's.
func TestCoordinatesReadBack(t *testing.T) {
	drawtest.EachRandom(t, 500, func(t *testing.T, s *drawtest.Sample) {
		all := corners(t, encode(t, s.Draw()))
		p := &s.Solution.Pattern.Pieces[0]
		for _, c := range p.Creases {
			fold := "CREASE_" + strings.ToUpper(c.Fold.String())
			if s.Solution.Pattern.Stiff() {
				fold = map[pattern.Fold]string{pattern.Valley: "HALF_CUT_OTHER_SIDE", pattern.Mountain: "HALF_CUT"}[c.Fold]
			}
			layers := []string{"SLIT", "CUT", fold}
			assert.True(t, has(all, layers, c.A) && has(all, layers, c.B), "%s %s", s.Name, c.Name)
		}
		for _, c := range p.Cuts {
			for _, v := range c.Path {
				if c.Kind != pattern.Relief {
					assert.True(t, has(all, []string{"SLIT", "CUT"}, v.Point), "%s %s", s.Name, c.Name)
				}
			}
		}
	})
}

// Templates and cutter's files are read back within a micrometre, the middles of their
// arcs too.
func TestFilesReadBack(t *testing.T) {
	drawtest.Files(t, func(name string, d *draw.Drawing) {
		var all [][2]float64
		read, first := corners(t, encode(t, d)), 0
		for i, c := range read {
			if c.of != read[first].of {
				first = i
			}
			all = append(all, [2]float64{c.x, c.y})
			if next := i + 1; c.z != 0 {
				if next == len(read) || read[next].of != c.of {
					next = first
				}
				all = append(all, drawtest.Middle([2]float64{c.x, c.y}, [2]float64{read[next].x, read[next].y}, c.z))
			}
		}
		assert.Empty(t, drawtest.Missing(d.Pattern, all, 1e-3), name)
	})
}

func TestArcsAreTrue(t *testing.T) {
	var bulges []float64
	for _, c := range corners(t, encode(t, sleeve())) {
		if c.z != 0 {
			bulges = append(bulges, c.z)
		}
	}
	quarter := math.Tan(math.Pi / 8)
	require.Len(t, bulges, 4)
	for i, want := range []float64{-1, -1, quarter, quarter} {
		assert.InDelta(t, want, bulges[i], 1e-12)
	}
	assert.True(t, has(corners(t, encode(t, sleeve())), []string{"CUT"}, pattern.At(measure.Millimetres(60), measure.Millimetres(40+10+30))),
		"the second piece lies 10 mm above the first")
}

// An independent reader understands the file.
func TestAnotherReaderReadsIt(t *testing.T) {
	const script = `
		const reader = require('dxf-parser');
		const d = new (reader.default || reader)().parseSync(require('fs').readFileSync(0, 'latin1'));
		console.log(JSON.stringify({
			layers: Object.keys(d.tables.layer.layers), lines: Object.keys(d.tables.lineType.lineTypes), units: d.header.$INSUNITS,
			entities: d.entities.map(e => ({ type: e.type, layer: e.layer, closed: !!e.shape, vertices: e.vertices })) }));`
	var got struct {
		Layers, Lines []string
		Units         int
		Entities      []struct {
			Type, Layer string
			Closed      bool
			Vertices    []struct{ X, Y, Bulge float64 }
		}
	}
	out := peer.Node(t, "dxf-parser@1.1.2", script, encode(t, sleeve()))
	require.NoError(t, json.Unmarshal(out, &got))
	assert.Equal(t, []string{"CUT", "SLIT", "CREASE_VALLEY", "CREASE_MOUNTAIN", "HALF_CUT_OTHER_SIDE", "HALF_CUT", "GLUE", "GLUE_OTHER_SIDE", "NAME"}, got.Layers)
	assert.Equal(t, []string{"CONTINUOUS", "VALLEY", "MOUNTAIN"}, got.Lines)
	assert.Equal(t, 4, got.Units)
	count := map[string]int{}
	for _, e := range got.Entities {
		count[e.Type+" "+e.Layer]++
		assert.Equal(t, e.Layer == "CUT" || e.Layer == "GLUE_OTHER_SIDE", e.Closed)
	}
	assert.Equal(t, map[string]int{"POLYLINE CUT": 3, "LINE SLIT": 1, "LINE CREASE_VALLEY": 4, "POLYLINE GLUE_OTHER_SIDE": 1, "TEXT NAME": 2}, count)
	notch := got.Entities[0].Vertices
	require.Len(t, notch, 6)
	found := false
	for _, v := range notch {
		found = found || v.X == 48.65 && v.Y == 40 && v.Bulge == -1
	}
	assert.True(t, found, "the thumb notch is an arc of half a circle from 48.65, 40")
}

func TestGolden(t *testing.T) {
	for name, d := range drawtest.Goldens() {
		drawtest.CheckGolden(t, name+".dxf", encode(t, d))
	}
}

// full is a writer that takes nothing.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("the disk is full") }

func TestWriteErrorIsReported(t *testing.T) {
	assert.EqualError(t, dxf.Encode(full{}, sleeve()), "the disk is full")
}

func BenchmarkDXF(b *testing.B) {
	d := drawtest.Every()[0].Draw()
	b.ReportAllocs()
	for b.Loop() {
		if err := dxf.Encode(io.Discard, d); err != nil {
			b.Fatal(err)
		}
	}
}
