package foldfile_test

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
	"creasefit/internal/draw/foldfile"
	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/repertoire"
)

// frame is what a reader of the FOLD format takes from a frame.
type frame struct {
	Title      string       `json:"frame_title"`
	Attributes []string     `json:"frame_attributes"`
	Unit       string       `json:"frame_unit"`
	Caliper    float64      `json:"creasefit:caliper"`
	Coords     [][2]float64 `json:"vertices_coords"`
	Edges      [][2]int     `json:"edges_vertices"`
	Assignment []string     `json:"edges_assignment"`
	Angles     []float64    `json:"edges_foldAngle"`
	Round      []float64    `json:"edges_creasefit:round"`
	Faces      [][]int      `json:"faces_vertices"`
	Names      []string     `json:"faces_creasefit:name"`
}

type file struct {
	frame
	Spec   float64 `json:"file_spec"`
	Frames []frame `json:"file_frames"`
}

func encode(t *testing.T, d *draw.Drawing) []byte {
	var b bytes.Buffer
	require.NoError(t, foldfile.Encode(&b, d))
	return b.Bytes()
}

func read(t *testing.T, b []byte) file {
	var f file
	require.NoError(t, json.Unmarshal(b, &f))
	return f
}

// check holds the frame to what the format says about its lists.
func (f *frame) check(t *testing.T, name string) {
	assert.Equal(t, "mm", f.Unit)
	n := len(f.Edges)
	require.True(t, len(f.Assignment) == n && len(f.Angles) == n && len(f.Round) == n, name)
	uses := map[[2]int]int{}
	for _, ring := range f.Faces {
		area := 0.0
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			p, q := f.Coords[a], f.Coords[b]
			area += (p[0]*q[1] - q[0]*p[1]) / 2
			uses[[2]int{min(a, b), max(a, b)}]++
		}
		assert.Positive(t, area, "%s: faces run counterclockwise", name)
	}
	for i, e := range f.Edges {
		want := 2 // faces beside it; one face may lie on both sides
		if f.Assignment[i] == "B" {
			want = 1
		}
		assert.Equal(t, want, uses[[2]int{min(e[0], e[1]), max(e[0], e[1])}], "%s: edge %d is %s", name, i, f.Assignment[i])
		sign := map[string]float64{"V": 1, "M": -1}[f.Assignment[i]]
		assert.True(t, f.Angles[i]*sign > 0 || sign == 0 && f.Angles[i] == 0, "%s: %s has %v degrees", name, f.Assignment[i], f.Angles[i])
	}
	assert.Len(t, uses, n, "%s: every side of a face is an edge", name)
}

func TestRandomRequestsGiveSoundFrames(t *testing.T) {
	drawtest.EachRandom(t, 500, func(t *testing.T, s *drawtest.Sample) {
		f := read(t, encode(t, s.Draw()))
		assert.InDelta(t, 1.2, f.Spec, 0)
		for i, fr := range append([]frame{f.frame}, f.Frames...) {
			fr.check(t, s.Name)
			if i < len(s.Solution.Pattern.Pieces) { // the ornament's frame comes behind theirs
				checkCorners(t, &fr, &s.Solution.Pattern.Pieces[i])
			}
		}
	})
}

// checkCorners looks for every corner of every panel among the vertices.
func checkCorners(t *testing.T, f *frame, p *pattern.Piece) {
	for _, panel := range p.Panels {
		for _, v := range panel.Outline {
			best := math.Inf(1)
			for _, c := range f.Coords {
				best = min(best, math.Hypot(c[0]-v.X.Millimetres(), c[1]-v.Y.Millimetres()))
			}
			assert.Less(t, best, 1e-3, panel.Name)
		}
	}
}

func TestSleeveHasCutsJoinsAndTwoFrames(t *testing.T) {
	f := read(t, encode(t, draw.New(drawtest.Sleeve(), draw.Options{Step: measure.Marks(measure.Millimetre)[3]})))
	f.check(t, "sleeve")
	require.Len(t, f.Frames, 1)
	f.Frames[0].check(t, "card")
	assert.Equal(t, []string{"2D", "orientable", "cuts", "joins"}, f.Attributes)
	assert.Equal(t, []string{"2D", "orientable", "noCuts", "noJoins"}, f.Frames[0].Attributes)
	count := map[string]int{}
	for _, a := range f.Assignment {
		count[a]++
	}
	assert.Equal(t, 4, count["V"])
	assert.Equal(t, 1, count["C"])
	assert.Equal(t, 2, count["J"], "the window and the slit are tied to the outline")
	assert.Len(t, f.Faces, 5)
}

// link is a face that hangs on another by an edge.
type link struct{ face, by, edge int }

