package draw_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/assembly"
	"creasefit/internal/draw"
	"creasefit/internal/draw/drawtest"
	"creasefit/internal/fold"
	"creasefit/internal/repertoire"
	"creasefit/internal/settings"
	"creasefit/internal/solve"
)

// eye is the view of a picture, worked out anew: seen from 38 degrees above, 24
// to the right of the front.
type eye struct{ right, up, near fold.Vec }

func newEye() eye {
	const degree = math.Pi / 180
	away := fold.Vec{math.Sin(24*degree) * math.Cos(38*degree), -math.Cos(24*degree) * math.Cos(38*degree), math.Sin(38 * degree)}
	right := fold.Vec{math.Cos(24 * degree), math.Sin(24 * degree), 0}
	up := fold.Vec{ // away x right
		away[1]*right[2] - away[2]*right[1], away[2]*right[0] - away[0]*right[2], away[0]*right[1] - away[1]*right[0],
	}
	return eye{right, up, away}
}

func (e *eye) at(p fold.Vec) draw.Point { return draw.Point{X: p.Dot(e.right), Y: p.Dot(e.up)} }

// pictured calls a check with every picture in space of every kind.
func pictured(t *testing.T, check func(name string, s *drawtest.Sample, o *assembly.Order, step int, d *draw.Drawing)) {
	for _, s := range drawtest.Every() {
		o, err := assembly.Find(&s.Solution.Ideal, &s.Solution.Pattern, s.Solution.Proof.Tolerance)
		if err != nil {
			continue // the kind is to refuse it
		}
		for i := range o.Steps {
			check(s.Name, &s, o, i, draw.NewPicture(&s.Solution.Pattern, o, []int{i}, draw.Options{Step: s.Solution.Step}))
		}
	}
}

// Every line of a picture lies on an edge of a plate, or of the contents, as it
// is projected anew from the model, and nothing that is seen at its middle hides it.
func TestPicturesAgreeWithTheModel(t *testing.T) {
	e := newEye()
	pictured(t, func(name string, s *drawtest.Sample, o *assembly.Order, step int, d *draw.Drawing) {
		require.NotEmpty(t, d.Description, name)
		if o.Steps[step].Do <= assembly.Slit {
			return
		}
		require.Len(t, d.Figures, 2, name)
		frame := o.Frame(step, 1)
		edges := 0
		for _, l := range d.Figures[1].Lines {
			if l.Layer != draw.SolidEdge && l.Layer != draw.CreaseEdge {
				continue
			}
			edges++
			on := false
			for i := range frame.Model.Plates {
				p := &frame.Model.Plates[i]
				for _, ring := range [][]fold.Vec{p.Outline, p.Hole} {
					for k, a := range ring {
						b := ring[(k+1)%len(ring)]
						on = on || between(l.Path[0].Point, e.at(a), e.at(b)) && between(l.Path[1].Point, e.at(a), e.at(b))
					}
				}
			}
			assert.True(t, on, "%s, picture %d: %v", name, step+1, l.Path)
		}
		assert.NotZero(t, edges, "%s, picture %d", name, step+1)
	})
}

// between reports whether a place lies on a line, within 1 micrometre.
func between(p, a, b draw.Point) bool {
	dx, dy := b.X-a.X, b.Y-a.Y
	along := max(0, min(1, ((p.X-a.X)*dx+(p.Y-a.Y)*dy)/max(dx*dx+dy*dy, 1e-300)))
	return math.Hypot(p.X-a.X-along*dx, p.Y-a.Y-along*dy) < 1e-3
}

// A closed tray seen from above: its floor is hidden by the front wall as far
// as that is high.
func TestWallsHideTheFloor(t *testing.T) {
	for _, s := range drawtest.Every() {
		if s.Name != "tray-thick-mm" {
			continue
		}
		o, err := assembly.Find(&s.Solution.Ideal, &s.Solution.Pattern, s.Solution.Proof.Tolerance)
		require.NoError(t, err)
		last := 0
		for i := range o.Steps {
			if o.Steps[i].Do == assembly.Glue {
				last = i
			}
		}
		d := draw.NewPicture(&s.Solution.Pattern, o, []int{last}, draw.Options{Step: s.Solution.Step})
		e, frame := newEye(), o.Frame(last, 1)
		root := &frame.Model.Plates[0]
		low := root.Outline[0]
		for _, v := range root.Outline {
			if v[1] < low[1] || v[1] == low[1] && v[0] < low[0] {
				low = v
			}
		}
		front := e.at(low)
		for _, l := range d.Figures[1].Lines {
			if l.Layer != draw.CreaseEdge {
				continue
			}
			for _, v := range l.Path {
				assert.Greater(t, math.Hypot(v.X-front.X, v.Y-front.Y), 1.0, "the corner of the floor behind the front wall is not seen")
			}
		}
	}
}

