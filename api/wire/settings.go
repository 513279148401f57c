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

// settingsOf are the stops that a solution is made with. All uses and all names
// are one piece of memory each.
func settingsOf(s *solve.Solution) []Stop {
	list := s.Settings()
	most, mostNames := 0, 0
	for i := range list {
		most += len(list[i].Serves)
		for j := range list[i].Serves {
			mostNames += len(list[i].Serves[j].Creases) + 1
		}
	}
	stops, uses, names := make([]Stop, len(list)), make([]Use, 0, most), make([]string, 0, mostNames)
	for i := range list {
		set, from := &list[i], len(uses)
		for j := range set.Serves {
			u, first := &set.Serves[j], len(names)
			names = appendNames(names, s, u)
			uses = append(uses, Use{Piece: s.Pattern.Pieces[u.Piece].Name, Do: u.Do.String(), Edge: u.Edge.String(), Names: names[first:len(names):len(names)]})
		}
		stops[i] = Stop{Tool: set.Tool.String(), At: exact(s.Step, set.At), Papers: set.Papers, Serves: uses[from:len(uses):len(uses)]}
	}
	return stops
}

// appendNames appends the names of the scores or of the cut that a stop is used for.
func appendNames(names []string, s *solve.Solution, u *settings.Use) []string {
	p, first := &s.Pattern.Pieces[u.Piece], len(names)
	for _, c := range u.Creases {
		if name := p.Creases[c].Name; len(names) == first || names[len(names)-1] != name {
			names = append(names, name)
		}
	}
	if u.Cut >= 0 {
		names = append(names, p.Cuts[u.Cut].Name)
	}
	return names
}
