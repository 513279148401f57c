package glb

import (
	"encoding/binary"
	"encoding/json"
	"fmt"
	"math"

	"creasefit/internal/fold"
)

// The materials, by number.
const (
	inner = iota
	outer
	goods
)

// The members of a glTF document that are used here; names and numbers are
// those of the glTF 2.0 specification.
type document struct {
	Asset       asset        `json:"asset"`
	Scene       int          `json:"scene"`
	Scenes      []scenes     `json:"scenes"`
	Nodes       []node       `json:"nodes"`
	Meshes      []mesh       `json:"meshes"`
	Materials   []material   `json:"materials"`
	Accessors   []accessor   `json:"accessors"`
	BufferViews []bufferView `json:"bufferViews"`
	Buffers     []buffer     `json:"buffers"`
}

type asset struct {
	Version   string `json:"version"`
	Generator string `json:"generator"`
}

type scenes struct {
	Nodes []int `json:"nodes"`
}

type node struct {
	Name     string     `json:"name"`
	Rotation *[4]number `json:"rotation,omitempty"`
	Scale    *[3]number `json:"scale,omitempty"`
	Mesh     *int       `json:"mesh,omitempty"`
	Children []int      `json:"children,omitempty"`
}

type mesh struct {
	Name       string      `json:"name"`
	Primitives []primitive `json:"primitives"`
}

type primitive struct {
	Attributes attributes `json:"attributes"`
	Indices    int        `json:"indices"`
	Material   int        `json:"material"`
}

type attributes struct {
	Position int `json:"POSITION"`
	Normal   int `json:"NORMAL"`
}

type material struct {
	Name      string  `json:"name"`
	Surface   surface `json:"pbrMetallicRoughness"`
	AlphaMode string  `json:"alphaMode,omitempty"`
}

type surface struct {
	Colour    [4]number `json:"baseColorFactor"`
	Metallic  number    `json:"metallicFactor"`
	Roughness number    `json:"roughnessFactor"`
}

type accessor struct {
	View      int      `json:"bufferView"`
	Offset    int      `json:"byteOffset"`
	Component int      `json:"componentType"`
	Count     int      `json:"count"`
	Type      string   `json:"type"`
	Min       []number `json:"min,omitempty"`
	Max       []number `json:"max,omitempty"`
}

type bufferView struct {
	Buffer int `json:"buffer"`
	Offset int `json:"byteOffset"`
	Length int `json:"byteLength"`
	Stride int `json:"byteStride,omitempty"`
	Target int `json:"target"`
}

type buffer struct {
	Length int `json:"byteLength"`
}

// number is a float32, written so that it reads back to the same.
type number = float32

const (
	float       = 5126 // component types
	unsigned    = 5125
	vertexData  = 34962 // targets of buffer views
	elementData = 34963
)

// scene is a document in the making: its vertices (places and directions) and
// its elements (corners of triangles).
type scene struct {
	document
	vertices, elements []byte
}

// newScene begins a document with the node that all others hang on.
func newScene(title string) *scene {
	if title == "" {
		title = "enclosure"
	}
	half := number(math.Sqrt2 / 2)
	s := &scene{document: document{
		Asset:  asset{"2.0", "Creasefit"},
		Scenes: []scenes{{[]int{0}}},
		Nodes:  []node{{Name: title, Rotation: &[4]number{-half, 0, 0, half}, Scale: &[3]number{0.001, 0.001, 0.001}}},
		Materials: []material{
			inner: {Name: "inside of the paper", Surface: surface{[4]number{0.92, 0.86, 0.74, 1}, 0, 0.95}},
			outer: {Name: "outside of the paper", Surface: surface{[4]number{0.09, 0.27, 0.3, 1}, 0, 0.9}},
		},
	}}
	return s
}

// contents adds the body of the goods, with a material that a document without
// them must not have.
func (s *scene) contents(faces []face) {
	s.Materials = append(s.Materials, material{Name: "contents", Surface: surface{[4]number{0.8, 0.42, 0.1, 0.35}, 0, 0.6}, AlphaMode: "BLEND"})
	s.node("contents", part{faces, goods})
}

// node adds a body of several parts under the first node.
func (s *scene) node(name string, parts ...part) {
	m := mesh{Name: name}
	for _, p := range parts {
		m.Primitives = append(m.Primitives, s.primitive(p))
	}
	at := len(s.Meshes)
	s.Meshes = append(s.Meshes, m)
	s.Nodes[0].Children = append(s.Nodes[0].Children, len(s.Nodes))
	s.Nodes = append(s.Nodes, node{Name: name, Mesh: &at})
}

// primitive adds the faces of one material.
func (s *scene) primitive(p part) primitive {
	positions := accessor{Offset: len(s.vertices), Component: float, Type: "VEC3"}
	indices := accessor{View: 1, Offset: len(s.elements), Component: unsigned, Type: "SCALAR"}
	low, high := [3]number{}, [3]number{}
	for i := range p.faces {
		f := &p.faces[i]
		for _, t := range f.triangles() {
			for _, corner := range t {
				s.elements = binary.LittleEndian.AppendUint32(s.elements, uint32(positions.Count)+corner)
				indices.Count++
			}
		}
		for _, ring := range [2][]fold.Vec{f.ring, f.hole} {
			for _, v := range ring {
				s.vertex(v)
				widen(&low, &high, v, positions.Count == 0)
				positions.Count++
			}
		}
	}
	positions.Min, positions.Max = low[:], high[:]
	normals := accessor{Offset: len(s.vertices), Component: float, Type: "VEC3", Count: positions.Count}
	for i := range p.faces {
		for range len(p.faces[i].ring) + len(p.faces[i].hole) {
			s.vertex(p.faces[i].normal)
		}
	}
	n := len(s.Accessors)
	s.Accessors = append(s.Accessors, positions, normals, indices)
	return primitive{attributes{n, n + 1}, n + 2, p.material}
}

// vertex appends a place or a direction.
func (s *scene) vertex(v fold.Vec) {
	for _, c := range v {
		s.vertices = binary.LittleEndian.AppendUint32(s.vertices, math.Float32bits(float32(c)+0))
	}
}

// widen keeps the least and the greatest of each coordinate.
func widen(low, high *[3]number, v fold.Vec, first bool) {
	for k, c := range v {
		c := number(c) + 0
		if first || c < low[k] {
			low[k] = c
		}
		if first || c > high[k] {
			high[k] = c
		}
	}
}

// bytes puts the file together: a header, the document padded with spaces, and
// the data (glTF 2.0 specification, section 4.4).
func (s *scene) bytes() ([]byte, error) {
	s.BufferViews = []bufferView{
		{Length: len(s.vertices), Stride: 12, Target: vertexData},
		{Offset: len(s.vertices), Length: len(s.elements), Target: elementData},
	}
	size := len(s.vertices) + len(s.elements)
	s.Buffers = []buffer{{size}}
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
	return append(append(b, s.vertices...), s.elements...), nil
}
