package enclosure

import (
	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// Ornament is a shape cut in half along its middle, which comes whole when a
// slotted band is closed. The locked tabs are pressed flat, one to each side
// of the meeting line, and each half is glued to the tab on its side only, so
// that the band still opens. All that is known of the shape is the rectangle
// it fills; a shape that is narrower somewhere shows more of the tabs there.
type Ornament struct {
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
}

// Parameters of the ornament.
var ornamentParams = []Param{
	{Name: "ornament_width", Advanced: true, Help: "Width of a shape that is glued half and half over the closure; none if not given.",
		Least: measure.Millimetres(6), Greatest: measure.Millimetres(1000)},
	{Name: "ornament_height", Advanced: true, Help: "Height of that shape; as wide as high if not given.",
		Least: measure.Millimetres(6), Greatest: measure.Millimetres(1000)},
	{Name: "ornament_caliper", Advanced: true, Help: "Thickness of the ornament's stock; that of the band if not given.",
		Least: measure.Micrometres(10), Greatest: measure.Millimetres(25)},
}

// ornament works out the closure ornament, nil if none is asked for.
func (in *Input) ornament() (*Ornament, error) {
	if !in.given("ornament_width") {
		return nil, in.ornamentWithoutWidth()
	}
	width, tab, band := in.length("ornament_width"), in.length("tab"), in.length("band_height")
	o := &Ornament{HalfWidth: width.Over(2), Height: in.orElse("ornament_height", width), GlueFrom: glueMargin}
	o.GlueTo, o.GlueHeight = measure.Min(tab, o.HalfWidth), measure.Min(band, o.Height)
	o.TrimWidth = measure.Max(measure.Length{}, tab.Sub(o.HalfWidth))
	o.ShowsHeight = measure.Max(measure.Length{}, band.Sub(o.Height)).Over(2)
	o.CoversSlits = o.ShowsHeight.IsZero()
	o.CoversTabs = o.CoversSlits && o.TrimWidth.IsZero()
	o.Adds = in.Caliper.Add(in.orElse("ornament_caliper", in.Caliper))
	if o.GlueTo.Sub(o.GlueFrom).Less(leastGlue) {
		return nil, fault.Fault{
			Code: fault.Impossible, Field: "ornament_width", Detail: "half of the ornament and the tab under it leave no room for glue beside the slits",
			Expected: "at least " + in.describe(leastGlue.Add(glueMargin).Times(2)) + ", and a tab at least half of that", Hint: "make the ornament wider or the tab longer",
		}
	}
	return o, nil
}

// ornamentWithoutWidth refuses an ornament that is only half described.
func (in *Input) ornamentWithoutWidth() error {
	for _, name := range []string{"ornament_height", "ornament_caliper"} {
		if in.given(name) {
			return fault.Fault{
				Code: fault.Missing, Field: "ornament_width", Detail: "an ornament needs its width too",
				Expected: "a length", Hint: "give ornament_width, or leave out " + name,
			}
		}
	}
	return nil
}
