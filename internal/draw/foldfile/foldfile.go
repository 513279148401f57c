// Package foldfile writes the flat pattern of a drawing in the open FOLD
// format, version 1.2: a planar mesh with one frame a piece.
//
// Vertices are millimetres from the lower left corner of the blank, arcs are
// chords within a hundredth of a millimetre, faces run counterclockwise with
// the inside facing up. Cuts inside the outline are edges of assignment C;
// what floats inside a panel, such as a window, is tied to the outline by an
// edge of assignment J. A panel that bends is cut into the facets of the fold
// proof, with chords within 1/800 of its width: flat faces that meet in folds of a
// few degrees, which nobody scores, or beyond a curved crease, whose chords are
// folded one by one, in edges of assignment J. Properties of our own begin with
// "creasefit:" after their prefix: the caliper, the names, and for a fold of 180
// degrees the thickness that it goes round.
//
// The package measures nothing and writes no layer order.
package foldfile

import (
	"encoding/json"
	"errors"
	"io"
	"math"
	"slices"

	"creasefit/internal/draw"
	"creasefit/internal/fold"
	"creasefit/internal/pattern"
)

// chord is how far, in mm, an arc may be from the chords that stand for it.
const chord = 0.01

// head is what the file says about itself.
type head struct {
	Spec    float64  `json:"file_spec"`
	Creator string   `json:"file_creator"`
	Title   string   `json:"file_title,omitempty"`
	Classes []string `json:"file_classes"`
}

// file is the first piece's frame together with all others.
type file struct {
	head
	frame
	Frames []frame `json:"file_frames,omitempty"`
}

// frame is one piece.
type frame struct {
	Title      string       `json:"frame_title"`
	Classes    []string     `json:"frame_classes"`
	Attributes []string     `json:"frame_attributes"`
	Unit       string       `json:"frame_unit"`
	Caliper    float64      `json:"creasefit:caliper"`
	Quantity   int          `json:"creasefit:quantity"`
	Coords     [][2]float64 `json:"vertices_coords"`
	Edges      [][2]int     `json:"edges_vertices"`
	Assignment []string     `json:"edges_assignment"`
	Angles     []float64    `json:"edges_foldAngle"`
	Round      []float64    `json:"edges_creasefit:round"`
	Faces      [][]int      `json:"faces_vertices"`
	Names      []string     `json:"faces_creasefit:name"`
}

// Encode writes the drawing's pattern. The error is the writer's, or says that
// the drawing has no pattern, as that of a cut plan.
func Encode(w io.Writer, d *draw.Drawing) error {
	if d.Pattern == nil {
		return errors.New("foldfile: the drawing shows no pattern")
	}
	frames := make([]frame, len(d.Pattern.Pieces))
	p, panels := fold.Facets(d.Pattern)
	for i := range frames {
		frames[i] = newFrame(&p.Pieces[i], panels[i], p.Caliper.Millimetres())
		frames[i].Title = d.Figures[i].Name
	}
	f := file{
		head:  head{Spec: 1.2, Creator: "Creasefit", Title: d.Title, Classes: []string{"singleModel"}},
		frame: frames[0], Frames: frames[1:],
	}
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	return e.Encode(&f)
}

// newFrame writes the mesh of one piece; panels are what its panels are facets of,
// nil if it bends nowhere.
func newFrame(p *pattern.Piece, panels []int, caliper float64) frame {
	b := builder{piece: p, panels: panels, mesh: connected(p)}
	b.f = frame{Classes: []string{"creasePattern"}, Unit: "mm", Caliper: caliper, Quantity: max(1, p.Quantity)}
	for v := range b.mesh.Vertices {
		b.vertex(b.mesh.At(v))
	}
	b.between = make([][]int, len(b.mesh.Edges))
	for i := range b.mesh.Edges {
		b.edge(i)
	}
	for i := range b.mesh.Faces {
		b.face(&b.mesh.Faces[i])
	}
	b.attributes()
	return b.f
}

// builder turns a mesh into a frame.
type builder struct {
	piece   *pattern.Piece
	panels  []int
	mesh    *draw.Mesh
	f       frame
	between [][]int // the vertices that the chords of each edge add
}

func (b *builder) vertex(p draw.Point) int {
	b.f.Coords = append(b.f.Coords, [2]float64{rounded(p.X), rounded(p.Y)})
	return len(b.f.Coords) - 1
}

// rounded rounds to the nanometre; it never gives negative zero.
func rounded(v float64) float64 { return math.Round(v*1e6)/1e6 + 0 }

// letters are the assignments of the roles.
var letters = [...]string{draw.Border: "B", draw.Slit: "C", draw.Valley: "V", draw.Mountain: "M", draw.Flat: "F", draw.Join: "J"}

// edge writes an edge, or the chords of an arc.
func (b *builder) edge(i int) {
	e := &b.mesh.Edges[i]
	angle, round, letter := 0.0, 0.0, letters[e.Role]
	if e.Crease >= 0 && (e.Role == draw.Valley || e.Role == draw.Mountain) {
		c := &b.piece.Creases[e.Crease]
		angle, round = c.Angle, c.Round.Millimetres()
		switch {
		case angle <= 0: // scored, but open in the finished piece
			letter = letters[draw.Flat]
		case e.Role == draw.Mountain:
			angle = -angle
		}
	}
	if e.Role == draw.Slit && e.Cut < 0 && b.panels != nil && b.panels[e.Left] == b.panels[e.Right] {
		letter = letters[draw.Join]
	}
	if e.Bulge < 0 || e.Bulge > 0 {
		for _, p := range draw.Chords(nil, b.mesh.At(e.A), b.mesh.At(e.B), e.Bulge, chord) {
			b.between[i] = append(b.between[i], b.vertex(p))
		}
	}
	from := e.A
	for _, to := range append(b.between[i][:len(b.between[i]):len(b.between[i])], e.B) {
		b.f.Edges = append(b.f.Edges, [2]int{from, to})
		b.f.Assignment = append(b.f.Assignment, letter)
		b.f.Angles = append(b.f.Angles, angle)
		b.f.Round = append(b.f.Round, round)
		from = to
	}
}

// face writes the ring of a face.
func (b *builder) face(f *draw.Face) {
	var ring []int
	for _, h := range f.Half {
		ring = append(ring, b.mesh.Start(h))
		between := b.between[h.Edge()]
		for i := range between {
			if h.Back() {
				ring = append(ring, between[len(between)-1-i])
			} else {
				ring = append(ring, between[i])
			}
		}
	}
	b.f.Faces = append(b.f.Faces, ring)
	b.f.Names = append(b.f.Names, b.piece.Panels[f.Panel].Name)
}

// attributes says what the frame has.
func (b *builder) attributes() {
	cuts, joins := "noCuts", "noJoins"
	if slices.Contains(b.f.Assignment, letters[draw.Slit]) {
		cuts = "cuts"
	}
	if slices.Contains(b.f.Assignment, letters[draw.Join]) {
		joins = "joins"
	}
	b.f.Attributes = []string{"2D", "orientable", cuts, joins}
}
