package draw

// Layer says what a line of a drawing is.
type Layer uint8

// The layers, in the order that they are painted in.
const (
	Paper       Layer = iota // the blank's area, filled
	Pasted                   // hatching of glue on the side that is seen
	PastedUnder              // hatching of glue on the side that is not seen
	Waste                    // hatching of what is left over of a sheet
	BlankEdge                // of the blank, where it is cut away
	ValleyFold
	MountainFold
	HalfCutUnder // a valley fold of board, cut half through from the side that is not seen
	HalfCut      // a mountain fold of board, cut half through from the side that is seen
	SlitCut      // cuts inside the outline, and a dot where the blade stops
	Outline      // cuts round the piece
	Measures     // dimension lines, arrows and leaders

	// what a machine does, in the order in which it is done
	MarkPath
	GluePath
	ScorePath
	HalfCutUnderPath
	HalfCutPath
	PerforationPath
	CutPath

	// things in space
	InsideFace  // of the paper
	OutsideFace // the other side of the paper
	GoodsFace   // the contents
	GlueHatch
	CreaseEdge // a fold that is not made yet
	GoodsEdge
	SolidEdge
	MotionPath // arrows
)

// Layers is the number of layers.
const Layers = int(MotionPath) + 1

// String returns the layer's plain name.
func (l Layer) String() string {
	return [...]string{"paper", "glue", "glue on the other side", "left over", "edge of the blank", "valley fold", "mountain fold",
		"valley fold, cut half through from the other side", "mountain fold, cut half through from this side", "slit", "cut", "dimension",
		"mark", "glue", "score", "half-cut-other-side", "half-cut", "perforate", "cut",
		"inside", "outside", "contents", "glue", "crease", "contents", "edge", "motion"}[l]
}

// Style is how a layer's lines are drawn, in millimetres at lettering of
// Lettering. A dash pattern is lengths of line and gap in turn; an empty one
// is a continuous line.
//
// Widths are of the series of ISO 128-2 (0.18, 0.25, 0.35, 0.5 mm). Outlines
// and slits are continuous wide lines, slits with a dot where they end in the
// paper; dimensions and hatching are continuous narrow ones. Valley folds are
// dashed and mountain folds chain lines with two dots, with periods short enough
// to tell them apart on a fold of 6 mm; half-cuts are long dashes, with one dot
// from the other side. All differ without colour.
type Style struct {
	Width float64
	Dash  []float64
}

var styles = [Layers]Style{
	Paper:        {},
	Pasted:       {Width: 0.18},
	PastedUnder:  {Width: 0.18, Dash: []float64{1.2, 0.8}},
	Waste:        {Width: 0.18},
	BlankEdge:    {Width: 0.25, Dash: []float64{0.4, 1.2}},
	ValleyFold:   {Width: 0.35, Dash: []float64{2.4, 1.4}},
	MountainFold: {Width: 0.35, Dash: []float64{2.4, 0.7, 0.4, 0.7, 0.4, 0.7}},
	HalfCutUnder: {Width: 0.35, Dash: []float64{4.2, 0.7, 0.4, 0.7}},
	HalfCut:      {Width: 0.35, Dash: []float64{4.2, 0.7}},
	SlitCut:      {Width: 0.5},
	Outline:      {Width: 0.5},
	Measures:     {Width: 0.18},

	MarkPath: {Width: hairline}, GluePath: {Width: hairline}, ScorePath: {Width: hairline},
	HalfCutUnderPath: {Width: hairline}, HalfCutPath: {Width: hairline}, PerforationPath: {Width: hairline}, CutPath: {Width: hairline},

	GlueHatch: {Width: 0.25}, CreaseEdge: {Width: 0.25, Dash: []float64{2, 1}}, GoodsEdge: {Width: 0.35}, SolidEdge: {Width: 0.5}, MotionPath: {Width: 0.7},
}

// hairline is the width of lines for a machine, which follows their middle.
const hairline = 0.1

// Style returns how the layer's lines are drawn. Its dash pattern is shared
// and must not be changed.
func (l Layer) Style() Style { return styles[l] }

// Colour is an opaque sRGB colour.
type Colour struct{ R, G, B uint8 }

// Palette is the colours of one rendering.
type Palette struct {
	Ground Colour // behind the pieces
	Text   Colour
	Quiet  Colour // dimensions and secondary text
	layers [Layers]Colour
}

