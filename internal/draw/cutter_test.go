package draw_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/draw"
	"creasefit/internal/draw/drawtest"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// perimeter is the length of a closed path over the same chords.
func perimeter(path []draw.Vertex) float64 {
	points := draw.Flatten(nil, path, true, 1e-5)
	sum := 0.0
	for i, a := range points {
		b := points[(i+1)%len(points)]
		sum += math.Hypot(b.X-a.X, b.Y-a.Y)
	}
	return sum
}

func cutter(t *testing.T, p *pattern.Pattern, how draw.CutterOptions) *draw.Drawing {
	d, err := draw.NewCutter(p, draw.Options{Step: measure.Marks(measure.Millimetre)[3]}, how)
	require.NoError(t, err)
	return d
}

func cuts(d *draw.Drawing) (closed []draw.Line) {
	for i := range d.Figures {
		for _, l := range d.Figures[i].Lines {
			if l.Layer == draw.CutPath && l.Closed {
				closed = append(closed, l)
			}
		}
	}
	return closed
}

// The area round a shape moved aside is known for convex shapes (Steiner): the
// area, and the perimeter times the distance, and that of the disc.
func TestKerfKeepsTheSize(t *testing.T) {
	const half = 0.4
	mm := measure.Millimetres
	for name, outline := range map[string][]pattern.Vertex{
		"rectangle": pattern.Rectangle(mm(0), mm(0), mm(40), mm(30)),
		"triangle":  pattern.Polygon(pattern.At(mm(0), mm(0)), pattern.At(mm(30), mm(0)), pattern.At(mm(10), mm(20))),
		"rounded": {{Point: pattern.At(mm(0), mm(0))}, {Point: pattern.At(mm(30), mm(0)), Bulge: math.Tan(math.Pi / 8)},
			{Point: pattern.At(mm(40), mm(10))}, {Point: pattern.At(mm(40), mm(30))}, {Point: pattern.At(mm(0), mm(30))}},
	} {
		p := &pattern.Pattern{Pieces: []pattern.Piece{{Name: "card", Quantity: 1, Width: mm(40), Height: mm(30), Panels: []pattern.Panel{{Outline: outline}}}}}
		plain, moved := cuts(cutter(t, p, draw.CutterOptions{})), cuts(cutter(t, p, draw.CutterOptions{Kerf: 2 * half}))
		require.Len(t, moved, 1, name)
		want := area(plain[0].Path) + half*perimeter(plain[0].Path) + math.Pi*half*half
		assert.InDelta(t, want, area(moved[0].Path), 2e-3, name)
	}
}

// Every place of a moved contour of every kind is half of the kerf away from
// the paper, as measured against the contour as it was.
func TestKerfOfEveryKind(t *testing.T) {
	const half = 0.1
	for _, s := range drawtest.Every() {
		for i := range s.Solution.Pattern.Pieces {
			one := s.Solution.Pattern
			one.Pieces, one.Bonds = one.Pieces[i:i+1:i+1], nil
			one.Pieces = append([]pattern.Piece(nil), one.Pieces...)
			one.Pieces[0].Quantity = 1
			plain := cuts(cutter(t, &one, draw.CutterOptions{}))
			d, err := draw.NewCutter(&one, draw.Options{Step: s.Solution.Step}, draw.CutterOptions{Kerf: 2 * half})
			if err != nil {
				var cannot *draw.CutterError
				require.ErrorAs(t, err, &cannot, s.Name)
				assert.True(t, cannot.Kerf && cannot.Size < 5*half, "%s: %v", s.Name, err)
				continue
			}
			moved := cuts(d)
			require.Len(t, moved, len(plain), s.Name)
			// the outline grows by half a kerf on each side, so its lower left corner stays where it was put
			for k := range plain {
				ring := draw.Flatten(nil, plain[k].Path, true, 1e-4)
				for _, q := range draw.Flatten(nil, moved[k].Path, true, 1e-2) {
					q = draw.Point{X: q.X - half, Y: q.Y - half}
					assert.InDelta(t, half, distance(q, ring), 0.01, "%s %s", s.Name, one.Pieces[0].Name)
				}
			}
		}
	}
}

