package glb_test

import (
	"bytes"
	"encoding/binary"
	"encoding/json"
	"errors"
	"io"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/draw"
	"creasefit/internal/draw/drawtest"
	"creasefit/internal/draw/glb"
	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/peer"
)

func encode(t testing.TB, d *draw.Drawing, closed float64) []byte {
	var b bytes.Buffer
	require.NoError(t, glb.Encode(&b, d, glb.Options{Closed: closed}))
	return b.Bytes()
}

func sleeve() *draw.Drawing {
	return draw.New(drawtest.Sleeve(), draw.Options{Title: "Sleeve", Step: measure.Marks(measure.Millimetre)[3]})
}

// body is a node with the triangles of its mesh, in the pattern's axes and mm.
type body struct {
	name      string
	triangles [][]drawtest.Vec
}

// read takes a file apart by the specification.
func read(t *testing.T, b []byte) []body {
	require.Equal(t, "glTF", string(b[:4]))
	require.EqualValues(t, 2, binary.LittleEndian.Uint32(b[4:]))
	require.EqualValues(t, len(b), binary.LittleEndian.Uint32(b[8:]))
	n := binary.LittleEndian.Uint32(b[12:])
	require.Equal(t, "JSON", string(b[16:20]))
	var d struct {
		Nodes []struct {
			Name            string
			Mesh            *int
			Rotation, Scale []float64
			Children        []int
		}
		Meshes []struct {
			Primitives []struct {
				Attributes map[string]int
				Indices    int
			}
		}
		Accessors   []struct{ BufferView, ByteOffset, Count int }
		BufferViews []struct{ ByteOffset int }
	}
	require.NoError(t, json.Unmarshal(b[20:20+n], &d))
	data := b[28+n:]
	require.InDeltaSlice(t, []float64{-math.Sqrt2 / 2, 0, 0, math.Sqrt2 / 2}, d.Nodes[0].Rotation, 1e-7, "z up becomes y up")
	require.InDeltaSlice(t, []float64{0.001, 0.001, 0.001}, d.Nodes[0].Scale, 1e-9)
	require.Len(t, d.Nodes[0].Children, len(d.Nodes)-1)
	start := func(accessor int) []byte {
		a := d.Accessors[accessor]
		return data[d.BufferViews[a.BufferView].ByteOffset+a.ByteOffset:]
	}
	var bodies []body
	for _, node := range d.Nodes[1:] {
		b := body{name: node.Name}
		for _, p := range d.Meshes[*node.Mesh].Primitives {
			places, corners := start(p.Attributes["POSITION"]), start(p.Indices)
			for i := 0; i < d.Accessors[p.Indices].Count; i += 3 {
				var triangle []drawtest.Vec
				for k := range 3 {
					at := 12 * binary.LittleEndian.Uint32(corners[4*(i+k):])
					var v drawtest.Vec
					for c := range v {
						v[c] = float64(math.Float32frombits(binary.LittleEndian.Uint32(places[int(at)+4*c:])))
					}
					triangle = append(triangle, v)
				}
				b.triangles = append(b.triangles, triangle)
			}
		}
		bodies = append(bodies, b)
	}
	return bodies
}

// volume adds up the signed volume under the triangles: that of a closed body
// whose faces all look outwards.
func (b *body) volume() float64 {
	sum := 0.0
	for _, t := range b.triangles {
		p, q, r := t[0], t[1], t[2]
		sum += (p[0]*(q[1]*r[2]-q[2]*r[1]) + p[1]*(q[2]*r[0]-q[0]*r[2]) + p[2]*(q[0]*r[1]-q[1]*r[0])) / 6
	}
	return sum
}

func (b *body) bounds() (low, high drawtest.Vec) {
	low, high = b.triangles[0][0], b.triangles[0][0]
	for _, t := range b.triangles {
		for _, v := range t {
			for k := range v {
				low[k], high[k] = min(low[k], v[k]), max(high[k], v[k])
			}
		}
	}
	return low, high
}

// Every plate is a closed body of its paper's volume, window and notch left
// out, at any stage of folding.
func TestPlatesHaveTheirVolume(t *testing.T) {
	for _, closed := range []float64{0, 0.35, 1} {
		bodies := read(t, encode(t, sleeve(), closed))
		want := map[string]float64{
			"front with a rather long name": 81.3*40 - math.Pi*32, "side": 21.1 * 40,
			"back": 81.3*40 - 35*16 - math.Pi*32, "other side": 20.8 * 40, "lap": 15 * 40,
			"card": 60*36 - 2*(36-math.Pi*9), "contents": 80 * 40 * 20 / 0.3,
		}
		require.Len(t, bodies, len(want))
		for _, b := range bodies {
			assert.InDelta(t, want[b.name]*0.3, b.volume(), 0.4, "%s at %v", b.name, closed)
		}
	}
}

