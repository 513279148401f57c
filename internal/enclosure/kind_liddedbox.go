package enclosure

import (
	"slices"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// LiddedBox is a tray and a lid of the same make that goes over it and rests on
// its rim.
//
// With W, H and T the contents' width, height and thickness, t the caliper, c
// the clearances, k that of the lid, all lengths from crease to crease or to a
// free edge:
//
//	tray, as any:   base width = W + 3t + c_w with tabs inside, W + t + c_w outside
//	                base height = H + t + c_h, walls = T + t/2 + c_t;
//	                with rolled walls 2t more in both directions
//	lid:            inside = tray outside + k, and so
//	                base width  = the tray's + 4t + k_w
//	                base height = the tray's + 2t + k_h
//	full depth:     walls = the tray's + t, up to 1/8 in less; as high as the
//	                tray's if they can be, for then one stop scores both pieces
//
// A part that goes over another is larger by two calipers a layer; a lid of
// covered board has 1/8 in in both directions (M. Bean and R. Brodhead,
// Bookbinding for Beginners, 1918, problem IX), which is lid_fit=easy.
func LiddedBox() *Kind {
	return &Kind{
		Name:  "lidded-box",
		Title: "Box with a lid",
		Help:  "A tray and a lid that goes over it, each from one sheet with glued corner tabs.",
		Words: german("Schachtel mit Deckel",
			"Ein Kasten und ein Deckel, der mit eigenem Spiel darübergeht."),
		Needs: []string{"width", "height", "thickness"},
		Box:   true,
		Params: []Param{
			lengthParam("lid_depth", 5, 500, "How high the walls of the lid are; as high as those of the tray or a little less if not given."),
			byBench("lid_fit", "How the lid goes over the tray: the clearance between them along the width and the height;"),
			cornerTabs,
			trayWalls,
			cornerTab,
			boxJoin,
			baseLap,
		},
		Plan: planLiddedBox,
	}
}

var boxTrayGrid, lidGrid = boxGrid("tray"), boxGrid("lid")

func planLiddedBox(in *Input) (*Plan, error) {
	d, play := newDraft(in), in.named("lid_fit")
	tray := in.newBox(&boxTrayGrid, in.Fit.Max.Over(2))
	lid := in.newBox(&lidGrid, in.claimed("lid_fit", play).Over(2).Add(in.Caliper.Times(2)))
	if err := tray.roll(in, &rolledTrayGrid); err != nil {
		return nil, err
	}
	tray.halve(in, 2)
	lid.halve(in, 3)
	deep := Need{Thickness: 1, HalfCalipers: 1}
	long := d.trayBase(tray, func(name string) int { return d.reading(name, d.ideal(deep)) })
	d.fit(pattern.Thickness, deep, times(1, tray.wall()))
	walls := d.addLid(lid, tray, play, deep.span(in))
	slices.SortStableFunc(d.plan.Strips, func(a, b Strip) int { return a.Piece - b.Piece })
	_, layers := lid.over(tray)
	over := Need{HalfCalipers: layers}.Of(in)
	err := fault.Join(
		d.addTab(tray, "corner tab", deep.span(in), long),
		d.addTab(lid, "lid corner tab", walls, Range{Min: measure.Sum(long.Min, over, play.Min), Max: measure.Sum(long.Max, over, play.Max)}),
		in.checkRoll(tray), in.checkLid(tray.lowest(in), lid.lowest(in), Need{Thickness: 1, HalfCalipers: 3}.span(in)), tray.checkHalves(in, in.Width))
	d.plan.Build = func(sizes []measure.Length) pattern.Pattern { return d.layLiddedBox(tray, lid, sizes) }
	return d.plan, err
}

// addLid adds the readings of the lid, with its clearances over the tray, and
// says how high its walls may be.
func (d *draft) addLid(lid, tray *box, play, deep Range) Range {
	in := d.in
	across, up := lid.over(tray)
	layersW, layersH := Need{HalfCalipers: across}, Need{HalfCalipers: up}
	ideal := func(layers Need, base ...int) measure.Length {
		sum := layers.Of(in).Add(middle(play))
		for _, reading := range base {
			sum = sum.Add(d.plan.Problem.Readings[reading].Ideal)
		}
		return sum
	}
	w, h := ideal(layersW, tray.widths()...), ideal(layersH, tray.outerHeight())
	full := d.plan.Problem.Readings[tray.wall()].Ideal.Add(in.Caliper)
	d.addBox(lid, 1, "lid ", w, h, d.lidWall(full))
	d.grip(tray.wall(), lid.wall(), in.Caliper)
	d.nest(lidOverTray, pattern.Width, play, layersW, append(all(1, lid.widths()), all(-1, tray.widths())...)...)
	d.nest(lidOverTray, pattern.Height, play, layersH, times(1, lid.height()), times(-1, tray.outerHeight()))
	if in.given("lid_depth") {
		depth := in.length("lid_depth")
		return Range{Min: depth, Max: depth}
	}
	return Range{Min: deep.Min.Add(in.Caliper).Sub(in.Little()), Max: deep.Max.Add(in.Caliper)}
}

// layLiddedBox lays both pieces out and puts the lid on the rim of the tray,
// its middle over the tray's.
func (d *draft) layLiddedBox(tray, lid *box, sizes []measure.Length) pattern.Pattern {
	in := d.in
	under, over := tray.lay(d, sizes), lid.lay(d, sizes)
	p := d.around(under, over)
	p.Places = []pattern.Place{{Piece: 1, Lie: pattern.FaceDown, X: under.Width.Add(over.Width).Over(2), Y: under.Height.Sub(over.Height).Over(2),
		Above: sizes[tray.wall()].Add(in.Caliper.Over(2))}}
	p.Nests = []pattern.Nesting{{Name: lidOverTray, Inner: 0, Outer: 1, Axes: []pattern.Axis{pattern.Width, pattern.Height}}}
	tray.part(d, &p, 0, sizes)
	lid.part(d, &p, 1, sizes)
	return p
}
