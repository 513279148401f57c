package enclosure

import (
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// SlottedBand is a wrap whose two ends fold up into tabs that are slit from
// opposite edges, each a little more than half-way, and lock into each other
// where they meet on the front.
//
// With W and T the contents' width and thickness, t the caliper, c the
// clearance, H the band's height, all lengths from crease to crease:
//
//	one score a side:   back = W + T + 2t + c_w
//	two scores a side:  back = W + t + c_w, side = T + t + c_t
//	both:               left front + right front = back
//	                    slit = H/2 + play, the two slits from opposite edges
//
// A loop of mid-caliper length 2(W + T) + 4t goes round a thin thing with one
// score a side: its two halves are back and front. Each end must twist past the
// other by half of the height to lock, which plates of board on their scores cannot,
// however wide the slots.
func SlottedBand() *Kind {
	return &Kind{
		Name:  "slotted-band",
		Title: "Slotted belly band",
		Help:  "A strip round the contents whose ends stand up as tabs, slit from opposite edges, that lock into each other on the front. No glue.",
		Words: german("Bauchbinde mit Steckschlitzen",
			"Ein Streifen um den Inhalt. Seine Enden stehen als Laschen auf, sind von gegenüberliegenden Kanten her eingeschnitten und haken auf der Vorderseite ineinander. Ohne Kleber."),
		Needs: []string{"width", "thickness"},
		Params: append([]Param{
			bandHeight,
			{Name: "tab", Help: "How far each locking tab stands up.", DefaultInch: measure.Sixtyfourths(32), DefaultMillimetre: measure.Millimetres(15),
				Least: measure.Millimetres(3), Greatest: measure.Millimetres(300)},
			scoresPerSide,
			meetingLine,
			{Name: "slit_play", Help: "How much deeper than half of the height each slit may be, at most; at least a quarter of it.", Advanced: true,
				DefaultInch: measure.Sixtyfourths(8), DefaultMillimetre: measure.Millimetres(3), Least: measure.Micrometres(400), Greatest: measure.Millimetres(25)},
		}, ornamentParams...),
		Plan: planSlottedBand,
	}
}

var slottedThin = row{
	piece: "band", root: 2, height: "band height",
	panels: []string{"left tab", "left front", "back", "right front", "right tab"},
	scores: []pattern.Score{mountain("1", 90), valley("2", 180), valley("3", 180), mountain("4", 90)},
}

var slottedThick = row{
	piece: "band", root: 3, height: "band height",
	panels: []string{"left tab", "left front", "left side", "back", "right side", "right front", "right tab"},
	scores: []pattern.Score{mountain("1", 90), valley("2", 90), valley("3", 90), valley("4", 90), valley("5", 90), mountain("6", 90)},
}

// slottedReadings are the indices of a slotted band's readings in its problem.
type slottedReadings struct {
	across              []int // the panels from the left
	height, left, right int
	space               [usualPanels]int // of the panels
}

// slottedMemory is what a band's slits are laid out in.
type slottedMemory struct {
	cuts   [2]pattern.Cut
	paths  [2][2]pattern.Vertex
	joints [1]pattern.Joint
}

func planSlottedBand(in *Input) (*Plan, error) {
	d, r := newDraft(in), &slottedReadings{}
	names := halves{left: "left front", whole: "back", right: "right front"}
	left, right := d.fixed("left tab", "tab"), d.fixed("right tab", "tab")
	r.height = d.fixed("band height", "band_height")
	var shape *row
	var err error
	across := append(r.space[:0], left)
	if in.oneScore(d) {
		shape = &slottedThin
		across, err = d.thin(across, names, Need{Width: 1, Thickness: 1, HalfCalipers: 4})
	} else {
		shape = &slottedThick
		across, err = d.thick(across, names)
		d.equal("sides", measure.Length{}, times(1, across[2]), times(-1, across[4]))
	}
	r.across = append(across, right)
	d.strip(0, pattern.Width, r.across...)
	d.strip(0, pattern.Height, r.height)
	d.plan.Build = func(sizes []measure.Length) pattern.Pattern { return d.layLocked(shape, r, sizes) }
	ornament, wrong := in.ornament()
	d.plan.Ornament = ornament
	return d.plan, fault.Join(in.PaperOnly("a band whose ends twist past one another to lock"), err, d.slits(r), wrong)
}

// slits adds the two slits: what each leaves of the band must be at least
// 1/4 in and three calipers (common practice).
func (d *draft) slits(r *slottedReadings) error {
	height, play := d.in.length("band_height"), d.in.length("slit_play")
	left := measure.Max(measure.Sixtyfourths(16), d.in.Caliper.Times(3))
	deepest := height.Sub(left)
	if least := play.Over(4); deepest.Less(height.Over(2).Add(least)) {
		return d.in.Outside("band_height", Range{Min: left.Add(least).Times(2), Max: measure.Largest()},
			"the band is too low for slits past its middle: each must leave at least 1/4 in and three calipers",
			"make the band higher or the slit play smaller")
	}
	excess := Range{Min: play.Over(2), Max: measure.Min(play.Times(2), deepest.Times(2).Sub(height))}
	ideal := height.Over(2).Add(excess.Min.Add(excess.Max).Over(4))
	r.left = d.between("left slit", ideal, measure.Length{}, deepest)
	r.right = d.between("right slit", ideal, measure.Length{}, deepest)
	for _, slit := range [...]int{r.left, r.right} {
		d.within("slit", excess, d.form(measure.Length{}, times(2, slit), times(-1, r.height)))
	}
	d.even(r.left, r.right)
	return nil
}

// layLocked lays the strip out and slits the tabs' scores, the left one from
// the top and the right one from the bottom.
func (d *draft) layLocked(shape *row, r *slottedReadings, sizes []measure.Length) pattern.Pattern {
	t := d.in.Thickness
	piece := shape.layReadings(r.across, r.height, sizes, []measure.Length{{}, t, t, {}, {}, {}})
	first, last := piece.Creases[0], piece.Creases[len(piece.Creases)-1]
	left, right := sizes[r.left], sizes[r.right]
	top := pattern.At(first.B.X, piece.Height.Sub(left))
	low := pattern.At(last.A.X, right)
	m := &slottedMemory{paths: [2][2]pattern.Vertex{{{Point: first.B}, {Point: top}}, {{Point: last.A}, {Point: low}}}}
	m.cuts = [...]pattern.Cut{
		{Name: "left slit", Kind: pattern.Slit, On: first.Name, From: "top", At: first.A.X, Depth: left, Path: m.paths[0][:]},
		{Name: "right slit", Kind: pattern.Slit, On: last.Name, From: "bottom", At: last.A.X, Depth: right, Path: m.paths[1][:]},
	}
	m.joints = [...]pattern.Joint{{Name: "tabs", A: 0, B: 1, PanelA: 0, PanelB: len(piece.Panels) - 1}}
	piece.Cuts, piece.Joints = m.cuts[:], m.joints[:]
	return d.wrapPattern(piece)
}