func TestFlatModelIsFlat(t *testing.T) {
	for _, b := range read(t, encode(t, sleeve(), -1)) {
		low, high := b.bounds()
		if b.name != "contents" && b.name != "card" {
			assert.InDelta(t, -0.15, low[2], 1e-6, b.name)
			assert.InDelta(t, 0.15, high[2], 1e-6, b.name)
		}
	}
}

// The bodies in the file leave the clearances that the fold proof claims.
func TestModelHasTheCavityOfTheProof(t *testing.T) {
	tried := 0
	for _, s := range drawtest.Every() {
		p := &s.Solution.Pattern
		if p.Cavity.Floats {
			continue // the rays of the check only meet what stands square to them
		}
		if p.Cavity.Turned != 0 || p.Cavity.Piece != 0 || p.Cavity.Panel != p.Pieces[0].Root {
			continue // the contents stand askew to the file's axes
		}
		var paper [][]drawtest.Vec
		var goods *body
		bodies := read(t, encode(t, s.Draw(), 1))
		for i := range bodies {
			if bodies[i].name == "contents" {
				goods = &bodies[i]
			} else {
				paper = append(paper, bodies[i].triangles...)
			}
		}
		middle, size := drawtest.Vec{}, drawtest.Vec{p.Cavity.Width.Millimetres(), p.Cavity.Height.Millimetres(), p.Cavity.Thickness.Millimetres()}
		if !p.Cavity.Into {
			require.NotNil(t, goods, s.Name)
			low, high := goods.bounds()
			for k := range low {
				middle[k], size[k] = (low[k]+high[k])/2, high[k]-low[k]
			}
		}
		for _, want := range fold.Prove(p, s.Solution.Proof.Tolerance).Clearances {
			if want.Between != "" {
				continue // between pieces, not round the contents
			}
			room := drawtest.Room(paper, middle, size, int(want.Axis), 0, p.Cavity.Into)
			assert.InDelta(t, want.Clearance.Millimetres(), room, 1e-4, "%s %s", s.Name, want.Axis)
			tried++
		}
	}
	assert.GreaterOrEqual(t, tried, 8)
}

// The validator of the format's makers finds nothing.
func TestValidatorFindsNothing(t *testing.T) {
	const script = `
		const files = JSON.parse(require('fs').readFileSync(0)), { validateBytes } = require('gltf-validator');
		Promise.all(files.map(f => validateBytes(new Uint8Array(Buffer.from(f, 'base64'))))).then(
			all => console.log(JSON.stringify(all.map(r => r.issues))));`
	files, names := [][]byte{encode(t, sleeve(), 1), encode(t, sleeve(), 0.5)}, []string{"sleeve", "half open sleeve"}
	for _, s := range drawtest.Every() {
		files, names = append(files, encode(t, s.Draw(), 1)), append(names, s.Name)
	}
	input, err := json.Marshal(files)
	require.NoError(t, err)
	var all []struct {
		NumErrors, NumWarnings, NumInfos int
		Messages                         []struct{ Message, Pointer string }
	}
	require.NoError(t, json.Unmarshal(drawtest.Node(t, peer.Path, "gltf-validator@2.0.0-dev.3.10", script, input), &all))
	require.Len(t, all, len(files))
	for i, issues := range all {
		assert.Zero(t, issues.NumErrors+issues.NumWarnings+issues.NumInfos, "%s: %v", names[i], issues.Messages)
	}
}

func TestRandomRequestsFold(t *testing.T) {
	drawtest.EachRandom(t, 500, func(t *testing.T, s *drawtest.Sample) {
		for _, b := range read(t, encode(t, s.Draw(), 1)) {
			assert.Positive(t, b.volume(), "%s %s", s.Name, b.name)
		}
	})
}

func TestGolden(t *testing.T) {
	for name, d := range drawtest.Goldens() {
		drawtest.CheckGolden(t, name+".glb", encode(t, d, 1))
	}
}

func TestNothingToFold(t *testing.T) {
	p := drawtest.Sleeve()
	p.Pieces[0].Creases[0].To = 99
	d := sleeve()
	d.Pattern = p
	assert.ErrorContains(t, glb.Encode(io.Discard, d, glb.Options{}), "cannot be folded")
	d.Pattern = nil
	assert.ErrorContains(t, glb.Encode(io.Discard, d, glb.Options{}), "no pattern")
	assert.EqualError(t, glb.Encode(full{}, sleeve(), glb.Options{Closed: math.NaN()}), "the disk is full")
}

// full is a writer that takes nothing.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("the disk is full") }

func BenchmarkGLB(b *testing.B) {
	d := drawtest.Every()[0].Draw()
	b.ReportAllocs()
	for b.Loop() {
		if err := glb.Encode(io.Discard, d, glb.Options{Closed: 1}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkFloor folds alone.
func BenchmarkFloor(b *testing.B) {
	d := drawtest.Every()[0].Draw()
	b.ReportAllocs()
	for b.Loop() {
		fold.Fold(d.Pattern, 1)
	}
}
