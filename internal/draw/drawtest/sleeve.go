package drawtest

import (
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Sleeve returns a hand-made pattern with everything a drawing can meet:
// arcs, a window, a slit inside a panel, a cut between panels, glue on the
// other side and a second piece. It is the sleeve of a tin of tea with a
// tasting card behind its window.
func Sleeve() *pattern.Pattern {
	return &pattern.Pattern{
		Caliper: measure.Micrometres(300), Pieces: []pattern.Piece{sleeve(), card()},
		Cavity: pattern.Cavity{
			Panel: 2, Width: mm(80), Height: mm(40), Thickness: mm(20),
			Bounded: []pattern.Axis{pattern.Width, pattern.Thickness},
		},
		Places: []pattern.Place{{Piece: 1, X: mm(110), Y: mm(2), Above: measure.Micrometres(300)}},
	}
}

func mm(v int64) measure.Length { return measure.Millimetres(v) }

func um(v int64) measure.Length { return measure.Micrometres(v) }

// xs are the boundaries of the sleeve's panels, from the left.
var xs = []measure.Length{um(0), um(81_300), um(102_400), um(183_700), um(204_500), um(219_500)}

func sleeve() pattern.Piece {
	names := []string{"front with a rather long name", "side", "back", "other side", "lap"}
	p := pattern.Piece{Name: "sleeve", Quantity: 1, Width: xs[5], Height: mm(40), Root: 2}
	strip := pattern.Strip{Across: pattern.Width}
	for i, name := range names {
		p.Panels = append(p.Panels, pattern.Panel{Name: name, Outline: pattern.Rectangle(xs[i], mm(0), xs[i+1], mm(40))})
		strip.Cells = append(strip.Cells, pattern.Cell{Name: name, Size: xs[i+1].Sub(xs[i])})
		if i == 0 {
			continue
		}
		c := pattern.Crease{Name: "score " + string(rune('0'+i)), A: pattern.At(xs[i], mm(0)), B: pattern.At(xs[i], mm(40)),
			From: i - 1, To: i, Fold: pattern.Valley, Angle: 90}
		if i <= 2 {
			c.From, c.To = i, i-1
		}
		p.Creases = append(p.Creases, c)
		strip.Scores = append(strip.Scores, pattern.Score{Name: c.Name, Fold: c.Fold, Angle: c.Angle})
	}
	p.Strips = []pattern.Strip{strip, {Across: pattern.Height, Cells: []pattern.Cell{{Name: "sleeve height", Size: mm(40)}}}}
	p.Panels[0].Outline = thumbNotched(p.Panels[0].Outline)
	p.Panels[2].Hole = []pattern.Vertex{
		{Point: pattern.At(mm(125), mm(12))}, {Point: pattern.At(mm(125), mm(28))},
		{Point: pattern.At(mm(160), mm(28)), Bulge: -1}, {Point: pattern.At(mm(160), mm(12))},
	}
	p.Cuts = []pattern.Cut{
		{Name: "thumb notch", Kind: pattern.Notch, From: "top", At: um(40_650), Depth: mm(8), Width: mm(16), Path: p.Panels[0].Outline[3:5]},
		{Name: "window", Kind: pattern.Window, From: "bottom", At: um(146_500), Depth: mm(28), Width: mm(43), Path: p.Panels[2].Hole},
		{Name: "card slit", Kind: pattern.Slit, From: "bottom", At: mm(120), Depth: mm(34), Path: pattern.Polygon(pattern.At(mm(112), mm(34)), pattern.At(mm(128), mm(34)))},
	}
	p.Glues = []pattern.Glue{{
		Name: "lap", Panel: 4, Face: pattern.Outside, To: 0, ToFace: pattern.Inside,
		Area: pattern.Rectangle(xs[4].Add(mm(1)), mm(1), xs[5].Sub(mm(1)), mm(39)),
	}}
	return p
}

// thumbNotched bites a half round of 8 mm out of the middle of the top edge.
func thumbNotched(o []pattern.Vertex) []pattern.Vertex {
	mid := um(40_650)
	return []pattern.Vertex{
		o[0], o[1], o[2],
		{Point: pattern.At(mid.Add(mm(8)), mm(40)), Bulge: -1}, {Point: pattern.At(mid.Sub(mm(8)), mm(40))},
		o[3],
	}
}

// card is a flat piece with rounded corners and two tabs that a cut parts.
func card() pattern.Piece {
	const quarter = 0.41421356237309503 // tangent of 22.5 degrees: a quarter of a circle
	round := []pattern.Vertex{
		{Point: pattern.At(mm(0), mm(0))}, {Point: pattern.At(mm(60), mm(0))},
		{Point: pattern.At(mm(60), mm(30)), Bulge: quarter}, {Point: pattern.At(mm(54), mm(36))},
		{Point: pattern.At(mm(6), mm(36)), Bulge: quarter}, {Point: pattern.At(mm(0), mm(30))},
	}
	return pattern.Piece{
		Name: "tasting card", Quantity: 2, Width: mm(60), Height: mm(36),
		Strips: []pattern.Strip{
			{Across: pattern.Width, Cells: []pattern.Cell{{Name: "card width", Size: mm(60)}}},
			{Across: pattern.Height, Cells: []pattern.Cell{{Name: "card height", Size: mm(36)}}},
		},
		Panels: []pattern.Panel{{Name: "card", Outline: round}},
	}
}
