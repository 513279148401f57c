package fold

import (
	"math"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// mm returns the length nearest to a decimal number of millimetres.
func mm(v float64) measure.Length { return measure.Nanometres(int64(math.Round(v * 1e6))) }

func pt(x, y float64) pattern.Point { return pattern.At(mm(x), mm(y)) }

func rect(x0, y0, x1, y1 float64) []pattern.Vertex {
	return pattern.Rectangle(mm(x0), mm(y0), mm(x1), mm(y1))
}

func poly(points ...pattern.Point) []pattern.Vertex { return pattern.Polygon(points...) }

// score is a crease of a strip.
type score struct {
	fold  pattern.Fold
	angle float64
	round float64
}

var (
	square = score{pattern.Valley, 90, 0}
	up     = score{pattern.Mountain, 90, 0}
)

func round(r float64) score { return score{pattern.Valley, 180, r} }

// strip lays panels of the given sizes side by side from the left, with a
// score between each two, in a tree from the root.
func strip(root int, height float64, names []string, sizes []float64, scores ...score) pattern.Piece {
	p := pattern.Piece{Name: "strip", Quantity: 1, Root: root, Height: mm(height)}
	x := 0.0
	for i, size := range sizes {
		p.Panels = append(p.Panels, pattern.Panel{Name: names[i], Outline: rect(x, 0, x+size, height)})
		if i > 0 {
			s := scores[i-1]
			c := pattern.Crease{Name: names[i-1] + " score", A: pt(x, 0), B: pt(x, height), From: i - 1, To: i,
				Fold: s.fold, Angle: s.angle, Round: mm(s.round)}
			if i <= root {
				c.From, c.To = i, i-1
			}
			p.Creases = append(p.Creases, c)
		}
		x += size
	}
	p.Width = mm(x)
	return p
}

func cavity(panel int, w, h, t float64, bounded ...pattern.Axis) pattern.Cavity {
	return pattern.Cavity{Panel: panel, Width: mm(w), Height: mm(h), Thickness: mm(t), Bounded: bounded}
}

// wrap is front, side, back, side and a lap glued inside the front, round
// contents of 80 x 40 x 20 mm in stock of 0.3 mm. The second side is one
// caliper shorter than the first, and both are one caliper longer than the
// contents ask for, so that the contents pass under the lap.
type wrap struct{ t, front, side1, back, side2, lap float64 }

func rightWrap() wrap {
	t := 0.3
	return wrap{t: t, front: 80 + t + 1, side1: 20 + 2*t + 0.5, back: 80 + t + 1, side2: 20 + t + 0.5, lap: 15}
}

func (w wrap) pattern() *pattern.Pattern {
	p := strip(2, 40, []string{"front", "side", "back", "other side", "lap"},
		[]float64{w.front, w.side1, w.back, w.side2, w.lap}, square, square, square, square)
	whole := w.front + w.side1 + w.back + w.side2
	p.Glues = []pattern.Glue{{Name: "lap", Panel: 4, Face: pattern.Outside, To: 0, ToFace: pattern.Inside,
		Area: rect(whole+1, 1, whole+w.lap-1, 39)}}
	p.Seams = []pattern.Seam{{Name: "front edge", PanelA: 0, A1: pt(0, 0), A2: pt(0, 40),
		PanelB: 3, B1: pt(whole, 0), B2: pt(whole, 40), Apart: mm(w.t)}}
	return &pattern.Pattern{Caliper: mm(w.t), Pieces: []pattern.Piece{p},
		Cavity: cavity(2, 80, 40, 20, pattern.Width, pattern.Thickness)}
}

// band is a strip that goes round thin contents of 88.9 x 100 x 2.286 mm with
// one score a side; its ends stand up as tabs, slit half-way from the top and
// from the bottom, and lock at the middle of the front.
type band struct{ t, tab, front1, back, front2, slit1, slit2, height float64 }

const bandWidth, bandThickness = 88.9, 2.286

func rightBand() band {
	t := 0.3048
	back := bandWidth + bandThickness + 2*t + 0.8
	return band{t: t, tab: 12.7, front1: back / 2, back: back, front2: back / 2, slit1: 23, slit2: 23.5, height: 44.45}
}

func (b band) pattern() *pattern.Pattern {
	p := strip(2, b.height, []string{"left tab", "left front", "back", "right front", "right tab"},
		[]float64{b.tab, b.front1, b.back, b.front2, b.tab}, up, round(bandThickness), round(bandThickness), up)
	left, right := b.tab, b.tab+b.front1+b.back+b.front2
	p.Cuts = []pattern.Cut{
		{Name: "left slit", Kind: pattern.Slit, On: "left tab score", From: "top", At: mm(left), Depth: mm(b.slit1),
			Path: poly(pt(left, b.height), pt(left, b.height-b.slit1))},
		{Name: "right slit", Kind: pattern.Slit, On: "right front score", From: "bottom", At: mm(right), Depth: mm(b.slit2),
			Path: poly(pt(right, 0), pt(right, b.slit2))},
	}
	p.Joints = []pattern.Joint{{Name: "tabs", A: 0, B: 1, PanelA: 0, PanelB: 4}}
	return &pattern.Pattern{Caliper: mm(b.t), Pieces: []pattern.Piece{p},
		Cavity: cavity(2, bandWidth, 100, bandThickness, pattern.Width, pattern.Thickness)}
}

// tray is an open tray whose long walls end in tabs that are glued inside the
// short walls: inside the tabs it is three calipers narrower than its base.
type tray struct{ t, w, h, deep, tab float64 }

func rightTray() tray { return tray{t: 0.4, w: 60 + 3*0.4 + 1, h: 45 + 0.4 + 2, deep: 15, tab: 12} }

func (y tray) pattern() *pattern.Pattern {
	t, w, h, d := y.t, y.w, y.h, y.deep
	p := pattern.Piece{Name: "tray", Quantity: 1, Panels: []pattern.Panel{
		{Name: "base", Outline: rect(0, 0, w, h)},
		{Name: "bottom wall", Outline: rect(t, -d, w-t, 0)}, {Name: "top wall", Outline: rect(t, h, w-t, h+d)},
		{Name: "left wall", Outline: rect(-d, 0, 0, h)}, {Name: "right wall", Outline: rect(w, 0, w+d, h)},
	}}
	p.Creases = []pattern.Crease{
		{Name: "bottom", A: pt(t, 0), B: pt(w-t, 0), To: 1}, {Name: "top", A: pt(t, h), B: pt(w-t, h), To: 2},
		{Name: "left", A: pt(0, 0), B: pt(0, h), To: 3}, {Name: "right", A: pt(w, 0), B: pt(w, h), To: 4},
	}
	for wall, y0 := range map[int]float64{1: -d, 2: h} {
		for side, x0 := range map[int]float64{3: t - y.tab, 4: w - t} {
			n := len(p.Panels)
			p.Panels = append(p.Panels, pattern.Panel{Name: "tab", Outline: rect(x0, y0, x0+y.tab, y0+d)})
			x := map[int]float64{3: t, 4: w - t}[side]
			p.Creases = append(p.Creases, pattern.Crease{Name: "tab score", A: pt(x, y0), B: pt(x, y0+d), From: wall, To: n})
			p.Glues = append(p.Glues, pattern.Glue{Name: "tab", Panel: n, Face: pattern.Outside, To: side, ToFace: pattern.Inside,
				Area: rect(x0+1, y0+1, x0+y.tab-1, y0+d-1)})
		}
	}
	for i := range p.Creases {
		p.Creases[i].Fold, p.Creases[i].Angle = pattern.Valley, 90
	}
	return &pattern.Pattern{Caliper: mm(t), Pieces: []pattern.Piece{p},
		Cavity: cavity(0, 60, 45, 10, pattern.Width, pattern.Height)}
}

// envelope has side flaps, a bottom flap glued over them and a closing flap
// over all: each layer goes round one caliper more.
type envelope struct{ t, thick, w, h, side, bottom, closing float64 }

func rightEnvelope() envelope {
	t, thick := 0.2, 1.0
	return envelope{t: t, thick: thick, w: 150 + thick + 2*t + 1, h: 100 + thick + 3.5*t + 2, side: 20, bottom: 60, closing: 45}
}

func (e envelope) pattern() *pattern.Pattern {
	w, h, r := e.w, e.h, 3.0 // r: how much the relief cuts take at the corners
	p := pattern.Piece{Name: "envelope", Quantity: 1, Panels: []pattern.Panel{
		{Name: "back", Outline: rect(0, 0, w, h)},
		{Name: "left flap", Outline: poly(pt(0, h-r), pt(-e.side, h-3*r), pt(-e.side, 3*r), pt(0, r))},
		{Name: "right flap", Outline: poly(pt(w, r), pt(w+e.side, 3*r), pt(w+e.side, h-3*r), pt(w, h-r))},
		{Name: "bottom flap", Outline: poly(pt(r, 0), pt(2*r, -e.bottom), pt(w-2*r, -e.bottom), pt(w-r, 0))},
		{Name: "closing flap", Outline: poly(pt(w-r, h), pt(w/2, h+e.closing), pt(r, h))},
	}}
	valley := func(name string, a, b pattern.Point, to int, round float64) pattern.Crease {
		return pattern.Crease{Name: name, A: a, B: b, To: to, Fold: pattern.Valley, Angle: 180, Round: mm(round)}
	}
	p.Creases = []pattern.Crease{
		valley("left", pt(0, r), pt(0, h-r), 1, e.thick), valley("right", pt(w, r), pt(w, h-r), 2, e.thick),
		valley("bottom", pt(r, 0), pt(w-r, 0), 3, e.thick+e.t), valley("top", pt(r, h), pt(w-r, h), 4, e.thick+2*e.t),
	}
	p.Glues = []pattern.Glue{
		{Name: "left edge", Panel: 3, Face: pattern.Inside, To: 1, ToFace: pattern.Outside,
			Area: poly(pt(8, -12), pt(9, -50), pt(16, -50), pt(15, -12))},
		{Name: "right edge", Panel: 3, Face: pattern.Inside, To: 2, ToFace: pattern.Outside,
			Area: poly(pt(w-15, -12), pt(w-16, -50), pt(w-9, -50), pt(w-8, -12))},
	}
	return &pattern.Pattern{Caliper: mm(e.t), Pieces: []pattern.Piece{p},
		Cavity: cavity(0, 150, 100, e.thick, pattern.Width, pattern.Height, pattern.Thickness)}
}

// diagonal is a square blank whose corners fold over a rectangle turned by 45
// degrees: two opposite flaps first, then one over them and one over that.
type diagonal struct{ t, w, h, square float64 }

func rightDiagonal() diagonal {
	t := 0.1
	return diagonal{t: t, w: 120 + 2.5*t + 0.5, h: 90 + 2.5*t + 1.5, square: (120+90)/math.Sqrt2 + 25}
}

func (d diagonal) pattern() *pattern.Pattern {
	turn := func(u, v float64) pattern.Point { // from the middle, along the contents' axes
		return pt(d.square/2+(u-v)/math.Sqrt2, d.square/2+(u+v)/math.Sqrt2)
	}
	w, h, reach := d.w/2, d.h/2, d.square/math.Sqrt2
	r := 2.5 * d.t     // the side flaps clear the folds of those that go over them
	m := reach - w - h // from a corner of the rectangle to the blank's edge, along an axis
	p := pattern.Piece{Name: "square", Quantity: 1, Panels: []pattern.Panel{
		{Name: "back", Outline: poly(turn(-w, -h), turn(w, -h), turn(w, h), turn(-w, h))},
		{Name: "right flap", Outline: poly(turn(w, r-h), turn(w+m, r-h), turn(reach, 0), turn(w+m, h-r), turn(w, h-r))},
		{Name: "left flap", Outline: poly(turn(-w, h-r), turn(-w-m, h-r), turn(-reach, 0), turn(-w-m, r-h), turn(-w, r-h))},
		{Name: "bottom flap", Outline: poly(turn(-w, -h), turn(-w, -h-m), turn(0, -reach), turn(w, -h-m), turn(w, -h))},
		{Name: "top flap", Outline: poly(turn(w, h), turn(w, h+m), turn(0, reach), turn(-w, h+m), turn(-w, h))},
	}}
	crease := func(name string, a, b pattern.Point, to int, layers float64) pattern.Crease {
		return pattern.Crease{Name: name, A: a, B: b, To: to, Fold: pattern.Valley, Angle: 180, Round: mm(layers * d.t)}
	}
	p.Creases = []pattern.Crease{
		crease("right", turn(w, r-h), turn(w, h-r), 1, 0), crease("left", turn(-w, r-h), turn(-w, h-r), 2, 1),
		crease("bottom", turn(-w, -h), turn(w, -h), 3, 2), crease("top", turn(-w, h), turn(w, h), 4, 3),
	}
	c := cavity(0, 120, 90, 0, pattern.Width, pattern.Height)
	c.Turned = 45
	return &pattern.Pattern{Caliper: mm(d.t), Pieces: []pattern.Piece{p}, Cavity: c}
}

// letter is a sheet folded in three; the inner panel ends where the outer
// fold's spine begins.
type letter struct{ t, outer, middle, inner float64 }

func rightLetter() letter { return letter{t: 0.1, outer: 99.1, middle: 99, inner: 99 - 1.5*0.1} }

func (l letter) pattern() *pattern.Pattern {
	p := strip(1, 210, []string{"outer", "middle", "inner"}, []float64{l.outer, l.middle, l.inner}, round(l.t), round(0))
	return &pattern.Pattern{Caliper: mm(l.t), Pieces: []pattern.Piece{p}, Cavity: cavity(1, 90, 200, 0)}
}

// notchedWrap is a wrap with a half-round thumb notch in the top edge of its
// back.
type notchedWrap struct {
	pattern *pattern.Pattern
	middle  float64
}

func notched(w wrap) notchedWrap {
	p, x0, radius := w.pattern(), w.front+w.side1, 8.0
	mid := x0 + w.back/2
	p.Pieces[0].Panels[2].Outline = []pattern.Vertex{
		{Point: pt(x0, 0)}, {Point: pt(x0+w.back, 0)}, {Point: pt(x0+w.back, 40)},
		{Point: pt(mid+radius, 40), Bulge: -1}, {Point: pt(mid-radius, 40)}, {Point: pt(x0, 40)},
	}
	return notchedWrap{p, mid}
}
