package main

import (
	"bytes"
	"encoding/json"
	"fmt"
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
