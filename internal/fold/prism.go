package fold

import (
	"math"
	"slices"

	"creasefit/internal/pattern"
)

// mostSides bounds the work that a prism can ask for.
const mostSides = 64

// parallel is the least cosine between the normals of parallel planes.
const parallel = 1 - 1e-9

// well is where upright prisms with equal sides stand: contents, and pieces
// in one another. Their sides look ahead from the middle of the cavity panel.
type well struct {
	m      *model
	middle Vec
	ahead  []Vec
	tan    float64 // half of a side by how far out it is
}

// newWell returns where prisms stand; the cavity panel lies at the bottom.
func newWell(m *model) *well {
	c := &m.pattern.Cavity
	w := &well{m: m, ahead: sides(c.Sides), tan: math.Tan(math.Pi / float64(c.Sides))}
	floor := m.panel(c.Piece, c.Panel).space
	for _, v := range floor {
		w.middle = w.middle.Plus(v.Times(1 / float64(len(floor))))
	}
	return w
}

// sides returns the directions that so many equal sides look.
func sides(n int) []Vec {
	ahead := make([]Vec, n)
	for k := range ahead {
		ahead[k] = around(k, n, 0)
	}
	return ahead
}

// around returns the direction of side k of several, the first towards the
// second axis; turned says how many sides farther.
func around(k, sides int, turned float64) Vec {
	s, c := sincos(90 + 360*(float64(k)+turned)/float64(sides))
	return Vec{c, s, 0}
}

// contents stands contents with equal sides in the cavity and measures the room
// that is left above and below them, and up to the plates that are parallel to
// their sides. Where they have the same room on all sides no plate may reach
// into them.
func (w *well) contents() {
	c, found := &w.m.pattern.Cavity, len(w.m.findings)
	body, room, up := w.stand()
	w.m.bounded(Vec{2 * room, math.Inf(1), up.high - up.low - c.Thickness.Millimetres()})
	if len(w.m.findings) == found {
		w.clear(&body)
	}
}

// stand stands the contents where they have the same room on all sides, and
// says how much that is and what height is free over them.
func (w *well) stand() (body part, room float64, up span) {
	c := &w.m.pattern.Cavity
	out, thick := c.Width.Millimetres()/2, c.Thickness.Millimetres()
	body = w.prism(out)
	up = w.height(&body, w.middle[2]+w.m.half+thick/2)
	floor := max(up.low, w.middle[2]-tall)
	slack := w.slack(span{floor, floor + thick}, anyPiece, slices.Repeat([]float64{out}, c.Sides))
	var by Vec
	if room = widest(slack); !math.IsInf(room, 1) {
		by = aside(w.ahead, slack, room)
	}
	by[2] = floor + thick/2 - w.middle[2]
	for i := range body.corners {
		body.corners[i] = body.corners[i].Plus(by)
	}
	body.half = thick / 2
	return body, room, up
}

// nest returns the room that the plates of one piece leave to another one
// between opposite sides.
func (w *well) nest(n *pattern.Nesting) float64 {
	return 2 * widest(w.slack(w.m.extent(pattern.Thickness, n.Inner), n.Outer, w.reaches(n.Inner)))
}

// tall is higher than anything.
const tall = 1e6

// prism is a body with sides that are so far out, of any height.
func (w *well) prism(out float64) part {
	n := len(w.ahead)
	body := part{corners: make([]Vec, n), normal: Vec{0, 0, 1}, half: tall}
	for k := range body.corners {
		body.corners[k] = w.middle.Plus(around(k, n, 0.5).Times(math.Hypot(out, w.halfSide(out))))
	}
	return body
}

// halfSide is half of the length of a side that is so far out.
func (w *well) halfSide(out float64) float64 { return out * w.tan }

// height returns the height that is free over a body's footprint round z: from
// level plate to level plate. Only lines beside both can part these from it.
func (w *well) height(body *part, z float64) span {
	free := span{math.Inf(-1), math.Inf(1)}
	beside := func(a, b *part) bool { return sidesPart(a, a, b, nil) || sidesPart(b, a, b, nil) }
	for i := range w.m.plates {
		pl := &w.m.plates[i]
		low, high := pl.space[0][2]-w.m.half, pl.space[0][2]+w.m.half
		under := low+high < 2*z
		behind := under && high < free.low+dust || !under && low > free.high-dust // a nearer plate
		if behind || math.Abs(pl.move.Z[2]) < parallel || w.m.without(pl, body, beside) {
			continue
		}
		if under {
			free.low = high
		} else {
			free.high = low
		}
	}
	return free
}

