package enclosure

import (
	"math"
	"slices"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// The pieces of a box with equal sides; what is said of the tray holds for the lid.
const (
	trayWall = iota
	trayBase
	lidWall
	lidTop
)

// mostSides is how many sides a box may have.
const mostSides = 12

// The names of what there is one of for every side, and of the scores.
var (
	wallNames, flapNames = numbered("wall ", mostSides), numbered("flap ", mostSides)
	notchNames           = numbered("notch ", mostSides-1)
	scoreNames           = numbered("score ", mostSides+1)
)

// rooted is the wall, from 0, whose flap stays still.
func (p *prism) rooted() int { return (p.sides - 1) / 2 }

// lapInset is how far within the line of the walls' scores that of the lap
// lies, so that it comes to lie one caliper inside the last wall; as hands set it,
// so many whole papers.
func (p *prism) lapInset() measure.Length {
	papers := 1 / math.Sin(2*p.angle())
	if p.papers {
		papers = math.Round(papers)
	}
	return scaled(p.in.Caliper, papers)
}

// layPrismBox lays all pieces out, puts the polygons under the flaps and the lid
// on the rim of the tray, with the same room on all sides.
func (d *draft) layPrismBox(p *prism, sizes []measure.Length) pattern.Pattern {
	in, t := d.in, d.in.Caliper
	pieces := append(p.laid.Pieces.Take(4)[:0],
		p.layWalls(d, "tray wall", p.tray, sizes), p.layPolygon("tray base", "base", p.tray, sizes),
		p.layWalls(d, "lid wall", p.lid, sizes), p.layPolygon("lid top", "top", p.lid, sizes))
	under, over := p.middle(p.tray, sizes), p.middle(p.lid, sizes)
	sin, cos := math.Sincos(math.Pi/2 + 2*p.angle()*float64(p.sides-1-p.rooted())) // towards the lid's lap
	aside := scaled(t, p.aside())
	return pattern.Pattern{
		Caliper: t, Pieces: pieces,
		Cavity: pattern.Cavity{Piece: trayBase, Width: p.across, Height: p.across, Thickness: in.Thickness, Bounded: d.bounded(), Sides: p.sides},
		Places: []pattern.Place{
			p.placed(trayBase, trayWall, under, pieces[trayBase].Width),
			{Piece: lidWall, Lie: pattern.FaceDown, Above: sizes[p.tray.wall].Add(t.Over(2)),
				X: measure.Sum(under.X, over.X, scaled(aside, cos)), Y: measure.Sum(under.Y.Sub(over.Y), scaled(aside, sin))},
			p.placed(lidTop, lidWall, over, pieces[lidTop].Width),
		},
		Bonds: []pattern.Bond{p.glued("tray", &pieces[trayWall], trayWall, trayBase), p.glued("lid", &pieces[lidWall], lidWall, lidTop)},
		Nests: []pattern.Nesting{{Name: lidOverTray, Inner: trayWall, Outer: lidWall, Axes: []pattern.Axis{pattern.Width}}},
	}
}

// middle is where, on the blank of the walls, the middle of the folded polygon
// comes to lie while the flap in the middle stays still.
func (p *prism) middle(r ring, sizes []measure.Length) pattern.Point {
	lap, side := sizes[p.lap], sizes[r.side]
	return pattern.At(measure.Sum(lap, side.Times(int64(p.rooted())), side.Over(2)), lap.Sub(scaled(side, p.perSide()/2)))
}

// placed puts a polygon under the flaps of its walls.
func (p *prism) placed(polygon, on int, middle pattern.Point, blank measure.Length) pattern.Place {
	return pattern.Place{Piece: polygon, On: on, X: middle.X.Sub(blank.Over(2)), Y: middle.Y.Sub(blank.Over(2)), Above: p.in.Caliper.Neg()}
}

// layPolygon lays a base or a top out: a polygon in the middle of a square, one
// side of it at the top.
func (p *prism) layPolygon(piece, panel string, r ring, sizes []measure.Length) pattern.Piece {
	blank, side, radius := sizes[r.blank], sizes[r.side], 0.5/math.Sin(p.angle()) // in sides, so that each corner is rounded once
	corners := p.laid.Corners.Take(p.sides)
	for k := range corners {
		sin, cos := math.Sincos(math.Pi/2 + p.angle()*float64(2*k+1))
		corners[k] = pattern.Vertex{Point: pattern.At(blank.Over(2).Add(scaled(side, radius*cos)), blank.Over(2).Add(scaled(side, radius*sin)))}
	}
	cell := append(p.laid.Cells.Take(1)[:0], pattern.Cell{Name: panel + " blank", Size: blank})
	return pattern.Piece{
		Name: piece, Quantity: 1, Width: blank, Height: blank,
		Strips: append(p.laid.Strips.Take(2)[:0],
			pattern.Strip{Across: pattern.Width, Cells: cell}, pattern.Strip{Across: pattern.Height, Cells: cell}),
		Panels: append(p.laid.Panels.Take(1)[:0], pattern.Panel{Name: panel, Outline: corners}),
	}
}

// layWalls lays a strip of walls out, from the left: lap, first to last wall,
// with the flaps below. Panels are the walls, then their flaps, then the lap.
func (p *prism) layWalls(d *draft, piece string, r ring, sizes []measure.Length) pattern.Piece {
	n, lap, side, rim := p.sides, sizes[p.lap], sizes[r.side], sizes[p.lap].Add(sizes[r.wall])
	w := pattern.Piece{
		Name: piece, Quantity: 1, Width: lap.Add(side.Times(int64(n))), Height: rim, Strips: p.wallStrips(lap, side, sizes[r.wall]), Root: n + p.rooted(),
		Panels: p.laid.Panels.Take(2*n + 1), Creases: p.laid.Creases.Take(2 * n)[:0], Cuts: p.laid.Cuts.Take(n + 2)[:0],
	}
	p.layLap(&w, lap, rim)
	for i := range n {
		x := lap.Add(side.Times(int64(i)))
		start := x
		if i == 0 {
			start = x.Add(p.lapInset())
		}
		p.layWall(&w, i, start, x.Add(side), lap, rim)
		p.layFlap(&w, i, sizes[p.mitre])
		if i > 0 {
			p.cutNotch(&w, i)
		}
	}
	first, last := w.Panels[n].Outline, w.Panels[2*n-1].Outline
	tab := w.Panels[2*n].Outline
	w.Cuts = append(w.Cuts,
		d.relief("lower left corner", "left", tab[0].Point, tab[1].Point, w.Panels[0].Outline[0].Point, first[3].Point, first[0].Point),
		d.relief("upper left corner", "left", tab[3].Point, tab[2].Point, pattern.At(tab[2].X, rim)),
		d.relief("lower right corner", "right", w.Panels[n-1].Outline[1].Point, last[2].Point, last[1].Point))
	w.Seams = append(p.laid.Seams.Take(1)[:0], pattern.Seam{Name: "last corner", Apart: p.lapInset(),
		PanelA: n - 1, A1: pattern.At(w.Width, lap), A2: pattern.At(w.Width, rim),
		PanelB: 2 * n, B1: pattern.At(tab[2].X, lap), B2: pattern.At(tab[2].X, rim)})
	return w
}

// layLap hangs the lap on the first wall, clear of the flaps and of the rim.
func (p *prism) layLap(w *pattern.Piece, lap, rim measure.Length) {
	n, t, none, at := p.sides, p.in.Caliper, measure.Length{}, lap.Add(p.lapInset())
	low, high := lap.Add(t), rim.Sub(t)
	w.Panels[2*n] = pattern.Panel{Name: "lap", Outline: p.laid.Rectangle(none, low, at, high)}
	fold(w, w.Strips[0].Scores[0], pattern.At(at, low), pattern.At(at, high), 0, 2*n)
	w.Glues = append(p.laid.Glues.Take(1)[:0], pattern.Glue{Name: "lap", Panel: 2 * n, Face: pattern.Outside, To: n - 1,
		Area: p.laid.Rectangle(none, low, lap, high)})
}

// layWall lays wall i out and hangs it on its neighbour towards the one whose
// flap stays still.
func (p *prism) layWall(w *pattern.Piece, i int, x, end, low, high measure.Length) {
	w.Panels[i] = pattern.Panel{Name: wallNames[i], Outline: p.laid.Rectangle(x, low, end, high)}
	across := w.Strips[0].Scores
	switch root := p.rooted(); {
	case i < root:
		fold(w, across[i+1], pattern.At(end, low), pattern.At(end, high), i+1, i)
	case i > root:
		fold(w, across[i], pattern.At(x, low), pattern.At(x, high), i-1, i)
	}
}

// layFlap hangs the flap of wall i on it.
func (p *prism) layFlap(w *pattern.Piece, i int, back measure.Length) {
	n, wall, name := p.sides, w.Panels[i].Outline, flapNames[i]
	a, b := wall[0].Point, wall[1].Point
	a.X, b.X = a.X.Add(p.in.trim()), b.X.Sub(p.in.trim())
	outline := p.laid.Polygon(pattern.At(wall[0].X.Add(back), measure.Length{}), pattern.At(wall[1].X.Sub(back), measure.Length{}), b, a)
	w.Panels[n+i] = pattern.Panel{Name: name, Outline: outline}
	from, to := i, n+i
	if i == p.rooted() {
		from, to = to, from
	}
	fold(w, w.Strips[1].Scores[0], a, b, from, to)
}

// glued sticks the flaps of a strip of walls onto its polygon.
func (p *prism) glued(name string, w *pattern.Piece, wall, polygon int) pattern.Bond {
	b := pattern.Bond{Name: name, A: wall, B: polygon, Glues: p.laid.Glues.Take(p.sides)}
	for i := range b.Glues {
		flap := &w.Panels[p.sides+i]
		b.Glues[i] = pattern.Glue{Name: flap.Name, Panel: p.sides + i, Face: pattern.Outside, Area: flap.Outline}
	}
	return b
}

// cutNotch cuts out what lies between flap i and the one before.
func (p *prism) cutNotch(w *pattern.Piece, i int) {
	before, after := w.Panels[p.sides+i-1].Outline, w.Panels[p.sides+i].Outline
	w.Cuts = append(w.Cuts, pattern.Cut{Name: notchNames[i-1], Kind: pattern.Notch, On: w.Strips[0].Scores[i].Name, From: "bottom",
		At: after[3].X.Sub(p.in.trim()), Depth: after[3].Y, Width: after[0].X.Sub(before[1].X),
		Path: p.laid.Polygon(slices.Compact([]pattern.Point{before[1].Point, before[2].Point, after[3].Point, after[0].Point})...)})
}

// wallScores are those of a strip of walls: between its walls, and of its flaps.
func (p *prism) wallScores() []pattern.Score {
	scores := make([]pattern.Score, p.sides+1)
	for i := range scores {
		scores[i] = pattern.Score{Name: scoreNames[i], Fold: pattern.Valley, Angle: 360 / float64(p.sides)}
	}
	scores[p.sides].Angle = 90
	return scores
}

// wallStrips lists the sizes of a strip of walls.
func (p *prism) wallStrips(lap, side, wall measure.Length) []pattern.Strip {
	cells, scores := p.laid.Cells.Take(p.sides+3), append(p.laid.Scores.Take(p.sides + 1)[:0], p.scores...)
	cells[0] = pattern.Cell{Name: "lap", Size: lap}
	for i := range p.sides {
		cells[i+1] = pattern.Cell{Name: wallNames[i], Size: side}
	}
	across, up := cells[:p.sides+1:p.sides+1], cells[p.sides+1:]
	scores[0].Beside = p.lapInset()
	up[0], up[1] = pattern.Cell{Name: "flaps", Size: lap}, pattern.Cell{Name: "walls", Size: wall}
	return append(p.laid.Strips.Take(2)[:0],
		pattern.Strip{Across: pattern.Width, Cells: across, Scores: scores[:p.sides:p.sides]},
		pattern.Strip{Across: pattern.Height, Cells: up, Scores: scores[p.sides:]})
}
