package pdf_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/draw"
	"creasefit/internal/draw/drawtest"
	"creasefit/internal/draw/pdf"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// part is what another reader found within one clip, y upwards.
type part struct {
	clip   clip
	places [][2]float64
}

// parts gathers the strokes of all pages by what they are clipped to.
func parts(pages [][]stroke) (all []part) {
	var last *clip
	for _, page := range pages {
		for _, s := range page {
			if s.clip == nil {
				continue
			}
			if s.clip != last {
				last = s.clip
				all = append(all, part{clip: clip{[2]float64{last.low[0], -last.high[1]}, [2]float64{last.high[0], -last.low[1]}}})
			}
			one := &all[len(all)-1]
			one.places = append(one.places, s.upright()...)
		}
	}
	return all
}

// seen returns which of some points lie in a part of their piece; false if one of them
// is not there within 0.01 mm, in any way in which the part may be turned.
func (p *part) seen(points [][2]float64, of draw.Box) (shown []int, ok bool) {
	corners := [2][2]float64{{of.Low.X, of.Low.Y}, {of.High.X, of.High.Y}}
	points = slices.Clone(points)
	for range 4 {
		for i, q := range points {
			points[i] = [2]float64{-q[1], q[0]}
		}
		for i, q := range corners {
			corners[i] = [2]float64{-q[1], q[0]}
		}
		dx, dy := p.clip.low[0]-min(corners[0][0], corners[1][0]), p.clip.low[1]-min(corners[0][1], corners[1][1])
		if all, there := p.at(points, dx, dy); there && len(all) >= len(shown) {
			shown, ok = all, true
		}
	}
	return shown, ok
}

// at returns which points a part shows when they are moved; false if one is missing.
func (p *part) at(points [][2]float64, dx, dy float64) (shown []int, ok bool) {
	for i, q := range points {
		moved := [2]float64{q[0] + dx, q[1] + dy}
		if !p.clip.holds(moved) {
			continue
		}
		if !slices.ContainsFunc(p.places, func(r [2]float64) bool { return math.Hypot(r[0]-moved[0], r[1]-moved[1]) < 0.01 }) {
			return nil, false
		}
		shown = append(shown, i)
	}
	return shown, true
}

// A piece that is parted is read back from its parts: each shows every fold, cut and arc
// that lies in it where it is, and together they show all.
func TestPartsReadBack(t *testing.T) {
	parted := 0
	for _, s := range append(drawtest.Every(), drawtest.Worked(t)...) {
		o := pdf.Options{Width: measure.Millimetres(148), Height: measure.Millimetres(210)}
		pages, _ := trace(t, template(t, &s, o))
		all := parts(pages)
		boxes, err := pdf.Parts(draw.NewTemplate(&s.Solution.Pattern, s.Options()), o)
		require.NoError(t, err)
		require.Len(t, all, len(boxes), s.Name)
		if len(all) == 0 || len(s.Solution.Pattern.Pieces) > 1 {
			continue
		}
		parted++
		points := drawtest.Marked(&s.Solution.Pattern.Pieces[0])
		there := make([]bool, len(points))
		for i := range all {
			shown, ok := all[i].seen(points, boxes[i])
			assert.True(t, ok, "%s, part %d", s.Name, i+1)
			for _, k := range shown {
				there[k] = true
			}
		}
		assert.NotContains(t, there, false, s.Name)
	}
	assert.Greater(t, parted, 20)
}

// A template never takes more pages than its pieces do with a check line on each, on 50
// cases; sizes are counted in cells, with what stays free round them.
func TestTemplatesTakeTheFewestPages(t *testing.T) {
	const cell, free, white = 27, 3, 13
	across, up := 5, 7
	o := pdf.Options{Width: measure.Millimetres(int64(across*cell + white)), Height: measure.Millimetres(int64(up*cell + white))}
	several := 0
	for seed := range uint64(50) {
		random := rand.New(rand.NewPCG(seed, 5))
		p := &pattern.Pattern{}
		for i := range 2 + random.IntN(4) {
			w, h := measure.Millimetres(int64(cell*(1+random.IntN(across))-free)), measure.Millimetres(int64(cell*(1+random.IntN(4))-free))
			p.Pieces = append(p.Pieces, pattern.Piece{Name: strconv.Itoa(i + 1), Quantity: 1, Width: w, Height: h,
				Panels: []pattern.Panel{{Name: "a", Outline: pattern.Rectangle(measure.Length{}, measure.Length{}, w, h)}}})
		}
		d := draw.NewTemplate(p, draw.Options{Title: "P", Step: measure.Marks(measure.Millimetre)[3]})
		cells := func(w, h float64) draw.Point {
			return draw.Point{X: math.Ceil(w/cell - 1e-9), Y: math.Ceil(h/cell - 1e-9)}
		}
		var sizes []draw.Point
		for _, f := range d.Figures {
			sizes = append(sizes, cells(f.Box.Width()+free, f.Box.Height()+free))
		}
		least := math.MaxInt
		for _, line := range []float64{100, 50} {
			text := append(draw.Wrap("P · 99 / 99", 3.2, line), draw.Wrap("Print at 100 %: the line is this long: 100 mm", 3.2, line)...)
			_, high := draw.Block(text, 3.2)
			_, checks, ok := draw.Nest(sizes, draw.Point{X: float64(across), Y: float64(up)}, cells(line+4, high+6))
			require.True(t, ok)
			least = min(least, len(checks))
		}
		pages := pagesOf(encode(t, d, o))
		assert.LessOrEqual(t, pages, least, "seed %d: %v", seed, sizes)
		if least > 1 {
			several++
		}
	}
	require.Greater(t, several, 10)
}