// distance is that of a point from a ring.
func distance(p draw.Point, ring []draw.Point) float64 {
	least := math.Inf(1)
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		dx, dy := b.X-a.X, b.Y-a.Y
		along := max(0, min(1, ((p.X-a.X)*dx+(p.Y-a.Y)*dy)/max(dx*dx+dy*dy, 1e-300)))
		least = min(least, math.Hypot(p.X-a.X-along*dx, p.Y-a.Y-along*dy))
	}
	return least
}

// Scores of board are lines of their own, cut half through from the side that they
// fold away from: none is pressed, and as much is cut as is pressed in paper.
func TestScoresOfBoardAreHalfCut(t *testing.T) {
	paper, board := drawtest.Sleeve(), drawtest.Sleeve()
	board.Caliper = pattern.Board
	board.Pieces[0].Creases[0].Fold, paper.Pieces[0].Creases[0].Fold = pattern.Mountain, pattern.Mountain
	by := func(d *draw.Drawing) map[draw.Layer]float64 {
		sum := map[draw.Layer]float64{}
		for i := range d.Figures {
			for _, l := range d.Figures[i].Lines {
				if !l.Fill {
					sum[l.Layer] += long(l.Path)
				}
			}
		}
		return sum
	}
	o := draw.Options{Step: measure.Marks(measure.Millimetre)[2]}
	pressed, cut := by(draw.New(paper, o)), by(draw.New(board, o))
	assert.InDelta(t, pressed[draw.ValleyFold], cut[draw.HalfCutUnder], 1e-9, "a valley opens on the outside")
	assert.InDelta(t, pressed[draw.MountainFold], cut[draw.HalfCut], 1e-9)
	assert.Positive(t, cut[draw.HalfCut])
	assert.Zero(t, cut[draw.ValleyFold]+cut[draw.MountainFold]+pressed[draw.HalfCut]+pressed[draw.HalfCutUnder])
	machine, press := by(cutter(t, board, draw.CutterOptions{})), by(cutter(t, paper, draw.CutterOptions{}))
	assert.Zero(t, machine[draw.ScorePath])
	assert.InDelta(t, press[draw.ScorePath], machine[draw.HalfCutPath]+machine[draw.HalfCutUnderPath], 1e-9)
	assert.InDelta(t, cut[draw.HalfCut], machine[draw.HalfCutPath], 1e-9)
}

// Every line is there once, every copy of every piece is on a bed, nothing
// leaves a bed, and dashes add up to two thirds of the folds.
func TestCutterOfEveryKind(t *testing.T) {
	for _, s := range drawtest.Every() {
		p := &s.Solution.Pattern
		d := cutter(t, p, draw.CutterOptions{})
		copies := 0
		for i := range p.Pieces {
			copies += max(1, p.Pieces[i].Quantity)
		}
		assert.GreaterOrEqual(t, len(cuts(d)), copies, s.Name)
		seen, scored := map[[4]int64]bool{}, 0.0
		for _, l := range d.Figures[0].Lines {
			assert.GreaterOrEqual(t, l.Layer, draw.MarkPath, s.Name)
			for k := 1; k < len(l.Path); k++ {
				a, b := l.Path[k-1], l.Path[k]
				for _, v := range [...]draw.Vertex{a, b} {
					assert.True(t, v.X >= 0 && v.Y >= 0 && v.X <= d.Width && v.Y <= d.Height, s.Name)
				}
				mid := draw.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}
				if a.IsArc() {
					mid = draw.ArcBetween(a.Point, b.Point, a.Bulge).At(0.5)
				}
				key := [4]int64{int64((a.X + b.X) * 1e4), int64((a.Y + b.Y) * 1e4), int64(mid.X * 1e4), int64(mid.Y * 1e4)}
				if l.Layer == draw.CutPath || l.Layer == draw.ScorePath {
					assert.False(t, seen[key], "%s: %v twice", s.Name, key)
				}
				seen[key] = true
			}
			if l.Layer == draw.ScorePath {
				scored += long(l.Path)
			}
		}
		dashes := 0.0
		perforated := cutter(t, p, draw.CutterOptions{Perforate: true})
		for _, l := range perforated.Figures[0].Lines {
			assert.NotEqual(t, draw.ScorePath, l.Layer)
			if l.Layer == draw.PerforationPath {
				dashes += long(l.Path)
			}
		}
		assert.InDelta(t, scored*2/3, dashes, 0.01*float64(1+len(perforated.Figures[0].Lines)), s.Name)
		assert.Empty(t, d.Figures[0].Labels)
	}
}

