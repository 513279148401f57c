package enclosure

import (
	"math"
	"slices"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// spot is a place of the right half of a shape: how far it is from the middle line,
// in half widths, and from the bottom, in heights.
type spot struct{ out, up float64 }

// shapes are the outlines that an ornament can have: the right half, from the middle
// line at the bottom to the middle line at the top. The left half is its mirror image.
var shapes = map[string]func() []spot{
	"rectangle": square,
	"circle":    round,
	"heart":     heart,
	"star":      star,
	"fir": func() []spot {
		return []spot{{0, 0}, {0.15, 0}, {0.15, 0.12}, {1, 0.12}, {0.5, 0.42}, {0.75, 0.42}, {0.32, 0.7}, {0.5, 0.7}, {0, 1}}
	},
	"tag": func() []spot { return []spot{{0, 0}, {1, 0}, {1, 0.72}, {0.45, 1}, {0, 1}} },
}

// chords is how many chords stand for the curve of half a shape: at 60 mm they lie
// within 0.05 mm of it.
const chords = 48

func square() []spot { return []spot{{0, 0}, {1, 0}, {1, 1}, {0, 1}} }

func round() []spot {
	half := make([]spot, chords+1)
	for i := range half {
		sin, cos := math.Sincos(math.Pi * (float64(i)/chords - 0.5))
		half[i] = spot{math.Max(0, cos), (1 + sin) / 2}
	}
	return half
}

// heart is the curve x = 16 sin^3 t, y = 13 cos t - 5 cos 2t - 2 cos 3t - cos 4t, as
// it is commonly given (from memory).
func heart() []spot {
	half := make([]spot, chords+1)
	low, high := math.Inf(1), math.Inf(-1)
	for i := range half {
		t := math.Pi * (1 - float64(i)/chords)
		sin := math.Sin(t)
		half[i] = spot{math.Max(0, sin*sin*sin), 13*math.Cos(t) - 5*math.Cos(2*t) - 2*math.Cos(3*t) - math.Cos(4*t)}
		low, high = math.Min(low, half[i].up), math.Max(high, half[i].up)
	}
	for i := range half {
		half[i].up = (half[i].up - low) / (high - low)
	}
	half[chords].out = 0
	return half
}

// star has five points; the sides of neighbouring ones lie on one line.
func star() []spot {
	inner := (3 - math.Sqrt(5)) / 2
	low, wide := -math.Cos(math.Pi/5), math.Cos(math.Pi/10)
	half := make([]spot, 6)
	for i := range half {
		sin, cos := math.Sincos(math.Pi * (float64(i)/5 - 0.5))
		r := 1.0
		if i%2 == 0 {
			r = inner
		}
		half[i] = spot{math.Max(0, r*cos/wide), (r*sin - low) / (1 - low)}
	}
	return half
}

// outline is the shape of the ornament: one of ours, or a path that was drawn.
func (in *Input) outline() (*drawn, error) {
	word := in.choice("ornament_shape")
	if known, ok := shapes[word]; ok {
		half := known()
		return &drawn{half, half, 1}, nil
	}
	d, err := readOutline(word)
	if err != nil {
		return nil, fault.Fault{Code: fault.Unreadable, Field: "ornament_shape", Detail: err.Error()}
	}
	return d, nil
}

// reaches returns between which heights a strip of both halves, from one distance from
// the middle line to another, is all paper round a height; nothing where it is not.
func (d *drawn) reaches(from, to, middle float64) (low, high float64) {
	low, high = 0, 1
	const steps = 64
	for k := range 2 * (steps + 1) {
		half, out := d.left, from+(to-from)*float64(k/2)/steps
		if k%2 == 1 {
			half = d.right
		}
		below := 0
		for i := 1; i < len(half); i++ {
			a, b := half[i-1], half[i]
			if (a.out > out) == (b.out > out) {
				continue
			}
			up := a.up + (b.up-a.up)*(out-a.out)/(b.out-a.out)
			if up <= middle {
				low, below = math.Max(low, up), below+1
			} else {
				high = math.Min(high, up)
			}
		}
		if below%2 == 0 {
			return middle, middle
		}
	}
	return low, high
}

// Piece is the ornament as a blank that is cut in half along its middle, with the
// areas that are glued to the tabs on the side that is not seen.
func (o *Ornament) Piece() pattern.Piece {
	left, right := o.half(o.shape.left, -1), o.half(o.shape.right, 1)
	slices.Reverse(left)
	p := pattern.Piece{Name: "ornament", Quantity: 1, Width: o.HalfWidth.Times(2), Height: o.Height, Caliper: o.caliper,
		Panels: []pattern.Panel{{Name: "left half", Outline: left}, {Name: "right half", Outline: right}},
		Strips: []pattern.Strip{
			{Across: pattern.Width, Cells: []pattern.Cell{{Name: "left half", Size: o.HalfWidth}, {Name: "right half", Size: o.HalfWidth}}, Scores: []pattern.Score{{}}},
			{Across: pattern.Height, Cells: []pattern.Cell{{Name: "ornament height", Size: o.Height}}},
		}}
	low, high := o.glueLow, o.glueLow.Add(o.GlueHeight)
	p.Glues = []pattern.Glue{
		{Name: "left half", Panel: 0, To: 0, Face: pattern.Outside, Area: pattern.Rectangle(o.HalfWidth.Sub(o.GlueTo), low, o.HalfWidth.Sub(o.GlueFrom), high)},
		{Name: "right half", Panel: 1, To: 1, Face: pattern.Outside, Area: pattern.Rectangle(o.HalfWidth.Add(o.GlueFrom), low, o.HalfWidth.Add(o.GlueTo), high)},
	}
	return p
}

// half is one half of the shape on its blank, from the bottom of the middle line to its
// top, to the left of it or to the right.
func (o *Ornament) half(spots []spot, side float64) []pattern.Vertex {
	outline := make([]pattern.Vertex, 0, len(spots))
	for _, s := range spots {
		at := pattern.At(o.HalfWidth.Add(part(o.HalfWidth, side*s.out)), part(o.Height, s.up))
		if n := len(outline); n == 0 || outline[n-1].Point != at {
			outline = append(outline, pattern.Vertex{Point: at})
		}
	}
	return outline
}

// part returns a part of a length, to the micrometre.
func part(l measure.Length, of float64) measure.Length {
	return measure.Micrometres(int64(math.Round(l.Millimetres() * of * 1e3)))
}
