package enclosure

import (
	"math"
	"slices"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// Ornament is a shape cut in half along its middle, which comes whole when a
// slotted band is closed. The locked tabs are pressed flat, one to each side
// of the meeting line, and each half is glued to the tab on its side only, so
// that the band still opens. The shape fills the rectangle of its sizes; where it is
// narrower it shows more of the tabs.
type Ornament struct {
	Shape       string // the word for it, or its path
	shape       *drawn
	HalfWidth   measure.Length // of each half, from the meeting line out
	Height      measure.Length
	CoversTabs  bool
	CoversSlits bool           // the slits run along the meeting line to the band's edges
	GlueFrom    measure.Length // from the meeting line: never across a slit
	GlueTo      measure.Length // where the tab or the half ends
	GlueHeight  measure.Length
	TrimWidth   measure.Length // how far each tab sticks out at the side: trimmed away
	ShowsHeight measure.Length // how far the tabs show above and below, each
	Adds        measure.Length // to the thickness: the pressed tab and the ornament
	glueLow     measure.Length // from the shape's bottom
	caliper     measure.Length // of its own stock
}

// OrnamentParams are the parameters of the ornament.
var OrnamentParams = []Param{
	lengthParam("ornament_width", 6, 1000, "Width of a shape that is glued half and half over the closure; none if not given.").seldom(),
	lengthParam("ornament_height", 6, 1000, "Height of that shape; as wide as high if not given, a drawn one as it is drawn.").seldom(),
	{Name: "ornament_shape", Type: ChoiceParam, Advanced: true, Drawn: true, Choices: []string{"rectangle", "heart", "star", "circle", "fir", "tag"},
		Help: "Outline of that shape, which is cut in half along its middle: one of the words, or one closed line as SVG path data."},
	{Name: "ornament_caliper", Advanced: true, Help: "Thickness of the ornament's stock; that of the band if not given.",
		Least: measure.Micrometres(10), Greatest: measure.Millimetres(25)},
}

// OrnamentOver works out the closure ornament over tabs of a length and a height that
// options say, nil if none is asked for.
func (in *Input) OrnamentOver(tabs, height string) (*Ornament, error) {
	if !in.given("ornament_width") {
		return nil, in.ornamentWithoutWidth()
	}
	shape, err := in.outline()
	if err != nil {
		return nil, err
	}
	width, tab, band := in.length("ornament_width"), in.length(tabs), in.length(height)
	o := &Ornament{Shape: in.choice("ornament_shape"), shape: shape, HalfWidth: width.Over(2), Height: in.orElse("ornament_height", part(width, shape.aspect)), GlueFrom: glueMargin}
	half := shape.right
	o.GlueTo, o.GlueHeight = measure.Min(tab, o.HalfWidth), measure.Min(band, o.Height)
	o.glueLow = o.Height.Sub(o.GlueHeight).Over(2)
	o.TrimWidth = measure.Max(measure.Length{}, tab.Sub(o.HalfWidth))
	middle := part(o.Height, half[len(half)-1].up-half[0].up)
	o.ShowsHeight = measure.Max(measure.Length{}, band.Sub(middle)).Over(2)
	o.CoversSlits = o.ShowsHeight.IsZero()
	to, high := o.GlueTo, o.GlueHeight
	o.fitGlue()
	o.CoversTabs = o.CoversSlits && o.TrimWidth.IsZero() && to == o.GlueTo && high == o.GlueHeight
	o.caliper = in.orElse("ornament_caliper", in.Caliper)
	o.Adds = in.Caliper.Add(o.caliper)
	if o.GlueTo.Sub(o.GlueFrom).Less(leastGlue) || o.GlueHeight.Less(leastGlue) {
		return nil, fault.Fault{
			Code: fault.Impossible, Field: "ornament_width", Detail: "half of the ornament and the tab under it leave no room for glue beside the slits",
			Expected: "at least " + in.describe(leastGlue.Add(glueMargin).Times(2)) + ", and a tab at least half of that", Hint: "make the ornament wider, the tab longer, or the shape wider in its middle",
		}
	}
	return o, nil
}

// fitGlue keeps the glue inside the shape: of the areas that begin beside the slits
// and lie round the middle of the band, the largest.
func (o *Ornament) fitGlue() {
	filled := slices.Equal(o.shape.left, square()) && slices.Equal(o.shape.right, square())
	if filled || o.GlueTo.Sub(o.GlueFrom).Sign() <= 0 {
		return
	}
	wide, high := o.HalfWidth.Millimetres(), o.Height.Millimetres()
	from, most := o.GlueFrom.Millimetres()/wide, o.GlueTo.Millimetres()/wide
	room := o.GlueHeight.Millimetres() / high / 2
	const tries = 24
	best := 0.0
	for k := 1; k <= tries; k++ {
		to := from + (most-from)*float64(k)/tries
		low, top := o.shape.reaches(from, to, 0.5)
		if low, top = math.Max(low, 0.5-room)+rim/high, math.Min(top, 0.5+room)-rim/high; (to-from)*(top-low) > best {
			best = (to - from) * (top - low)
			o.GlueTo, o.glueLow, o.GlueHeight = part(o.HalfWidth, to), part(o.Height, low), part(o.Height, top-low)
		}
	}
	if best == 0 { // there is no paper over the tabs
		o.GlueHeight = measure.Length{}
	}
}

// rim is how far glue stays from the edge of a shape, in mm (common practice).
const rim = 0.5

// ornamentWithoutWidth refuses an ornament that is only half described.
func (in *Input) ornamentWithoutWidth() error {
	for _, name := range []string{"ornament_height", "ornament_shape", "ornament_caliper"} {
		if in.given(name) {
			return fault.Fault{
				Code: fault.Missing, Field: "ornament_width", Detail: "an ornament needs its width too",
				Expected: "a length", Hint: "give ornament_width, or leave out " + name,
			}
		}
	}
	return nil
}
