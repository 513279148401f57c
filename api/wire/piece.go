package wire

import (
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/solve"
)

// Piece is one part of the enclosure.
type Piece struct {
	Name     string    `json:"name" validate:"required" example:"band"`
	Layer    string    `json:"layer,omitempty" example:"tray"` // of a portfolio
	Quantity int       `json:"quantity" validate:"required,min=1" example:"1"`
	Blank    Blank     `json:"blank" validate:"required"`
	Panels   []Panel   `json:"panels" validate:"required"`
	Scores   []Score   `json:"scores" validate:"required"` // from the left, or from the bottom
	Cuts     []Cut     `json:"cuts" validate:"required"`
	Outline  []Corner  `json:"outline" validate:"required"` // every corner of the cut edge, counterclockwise, openings clockwise
	Partials []Partial `json:"partials,omitempty"`          // scores that do not run from edge to edge
	Reveal   *Reveal   `json:"reveal,omitempty"`            // of a layer
}

// Reveal is how much of the layer below shows at the left and the bottom of a layer.
type Reveal struct {
	On string `json:"on" validate:"required" example:"layer 1"`
	X  Length `json:"x" validate:"required"`
	Y  Length `json:"y" validate:"required"`
}

// reveal says where a flat piece lies on another one; nil for all else.
func reveal(s *solve.Solution, piece int) *Reveal {
	for k := range s.Pattern.Places {
		at, ideal := &s.Pattern.Places[k], &s.Ideal.Places[k]
		if at.Piece == piece && at.Lie <= pattern.FaceDown && len(s.Pattern.Pieces[piece].Creases) == 0 {
			return &Reveal{s.Pattern.Pieces[at.On].Name, length(s.Step, at.X, ideal.X), length(s.Step, at.Y, ideal.Y)}
		}
	}
	return nil
}

// appendPieces appends the pieces of a solution; layer is what they are part of
// in a portfolio, else empty. Each piece has a twin on an endlessly fine ruler.
func appendPieces(list []Piece, s *solve.Solution, layer string) []Piece {
	for i := range s.Pattern.Pieces {
		p, ideal := &s.Pattern.Pieces[i], &s.Ideal.Pieces[i]
		var w *Piece
		list, w = more(list)
		*w = Piece{
			Name:     p.Name,
			Layer:    layer,
			Quantity: p.Quantity,
			Blank:    Blank{length(s.Step, p.Width, ideal.Width), length(s.Step, p.Height, ideal.Height)},
			Panels:   appendPanels(w.Panels[:0], s.Step, p, ideal),
			Scores:   appendScores(w.Scores[:0], s, p, ideal),
			Cuts:     appendCuts(w.Cuts[:0], s, p, ideal),
			Outline:  appendOutline(w.Outline[:0], s, p),
			Partials: appendPartials(w.Partials[:0], s, p),
			Reveal:   reveal(s, i),
		}
	}
	return list
}

// Blank is the rectangle that a piece is cut from.
type Blank struct {
	Width  Length `json:"width" validate:"required"`
	Height Length `json:"height" validate:"required"`
}

// Panel is one size along an edge of the blank.
type Panel struct {
	Name   string `json:"name" validate:"required" example:"left tab"`
	Across string `json:"across" validate:"required,oneof=width height diagonal"`
	Size   Length `json:"size" validate:"required"`
}

// appendPanels appends the sizes that follow one another along the edges.
func appendPanels(list []Panel, step measure.Step, p, ideal *pattern.Piece) []Panel {
	for i := range p.Strips {
		for j := range p.Strips[i].Cells {
			cell := &p.Strips[i].Cells[j]
			list = append(list, Panel{cell.Name, p.Strips[i].Across.String(), length(step, cell.Size, ideal.Strips[i].Cells[j].Size)})
		}
	}
	return list
}

// Score is a pressed line across the blank.
type Score struct {
	Name   string  `json:"name" validate:"required" example:"score 1"`
	Across string  `json:"across" validate:"required,oneof=width height diagonal"`
	At     Length  `json:"at" validate:"required"`
	From   string  `json:"from" validate:"required,oneof=left bottom"`
	Fold   string  `json:"fold" validate:"required,oneof=valley mountain"`
	Angle  float64 `json:"angle" validate:"required" example:"90"` // degrees folded when closed
	// HalfCut is the side on which a score of board is cut half through; paper is pressed.
	HalfCut string  `json:"half_cut,omitempty" validate:"omitempty,oneof=inside outside"`
	Or      *Turned `json:"or,omitempty"` // plainer when the blank is turned end for end
}