// Arrows show every step that moves something, and their heads differ.
func TestArrows(t *testing.T) {
	full, half := false, false
	pictured(t, func(name string, _ *drawtest.Sample, o *assembly.Order, step int, d *draw.Drawing) {
		moves := false
		for _, turn := range o.Steps[step].Turns {
			moves = moves || math.Abs(turn.To-turn.From) > 0.5
		}
		arrows := 0
		for _, f := range d.Figures {
			for _, l := range f.Lines {
				if l.Layer == draw.MotionPath {
					arrows++
					full, half = full || l.Fill, half || l.Closed && !l.Fill
				}
			}
		}
		assert.True(t, !moves || arrows > 0, "%s, picture %d", name, step+1)
	})
	assert.True(t, full && half)
}

// The picture of scoring has the lengths of the stops, as guides say them, and no line
// on the blank but scores.
func TestScoringShowsTheStops(t *testing.T) {
	for _, s := range drawtest.Every() {
		o, stops := s.Order(), s.Solution.Settings()
		step := slices.IndexFunc(o.Steps, func(s assembly.Step) bool { return s.Do == assembly.Score })
		if step < 0 {
			continue
		}
		d := draw.NewPicture(&s.Solution.Pattern, o, []int{step}, s.Options())
		blank := d.Figures[0].Size
		for _, l := range d.Figures[0].Lines {
			mid := draw.Point{X: (l.Path[0].X + l.Path[len(l.Path)-1].X) / 2, Y: (l.Path[0].Y + l.Path[len(l.Path)-1].Y) / 2}
			on := mid.X > 0.1 && mid.Y > 0.1 && mid.X < blank.X-0.1 && mid.Y < blank.Y-0.1
			assert.False(t, l.Layer == draw.Measures && on, "%s: %v", s.Name, l.Path)
		}
		var told []string
		for _, l := range d.Figures[0].Labels {
			told = append(told, l.Lines...)
		}
		for _, stop := range stops {
			for _, u := range stop.Serves {
				scores := slices.ContainsFunc(u.Creases, func(c int) bool {
					return strings.HasPrefix(s.Solution.Pattern.Pieces[u.Piece].Creases[c].Name, "score ")
				})
				if stop.Tool == settings.Score && stop.Papers == 0 && u.Piece == o.Steps[step].Pieces[0] && scores {
					text := d.Length(stop.At)
					assert.Contains(t, told, text[:strings.LastIndexByte(text, ' ')], s.Name)
				}
			}
		}
	}
}

// Of enclosures round one another each is cut away before the one inside it, and they
// stand in one another: no edge of the inner one is seen outside of the outer one's
// outline, where that is whole.
func TestLayersAreCutAway(t *testing.T) {
	find := func(kind string) *drawtest.Sample {
		for _, s := range drawtest.Every() {
			if s.Name == kind+"-thick-mm" {
				return &s
			}
		}
		panic(kind)
	}
	tray := find("tray")
	r := *tray.Solution.Request
	sleeve, ok := repertoire.Lookup("sleeve")
	require.True(t, ok)
	out := tray.Solution.Outside
	r.Kind, r.Width, r.Height, r.Thickness = sleeve, out.Width, out.Height, out.Thickness
	outer, err := solve.Solve(t.Context(), &r)
	require.NoError(t, err)
	works := []draw.Work{{Name: "tray", Pattern: &tray.Solution.Pattern}, {Name: "sleeve", Pattern: &outer.Pattern}}
	f := draw.NewLayers(&outer.Pattern, works, draw.Options{Step: outer.Step}).Figures[0]
	reach := func(layers ...draw.Layer) (low, high draw.Point) {
		low, high = draw.Point{X: math.Inf(1), Y: math.Inf(1)}, draw.Point{X: math.Inf(-1), Y: math.Inf(-1)}
		for _, l := range f.Lines {
			for _, v := range l.Path {
				if l.Fill && slices.Contains(layers, l.Layer) {
					low, high = draw.Point{X: min(low.X, v.X), Y: min(low.Y, v.Y)}, draw.Point{X: max(high.X, v.X), Y: max(high.Y, v.Y)}
				}
			}
		}
		return low, high
	}
	paperLow, paperHigh := reach(draw.InsideFace, draw.OutsideFace)
	goodsLow, goodsHigh := reach(draw.GoodsFace)
	assert.Less(t, paperLow.X, goodsLow.X, "the sleeve and the tray are outside of the contents where they are whole")
	assert.Less(t, paperHigh.X, goodsHigh.X-10, "and cut away on the right")
	whole := draw.NewFinished(&outer.Pattern, draw.Options{Step: outer.Step}).Figures[0].Box
	assert.InDelta(t, whole.Low.X, paperLow.X, 0.5, "the sleeve is the outermost")
	assert.InDelta(t, whole.Low.Y+0.0, min(whole.Low.Y, goodsLow.Y), 1e-9, "nothing sticks out below")
	assert.Equal(t, "1\u00a0tray, 2\u00a0sleeve", strings.Join(f.Labels[2].Lines, " "))
}
