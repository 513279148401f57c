package enclosure

import (
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// DrawerBox is a tray that slides along its height into a sleeve which is open
// at both ends. It is pulled out at the sleeve's thumb notch, or by a ribbon
// through a slit in its top wall.
//
// With W, H and T the contents' width, height and thickness, t the caliper, c
// the clearances, k those of the slide, all lengths from crease to crease or to
// a free edge:
//
//	tray, as any:  base width = W + 3t + c_w with tabs inside, W + t + c_w outside
//	               base height = H + t + c_h, walls = T + t/2 and up to 1/4 in more
//	sleeve:        inside = tray outside + k, and so
//	               back = front = base width + 2t + k_w with tabs inside, 4t outside
//	               right side   = walls + 1 1/2 t + k_t, under the lap
//	               left side    = right side + t, within a caliper
//	               in two pieces both sides = walls + 2 1/2 t + k_t
//	               height       = base height: the tray ends half a caliper outside
//
// Each side of the case of a slip box is 1/8 in wider than the box (M. Bean and
// R. Brodhead, Bookbinding for Beginners, 1918, problem XI), which is the
// closest loose and the widest easy slide.
func DrawerBox() *Kind {
	return &Kind{
		Name:  "drawer-box",
		Title: "Drawer box",
		Help:  "A tray that slides into a sleeve open at both ends, with a thumb notch or a slit for a ribbon.",
		Words: german("Schiebeschachtel",
			"Ein Kasten, der in einer an beiden Enden offenen Hülle gleitet."),
		Needs: []string{"width", "height", "thickness"},
		Box:   true,
		Params: append([]Param{
			byBench("slide", "How the tray slides in the sleeve: the clearance between them along the width and the thickness;"),
			lengthParam("lap", 3, 300, "How wide the lap is that is glued inside the sleeve's front.").usually(32, 15),
			lengthParam("ribbon_slit", 3, 300, "How long the slit for a ribbon is in the middle of the tray's top wall; none if not given."),
			cornerTabs,
			cornerTab,
			wrapJoin,
		}, notchParams...),
		Plan: planDrawerBox,
	}
}

var drawerGrid = boxGrid("tray")

// drawerReadings are the indices of a drawer box's readings in its problem.
type drawerReadings struct {
	tray   *box
	across []int // the sleeve's panels from the left
	notch  thumb
	ribbon ribbonSlit
}

// ribbonSlit is a slit in the middle of a wall: half of its length, what lies
// before its middle and above it, by reading. Without one, half is -1.
type ribbonSlit struct{ half, before, above int }

// trayInSleeve names the clearance between the two pieces.
const trayInSleeve = "tray in sleeve"

func planDrawerBox(in *Input) (*Plan, error) {
	d, slide := newDraft(in), in.named("slide")
	r := &drawerReadings{tray: in.newBox(&drawerGrid, in.Fit.Max.Over(2))}
	walls, wall := d.trayWalls()
	long := d.trayBase(r.tray, wall)
	d.stand(r.tray)
	d.drawerSleeve(r, slide)
	tab := d.addTab(r.tray, "corner tab", walls, long)
	var notch, ribbon error
	r.notch, notch = d.notched(r.across[0], measure.Max(in.Beside(), in.length("lap")), in.Beside(), long.Min)
	r.ribbon, ribbon = d.slitted(r.tray)
	lap := in.bounded("lap", Range{Min: measure.Sum(leastGlue, in.claimed("slide", slide), in.Caliper.Times(2)), Max: in.Width},
		"the lap leaves no room for glue, or reaches across the front", "make it fit the front")
	d.plan.Build = func(sizes []measure.Length) pattern.Pattern { return d.layDrawerBox(r, sizes) }
	return d.plan, fault.Join(tab, notch, ribbon, lap, in.checkTray(r.tray))
}

// drawerSleeve adds the readings of the sleeve round the tray, with its
// clearances.
func (d *draft) drawerSleeve(r *drawerReadings, slide Range) {
	in, readings := d.in, d.plan.Problem.Readings
	width, wall := r.tray.widths()[0], r.tray.wall()
	wide, _ := r.tray.outsides()
	face, depth, play := Need{HalfCalipers: wide + 2}, Need{HalfCalipers: 3 + in.lapLayers()}, middle(slide)
	r.across = d.tube(measure.Sum(readings[width].Ideal, face.Of(in), play), measure.Sum(readings[wall].Ideal, depth.Of(in), play))
	d.wrapSides(r.across[1], r.across[3])
	d.nest(trayInSleeve, pattern.Width, slide, face, times(1, r.across[2]), times(-1, width))
	d.nest(trayInSleeve, pattern.Thickness, slide, depth, times(1, r.across[3]), times(-1, wall))
	d.wrapStrips(1, 2, r.across, []int{r.tray.height()})
}

// slitted adds the readings of a slit for a ribbon in the middle of the top
// wall, if one is asked for.
func (d *draft) slitted(b *box) (ribbonSlit, error) {
	in := d.in
	if !in.given("ribbon_slit") {
		return ribbonSlit{half: -1}, nil
	}
	slit := d.fixed("ribbon slit", "ribbon_slit")
	s := ribbonSlit{half: d.reading("half of the ribbon slit", in.length("ribbon_slit").Over(2))}
	d.equal("ribbon slit", measure.Length{}, times(2, s.half), times(-1, slit))
	s.before, _ = d.parted("wall beside the ribbon slit", b.widths()[0], "before the ribbon slit", "after the ribbon slit")
	s.above, _ = d.parted("wall above and below the ribbon slit", b.up[len(b.up)-1], "above the ribbon slit", "below the ribbon slit")
	return s, in.bounded("ribbon_slit", Range{Max: in.Width.Sub(in.Beside().Times(2))}, "the slit is longer than the wall has room for", "make it as long as the ribbon is wide")
}

// layDrawerBox lays both pieces out and puts the sleeve round the tray, which
// rests on its back, in the middle.
func (d *draft) layDrawerBox(r *drawerReadings, sizes []measure.Length) pattern.Pattern {
	in := d.in
	tray := r.tray.lay(d, sizes)
	sleeve := d.grid(&sleeveThick, extents{sizes: d.sizesOf(r.across, sizes)}, extents{sizes: []measure.Length{sizes[r.tray.height()]}})
	glueSleeve(&sleeve, measure.Length{})
	seamSleeve(&sleeve, in.Caliper)
	if r.notch.radius >= 0 {
		d.biteSleeve(&sleeve, sizes[r.notch.after], sizes[r.notch.radius])
	}
	if r.ribbon.half >= 0 {
		tray.Cuts = append(tray.Cuts, r.ribbon.cut(&tray, sizes))
	}
	p := d.around(tray, sleeve)
	p.Places = make([]pattern.Place, 1, 2)
	p.Nests = []pattern.Nesting{{Name: trayInSleeve, Inner: 0, Outer: 1, Axes: []pattern.Axis{pattern.Width, pattern.Thickness}}}
	layers := int64(1) // under the tray
	if in.inTwo() {
		partSleeve(&p, 1)
		layers = 2
	}
	sleeve = p.Pieces[1]
	back := sleeve.Panels[sleeve.Root].Outline
	p.Places[0] = pattern.Place{Piece: 1, X: tray.Width.Sub(back[0].X).Sub(back[1].X).Over(2), Y: tray.Height.Sub(sleeve.Height).Over(2), Above: in.Caliper.Times(-layers)}
	return p
}

// cut slits the top wall along its score.
func (s *ribbonSlit) cut(p *pattern.Piece, sizes []measure.Length) pattern.Cut {
	at, depth, half := p.Panels[boxBase].Outline[0].X.Add(sizes[s.before]), sizes[s.above], sizes[s.half]
	y := p.Height.Sub(depth)
	return pattern.Cut{Name: "ribbon slit", Kind: pattern.Slit, From: "top", At: at, Depth: depth,
		Path: pattern.Polygon(pattern.At(at.Sub(half), y), pattern.At(at.Add(half), y))}
}