// long is the length of an open path.
func long(path []draw.Vertex) float64 {
	points, sum := draw.Flatten(nil, path, false, 1e-4), 0.0
	for i := 1; i < len(points); i++ {
		sum += math.Hypot(points[i].X-points[i-1].X, points[i].Y-points[i-1].Y)
	}
	return sum
}

func TestBedThatIsTooSmall(t *testing.T) {
	p := drawtest.Sleeve()
	_, err := draw.NewCutter(p, draw.Options{Step: measure.Marks(measure.Millimetre)[3]}, draw.CutterOptions{Bed: draw.Point{X: 200, Y: 100}})
	var cannot *draw.CutterError
	require.ErrorAs(t, err, &cannot)
	assert.False(t, cannot.Kerf)
	assert.InDelta(t, 219.5, cannot.Size, 1e-9)
	d := cutter(t, p, draw.CutterOptions{Bed: draw.Point{X: 230, Y: 60}})
	assert.Len(t, d.Figures, 2, "the cards do not lie beside the sleeve")
}

// Nothing but folds, cuts and glue lies inside the outline of a template, and
// its words touch none of them.
func TestTemplateHasNoOtherLines(t *testing.T) {
	for _, s := range drawtest.Every() {
		d := draw.NewTemplate(&s.Solution.Pattern, s.Options())
		for i := range d.Figures {
			f := &d.Figures[i]
			for _, l := range f.Lines {
				assert.NotEqual(t, draw.Measures, l.Layer, s.Name)
				if l.Layer < draw.ValleyFold {
					continue
				}
				points := draw.Flatten(nil, l.Path, l.Closed, 0.1)
				for k := 1; k < len(points); k++ {
					for _, label := range f.Labels {
						assert.False(t, label.Box.Crosses(points[k-1], points[k]), "%s: %v", s.Name, label.Lines)
					}
				}
			}
			require.Len(t, f.Labels, 1, s.Name)
			assert.GreaterOrEqual(t, f.Labels[0].Size, draw.Lettering, "9 points")
		}
	}
}

// TestBentDetailNarrowerThanTheKerf: a round hole of 16 mm has no room for a tool of 17 mm,
// wherever on its edge the path begins.
func TestBentDetailNarrowerThanTheKerf(t *testing.T) {
	mm := measure.Millimetres
	hole := []pattern.Vertex{{Point: pattern.At(mm(20), mm(30)), Bulge: -1}, {Point: pattern.At(mm(36), mm(30)), Bulge: -1}}
	for range 2 {
		hole[0], hole[1] = hole[1], hole[0]
		p := &pattern.Pattern{Pieces: []pattern.Piece{{Name: "disc", Width: mm(60), Height: mm(60),
			Panels: []pattern.Panel{{Name: "panel", Outline: pattern.Rectangle(mm(0), mm(0), mm(60), mm(60)), Hole: hole}}}}}
		_, err := draw.NewCutter(p, draw.Options{Step: measure.Marks(measure.Millimetre)[3]}, draw.CutterOptions{Kerf: 17})
		var narrow *draw.CutterError
		require.ErrorAs(t, err, &narrow)
		assert.True(t, narrow.Kerf)
		assert.InDelta(t, 16, narrow.Size, 1e-9)
	}
}
