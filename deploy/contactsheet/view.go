package main

import (
	"bytes"
	"encoding/binary"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// picture gathers shapes for an SVG with y upwards.
type picture struct {
	shapes    bytes.Buffer
	low, high [2]float64
	any       bool
}

// path adds a path through points.
func (p *picture) path(points [][2]float64, style string) {
	fmt.Fprintf(&p.shapes, `<path style="stroke-width:.4;fill:none;%s" d="M`, style)
	for _, q := range points {
		for k := range q {
			if !p.any || q[k] < p.low[k] {
				p.low[k] = q[k]
			}
			if !p.any || q[k] > p.high[k] {
				p.high[k] = q[k]
			}
		}
		p.any = true
		fmt.Fprintf(&p.shapes, "%.3f %.3f ", q[0], -q[1])
	}
	p.shapes.WriteString("\"/>\n")
}

func (p *picture) svg() []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" width="%.0[3]fmm" viewBox="%.1[1]f %.1[2]f %.1[3]f %.1[4]f">`,
		p.low[0]-3, -p.high[1]-3, p.high[0]-p.low[0]+6, p.high[1]-p.low[1]+6)
	b.Write(p.shapes.Bytes())
	b.WriteString("</svg>\n")
	return b.Bytes()
}

// viewDXF shows the entities of a DXF file, arcs as chords.
func viewDXF(b []byte) ([]byte, error) {
	colours := map[string]string{"CUT": "black", "SLIT": "blue", "CREASE_VALLEY": "teal", "CREASE_MOUNTAIN": "red"}
	lines := strings.Split(string(b), "\r\n")
	var p picture
	var points [][2]float64
	kind, layer, entities, closed := "", "", false, false
	flush := func() {
		if closed && len(points) > 0 {
			points = append(points, points[0])
		}
		if closed = false; len(points) > 1 {
			p.path(points, "stroke:"+colours[layer])
		}
		points = nil
	}
	for i := 0; i+1 < len(lines); i += 2 {
		value := lines[i+1]
		number, err := strconv.ParseFloat(value, 64)
		entities = entities || value == "ENTITIES"
		switch code := lines[i]; {
		case !entities:
		case code == "0":
			if value == "LINE" || value == "POLYLINE" || value == "ENDSEC" {
				flush()
			}
			kind = value
		case code == "8":
			layer = value
		case code == "70" && kind == "POLYLINE":
			closed = value == "1"
		case err != nil || kind != "LINE" && kind != "VERTEX":
		case code == "10" || code == "11":
			points = append(points, [2]float64{number})
		case code == "20" || code == "21":
			points[len(points)-1][1] = number
		}
	}
	return p.svg(), nil
}

// viewFOLD shows the edges of the frames of a FOLD file by their assignments.
func viewFOLD(b []byte) ([]byte, error) {
	type frame struct {
		Coords     [][2]float64 `json:"vertices_coords"`
		Edges      [][2]int     `json:"edges_vertices"`
		Assignment []string     `json:"edges_assignment"`
	}
	var file struct {
		frame
		Frames []frame `json:"file_frames"`
	}
	if err := json.Unmarshal(b, &file); err != nil {
		return nil, err
	}
	styles := map[string]string{
		"B": "stroke:black", "V": "stroke:teal;stroke-dasharray:3 1", "M": "stroke:red;stroke-dasharray:5 1 1 1",
		"C": "stroke:blue", "F": "stroke:gray", "J": "stroke:orange;stroke-dasharray:1 1",
	}
	var p picture
	across := 0.0
	for _, f := range append([]frame{file.frame}, file.Frames...) {
		for i, e := range f.Edges {
			a, b := f.Coords[e[0]], f.Coords[e[1]]
			p.path([][2]float64{{a[0] + across, a[1]}, {b[0] + across, b[1]}}, styles[f.Assignment[i]])
		}
		across = p.high[0] + 10
	}
	return p.svg(), nil
}

// triangle is a triangle seen askew, and how far away it is.
type triangle struct {
	points [][2]float64
	depth  float64
	style  string
}

// viewGLB shows the triangles of a GLB file, the farthest first.
func viewGLB(b []byte) ([]byte, error) {
	if len(b) < 28 {
		return nil, errors.New("the file is too short")
	}
	n := binary.LittleEndian.Uint32(b[12:])
	var d struct {
		Meshes []struct {
			Primitives []struct {
				Attributes        map[string]int
				Indices, Material int
			}
		}
		Accessors   []struct{ BufferView, ByteOffset, Count int }
		BufferViews []struct{ ByteOffset int }
	}
	if err := json.Unmarshal(b[20:20+n], &d); err != nil {
		return nil, err
	}
	data := b[28+n:]
	start := func(accessor int) []byte {
		a := d.Accessors[accessor]
		return data[d.BufferViews[a.BufferView].ByteOffset+a.ByteOffset:]
	}
	var all []triangle
	for _, m := range d.Meshes {
		for _, p := range m.Primitives {
			places, corners := start(p.Attributes["POSITION"]), start(p.Indices)
			for i := range d.Accessors[p.Indices].Count / 3 {
				all = append(all, seen(places, corners[12*i:], p.Material))
			}
		}
	}
	slices.SortStableFunc(all, func(a, b triangle) int { return int(math.Copysign(1, a.depth-b.depth)) })
	var p picture
	for _, t := range all {
		p.path(t.points, t.style)
	}
	return p.svg(), nil
}

// seen looks at a triangle from the front, the right and above.
func seen(places, corners []byte, material int) triangle {
	colours := [...][4]float64{{236, 222, 190, 1}, {60, 120, 125, 1}, {220, 140, 60, 0.35}}
	var v [3][3]float64
	t := triangle{}
	for k := range v {
		at := 12 * binary.LittleEndian.Uint32(corners[4*k:])
		for c := range v[k] {
			v[k][c] = float64(math.Float32frombits(binary.LittleEndian.Uint32(places[int(at)+4*c:])))
		}
		x, y, z := v[k][0], v[k][1], v[k][2]
		u, w := x*0.9-y*0.436, x*0.436+y*0.9
		t.points = append(t.points, [2]float64{u, w*0.5 + z*0.866})
		t.depth += z*0.5 - w*0.866
	}
	e, f := [3]float64{}, [3]float64{}
	for c := range e {
		e[c], f[c] = v[1][c]-v[0][c], v[2][c]-v[0][c]
	}
	normal := [3]float64{e[1]*f[2] - e[2]*f[1], e[2]*f[0] - e[0]*f[2], e[0]*f[1] - e[1]*f[0]}
	long := math.Sqrt(normal[0]*normal[0] + normal[1]*normal[1] + normal[2]*normal[2])
	light := 0.7 + 0.3*(normal[0]*0.3-normal[1]*0.5+normal[2]*0.8)/max(long, 1e-9)
	c := colours[material]
	t.style = fmt.Sprintf("fill:rgb(%.0f,%.0f,%.0f);fill-opacity:%v", c[0]*light, c[1]*light, c[2]*light, c[3])
	return t
}
