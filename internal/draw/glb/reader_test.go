package glb_test

import (
	"encoding/binary"
	"encoding/json"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"creasefit/internal/draw/drawtest"
)

// file is a binary glTF file taken apart by the specification.
type file struct {
	Nodes []struct {
		Name                         string
		Mesh                         *int
		Translation, Rotation, Scale []float64
		Children                     []int
	}
	Meshes []struct {
		Primitives []struct {
			Attributes map[string]int
			Indices    *int
			Material   int
			Mode       *int
		}
	}
	Materials []struct{ Name string }
	Accessors []struct {
		BufferView, ByteOffset, Count int
		Type                          string
	}
	BufferViews []struct{ ByteOffset int }
	Animations  []struct {
		Name     string
		Channels []struct {
			Sampler int
			Target  struct {
				Node int
				Path string
			}
		}
		Samplers []struct {
			Input, Output int
			Interpolation string
		}
	}
	data []byte
}

func read(t testing.TB, b []byte) *file {
	require.Equal(t, "glTF", string(b[:4]))
	require.EqualValues(t, 2, binary.LittleEndian.Uint32(b[4:]))
	require.EqualValues(t, len(b), binary.LittleEndian.Uint32(b[8:]))
	n := binary.LittleEndian.Uint32(b[12:])
	require.Equal(t, "JSON", string(b[16:20]))
	f := &file{data: b[28+n:]}
	require.NoError(t, json.Unmarshal(b[20:20+n], f))
	require.InDeltaSlice(t, []float64{-math.Sqrt2 / 2, 0, 0, math.Sqrt2 / 2}, f.Nodes[0].Rotation, 1e-7, "z up becomes y up")
	require.InDeltaSlice(t, []float64{0.001, 0.001, 0.001}, f.Nodes[0].Scale, 1e-9)
	require.Len(t, f.Nodes[0].Children, 1)
	return f
}

// floats reads an accessor of floats, an element a row.
func (f *file) floats(accessor int) [][]float64 {
	a := f.Accessors[accessor]
	wide := map[string]int{"SCALAR": 1, "VEC3": 3, "VEC4": 4}[a.Type]
	rows := make([][]float64, a.Count)
	at := f.BufferViews[a.BufferView].ByteOffset + a.ByteOffset
	for i := range rows {
		for range wide {
			rows[i] = append(rows[i], float64(math.Float32frombits(binary.LittleEndian.Uint32(f.data[at:]))))
			at += 4
		}
	}
	return rows
}

// body is a node that has a mesh, with its triangles and lines, in mm and z up.
type body struct {
	name      string
	node      int
	parents   []int // the nodes that it hangs on
	at        drawtest.Vec
	there     bool
	triangles [][]drawtest.Vec
	inside    [][]drawtest.Vec // those of its inside
	lines     [][]drawtest.Vec
}

// stance is where a node is.
type stance struct {
	at    drawtest.Vec
	turn  [4]float64
	scale float64
}

func (s stance) apply(v drawtest.Vec) drawtest.Vec {
	q := s.turn
	t := cross(drawtest.Vec{q[0], q[1], q[2]}, v)
	for k := range t {
		t[k] *= 2
	}
	u := cross(drawtest.Vec{q[0], q[1], q[2]}, t)
	for k := range v {
		v[k] = s.scale*(v[k]+q[3]*t[k]+u[k]) + s.at[k]
	}
	return v
}

