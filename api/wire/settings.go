package wire

import (
	"creasefit/internal/settings"
	"creasefit/internal/solve"
)

// Stop is a stop that is set once, and all that it serves.
type Stop struct {
	Tool   string `json:"tool" validate:"required,oneof=cut score"`
	At     Length `json:"at" validate:"required"`        // from the edge
	Papers int    `json:"papers,omitempty" example:"-1"` // whole paper thicknesses to add
	Serves []Use  `json:"serves" validate:"required"`
}

// Use is one thing that is done at a stop.
type Use struct {
	Piece string   `json:"piece" validate:"required" example:"tray"`
	Do    string   `json:"do" validate:"required,oneof=blank score depth place"` // a side of the blank is so long; a score lies there; a slit or slot is so deep, or lies there
	Edge  string   `json:"edge" validate:"required,oneof=left right bottom top"` // that it is measured from
	Names []string `json:"names,omitempty" example:"score 1"`
}

// appendStops appends the stops that a solution is made with.
func appendStops(list []Stop, s *solve.Solution) []Stop {
	for _, set := range s.Settings() {
		var w *Stop
		list, w = more(list)
		*w = Stop{Tool: set.Tool.String(), At: exact(s.Step, set.At), Papers: set.Papers, Serves: appendUses(w.Serves[:0], s, set.Serves)}
	}
	return list
}

// appendUses appends what a stop serves.
func appendUses(list []Use, s *solve.Solution, serves []settings.Use) []Use {
	for i := range serves {
		u := &serves[i]
		var w *Use
		list, w = more(list)
		*w = Use{Piece: s.Pattern.Pieces[u.Piece].Name, Do: u.Do.String(), Edge: u.Edge.String(), Names: appendNames(w.Names[:0], s, u)}
	}
	return list
}

// appendNames appends the names of the scores or of the cut that a stop is used for.
func appendNames(names []string, s *solve.Solution, u *settings.Use) []string {
	p := &s.Pattern.Pieces[u.Piece]
	for _, c := range u.Creases {
		if name := p.Creases[c].Name; len(names) == 0 || names[len(names)-1] != name {
			names = append(names, name)
		}
	}
	if u.Cut >= 0 {
		names = append(names, p.Cuts[u.Cut].Name)
	}
	return names
}