// Turned is a score measured from the opposite edge.
type Turned struct {
	At   Length `json:"at" validate:"required"`
	From string `json:"from" validate:"required,oneof=right top"`
}

// appendScores appends the scores in the order of the blank from the left or the
// bottom, each as its position from that edge.
func appendScores(list []Score, s *solve.Solution, p, ideal *pattern.Piece) []Score {
	board := s.Pattern.Stiff()
	for i := range p.Strips {
		strip, twin := &p.Strips[i], &ideal.Strips[i]
		from, opposite := edges(strip.Across)
		var at, idealAt measure.Length
		for j := range strip.Scores {
			at, idealAt = at.Add(strip.Cells[j].Size), idealAt.Add(twin.Cells[j].Size)
			score := &strip.Scores[j]
			if score.Fold == pattern.Flat {
				continue
			}
			w := Score{Name: score.Name, Across: strip.Across.String(), From: from,
				At:   setting(s, at.Add(score.Beside), idealAt.Add(twin.Scores[j].Beside)),
				Fold: score.Fold.String(), Angle: round(score.Angle, 3), HalfCut: halfCut(board, score.Fold)}
			if score.Beside.IsZero() {
				w.Or = turned(s.Step, extent(strip).Sub(at), extent(twin).Sub(idealAt), at, opposite)
			}
			list = append(list, w)
		}
	}
	return list
}

// setting is a LENGTH that hands set in place of the ideal one: off the ruler, with papers
// beside a mark where it has none.
func setting(s *solve.Solution, l, ideal measure.Length) Length {
	if !l.IsMultipleOf(s.Request.Ruler) {
		if how, ok := pattern.SetOf(l, s.Pattern.Caliper, s.Step, s.Request.Ruler); ok {
			return lengthRead(Reading(s.Step, how.Mark), l, ideal, how.Papers)
		}
	}
	return length(s.Step, l, ideal)
}

// halfCut is the side that a score of board opens on: its fold turns away from it.
func halfCut(board bool, f pattern.Fold) string {
	switch {
	case !board:
		return ""
	case f == pattern.Valley:
		return pattern.Outside.String()
	}
	return pattern.Inside.String()
}

// turned is the score measured from the opposite edge, if it lies on a coarser
// mark when the blank is turned end for end.
func turned(step measure.Step, opposite, ideal, at measure.Length, edge string) *Turned {
	own, _ := measure.CoarsestMark(at, step.Unit())
	other, _ := measure.CoarsestMark(opposite, step.Unit())
	if !own.Size().Less(other.Size()) {
		return nil
	}
	return &Turned{length(step, opposite, ideal), edge}
}

// extent is the length of the whole edge.
func extent(s *pattern.Strip) measure.Length {
	var sum measure.Length
	for i := range s.Cells {
		sum = sum.Add(s.Cells[i].Size)
	}
	return sum
}

// edges returns the edge that positions across the axis are measured from,
// and the one opposite.
func edges(across pattern.Axis) (from, opposite string) {
	if across == pattern.Height {
		return "bottom", "top"
	}
	return "left", "right"
}

// Cut is a cut inside the blank.
type Cut struct {
	Name  string  `json:"name" validate:"required" example:"left slit"`
	Kind  string  `json:"kind" validate:"required,oneof=slit slot notch window relief"`
	On    string  `json:"on,omitempty" example:"score 1"` // the score that it lies on
	At    *Length `json:"at,omitempty"`                   // where it lies, if on no score, from the left or the bottom
	From  string  `json:"from" validate:"required,oneof=top bottom left right"`
	Depth Length  `json:"depth" validate:"required"`
	Width Length  `json:"width" validate:"required"` // zero for a slit
	Long  *Length `json:"long,omitempty"`            // of a slit inside the blank; depth is how far it lies from the edge, at its middle
}

func appendCuts(list []Cut, s *solve.Solution, p, ideal *pattern.Piece) []Cut {
	for i := range p.Cuts {
		c, twin := &p.Cuts[i], &ideal.Cuts[i]
		w := Cut{Name: c.Name, Kind: c.Kind.String(), On: c.On, From: c.From,
			Depth: setting(s, c.Depth, twin.Depth), Width: setting(s, c.Width, twin.Width)}
		if c.On == "" {
			w.At = new(setting(s, c.At, twin.At))
		}
		if long, ok := p.Within(c); ok {
			ideal, _ := ideal.Within(twin)
			w.Long = new(setting(s, long, ideal))
		}
		list = append(list, w)
	}
	return list
}
