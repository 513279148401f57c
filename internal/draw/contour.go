package draw

import (
	"fmt"
	"math"
)

// Line is a line of a drawing, or an area if it is filled.
type Line struct {
	Layer  Layer
	Name   string // what it is, "" for a part that has no name of its own
	Path   []Vertex
	Closed bool
	Fill   bool // an area: drawn without an edge
}

// Contours returns the lines round the paper: counterclockwise round each part
// of it, clockwise round holes. Corners that are none are left out.
func (m *Mesh) Contours() [][]Vertex {
	var contours [][]Vertex
	seen := make([]bool, 2*len(m.Edges))
	for i := range seen {
		if h := Half(i); !seen[h] && m.rim(h) {
			contours = append(contours, m.contour(h, seen))
		}
	}
	return contours
}

// rim reports whether a half edge has paper on its left and none on its right.
func (m *Mesh) rim(h Half) bool {
	e := &m.Edges[h.Edge()]
	if h.Back() {
		return e.Right >= 0 && e.Left < 0
	}
	return e.Left >= 0 && e.Right < 0
}

// contour follows the rim from a half edge until it comes back.
func (m *Mesh) contour(h Half, seen []bool) []Vertex {
	path := make([]Vertex, 0, len(m.Edges))
	for ; !seen[h]; h = m.follow(h) {
		seen[h] = true
		path = append(path, Vertex{m.At(m.Start(h)), m.Bulge(h)})
	}
	return simplify(path)
}

// follow returns the next half edge of the rim: where several parts of the
// paper touch in a point, the one that turns most to the left.
func (m *Mesh) follow(h Half) Half {
	best, most := h, -10.0
	back := m.direction(h ^ 1)
	for i := range m.Edges {
		for _, next := range [...]Half{Half(2 * i), Half(2*i + 1)} {
			if m.Start(next) != m.End(h) || !m.rim(next) {
				continue
			}
			turn := m.direction(next) - back
			if turn <= 1e-9 {
				turn += 2 * math.Pi
			}
			if turn > most {
				best, most = next, turn
			}
		}
	}
	return best
}

// simplify leaves out corners of a closed path where it goes straight on.
func simplify(path []Vertex) []Vertex {
	kept := make([]Vertex, 0, len(path))
	for i, v := range path {
		before, after := path[(i+len(path)-1)%len(path)], path[(i+1)%len(path)]
		if before.IsArc() || v.IsArc() || math.Abs(turning(before.Point, v.Point, after.Point)) > 2*near*1e-6 {
			kept = append(kept, v)
		}
	}
	return kept
}

// turning is how far b is off the straight line from a to c, in mm.
func turning(a, b, c Point) float64 {
	along := c.sub(a)
	return along.cross(b.sub(a)) / max(along.length(), 1e-9)
}

// slits returns the cuts inside the outline, joined where one goes on.
func (f *figure) slits() []Line {
	var lines []Line
	last, lastCut := -1, -1
	for i := range f.mesh.Edges {
		e := &f.mesh.Edges[i]
		if e.Role != Slit {
			continue
		}
		if n := len(lines); n > 0 && e.Cut == lastCut && e.Cut >= 0 && e.A == last {
			path := lines[n-1].Path
			path[len(path)-1].Bulge = e.Bulge
			lines[n-1].Path = append(path, Vertex{Point: f.mesh.At(e.B)})
		} else {
			lines = append(lines, Line{Layer: SlitCut, Name: f.cutName(e.Cut), Path: f.edgePath(e)})
		}
		last, lastCut = e.B, e.Cut
	}
	return lines
}

// cutName names a cut inside the outline; panels that lie side by side
// without a score are cut apart.
func (f *figure) cutName(cut int) string {
	if cut < 0 {
		return f.say("cut between panels")
	}
	return f.say(f.piece.Cuts[cut].Name)
}

// stops returns a dot for each end of a slit that lies inside the paper, where
// the blade must stop.
func (f *figure) stops() []Line {
	ends := make(map[int]int)
	for i := range f.mesh.Edges {
		if e := &f.mesh.Edges[i]; e.Role == Slit {
			ends[e.A]++
			ends[e.B]++
		} else if e.Role == Border {
			ends[e.A] += 100
			ends[e.B] += 100
		}
	}
	var dots []Line
	for v := range f.mesh.Vertices {
		if ends[v] == 1 {
			dots = append(dots, dot(SlitCut, f.mesh.At(v), 0.22*f.lettering))
		}
	}
	return dots
}

// dot is a filled circle.
func dot(layer Layer, at Point, radius float64) Line {
	left, right := Point{at.X - radius, at.Y}, Point{at.X + radius, at.Y}
	return Line{Layer: layer, Path: []Vertex{{left, 1}, {right, 1}}, Closed: true, Fill: true}
}

// folds draws the creases, without what is slit, in the layers of what is done
// there.
func (f *figure) folds() {
	for i := range f.mesh.Edges {
		if e := &f.mesh.Edges[i]; e.Role == Valley || e.Role == Mountain {
			layer := f.scored(e.Role, [...]Layer{ValleyFold, MountainFold, HalfCutUnder, HalfCut})
			f.fig.Lines = append(f.fig.Lines, Line{Layer: layer, Name: f.creaseName(e.Crease), Path: f.edgePath(e)})
		}
	}
}

// scored chooses what is done at a fold: scores of paper are pressed, valleys and
// mountains; board is cut half through on the side that opens.
func (f *figure) scored(role Role, done [4]Layer) Layer {
	at := 0
	if f.board {
		at = 2
	}
	if role == Mountain {
		at++
	}
	return done[at]
}

// creaseName names a crease with its direction and angle.
func (f *figure) creaseName(crease int) string {
	c := &f.piece.Creases[crease]
	return fmt.Sprintf("%s: %s %s", f.say(c.Name), f.say(c.Fold.String()+" fold"), f.degrees(c.Angle))
}

func (f *figure) edgePath(e *Edge) []Vertex {
	return append(make([]Vertex, 0, 2), Vertex{f.mesh.At(e.A), e.Bulge}, Vertex{Point: f.mesh.At(e.B)})
}
