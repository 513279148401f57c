package glb

import (
	"encoding/binary"
	"encoding/json"
	"fmt"
	"math"
	"slices"

	"creasefit/internal/fold"
)

// The materials, by number.
const (
	inner = iota
	outer
	edge
	goods
)

const (
	float       = 5126 // component types
	unsigned    = 5125
	vertexData  = 34962 // targets of buffer views
	elementData = 34963
	lineMode    = 1 // of primitives
)

// The views of the data.
const (
	vertexView = iota
	elementView
	keyView
)

// scene is a document in the making: its vertices (places and directions), its
// elements (corners of triangles) and the keys of its animations.
type scene struct {
	document
	vertices, elements, data []byte
	known                    map[string]int // accessors of times, by their bytes
}

// newScene begins a document with the node that all others hang on.
func newScene(title string) *scene {
	if title == "" {
		title = "enclosure"
	}
	half := number(math.Sqrt2 / 2)
	return &scene{known: map[string]int{}, document: document{
		Asset:  asset{"2.0", "Creasefit"},
		Scenes: []map[string][]int{{"nodes": {0}}},
		Nodes:  []node{{Name: title, Rotation: &[4]number{-half, 0, 0, half}, Scale: &[3]number{0.001, 0.001, 0.001}}},
		Materials: []material{
			inner: {Name: "inside of the paper", Surface: surface{[4]number{0.92, 0.86, 0.74, 1}, 0, 0.95}},
			outer: {Name: "outside of the paper", Surface: surface{[4]number{0.26, 0.47, 0.5, 1}, 0, 0.9}},
			edge:  {Name: "edge", Surface: surface{[4]number{0.02, 0.025, 0.03, 1}, 0, 1}},
		},
	}}
}

// node adds a node as it stands at rest, under another one if that is not -1.
func (s *scene) node(name string, on int, at *stance) int {
	n := node{Name: name}
	if at.shift != (fold.Vec{}) {
		n.Place = &[3]number{tidy(at.shift[0]), tidy(at.shift[1]), tidy(at.shift[2])}
	}
	if math.Abs(at.turn[3]) < 1-1e-12 {
		n.Rotation = &[4]number{tidy(at.turn[0]), tidy(at.turn[1]), tidy(at.turn[2]), tidy(at.turn[3])}
	}
	if at.gone {
		n.Scale = &[3]number{}
	}
	s.Nodes = append(s.Nodes, n)
	if on >= 0 {
		s.hang(len(s.Nodes)-1, on)
	}
	return len(s.Nodes) - 1
}

// tidy is a number of the format without the dust of rounding, and without a sign on
// zero.
func tidy(v float64) number {
	if math.Abs(v) < 1e-9 {
		return 0
	}
	return number(v)
}

func (s *scene) hang(node, on int) { s.Nodes[on].Children = append(s.Nodes[on].Children, node) }

// body gives a node a mesh of several parts. The material of the contents comes
// with them: a document without them must not have it.
func (s *scene) body(node int, parts ...part) {
	m := mesh{Name: s.Nodes[node].Name}
	for i := range parts {
		if parts[i].material == goods && len(s.Materials) == goods {
			s.Materials = append(s.Materials, material{Name: "contents", Surface: surface{[4]number{0.8, 0.42, 0.1, 0.35}, 0, 0.6}, AlphaMode: "BLEND"})
		}
		if parts[i].lines != nil {
			m.Primitives = append(m.Primitives, s.outline(&parts[i]))
		} else if parts[i].faces != nil {
			m.Primitives = append(m.Primitives, s.primitive(&parts[i]))
		}
	}
	at := len(s.Meshes)
	s.Meshes = append(s.Meshes, m)
	s.Nodes[node].Mesh = &at
}

// outline adds lines.
func (s *scene) outline(p *part) primitive {
	var ends []fold.Vec
	for _, line := range p.lines {
		ends = append(ends, line[:]...)
	}
	mode := lineMode
	return primitive{Attributes: attributes{Position: s.places(ends)}, Material: p.material, Mode: &mode}
}

// primitive adds the faces of one material.
func (s *scene) primitive(p *part) primitive {
	indices := accessor{View: elementView, Offset: len(s.elements), Component: unsigned, Type: "SCALAR"}
	var corners, normals []fold.Vec
	for i := range p.faces {
		f := &p.faces[i]
		for _, t := range f.triangles() {
			for _, corner := range t {
				s.elements = binary.LittleEndian.AppendUint32(s.elements, uint32(len(corners))+corner)
				indices.Count++
			}
		}
		corners = append(append(corners, f.ring...), f.hole...)
		normals = append(normals, slices.Repeat([]fold.Vec{f.normal}, len(f.ring)+len(f.hole))...)
	}
	position, normal := s.places(corners), s.add(accessor{Offset: len(s.vertices), Component: float, Type: "VEC3", Count: len(normals)})
	for _, n := range normals {
		s.vertex(n)
	}
	elements := s.add(indices)
	return primitive{Attributes: attributes{position, &normal}, Indices: &elements, Material: p.material}
}

// add adds an accessor and returns its number.
func (s *scene) add(a accessor) int {
	s.Accessors = append(s.Accessors, a)
	return len(s.Accessors) - 1
}

// places adds places, between their least and greatest coordinates.
func (s *scene) places(all []fold.Vec) int {
	a := accessor{Offset: len(s.vertices), Component: float, Type: "VEC3", Count: len(all), Min: make([]number, 3), Max: make([]number, 3)}
	for i, v := range all {
		s.vertex(v)
		for k, c := range v {
			c := number(c) + 0
			if i == 0 {
				a.Min[k], a.Max[k] = c, c
			}
			a.Min[k], a.Max[k] = min(a.Min[k], c), max(a.Max[k], c)
		}
	}
	return s.add(a)
}

// vertex appends a place or a direction.
func (s *scene) vertex(v fold.Vec) {
	for _, c := range v {
		s.vertices = binary.LittleEndian.AppendUint32(s.vertices, math.Float32bits(float32(c)+0))
	}
}

// bytes puts the file together: a header, the document padded with spaces, and
// the data (glTF 2.0 specification, section 4.4).
func (s *scene) bytes() ([]byte, error) {
	s.BufferViews = []bufferView{
		vertexView:  {Length: len(s.vertices), Stride: 12, Target: vertexData},
		elementView: {Offset: len(s.vertices), Length: len(s.elements), Target: elementData},
	}
	size := len(s.vertices) + len(s.elements)
	if len(s.data) > 0 {
		s.BufferViews = append(s.BufferViews, bufferView{Offset: size, Length: len(s.data)})
		size += len(s.data)
	}
	s.Buffers = []map[string]int{{"byteLength": size}}
	text, err := json.Marshal(&s.document)
	if err != nil {
		return nil, fmt.Errorf("glb: the pattern folds up to no place in space: %w", err)
	}
	for len(text)%4 != 0 {
		text = append(text, ' ')
	}
	b := make([]byte, 0, 28+len(text)+size)
	b = append(b, "glTF"...)
	for _, n := range [...]int{2, cap(b), len(text)} {
		b = binary.LittleEndian.AppendUint32(b, uint32(n))
	}
	b = append(append(b, "JSON"...), text...)
	b = binary.LittleEndian.AppendUint32(b, uint32(size))
	b = append(b, "BIN\x00"...)
	return append(append(append(b, s.vertices...), s.elements...), s.data...), nil
}
