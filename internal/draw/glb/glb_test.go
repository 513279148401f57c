package glb_test

import (
	"bytes"
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
	"creasefit/internal/pattern"
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

// worked is the model of a sample with its making.
func worked(t testing.TB, s *drawtest.Sample, closed float64) []byte {
	var b bytes.Buffer
	require.NoError(t, glb.Encode(&b, s.Draw(), glb.Options{Closed: closed, Order: s.Order()}))
	return b.Bytes()
}

// Every plate is a closed body of its paper's volume, window and notch left
// out, at any stage of folding.
func TestPlatesHaveTheirVolume(t *testing.T) {
	for _, closed := range []float64{0, 0.35, 1} {
		bodies := read(t, encode(t, sleeve(), closed)).rest()
		want := map[string]float64{
			"front with a rather long name": 81.3*40 - math.Pi*32, "side": 21.1 * 40,
			"back": 81.3*40 - 35*16 - math.Pi*32, "other side": 20.8 * 40, "lap": 15 * 40,
			"card": 60*36 - 2*(36-math.Pi*9),
		}
		require.Len(t, bodies, len(want))
		for _, b := range bodies {
			assert.InDelta(t, want[b.name]*0.3, b.volume(), 0.4, "%s at %v", b.name, closed)
		}
	}
}

func TestFlatModelIsFlat(t *testing.T) {
	for _, b := range read(t, encode(t, sleeve(), -1)).rest() {
		low, high := b.bounds()
		if b.name != "card" {
			assert.InDelta(t, 0, low[2], 1e-5, b.name)
			assert.InDelta(t, 0.3, high[2], 1e-5, b.name)
		}
	}
}

// The bodies in the file leave the clearances that the fold proof claims.
func TestModelHasTheCavityOfTheProof(t *testing.T) {
	tried := 0
	for _, s := range drawtest.Every() {
		p := &s.Solution.Pattern
		if p.Cavity.Floats || p.Cavity.Into {
			continue // the rays of the check only meet what stands square to them
		}
		if p.Cavity.Turned != 0 || p.Cavity.Piece != 0 || p.Cavity.Panel != p.Pieces[0].Root {
			continue // the contents stand askew to the file's axes
		}
		var paper [][]drawtest.Vec
		var goods *body
		f := read(t, worked(t, &s, 1))
		f.Nodes[1].Rotation = nil // lying, as on the blank
		bodies := f.rest()
		for i := range bodies {
			if bodies[i].name == "contents" {
				goods = &bodies[i]
			} else {
				paper = append(paper, bodies[i].triangles...)
			}
		}
		middle, size := drawtest.Vec{}, drawtest.Vec{}
		require.NotNil(t, goods, s.Name)
		low, high := goods.bounds()
		for k := range low {
			middle[k], size[k] = (low[k]+high[k])/2, high[k]-low[k]
		}
		for _, want := range fold.Prove(p, s.Solution.Proof.Tolerance).Clearances {
			if want.Between != "" {
				continue // between pieces, not round the contents
			}
			room := drawtest.Room(paper, middle, size, int(want.Axis), 0, false)
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
	for _, s := range append(drawtest.Every(), drawtest.Adorned()) {
		files, names = append(files, worked(t, &s, 1), worked(t, &s, 0.4)), append(names, s.Name, s.Name+" in the making")
	}
	input, err := json.Marshal(files)
	require.NoError(t, err)
	var all []struct {
		NumErrors, NumWarnings, NumInfos int
		Messages                         []struct{ Message, Pointer string }
	}
	require.NoError(t, json.Unmarshal(peer.Node(t, "gltf-validator@2.0.0-dev.3.10", script, input), &all))
	require.Len(t, all, len(files))
	for i, issues := range all {
		assert.Zero(t, issues.NumErrors+issues.NumWarnings+issues.NumInfos, "%s: %v", names[i], issues.Messages)
	}
}

// The halves of an ornament are of its own stock and size, lie on the pressed tabs, and
// meet over the middle of the line where the ends of the band meet.
func TestOrnamentLiesOverTheSlit(t *testing.T) {
	s := drawtest.Adorned()
	f := read(t, worked(t, &s, 1))
	f.Nodes[1].Rotation = nil // lying, as on the blank
	low, high, volume := map[string]drawtest.Vec{}, map[string]drawtest.Vec{}, map[string]float64{}
	for _, b := range f.rest() {
		low[b.name], high[b.name] = b.bounds()
		volume[b.name] = b.volume()
	}
	const own, near = 2.0, 1e-3
	piece := s.Solution.Ornament.Piece()
	for i, side := range []string{"left", "right"} {
		half, tab, front := side+" half", side+" tab", side+" front"
		require.Contains(t, low, half)
		assert.InDelta(t, own, high[half][2]-low[half][2], near)
		assert.InDelta(t, 30, high[half][0]-low[half][0], near, "half of its width")
		assert.InDelta(t, piece.Height.Millimetres(), high[half][1]-low[half][1], near)
		assert.InDelta(t, area(piece.Panels[i].Outline)*own, volume[half], 0.1)
		apart := min(math.Abs(low[half][2]-high[tab][2]), math.Abs(low[tab][2]-high[half][2]))
		assert.InDelta(t, 0, apart, near, "the %s lies on its tab", half)
		assert.InDelta(t, (low[front][1]+high[front][1])/2, (low[half][1]+high[half][1])/2, near, "in the middle of the band's height")
		assert.Less(t, math.Abs(low[half][0]+high[half][0]-low[tab][0]-high[tab][0])/2, 15.0, "on the tab of its own side")
	}
	seam := func(a, b string) float64 { return min(math.Abs(low[a][0]-high[b][0]), math.Abs(high[a][0]-low[b][0])) }
	assert.InDelta(t, 0, seam("left half", "right half"), near)
	meeting := func(a, b string) float64 { return (max(low[a][0], low[b][0]) + min(high[a][0], high[b][0])) / 2 }
	assert.InDelta(t, meeting("left front", "right front"), meeting("left half", "right half"), s.Solution.Pattern.Caliper.Millimetres(), "over the slit")
}

// area is that of a ring of straight lines (shoelace formula).
func area(ring []pattern.Vertex) (sum float64) {
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		sum += (a.X.Millimetres()*b.Y.Millimetres() - b.X.Millimetres()*a.Y.Millimetres()) / 2
	}
	return math.Abs(sum)
}

func TestRandomRequestsFold(t *testing.T) {
	drawtest.EachRandom(t, 500, func(t *testing.T, s *drawtest.Sample) {
		for _, b := range read(t, encode(t, s.Draw(), 1)).rest() {
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
	s := drawtest.Every()[0]
	b.ReportAllocs()
	for b.Loop() {
		worked(b, &s, 1)
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