// Of returns the colour of a layer.
func (p *Palette) Of(l Layer) Colour { return p.layers[l] }

// Ink returns the colour of a text.
func (p *Palette) Ink(l *Label) Colour {
	if l.Quiet {
		return p.Quiet
	}
	return p.Text
}

// Light returns the colours for a light page. Text and lines differ from the
// ground by a contrast of at least 4.5 to 1 (WCAG 2.2, 1.4.3).
func Light() *Palette { return &light }

// Dark returns the colours for a dark page, with the same contrasts.
func Dark() *Palette { return &dark }

var light = Palette{
	Ground: Colour{0xff, 0xff, 0xff}, Text: Colour{0x24, 0x2b, 0x2e}, Quiet: Colour{0x56, 0x60, 0x64},
	layers: [Layers]Colour{
		Paper: {0xf7, 0xf1, 0xe3}, Pasted: {0x8a, 0x6a, 0x1c}, PastedUnder: {0x8a, 0x6a, 0x1c}, Waste: {0x6f, 0x78, 0x7b}, BlankEdge: {0x56, 0x60, 0x64},
		ValleyFold: {0x12, 0x65, 0x80}, MountainFold: {0xa8, 0x3a, 0x22}, HalfCutUnder: {0x12, 0x65, 0x80}, HalfCut: {0xa8, 0x3a, 0x22},
		SlitCut: {0x24, 0x2b, 0x2e}, Outline: {0x24, 0x2b, 0x2e}, Measures: {0x56, 0x60, 0x64},
		MarkPath: {0x56, 0x60, 0x64}, GluePath: {0x8a, 0x6a, 0x1c}, ScorePath: {0x12, 0x65, 0x80},
		HalfCutUnderPath: {0x12, 0x65, 0x80}, HalfCutPath: {0xa8, 0x3a, 0x22}, PerforationPath: {0xa8, 0x3a, 0x22}, CutPath: {0x24, 0x2b, 0x2e},
		InsideFace: {0xf7, 0xf1, 0xe3}, OutsideFace: {0xb4, 0xcb, 0xcd}, GoodsFace: {0xe9, 0xc7, 0x9b}, GlueHatch: {0x8a, 0x6a, 0x1c},
		CreaseEdge: {0x12, 0x65, 0x80}, GoodsEdge: {0x7a, 0x4b, 0x12}, SolidEdge: {0x24, 0x2b, 0x2e}, MotionPath: {0xa8, 0x3a, 0x22},
	},
}

var dark = Palette{
	Ground: Colour{0x14, 0x19, 0x1b}, Text: Colour{0xee, 0xe8, 0xdb}, Quiet: Colour{0xab, 0xb6, 0xb9},
	layers: [Layers]Colour{
		Paper: {0x26, 0x2e, 0x30}, Pasted: {0xd6, 0xb4, 0x5c}, PastedUnder: {0xd6, 0xb4, 0x5c}, Waste: {0x8e, 0x99, 0x9c}, BlankEdge: {0xab, 0xb6, 0xb9},
		ValleyFold: {0x7b, 0xc8, 0xe0}, MountainFold: {0xf2, 0x99, 0x80}, HalfCutUnder: {0x7b, 0xc8, 0xe0}, HalfCut: {0xf2, 0x99, 0x80},
		SlitCut: {0xee, 0xe8, 0xdb}, Outline: {0xee, 0xe8, 0xdb}, Measures: {0xab, 0xb6, 0xb9},
		MarkPath: {0xab, 0xb6, 0xb9}, GluePath: {0xd6, 0xb4, 0x5c}, ScorePath: {0x7b, 0xc8, 0xe0},
		HalfCutUnderPath: {0x7b, 0xc8, 0xe0}, HalfCutPath: {0xf2, 0x99, 0x80}, PerforationPath: {0xf2, 0x99, 0x80}, CutPath: {0xee, 0xe8, 0xdb},
		InsideFace: {0x3a, 0x43, 0x45}, OutsideFace: {0x23, 0x4a, 0x50}, GoodsFace: {0x5c, 0x43, 0x22}, GlueHatch: {0xd6, 0xb4, 0x5c},
		CreaseEdge: {0x7b, 0xc8, 0xe0}, GoodsEdge: {0xe2, 0xb0, 0x6b}, SolidEdge: {0xee, 0xe8, 0xdb}, MotionPath: {0xf2, 0x99, 0x80},
	},
}