// slack measures for every side how far the nearest plate of a piece lies
// beyond it, which is so far out.
func (w *well) slack(up span, piece int, out []float64) []float64 {
	slack := slices.Repeat([]float64{math.Inf(1)}, len(w.ahead))
	for i := range w.m.plates {
		pl := &w.m.plates[i]
		upright := math.Abs(pl.move.Z[2]) < 0.5 && w.m.partOf(pl, piece)
		for k := 0; upright && k < len(slack); k++ {
			if math.Abs(pl.move.Z.Dot(w.ahead[k])) >= parallel {
				slack[k] = min(slack[k], w.beyond(pl, k, out[k], up)-out[k])
			}
		}
	}
	return slack
}

// beyond returns how far from the middle a plate lies that is parallel to a side, if it
// takes up some of the same width and height; else endlessly far.
func (w *well) beyond(pl *plate, k int, out float64, up span) float64 {
	ahead, half := w.ahead[k], w.halfSide(out)
	d := pl.space[0].Minus(w.middle).Dot(ahead) - w.m.half
	if d <= 0 || min(pl.high[2], up.high)-max(pl.low[2], up.low) < hair {
		return math.Inf(1)
	}
	if wide := extent(pl.space, w.middle, Vec{-ahead[1], ahead[0], 0}); min(wide.high, half)-max(wide.low, -half) < hair {
		return math.Inf(1)
	}
	return d
}

// reaches returns how far from the middle a piece reaches ahead of each side.
func (w *well) reaches(piece int) []float64 {
	far := slices.Repeat([]float64{math.Inf(-1)}, len(w.ahead))
	for i := range w.m.plates {
		pl := &w.m.plates[i]
		if !w.m.partOf(pl, piece) {
			continue
		}
		for k, ahead := range w.ahead {
			most := math.Inf(-1)
			for c := range pl.space {
				most = max(most, pl.space[c].Dot(ahead))
			}
			far[k] = max(far[k], most-w.middle.Dot(ahead)+w.m.half*math.Abs(pl.move.Z.Dot(ahead)))
		}
	}
	return far
}

// extent is the stretch that corners take up along a direction from a point.
func extent(corners []Vec, from, along Vec) span {
	s := span{math.Inf(1), math.Inf(-1)}
	for _, v := range corners {
		d := v.Minus(from).Dot(along)
		s.low, s.high = min(s.low, d), max(s.high, d)
	}
	return s
}

// clear finds plates that reach into a body.
func (w *well) clear(body *part) {
	apart := func(a, b *part) bool { return !meet(a, b, nil) }
	for i := range w.m.plates {
		if pl := &w.m.plates[i]; !w.m.without(pl, body, apart) {
			w.m.find("contents", w.m.name(pl), "is in their way", 0)
		}
	}
}

// without reports whether all parts of a plate are apart from a body.
func (m *model) without(pl *plate, body *part, apart func(a, b *part) bool) bool {
	if pl.parts == nil {
		m.cutUp(pl)
	}
	for i := range pl.parts {
		m.tried = part{corners: pl.parts[i].corners, normal: pl.move.Z, half: m.half}
		if !apart(&m.tried, body) {
			return false
		}
	}
	return true
}

// widest returns how far all sides of a prism can move out at once, which may
// move aside meanwhile; endlessly far if a side meets nothing. They then meet two
// opposite plates, or three that surround it: the least mean of the slack of
// such sides, each weighted by the sine of the angle between the others, so that
// moving aside changes nothing.
func widest(slack []float64) float64 {
	n, least := len(slack), math.Inf(1)
	if math.IsInf(slices.Max(slack), 1) {
		return least
	}
	sine := make([]float64, n)
	for k := range sine {
		sine[k], _ = sincos(360 * float64(k) / float64(n))
	}
	for i := range n {
		for j := i + 1; j < n; j++ {
			for k := j + 1; k < n; k++ {
				if a, b, c := sine[k-j], sine[n-k+i], sine[j-i]; min(a, b, c) >= 0 {
					least = min(least, (a*slack[i]+b*slack[j]+c*slack[k])/(a+b+c))
				}
			}
		}
	}
	return least
}

// aside returns a way to move a prism so that every side has the room: it is
// pushed off every plate that is too near, over and over.
func aside(ahead []Vec, slack []float64, room float64) (by Vec) {
	for range 400 {
		worst := 0.0
		for k, ahead := range ahead {
			over := by.Dot(ahead) - (slack[k] - room)
			by, worst = by.Minus(ahead.Times(max(0, over))), max(worst, over)
		}
		if worst < hair {
			break
		}
	}
	return by
}
