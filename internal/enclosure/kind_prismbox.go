package enclosure

import (
	"math"
	"slices"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// PrismBox is a tray and a lid with n equal sides. The walls of each are a strip
// of n panels and a glue lap that goes inside the last of them; flaps along one
// of its edges fold in and are glued onto a base, or a top, with the walls' own
// side. The lid is of the same make, goes over the tray and rests on its rim.
//
// With D across the contents, from side to side, or twice from the middle to a
// side; T their thickness, t the caliper, c the clearances, k that of the lid;
// s the side of the mid-caliper polygon, from crease to crease, so that the
// walls are s cot(180/n) / 2 from its middle:
//
//	between the walls' faces      s cot(180/n) - t
//	side of the inner faces       s - t tan(180/n), which for n = 4 is centre - t
//	what the lap takes            t between opposite sides if n is even, else
//	                              2 t cos(180/n) / (1 + cos(180/n)): the contents
//	                              stand aside from it, towards a corner
//	side     s = (D + c_w + t + the lap's) tan(180/n)
//	lid      s' = s + (k + 2t + the lap's) tan(180/n)
//	walls    = T + t/2 + c_t, from the flaps' scores to the rim
//	lid's walls = the tray's + 2t, up to 1/8 in less, so that it can be gripped
//
// The lap's score lies t / sin(360/n) within the line of the walls' scores, so
// that the lap comes to lie one caliper inside the plane of the wall it is glued
// to. It is set by the nearest whole number of papers
// beside that line. The flaps are mitred by notches, half of each at least
// depth tan(180/n) wide.
//
// D is the diameter of round contents, or of the circle through the corners of
// a rectangle; for contents with n sides that are measured from corner to corner
// it is W cos(180/n). A wall moves by at most the errors of two marks: it hangs on
// marks whose shares are the steps of a sine that rises to one and falls again.
func PrismBox() *Kind {
	return &Kind{
		Name:  "prism-box",
		Title: "Box with three to twelve equal sides",
		Help:  "A tray and a lid over it, each a strip of equal walls, closed by a glue lap, with flaps that a base is glued onto.",
		Words: german("Vieleckschachtel",
			"Ein Kasten mit mehreren gleichen Wänden und ein Deckel, der darübergeht."),
		Needs: []string{"width", "thickness"},
		Box:   true,
		Params: []Param{
			{Name: "sides", Type: CountParam, Help: "How many sides the box has.", DefaultCount: 6, LeastCount: 3, GreatestCount: mostSides},
			{Name: "around", Type: ChoiceParam, Choices: []string{"circumscribed", "inscribed"},
				Help: "Circumscribed: the walls touch the circle of round contents, width across, or with a height the circle through the corners " +
					"of a rectangle. Inscribed: the corners touch the circle through those of contents with as many sides, width from corner to corner."},
			lengthParam("lid_depth", 5, 500, "How high the walls of the lid are; as high as those of the tray or a little less if not given."),
			// One mark more of a side is several marks more from side to side, so that any
			// named fit will do unless one is asked for.
			{Name: "lid_fit", Type: ChoiceParam, Choices: []string{anyFit, "snug", "easy", "loose"},
				Help: "How the lid goes over the tray: the clearance between them from side to side; auto is what the ruler gives from snug to " +
					"loose, nearest to easy."},
			lengthParam("lap", 3, 300, "How wide the glue laps and the flaps are; the plainest width that there is room for if not given.").seldom(),
		},
		Plan: planPrismBox,
	}
}

// ring are the readings of a tray or a lid with equal sides.
type ring struct{ side, wall, blank int }

// prism is what a box with equal sides is worked out from.
type prism struct {
	in        *Input
	laid      *pattern.Memory // where its pieces lie
	scores    []pattern.Score // of their walls
	sides     int
	across    measure.Length // of the contents, between opposite sides
	need      Need
	play      Range // of the lid
	lap       int   // the reading of the laps and flaps of both
	mitre     int   // the reading of half of a notch between two flaps
	tray, lid ring
	papers    bool // the lap's score is set by whole papers, instead of exactly
}

// angle is half of what the walls turn by at a corner, in radians.
func (p *prism) angle() float64 { return math.Pi / float64(p.sides) }

// perSide is how often a side goes into the distance between opposite sides,
// or twice that of a side from the middle.
func (p *prism) perSide() float64 { return 1 / math.Tan(p.angle()) }

// aside is how far, in calipers, what lies between the walls moves away from the
// lap to have the same room on all sides.
func (p *prism) aside() float64 {
	if p.sides%2 == 0 {
		return 0.5
	}
	return 1 / (1 + math.Cos(p.angle()))
}

// taken returns so many calipers and what a lap takes between opposite sides.
func (p *prism) taken(calipers int64) measure.Length {
	t := p.in.Caliper
	return t.Times(calipers + 2).Sub(scaled(t, 2*p.aside()))
}

// side returns the side of a polygon that is so far across.
func (p *prism) side(across measure.Length) measure.Length { return scaled(across, 1/p.perSide()) }

func planPrismBox(in *Input) (*Plan, error) {
	p := &prism{in: in, sides: int(in.count("sides")), play: in.named("lid_fit")}
	if err := p.measureContents(); err != nil {
		return nil, err
	}
	d := newDraft(in)
	p.laid, p.scores = &d.laid, p.wallScores()
	inner := p.across.Add(p.taken(1))
	p.lap = d.prismLap(p, inner.Add(in.Fit.Min))
	p.tray.side = d.reading("side", p.side(inner.Add(in.middle())))
	deep := Need{Thickness: 1, HalfCalipers: 1}
	p.tray.wall = d.reading("wall", d.ideal(deep))
	p.tray.blank = d.polygonBlank(p, "base blank", inner.Add(in.Fit.Max))
	d.scaledFit(Fit{Axis: pattern.Width, Need: p.need, Scale: p.perSide(), Share: 1, Wanted: in.Fit}, inner, times(1, p.tray.side))
	d.fit(pattern.Thickness, deep, times(1, p.tray.wall))
	d.prismLid(p, inner)
	set := *p // as hands set it
	set.papers = true
	for i, r := range [...]ring{p.tray, p.lid} {
		walls := append([]int{p.lap}, slices.Repeat([]int{r.side}, p.sides)...)
		d.plan.Strips = append(d.plan.Strips, Strip{Piece: 2 * i, Across: pattern.Width, Readings: walls, Beside: set.lapInset()})
		d.strip(2*i, pattern.Height, p.lap, r.wall)
		d.strips(2*i+1, []int{r.blank}, []int{r.blank})
	}
	p.mitre = d.mitre(p)
	set.mitre = p.mitre
	d.plan.Build = func(sizes []measure.Length) pattern.Pattern { return d.layPrismBox(p, sizes) }
	d.plan.OnRuler = func(sizes []measure.Length) pattern.Pattern { return d.layPrismBox(&set, sizes) }
	d.warn("lap-score", "The glue lap is scored beside the line between it and the first wall, towards the wall: move the ruler by a scrap of the stock, by two from nine sides on.")
	low := leastGlue.Add(in.Caliper.Times(3))
	return d.plan, fault.Join(p.checkRoom(), in.checkLid(low, low, (Need{Thickness: 1, HalfCalipers: 5}).span(in)))
}

// measureContents works out how far it is across the contents, and of what
// sizes that is at the most so many times. Only a rectangle has a height.
func (p *prism) measureContents() error {
	in := p.in
	p.across, p.need = in.Width, Need{Width: 1, HalfCalipers: 4}
	switch {
	case in.choice("around") == "inscribed":
		p.across = scaled(in.Width, math.Cos(p.angle()))
		if in.Height.Sign() > 0 {
			return fault.Join(fault.Fault{Code: fault.Conflict, Field: "height",
				Detail: "contents with as many sides as the box are measured from corner to corner alone", Hint: "leave height out, or choose around=circumscribed for a rectangle"})
		}
	case in.Height.Sign() > 0:
		p.across = scaled(in.Width, math.Hypot(1, ratio(in.Height, in.Width)))
		p.need.Height = 1
	}
	return nil
}

// prismLid adds the readings of the lid, with its clearance over the tray.
func (d *draft) prismLid(p *prism, inner measure.Length) {
	in, over := d.in, p.taken(2)
	ideal := func(r int) measure.Length { return d.plan.Problem.Readings[r].Ideal }
	p.lid.side = d.reading("lid side", ideal(p.tray.side).Add(p.side(over.Add(middle(p.play)))))
	below := in.Caliper.Times(2)
	p.lid.wall = d.lidWall(ideal(p.tray.wall).Add(below))("lid wall")
	p.lid.blank = d.polygonBlank(p, "top blank", measure.Sum(inner, in.Fit.Max, over, p.play.Max))
	d.scaledFit(Fit{Between: lidOverTray, Axis: pattern.Width, Need: Need{HalfCalipers: 6}, Scale: p.perSide(), Share: 1, Wanted: p.play},
		over, times(1, p.lid.side), times(-1, p.tray.side))
	d.grip(p.tray.wall, p.lid.wall, below)
}

// lapRoom is how wide laps and flaps may be: nine sixteenths of a side, and of
// the way to the middle, of walls that are so far across. That leaves some of a
// flap between two notches.
func (p *prism) lapRoom(across measure.Length) measure.Length {
	return measure.Min(p.side(across), across.Over(2)).Times(9).Over(16)
}

// leastLap is how wide laps and flaps must be: wide enough for glue, and so that
// what goes in meets them wherever it stands.
func (p *prism) leastLap() measure.Length {
	stray := measure.Sum(p.in.Fit.Max, p.play.Max).Over(2).Add(p.in.Caliper.Times(4))
	return leastGlue.Add(measure.Max(stray, scaled(stray, math.Tan(p.angle()))))
}

// prismLap adds the reading of the laps and flaps: as given, or the plainest
// from 3/8 to 5/8 in that there is room for.
func (d *draft) prismLap(p *prism, across measure.Length) int {
	if d.in.given("lap") {
		return d.fixed("lap", "lap")
	}
	room := p.lapRoom(across)
	least := measure.Max(p.leastLap(), measure.Min(measure.Sixtyfourths(24), room))
	return d.between("lap", least, least, measure.Max(least, measure.Min(measure.Sixtyfourths(40), room)))
}

// mitre adds the reading of half of a notch between two flaps: enough for two
// mitres that meet when they are folded in, at the most so much more that a plain
// ruler has a mark for it.
func (d *draft) mitre(p *prism) int {
	lap := &d.plan.Problem.Readings[p.lap]
	least := scaled(measure.Max(lap.Ideal, lap.Max), math.Tan(p.angle()))
	most := measure.Max(least, measure.Min(least.Add(d.in.Little().Times(2)), p.side(p.across).Times(7).Over(16)))
	return d.littleOver("half of a notch", scaled(lap.Ideal, math.Tan(p.angle())), least, most)
}

// polygonBlank adds the reading of a square that a polygon, so far across from
// side to side at the most, comes out of: up to an inch larger.
func (d *draft) polygonBlank(p *prism, name string, across measure.Length) int {
	least := scaled(across, 1/math.Cos(p.angle()))
	return d.between(name, least, least, least.Add(measure.Sixtyfourths(64)))
}

// checkRoom refuses sides that have no room for laps, and laps that are too
// narrow or too wide for them.
func (p *prism) checkRoom() error {
	in, least := p.in, p.leastLap()
	taken := p.taken(1).Add(in.Fit.Min)
	room := p.lapRoom(p.across.Add(taken))
	if !room.Less(least) {
		if !in.given("lap") {
			return nil
		}
		return in.bounded("lap", Range{Min: least, Max: room}, "laps and flaps leave no room for glue, or reach too far", "choose another width, or leave it out")
	}
	metre := measure.Millimetres(1000)
	across := scaled(metre, ratio(least, p.lapRoom(metre))).Sub(taken)
	return in.Outside("width", Range{Min: scaled(in.Width, ratio(across, p.across)), Max: measure.Largest()}, "the sides have no room for a glue lap and flaps",
		"choose fewer sides, or lid_fit=snug")
}
