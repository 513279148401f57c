package draw_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/draw"
	"creasefit/internal/draw/drawtest"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// shoelace returns the area within an outline of the pattern, its arcs as
// circular segments: r^2 (a - sin a) / 2.
func shoelace(ring []pattern.Vertex) float64 {
	sum := 0.0
	for i, v := range ring {
		w := ring[(i+1)%len(ring)]
		x1, y1, x2, y2 := v.X.Millimetres(), v.Y.Millimetres(), w.X.Millimetres(), w.Y.Millimetres()
		sum += (x1*y2 - x2*y1) / 2
		if v.Bulge != 0 {
			a := 4 * math.Atan(v.Bulge)
			r := math.Hypot(x2-x1, y2-y1) / 2 / math.Abs(math.Sin(a/2))
			sum += r * r * (a - math.Sin(a)) / 2
		}
	}
	return sum
}

// area integrates a path that may have arcs, by many chords.
func area(path []draw.Vertex) float64 {
	points, sum := draw.Flatten(nil, path, true, 1e-5), 0.0
	for i, p := range points {
		q := points[(i+1)%len(points)]
		sum += (p.X*q.Y - q.X*p.Y) / 2
	}
	return sum
}

// paper adds up the faces of a mesh.
func paper(m *draw.Mesh) (sum float64) {
	for _, f := range m.Faces {
		var path []draw.Vertex
		for _, h := range f.Half {
			path = append(path, draw.Vertex{Point: m.At(m.Start(h)), Bulge: m.Bulge(h)})
		}
		sum += area(path)
	}
	return sum
}

func TestSleeveMesh(t *testing.T) {
	p := drawtest.Sleeve()
	m := draw.NewMesh(&p.Pieces[0])
	panels := 0.0
	for _, panel := range p.Pieces[0].Panels {
		panels += shoelace(panel.Outline) + shoelace(panel.Hole)
	}
	assert.InDelta(t, 219.5*40-math.Pi*64/2-35*16-math.Pi*64/2, paper(m), 0.01, "blank less notch and window, by hand")
	assert.InDelta(t, panels, paper(m), 0.01)
	roles := map[draw.Role]int{}
	for _, e := range m.Edges {
		roles[e.Role]++
	}
	assert.Equal(t, 4, roles[draw.Valley])
	assert.Equal(t, 1, roles[draw.Slit])
	assert.Zero(t, roles[draw.Join]+roles[draw.Flat]+roles[draw.Mountain])
}

// length adds up the edges of a role.
func length(m *draw.Mesh, role draw.Role) float64 {
	sum := 0.0
	for _, e := range m.Edges {
		if e.Role == role {
			a, b := m.At(e.A), m.At(e.B)
			sum += math.Hypot(b.X-a.X, b.Y-a.Y)
		}
	}
	return sum
}

// A crease that a slit covers in part is scored along the rest alone, and
// lines that cross are split there.
func TestEdgesAreSplitWhereTheyMeet(t *testing.T) {
	at := func(x, y int64) pattern.Point { return pattern.At(measure.Millimetres(x), measure.Millimetres(y)) }
	rect := func(x0, x1 int64) []pattern.Vertex {
		return pattern.Rectangle(measure.Millimetres(x0), measure.Length{}, measure.Millimetres(x1), measure.Millimetres(20))
	}
	p := pattern.Piece{
		Width: measure.Millimetres(60), Height: measure.Millimetres(20),
		Panels:  []pattern.Panel{{Name: "a", Outline: rect(0, 30)}, {Name: "b", Outline: rect(30, 60)}},
		Creases: []pattern.Crease{{Name: "score", A: at(30, 0), B: at(30, 20), To: 1, Fold: pattern.Mountain, Angle: 90}},
		Cuts: []pattern.Cut{
			{Name: "half", Kind: pattern.Slit, Path: pattern.Polygon(at(30, 20), at(30, 11))},
			{Name: "across", Kind: pattern.Slit, Path: pattern.Polygon(at(20, 5), at(40, 5))},
		},
	}
	m := draw.NewMesh(&p)
	assert.InDelta(t, 11, length(m, draw.Mountain), 1e-9)
	assert.InDelta(t, 9+20, length(m, draw.Slit), 1e-9)
	assert.InDelta(t, 60*20, paper(m), 1e-9)
	crossings := 0
	for v := range m.Vertices {
		if m.At(v) == (draw.Point{X: 30, Y: 5}) {
			crossings++
		}
	}
	assert.Equal(t, 1, crossings)
}

// The paper of every kind has the area of its panels, and its creases and
// slits together are as long as the pattern's creases and slits.
func TestMeshesOfRandomRequests(t *testing.T) {
	drawtest.EachRandom(t, 500, func(t *testing.T, s *drawtest.Sample) {
		for i := range s.Solution.Pattern.Pieces {
			p := &s.Solution.Pattern.Pieces[i]
			m := draw.NewMesh(p)
			panels := 0.0
			for _, panel := range p.Panels {
				panels += shoelace(panel.Outline) + shoelace(panel.Hole)
			}
			assert.InDelta(t, panels, paper(m), 1e-6*panels+1e-4, "%s %s", s.Name, p.Name)
			for j, c := range p.Creases {
				a, b := c.A, c.B
				long := math.Hypot(b.X.Sub(a.X).Millimetres(), b.Y.Sub(a.Y).Millimetres())
				assert.InDelta(t, long, covered(m, j), 1e-5, "%s %s", s.Name, c.Name)
			}
		}
	})
}

// covered adds up the edges that lie on a crease and have paper on both sides.
func covered(m *draw.Mesh, crease int) float64 {
	sum := 0.0
	for _, e := range m.Edges {
		if e.Crease == crease && e.Role != draw.Border {
			a, b := m.At(e.A), m.At(e.B)
			sum += math.Hypot(b.X-a.X, b.Y-a.Y)
		}
	}
	return sum
}