func cross(a, b drawtest.Vec) drawtest.Vec {
	return drawtest.Vec{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

func multiplied(a, b [4]float64) [4]float64 {
	return [4]float64{
		a[3]*b[0] + a[0]*b[3] + a[1]*b[2] - a[2]*b[1],
		a[3]*b[1] - a[0]*b[2] + a[1]*b[3] + a[2]*b[0],
		a[3]*b[2] + a[0]*b[1] - a[1]*b[0] + a[2]*b[3],
		a[3]*b[3] - a[0]*b[0] - a[1]*b[1] - a[2]*b[2],
	}
}

// rest returns all bodies as they stand when nothing is played.
func (f *file) rest() []body { return f.bodies(f.stances()) }

// played returns all bodies at a time of an animation.
func (f *file) played(animation int, time float64) []body {
	own := f.stances()
	for _, c := range f.Animations[animation].Channels {
		s := f.Animations[animation].Samplers[c.Sampler]
		times, values := f.floats(s.Input), f.floats(s.Output)
		next := slices.IndexFunc(times, func(at []float64) bool { return at[0] > time })
		low, high := max(next-1, 0), next
		if next < 0 {
			low, high = len(times)-1, len(times)-1
		}
		part := 0.0
		if high > low && s.Interpolation != "STEP" {
			part = max(0, (time-times[low][0])/(times[high][0]-times[low][0]))
		}
		to := &own[c.Target.Node]
		switch c.Target.Path {
		case "translation":
			for k := range to.at {
				to.at[k] = values[low][k] + part*(values[high][k]-values[low][k])
			}
		case "rotation":
			to.turn = slerp(values[low], values[high], part)
		case "scale":
			to.scale = values[low][0]
		}
	}
	return f.bodies(own)
}

// slerp is as in appendix C of the glTF specification.
func slerp(a, b []float64, part float64) (q [4]float64) {
	dot := a[0]*b[0] + a[1]*b[1] + a[2]*b[2] + a[3]*b[3]
	half := math.Acos(min(1, math.Abs(dot)))
	from, to := 1-part, math.Copysign(part, dot)
	if half > 1e-6 {
		from, to = math.Sin(half*(1-part))/math.Sin(half), math.Copysign(math.Sin(half*part)/math.Sin(half), dot)
	}
	for k := range q {
		q[k] = from*a[k] + to*b[k]
	}
	return q
}

// stances are those of the nodes themselves.
func (f *file) stances() []stance {
	own := make([]stance, len(f.Nodes))
	for i := range f.Nodes {
		n := &f.Nodes[i]
		own[i] = stance{turn: [4]float64{0, 0, 0, 1}, scale: 1}
		if i == 0 {
			continue // millimetres, and z up
		}
		copy(own[i].at[:], n.Translation)
		if n.Rotation != nil {
			copy(own[i].turn[:], n.Rotation)
		}
		if n.Scale != nil {
			own[i].scale = n.Scale[0]
		}
	}
	return own
}

func (f *file) bodies(own []stance) (all []body) {
	var walk func(node int, on stance, parents []int)
	walk = func(node int, on stance, parents []int) {
		s := stance{on.apply(own[node].at), multiplied(on.turn, own[node].turn), on.scale * own[node].scale}
		n := &f.Nodes[node]
		if n.Mesh != nil {
			b := body{name: n.Name, node: node, parents: parents, there: s.scale > 0, at: s.at}
			f.mesh(&b, *n.Mesh, s)
			all = append(all, b)
		}
		for _, child := range n.Children {
			walk(child, s, append(slices.Clone(parents), node))
		}
	}
	walk(0, stance{turn: [4]float64{0, 0, 0, 1}, scale: 1}, nil)
	return all
}

func (f *file) mesh(b *body, mesh int, s stance) {
	for _, p := range f.Meshes[mesh].Primitives {
		var places []drawtest.Vec
		for _, row := range f.floats(p.Attributes["POSITION"]) {
			places = append(places, s.apply(drawtest.Vec(row)))
		}
		if p.Mode != nil {
			for i := 0; i < len(places); i += 2 {
				b.lines = append(b.lines, places[i:i+2])
			}
			continue
		}
		a := f.Accessors[*p.Indices]
		corners := f.data[f.BufferViews[a.BufferView].ByteOffset+a.ByteOffset:]
		for i := 0; i < a.Count; i += 3 {
			var triangle []drawtest.Vec
			for k := range 3 {
				triangle = append(triangle, places[binary.LittleEndian.Uint32(corners[4*(i+k):])])
			}
			b.triangles = append(b.triangles, triangle)
			if f.Materials[p.Material].Name == "inside of the paper" {
				b.inside = append(b.inside, triangle)
			}
		}
	}
}

// volume adds up the signed volume under the triangles: that of a closed body
// whose faces all look outwards.
func (b *body) volume() float64 {
	sum := 0.0
	for _, t := range b.triangles {
		p, q, r := t[0], t[1], t[2]
		sum += (p[0]*(q[1]*r[2]-q[2]*r[1]) + p[1]*(q[2]*r[0]-q[0]*r[2]) + p[2]*(q[0]*r[1]-q[1]*r[0])) / 6
	}
	return sum
}

func (b *body) bounds() (low, high drawtest.Vec) {
	low, high = b.triangles[0][0], b.triangles[0][0]
	for _, t := range b.triangles {
		for _, v := range t {
			for k := range v {
				low[k], high[k] = min(low[k], v[k]), max(high[k], v[k])
			}
		}
	}
	return low, high
}