// tree walks from a face over folded and flat edges.
func (f *frame) tree(root int) []link {
	order, seen := []link{{root, -1, -1}}, map[int]bool{root: true}
	for k := 0; k < len(order); k++ {
		for i, e := range f.Edges {
			if f.Assignment[i] == "V" || f.Assignment[i] == "M" || f.Assignment[i] == "F" {
				for other := range f.Faces {
					if !seen[other] && f.has(order[k].face, e) && f.has(other, e) {
						seen[other] = true
						order = append(order, link{other, k, i})
					}
				}
			}
		}
	}
	return order
}

func (f *frame) has(face int, e [2]int) bool {
	ring := f.Faces[face]
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if [2]int{a, b} == e || [2]int{b, a} == e {
			return true
		}
	}
	return false
}

// flat returns a vertex in the plane of the blank.
func (f *frame) flat(v int) drawtest.Vec { return drawtest.Vec{f.Coords[v][0], f.Coords[v][1], 0} }

// crease is how a place of the blank beyond an edge moves: a fold of 180
// degrees goes round a spine of the thickness and one caliper, half taken from
// either side.
func (f *frame) crease(edge, face int) (near, far, axis drawtest.Vec, spine float64) {
	a, b := f.flat(f.Edges[edge][0]), f.flat(f.Edges[edge][1])
	ring, ahead := f.Faces[face], true
	for i, v := range ring { // run with the face on the left
		if v == f.Edges[edge][1] && ring[(i+1)%len(ring)] == f.Edges[edge][0] {
			ahead = false
		}
	}
	if !ahead {
		a, b = b, a
	}
	long := math.Hypot(b[0]-a[0], b[1]-a[1])
	axis = drawtest.Vec{(b[0] - a[0]) / long, (b[1] - a[1]) / long, 0}
	if math.Abs(f.Angles[edge]) > 179.999 {
		spine = f.Round[edge] + f.Caliper
	}
	n := drawtest.Vec{-axis[1], axis[0], 0} // into the face
	near = drawtest.Vec{a[0] - n[0]*spine/2, a[1] - n[1]*spine/2, 0}
	far = drawtest.Vec{a[0] + n[0]*spine/2, a[1] + n[1]*spine/2, 0}
	return near, far, axis, spine
}

// foldUp folds the frame from a face and returns its plates: faces, and spines.
func (f *frame) foldUp(root int) (plates [][]drawtest.Vec) {
	order := f.tree(root)
	move := func(k int, p drawtest.Vec, spine bool) drawtest.Vec {
		for first := true; order[k].by >= 0; k, first = order[k].by, false {
			near, far, axis, wide := f.crease(order[k].edge, order[k].face)
			angle := f.Angles[order[k].edge]
			if wide <= 0 {
				p = drawtest.Turn(p, near, axis, angle)
				continue
			}
			if !spine || !first {
				p = drawtest.Turn(p, far, axis, angle/2)
			}
			p = drawtest.Turn(p, near, axis, angle/2)
		}
		return p
	}
	for k, l := range order {
		var ring []drawtest.Vec
		for _, v := range f.Faces[l.face] {
			ring = append(ring, move(k, f.flat(v), false))
		}
		plates = append(plates, ring)
		if l.by < 0 {
			continue
		}
		if near, far, axis, wide := f.crease(l.edge, l.face); wide > 0 {
			a, b := f.flat(f.Edges[l.edge][0]), f.flat(f.Edges[l.edge][1])
			long := math.Hypot(b[0]-a[0], b[1]-a[1])
			ahead := func(p drawtest.Vec) drawtest.Vec { return drawtest.Vec{p[0] + axis[0]*long, p[1] + axis[1]*long, 0} }
			var ring []drawtest.Vec
			for _, p := range []drawtest.Vec{near, ahead(near), ahead(far), far} {
				ring = append(ring, move(k, p, true))
			}
			plates = append(plates, ring)
		}
	}
	return plates
}

// Folded by this reader, the file gives the clearances that the fold proof
// claims.
func TestFoldedFileHasTheCavityOfTheProof(t *testing.T) {
	tried := 0
	for _, s := range drawtest.Every() {
		p := &s.Solution.Pattern
		if len(p.Pieces) > 1 || p.Cavity.Turned != 0 || p.Cavity.Floats {
			continue // the file says neither how pieces stand to one another nor how panels bend
		}
		f := read(t, encode(t, s.Draw()))
		c := p.Cavity
		root := -1
		for i, name := range f.Names {
			if name == p.Pieces[0].Panels[c.Panel].Name {
				root = i
			}
		}
		require.GreaterOrEqual(t, root, 0)
		plates := f.foldUp(root)
		middle := drawtest.Vec{}
		for _, v := range plates[0] {
			middle[0] += v[0] / float64(len(plates[0]))
			middle[1] += v[1] / float64(len(plates[0]))
		}
		size := drawtest.Vec{c.Width.Millimetres(), c.Height.Millimetres(), c.Thickness.Millimetres()}
		middle[2] = f.Caliper/2 + size[2]/2
		for axis := range 2 { // what is open on one side lies against the other
			low, high := drawtest.Free(plates, middle, drawtest.Vec{}, axis, f.Caliper/2)
			switch {
			case math.IsInf(low, 0) == math.IsInf(high, 0):
			case math.IsInf(high, 0):
				middle[axis] = low + size[axis]/2
			default:
				middle[axis] = high - size[axis]/2
			}
		}
		for _, want := range fold.Prove(p, s.Solution.Proof.Tolerance).Clearances {
			room := drawtest.Room(plates, middle, size, int(want.Axis), f.Caliper/2, c.Into)
			assert.InDelta(t, want.Clearance.Millimetres(), room, 1e-5, "%s %s", s.Name, want.Axis)
			tried++
		}
	}
	assert.Greater(t, tried, 8)
}

