package png_test

import (
	"bytes"
	"errors"
	"image"
	"image/color"
	stdpng "image/png"
	"io"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/draw"
	"creasefit/internal/draw/drawtest"
	"creasefit/internal/draw/png"
	"creasefit/internal/measure"
)

func encode(t *testing.T, d *draw.Drawing, o png.Options) []byte {
	var b bytes.Buffer
	require.NoError(t, png.Encode(&b, d, o))
	return b.Bytes()
}

func decode(t *testing.T, b []byte) image.Image {
	i, err := stdpng.Decode(bytes.NewReader(b))
	require.NoError(t, err)
	return i
}

func sleeve() *draw.Drawing {
	return draw.New(drawtest.Sleeve(), draw.Options{Title: "Sleeve", Step: measure.Marks(measure.Millimetre)[3]})
}

// colours counts the pixels of each colour.
func colours(i image.Image) map[draw.Colour]int {
	count := map[draw.Colour]int{}
	for y := range i.Bounds().Dy() {
		for x := range i.Bounds().Dx() {
			c := color.RGBAModel.Convert(i.At(x, y)).(color.RGBA)
			count[draw.Colour{R: c.R, G: c.G, B: c.B}]++
		}
	}
	return count
}

// The paper covers the area that it has in the drawing, less what is drawn on
// it, and every kind of line is there in its colour.
func TestPicture(t *testing.T) {
	for name, p := range map[string]*draw.Palette{"light": draw.Light(), "dark": draw.Dark()} {
		d := sleeve().Lettered(3.2)
		i := decode(t, encode(t, d, png.Options{Width: 1600, Dark: name == "dark"}))
		assert.Equal(t, 1600, i.Bounds().Dx())
		assert.InDelta(t, 1600*d.Height/d.Width, i.Bounds().Dy(), 1)
		count := colours(i)
		scale := 1600 / d.Width
		paper := 219.5*40 - 100.5 - 560 - 100.5 + 60*36 - 15.5
		part := float64(count[p.Of(draw.Paper)]) / (paper * scale * scale)
		assert.Greater(t, part, 0.85, name)
		assert.Less(t, part, 1.0, name)
		for _, l := range []draw.Layer{draw.ValleyFold, draw.Outline, draw.Measures} {
			assert.Greater(t, count[p.Of(l)], 50, "%s %s", name, l)
		}
	}
}

// Paper that takes many rows of the picture is painted to its end.
func TestLargePaperIsPaintedWhole(t *testing.T) {
	paper := 0
	for _, s := range drawtest.Every() {
		if len(s.Solution.Pattern.Pieces) > 1 || len(s.Solution.Pattern.GluesOf(0)) > 0 {
			continue
		}
		d := s.Draw()
		i := decode(t, encode(t, d, png.Options{Width: 1600}))
		area, scale := s.Solution.Pattern.Pieces[0].Area(), float64(i.Bounds().Dx())/d.Width
		part := float64(colours(i)[draw.Light().Of(draw.Paper)]) / (area * scale * scale)
		assert.Greater(t, part, 0.85, s.Name)
		paper++
	}
	assert.Greater(t, paper, 3)
}

func TestWidths(t *testing.T) {
	for _, w := range []int{png.Least, 800, png.Greatest} {
		i := decode(t, encode(t, sleeve(), png.Options{Width: w}))
		assert.Equal(t, w, i.Bounds().Dx())
		assert.LessOrEqual(t, i.Bounds().Dy(), png.Greatest)
	}
	for _, w := range []int{-1, 0, png.Least - 1, png.Greatest + 1} {
		assert.ErrorContains(t, png.Encode(io.Discard, sleeve(), png.Options{Width: w}), "is not between", w)
	}
}

func TestRandomRequestsArePainted(t *testing.T) {
	drawtest.EachRandom(t, 500, func(t *testing.T, s *drawtest.Sample) {
		i := decode(t, encode(t, s.Draw(), png.Options{Width: 300}))
		assert.Greater(t, len(colours(i)), 3, s.Name)
	})
}

func TestSameBytes(t *testing.T) {
	assert.Equal(t, encode(t, sleeve(), png.Options{Width: 500}), encode(t, sleeve(), png.Options{Width: 500}))
}

func TestGolden(t *testing.T) {
	for name, d := range drawtest.Goldens() {
		drawtest.CheckGolden(t, name+".png", encode(t, d, png.Options{Width: 800}))
	}
}

// full is a writer that takes nothing.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("the disk is full") }

func TestWriteErrorIsReported(t *testing.T) {
	assert.ErrorContains(t, png.Encode(full{}, sleeve(), png.Options{Width: 100}), "the disk is full")
}

func BenchmarkPNG800(b *testing.B) {
	d := drawtest.Every()[0].Draw()
	b.ReportAllocs()
	for b.Loop() {
		if err := png.Encode(io.Discard, d, png.Options{Width: 800}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkFloor compresses an empty picture of the same size.
func BenchmarkFloor(b *testing.B) {
	d := drawtest.Every()[0].Draw()
	empty := image.NewRGBA(image.Rect(0, 0, 800, int(800*d.Height/d.Width)))
	e := stdpng.Encoder{CompressionLevel: stdpng.BestSpeed}
	b.ReportAllocs()
	for b.Loop() {
		if err := e.Encode(io.Discard, empty); err != nil {
			b.Fatal(err)
		}
	}
}
