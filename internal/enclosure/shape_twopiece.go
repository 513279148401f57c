package enclosure

import (
	"slices"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// twoPieces is the choice that asks for a wrap in two pieces.
const twoPieces = "two-pieces"

// InTwoPieces returns the option that asks for a kind in two pieces; false if it
// cannot be made so.
func (k *Kind) InTwoPieces() (Option, bool) {
	offers := slices.ContainsFunc(k.Params, func(p Param) bool { return p.Name == wrapJoin.Name })
	return Option{wrapJoin.Name, twoPieces}, offers
}

// wrapJoin is how a wrap is joined: in one piece it closes with one lap, in two
// each half ends in a lap that is glued inside the other.
var wrapJoin = Param{Name: "join", Type: ChoiceParam, Advanced: true, Choices: []string{"one-piece", twoPieces},
	Help: "One piece that closes with a lap, or two halves with a lap each for a wrap that is larger than the sheet."}

// secondLap is what the lap is called that a wrap in two pieces has besides.
const secondLap = "second lap"

// inTwo reports whether a wrap is asked for in two pieces.
func (in *Input) inTwo() bool { return in.choice(wrapJoin.Name) == twoPieces }

// lapLayers returns how many half calipers a wrap loses along its thickness to
// laps that lie between its faces: none for one lap, which its own face goes
// round, and one caliper for the second.
func (in *Input) lapLayers() int64 {
	if in.inTwo() {
		return 2
	}
	return 0
}

// wrapSides states what the left side of a wrap is to the right one: one layer
// more if a face of the wrap goes over a lap, in two pieces the same.
func (d *draft) wrapSides(left, right int) {
	if d.in.inTwo() {
		d.equal("sides", measure.Length{}, times(1, left), times(-1, right))
	} else {
		d.layer("left side", left, right)
	}
}

// leftSide returns the ideal size of the left side of a wrap.
func (in *Input) leftSide(right measure.Length) measure.Length {
	if in.inTwo() {
		return right
	}
	return right.Add(in.Caliper)
}

// layers returns how thick the laps are that lie inside the front and inside the
// back of a wrap whose left side is so much longer than its right one.
func (in *Input) layers(longer measure.Length) (front, back measure.Length) {
	if in.inTwo() {
		return in.Caliper, in.Caliper
	}
	return measure.Length{}, longer
}

// wrapStrips states how the readings of a wrap follow one another across the
// blanks, whose first faces and sides come off with the other half: a face, its
// side, the face that stays, its side, the lap. The further half is the given
// piece.
func (d *draft) wrapStrips(piece, further int, across, up []int) {
	if !d.in.inTwo() {
		d.strips(piece, across, up)
		return
	}
	half := len(across) / 2
	d.strips(piece, across[half:], up)
	d.strips(further, append(slices.Clone(across[:half]), across[len(across)-1]), up)
}

// twoScores refuses one score a side for a wrap in two pieces.
func (in *Input) twoScores() error {
	if !in.inTwo() || in.choice("scores") != "one" {
		return nil
	}
	return fault.Fault{Code: fault.Conflict, Field: "scores", Value: "one", Detail: "halves that are glued to one another have two scores at each side",
		Expected: "two or auto", Hint: "leave scores out, or make it in one piece"}
}

// parting is where a wrap is parted in two: at the score that the left side
// hangs by on the panel that stays still. The side goes off with all that hangs
// on it, and gets a lap there which is glued inside that panel. The two halves
// are of the same make, one turned over on the other.
type parting struct {
	piece      int            // of the pattern, which lies with its root still
	side, face int            // the left side, and the face beyond it which lies still in its half
	lap, inset measure.Length // how wide the new lap is, and how far its ends are cut back at its free edge
	low, high  measure.Length // how far the lap ends above the side's foot and below its top
	apart      measure.Length // from face to face, at mid-caliper
}

// halved is a piece while it is parted: half 0 stays, half 1 goes off.
type halved struct {
	whole *pattern.Piece
	hangs []int // by panel the crease that it hangs by, -1 for the root
	half  []int // by panel
	index []int // by panel, in its half
	at    measure.Length
	room  []pattern.Vertex // for what is moved
	parts [2]pattern.Piece
	bonds [2]pattern.Bond // what is glued to the other half
}

// part makes two pieces of one, the further one the last of the pattern, and
// lays it on the other.
func (w *parting) part(p *pattern.Pattern) {
	whole, further := p.Pieces[w.piece], len(p.Pieces)
	h := halve(&whole, w.side)
	h.bonds = [2]pattern.Bond{{Name: whole.Name, A: w.piece, B: further}, {Name: whole.Name, A: further, B: w.piece}}
	h.deal(w.face)
	h.turnRoot(w.side, w.face)
	h.addLap(w, p.Caliper)
	p.Pieces = append(p.Pieces, h.parts[1])
	p.Pieces[w.piece] = h.parts[0]
	p.Bonds = append(p.Bonds, h.bonds[0], h.bonds[1])
	p.Places = append(p.Places, pattern.Place{Piece: further, On: w.piece, X: whole.Creases[h.hangs[w.face]].A.X, Above: w.apart, Lie: pattern.FaceDown})
	if c := &p.Cavity; c.Piece == w.piece {
		if h.half[c.Panel] == 1 {
			c.Piece = further
		}
		c.Panel = h.index[c.Panel]
	}
}

// lieOnSecondLap lays the contents on the lap of the last piece instead of on
// the face that it is glued inside.
func lieOnSecondLap(p *pattern.Pattern) {
	last := len(p.Pieces) - 1
	p.Cavity.Piece, p.Cavity.Panel = last, len(p.Pieces[last].Panels)-1
}

// halve finds out which half each panel belongs to.
func halve(whole *pattern.Piece, side int) *halved {
	n := len(whole.Panels)
	numbers := make([]int, 3*n)
	h := &halved{whole: whole, hangs: numbers[:n], half: numbers[n : 2*n], index: numbers[2*n:], room: make([]pattern.Vertex, 0, 6*n)}
	for i := range h.hangs {
		h.hangs[i] = -1
	}
	for i := range whole.Creases {
		h.hangs[whole.Creases[i].To] = i
	}
	h.at = whole.Creases[h.hangs[side]].A.X
	for i := range h.half {
		for at := i; at != whole.Root; at = whole.Creases[h.hangs[at]].From {
			if at == side {
				h.half[i] = 1
			}
		}
	}
	return h
}

// deal deals panels, creases, cuts, glue areas and seams out to the halves, which
// are named by their faces.
func (h *halved) deal(face int) {
	for i, panel := range [...]int{h.whole.Root, face} {
		h.parts[i] = pattern.Piece{Name: h.whole.Panels[panel].Name + " half of the " + h.whole.Name, Quantity: h.whole.Quantity, Height: h.whole.Height,
			Panels: make([]pattern.Panel, 0, len(h.whole.Panels)), Creases: make([]pattern.Crease, 0, len(h.whole.Creases))}
	}
	for i := range h.whole.Panels {
		part := &h.parts[h.half[i]]
		h.index[i] = len(part.Panels)
		panel := h.whole.Panels[i]
		panel.Outline, panel.Hole = h.moved(panel.Outline, h.half[i]), h.moved(panel.Hole, h.half[i])
		part.Panels = append(part.Panels, panel)
	}
	h.parts[0].Root = h.index[h.whole.Root]
	for _, c := range h.whole.Creases {
		if of := h.half[c.To]; of == h.half[c.From] {
			c.A, c.B, c.From, c.To = h.move(c.A, of), h.move(c.B, of), h.index[c.From], h.index[c.To]
			h.parts[of].Creases = append(h.parts[of].Creases, c)
		}
	}
	for _, c := range h.whole.Cuts {
		h.cut(c)
	}
	for _, g := range h.whole.Glues {
		h.glue(g)
	}
	for _, s := range h.whole.Seams {
		h.seam(s)
	}
	h.strips()
}

// move moves a point from the whole blank to that of a half.
func (h *halved) move(p pattern.Point, half int) pattern.Point {
	if half == 0 {
		p.X = p.X.Sub(h.at)
	}
	return p
}

func (h *halved) moved(outline []pattern.Vertex, half int) []pattern.Vertex {
	from := len(h.room)
	for _, v := range outline {
		h.room = append(h.room, pattern.Vertex{Point: h.move(v.Point, half), Bulge: v.Bulge})
	}
	return slices.Clip(h.room[from:])
}

// cut gives a cut to the half that it lies in.
func (h *halved) cut(c pattern.Cut) {
	half := 0
	if c.Path[0].X.Less(h.at) {
		half = 1
	}
	if c.From == "top" || c.From == "bottom" {
		c.At = h.move(pattern.At(c.At, measure.Length{}), half).X
	}
	c.Path = h.moved(c.Path, half)
	h.parts[half].Cuts = append(h.parts[half].Cuts, c)
}

// glue keeps a glue area in its half, or makes it part of the bond.
func (h *halved) glue(g pattern.Glue) {
	own, to := h.half[g.Panel], h.half[g.To]
	g.Panel, g.To, g.Area = h.index[g.Panel], h.index[g.To], h.moved(g.Area, own)
	if own == to {
		h.parts[own].Glues = append(h.parts[own].Glues, g)
	} else {
		h.bonds[own].Glues = append(h.bonds[own].Glues, g)
	}
}

// seam keeps a seam in its half, or makes it part of the bond.
func (h *halved) seam(s pattern.Seam) {
	a, b := h.half[s.PanelA], h.half[s.PanelB]
	s.PanelA, s.PanelB = h.index[s.PanelA], h.index[s.PanelB]
	s.A1, s.A2, s.B1, s.B2 = h.move(s.A1, a), h.move(s.A2, a), h.move(s.B1, b), h.move(s.B2, b)
	if a == b {
		h.parts[a].Seams = append(h.parts[a].Seams, s)
	} else {
		h.bonds[a].Seams = append(h.bonds[a].Seams, s)
	}
}

// strips parts the strip across the width where the piece is parted.
func (h *halved) strips() {
	across, up := h.whole.Strips[0], h.whole.Strips[1]
	k := 0
	for at := across.Positions(); at[k] != h.at; {
		k++
	}
	h.parts[0].Strips = []pattern.Strip{{Across: pattern.Width, Cells: across.Cells[k:], Scores: across.Scores[k:]}, up}
	h.parts[1].Strips = []pattern.Strip{{Across: pattern.Width, Cells: across.Cells[:k:k], Scores: across.Scores[:k:k]}, up}
	h.parts[0].Width, h.parts[1].Width = h.whole.Width.Sub(h.at), h.at
}

// turnRoot lets the further half hang on its face instead of on its side.
func (h *halved) turnRoot(side, face int) {
	part := &h.parts[1]
	part.Root = h.index[face]
	for at := face; at != side; {
		c := &h.whole.Creases[h.hangs[at]]
		for i := range part.Creases {
			if own := &part.Creases[i]; own.To == h.index[at] && own.From == h.index[c.From] {
				own.From, own.To = own.To, own.From
				break
			}
		}
		at = c.From
	}
}

// addLap hangs the second lap on the side of the further half and glues it
// inside the panel that stays, whose edge comes to lie a caliper outside the
// lap's score.
func (h *halved) addLap(w *parting, caliper measure.Length) {
	part, c := &h.parts[1], h.whole.Creases[h.hangs[w.side]]
	edge := c
	c.A.Y, c.B.Y = c.A.Y.Add(w.low), c.B.Y.Sub(w.high)
	panel, free := len(part.Panels), h.at.Add(w.lap)
	low, high := pattern.At(free, c.A.Y.Add(w.inset)), pattern.At(free, c.B.Y.Sub(w.inset))
	part.Panels = append(part.Panels, pattern.Panel{Name: secondLap, Outline: pattern.Polygon(c.A, low, high, c.B)})
	part.Creases = append(part.Creases, pattern.Crease{Name: c.Name, A: c.A, B: c.B, From: h.index[w.side], To: panel, Fold: c.Fold, Angle: c.Angle})
	part.Strips[0].Cells = append(part.Strips[0].Cells, pattern.Cell{Name: secondLap, Size: w.lap})
	part.Width = free
	bond := &h.bonds[1]
	bond.Glues = append(bond.Glues, pattern.Glue{Name: secondLap, Panel: panel, Face: pattern.Outside, To: h.index[c.From], ToFace: pattern.Inside,
		Area: pattern.Rectangle(c.A.X, low.Y, free, high.Y)})
	bond.Seams = append(bond.Seams, pattern.Seam{Name: "edge at the " + secondLap, Apart: caliper,
		PanelA: h.index[w.side], A1: edge.A, A2: edge.B, PanelB: h.index[c.From], B1: h.move(edge.A, 0), B2: h.move(edge.B, 0)})
}