// Folded by this reader, every piece comes out as large as in the model of the
// folded enclosure, bent panels too. Beside a fold of 180 degrees the reader does not
// take off what the spine takes, so that it may be larger by as much.
func TestFoldsToTheSizeOfTheModel(t *testing.T) {
	tried := map[string]bool{}
	for _, s := range drawtest.Every() {
		p := &s.Solution.Pattern
		f := read(t, encode(t, s.Draw()))
		model := fold.Fold(p, 1)
		for i, fr := range append([]frame{f.frame}, f.Frames...) {
			var root fold.Plate
			for k := range model.Plates {
				if pl := &model.Plates[k]; pl.Piece == i && pl.Copy == 0 && pl.Parent < 0 {
					root = *pl
				}
			}
			got := around(fr.foldUp(fr.faceAt(middle(seenFrom(&root.Frame, root.Outline))))...)
			var rings [][]drawtest.Vec
			for k := range model.Plates {
				if pl := &model.Plates[k]; pl.Piece == i && pl.Copy == 0 && len(pl.Outline) > 2 {
					rings = append(rings, seenFrom(&root.Frame, pl.Outline))
				}
			}
			want := around(rings...)
			spine := 2e-3
			for e, angle := range fr.Angles {
				if math.Abs(angle) > 179.999 {
					spine = max(spine, fr.Round[e]+fr.Caliper)
				}
			}
			for axis := range 3 {
				assert.InDelta(t, want[0][axis], got[0][axis], spine, "%s piece %d low %d", s.Name, i, axis)
				assert.InDelta(t, want[1][axis], got[1][axis], spine, "%s piece %d high %d", s.Name, i, axis)
			}
			tried[s.Solution.Request.Kind.Name] = true
		}
	}
	assert.Len(t, tried, len(repertoire.Kinds()), "every kind")
}

// seenFrom returns places as a frame's blank has them.
func seenFrom(f *fold.Frame, ring []fold.Vec) []drawtest.Vec {
	seen := make([]drawtest.Vec, len(ring))
	for i, v := range ring {
		d := fold.Vec{v[0] - f.Origin[0], v[1] - f.Origin[1], v[2] - f.Origin[2]}
		seen[i] = drawtest.Vec{d.Dot(f.X), d.Dot(f.Y), d.Dot(f.Z)}
	}
	return seen
}

func around(rings ...[]drawtest.Vec) (box [2]drawtest.Vec) {
	box = [2]drawtest.Vec{rings[0][0], rings[0][0]}
	for _, ring := range rings {
		for _, v := range ring {
			for k := range v {
				box[0][k], box[1][k] = min(box[0][k], v[k]), max(box[1][k], v[k])
			}
		}
	}
	return box
}

func middle(ring []drawtest.Vec) (mid drawtest.Vec) {
	for _, v := range ring {
		for k := range mid {
			mid[k] += v[k] / float64(len(ring))
		}
	}
	return mid
}

// faceAt returns the face whose corners have their middle nearest to a place.
func (f *frame) faceAt(at drawtest.Vec) int {
	best, least := 0, math.Inf(1)
	for i, ring := range f.Faces {
		x, y := 0.0, 0.0
		for _, v := range ring {
			x, y = x+f.Coords[v][0]/float64(len(ring)), y+f.Coords[v][1]/float64(len(ring))
		}
		if d := math.Hypot(x-at[0], y-at[1]); d < least {
			best, least = i, d
		}
	}
	return best
}

func TestGolden(t *testing.T) {
	for name, d := range drawtest.Goldens() {
		drawtest.CheckGolden(t, name+".fold", encode(t, d))
	}
}

// full is a writer that takes nothing.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("the disk is full") }

func TestWriteErrorIsReported(t *testing.T) {
	assert.EqualError(t, foldfile.Encode(full{}, drawtest.Every()[0].Draw()), "the disk is full")
}

func BenchmarkFold(b *testing.B) {
	d := drawtest.Every()[0].Draw()
	b.ReportAllocs()
	for b.Loop() {
		if err := foldfile.Encode(io.Discard, d); err != nil {
			b.Fatal(err)
		}
	}
}
