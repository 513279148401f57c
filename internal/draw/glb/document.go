package glb

// The members of a glTF document that are used here; names and numbers are
// those of the glTF 2.0 specification.
type document struct {
	Asset       asset              `json:"asset"`
	Scene       int                `json:"scene"`
	Scenes      []map[string][]int `json:"scenes"`
	Nodes       []node             `json:"nodes"`
	Meshes      []mesh             `json:"meshes"`
	Materials   []material         `json:"materials"`
	Accessors   []accessor         `json:"accessors"`
	BufferViews []bufferView       `json:"bufferViews"`
	Buffers     []map[string]int   `json:"buffers"`
	Animations  []animation        `json:"animations,omitempty"`
}

type asset struct {
	Version   string `json:"version"`
	Generator string `json:"generator"`
}

type node struct {
	Name     string               `json:"name"`
	Place    *[3]number           `json:"translation,omitempty"`
	Rotation *[4]number           `json:"rotation,omitempty"`
	Scale    *[3]number           `json:"scale,omitempty"`
	Mesh     *int                 `json:"mesh,omitempty"`
	Children []int                `json:"children,omitempty"`
	Extras   map[string][3]string `json:"extras,omitempty"` // what lies along x, y and z of the contents that are a box
}

type animation struct {
	Name     string    `json:"name"`
	Channels []channel `json:"channels"`
	Samplers []sampler `json:"samplers"`
}

type channel struct {
	Sampler int    `json:"sampler"`
	Target  target `json:"target"`
}

type target struct {
	Node int    `json:"node"`
	Path string `json:"path"`
}

type sampler struct {
	Input         int    `json:"input"`
	Output        int    `json:"output"`
	Interpolation string `json:"interpolation"`
}

type mesh struct {
	Name       string      `json:"name"`
	Primitives []primitive `json:"primitives"`
}

type primitive struct {
	Attributes attributes `json:"attributes"`
	Indices    *int       `json:"indices,omitempty"`
	Material   int        `json:"material"`
	Mode       *int       `json:"mode,omitempty"`
}

type attributes struct {
	Position int  `json:"POSITION"`
	Normal   *int `json:"NORMAL,omitempty"`
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
	Target int `json:"target,omitempty"`
}

// number is a float32, written so that it reads back to the same.
type number = float32
