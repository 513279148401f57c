package draw

import (
	"slices"

	"creasefit/internal/assembly"
	"creasefit/internal/pattern"
	"creasefit/internal/settings"
)

// bench draws what is done to the blank of a piece in one step. Scores have their
// numbers alone, and readings the unit that the blank was cut by: the guide says more.
// They are measured from the edges that the stops are.
func (l *layout) bench(p *pattern.Pattern, index int, do assembly.Do) Figure {
	piece := &p.Pieces[index]
	f := l.figure(piece, nil)
	f.brief = do != assembly.Cut
	f.sides = f.around()
	switch do {
	case assembly.Cut:
		f.wholeBlank()
		f.sides[below].add(tag{at: f.w, from: fromLow, lines: []string{f.length(piece.Width)}})
		f.sides[leftOf].add(tag{at: f.h, from: fromLow, lines: []string{f.length(piece.Height)}})
	case assembly.Score:
		f.far = l.farScores(p, index)
		f.wholeBlank()
		f.folds()
		for i := range piece.Strips {
			f.scores(&piece.Strips[i])
		}
	default:
		f.geometry()
		f.drop(ValleyFold, MountainFold, HalfCutUnder, HalfCut)
		for i := range piece.Cuts {
			if !told(piece.Cuts[:i], &piece.Cuts[i]) {
				f.cut(&piece.Cuts[i])
			}
		}
		f.corners()
	}
	f.surround()
	f.ordered()
	return f.fig
}

// farScores returns the scores of a piece that stops serve from the right or the top
// edge.
func (l *layout) farScores(p *pattern.Pattern, index int) map[string]bool {
	far := map[string]bool{}
	if l.stops == nil {
		return far
	}
	for _, s := range l.stops() {
		for _, u := range s.Serves {
			if u.Piece == index && u.Do == settings.Line && (u.Edge == settings.Right || u.Edge == settings.Top) {
				for _, c := range u.Creases {
					far[p.Pieces[index].Creases[c].Name] = true
				}
			}
		}
	}
	return far
}

// around returns the four sides of the blank, without tags.
func (f *figure) around() [4]side {
	return [4]side{
		{edge: below, size: f.w}, {edge: above, size: f.w, line: f.h, start: f.h},
		{edge: leftOf, size: f.h}, {edge: rightOf, size: f.h, line: f.w, start: f.w},
	}
}

// rectangle is the path round a box.
func rectangle(b Box) []Vertex {
	c := b.corners()
	return []Vertex{{Point: c[0]}, {Point: c[1]}, {Point: c[2]}, {Point: c[3]}}
}

// paper draws paper with its outline.
func (f *figure) paper(ring []Vertex, outline string) {
	f.fig.Lines = append(f.fig.Lines, Line{Layer: Paper, Path: ring, Closed: true, Fill: true},
		Line{Layer: Outline, Name: outline, Path: ring, Closed: true})
}

// wholeBlank draws the blank before it has its outline.
func (f *figure) wholeBlank() {
	ring := rectangle(Box{High: f.fig.Size})
	f.rings = [][]Point{Flatten(nil, ring, true, 0.1)}
	f.paper(ring, f.say("outline"))
}

// drop takes the lines of some layers out of the figure.
func (f *figure) drop(layers ...Layer) {
	f.fig.Lines = slices.DeleteFunc(f.fig.Lines, func(l Line) bool { return slices.Contains(layers, l.Layer) })
}

// scores adds the readings of a strip's scores, and which way they are folded.
func (f *figure) scores(s *pattern.Strip) {
	for i, at := range s.Positions() {
		if i > 0 && i <= len(s.Scores) && s.Scores[i-1].Fold != pattern.Flat {
			f.boundary(s, i, at)
		}
	}
}
