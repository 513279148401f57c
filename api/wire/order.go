package wire

import (
	"creasefit/internal/assembly"
	"creasefit/internal/pattern"
)

// MemberOrder is the member of a solution that is given only to those who name
// it, since finding it takes longer than the solution.
const MemberOrder = "order"

// WorkStep is one step of the order of work.
type WorkStep struct {
	Step   int        `json:"step" validate:"required,min=1" example:"4"` // from 1: the drawing's picture counts alike
	Do     string     `json:"do" validate:"required,oneof='cut' 'score' 'slit' 'fold' 'glue' 'put in' 'join' 'lock' 'close' 'dress'" example:"glue"`
	Pieces []string   `json:"pieces" validate:"required" example:"tray"` // that it is done to
	Alike  int        `json:"alike,omitempty" example:"4"`               // so many like moves are this one step
	Turns  []WorkTurn `json:"turns,omitempty"`                           // panels that are folded
	Glues  []WorkGlue `json:"glues,omitempty"`                           // panels that come to lie on their glue
	Locks  []WorkLock `json:"locks,omitempty"`                           // cuts that are hooked into one another
	Moves  []WorkMove `json:"moves,omitempty"`                           // of whole pieces, or of the contents
	Flex   float64    `json:"flex_mm,omitempty" example:"0.4"`           // by which the stock must give way meanwhile
}

// WorkTurn is one panel that is folded.
type WorkTurn struct {
	Piece string    `json:"piece" validate:"required" example:"tray"`
	Panel string    `json:"panel" validate:"required" example:"left wall"` // that moves
	Score string    `json:"score" validate:"required" example:"score 1"`
	Fold  string    `json:"fold" validate:"required,oneof=valley mountain"`
	From  float64   `json:"from_deg" validate:"required" example:"0"` // folded so far before
	To    float64   `json:"to_deg" validate:"required" example:"90"`
	Group int       `json:"group" validate:"required" example:"0"` // what has one number moves together
	Path  []float64 `json:"path_deg,omitempty" example:"0,45,90"`  // at equal times, where it does not turn evenly
}

// WorkGlue is one panel that is glued to another.
type WorkGlue struct {
	Piece     string `json:"piece" validate:"required" example:"tray"`
	Panel     string `json:"panel" validate:"required" example:"lower left tab"` // that has the glue
	OntoPiece string `json:"onto_piece" validate:"required" example:"tray"`
	Onto      string `json:"onto" validate:"required" example:"left wall"`
}

// WorkLock is two cuts of one piece, or two pieces, that hook into one another.
type WorkLock struct {
	A string `json:"a" validate:"required" example:"left slit"`
	B string `json:"b" validate:"required" example:"right slit"`
}

// WorkMove is the way of a whole piece, or of the contents.
type WorkMove struct {
	What   string    `json:"what" validate:"required" example:"contents"`
	Way    []float64 `json:"way" validate:"required" example:"0,0,-1"` // unit direction: x and y as on the first piece's blank, z out of its inside
	By     float64   `json:"by_mm" validate:"required" example:"38.1"`
	Turned bool      `json:"turned,omitempty"` // its inside faces the other way than that of the first piece
}

// OfOrder is the order of work of a pattern as it is told.
func OfOrder(p *pattern.Pattern, o *assembly.Order) []WorkStep {
	var steps []WorkStep
	for i := range o.Steps {
		steps = append(steps, workStep(p, &o.Steps[i], i+1))
	}
	return steps
}

func workStep(p *pattern.Pattern, s *assembly.Step, number int) WorkStep {
	w := WorkStep{Step: number, Do: s.Do.String(), Flex: round(s.Flex, 3)}
	w.Pieces = Each(s.Pieces, func(piece int) string { return p.Pieces[piece].Name })
	if s.Groups > 1 {
		w.Alike = s.Groups
	}
	for i := range s.Turns {
		w.Turns = append(w.Turns, workTurn(p, &s.Turns[i]))
	}
	for _, a := range s.Glues {
		g, own, other := a.Of(p)
		w.Glues = append(w.Glues, WorkGlue{p.Pieces[own].Name, p.Pieces[own].Panels[g.Panel].Name, p.Pieces[other].Name, p.Pieces[other].Panels[g.To].Name})
	}
	for _, j := range s.Joints {
		piece := &p.Pieces[j.Piece]
		joint := &piece.Joints[j.Joint]
		w.Locks = append(w.Locks, WorkLock{piece.Cuts[joint.A].Name, piece.Cuts[joint.B].Name})
	}
	for _, k := range s.Locks {
		w.Locks = append(w.Locks, WorkLock{p.Pieces[p.Locks[k].A].Name, p.Pieces[p.Locks[k].B].Name})
	}
	for i := range s.Travels {
		w.Moves = append(w.Moves, workMove(p, &s.Travels[i]))
	}
	return w
}

func workTurn(p *pattern.Pattern, t *assembly.Turn) WorkTurn {
	piece := &p.Pieces[t.Piece]
	c := &piece.Creases[t.Crease]
	degrees := func(fraction float64) float64 { return round(fraction*c.Angle, 2) }
	return WorkTurn{Piece: piece.Name, Panel: piece.Panels[t.Panel].Name, Score: c.Name, Fold: c.Fold.String(),
		From: degrees(t.From), To: degrees(t.To), Group: t.Group, Path: Each(t.Path, degrees)}
}

func workMove(p *pattern.Pattern, t *assembly.Travel) WorkMove {
	w := WorkMove{What: "contents", Way: []float64{round(t.Way[0], 6), round(t.Way[1], 6), round(t.Way[2], 6)}, By: round(t.By, 3), Turned: t.Turned}
	if t.Piece >= 0 {
		w.What = p.Pieces[t.Piece].Name
	}
	return w
}
