package draw

import "fmt"

// Line is a line of a drawing, or an area if it is filled.
type Line struct {
	Layer  Layer
	Name   string // what it is, "" for a part that has no name of its own
	Path   []Vertex
	Closed bool
	Fill   bool // an area: drawn without an edge
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
