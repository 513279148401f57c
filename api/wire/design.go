package wire

import "creasefit/internal/enclosure/own"

// JSON is a JSON text that stands in an answer as it is.
type JSON string

// UnmarshalJSON takes the text as it stands.
func (j *JSON) UnmarshalJSON(text []byte) error {
	*j = JSON(text)
	return nil
}

// DesignList is the answer of /v1/designs.
type DesignList struct {
	Designs []Design `json:"designs" validate:"required"`
}

// Design is a described enclosure to begin from.
type Design struct {
	Name   string      `json:"name" validate:"required" example:"gift-tag-sleeve"`
	Title  string      `json:"title" validate:"required"`
	Help   string      `json:"help" validate:"required"`
	Kind   string      `json:"kind,omitempty" example:"sleeve"` // of the catalogue, that it describes
	Design JSON        `json:"design" validate:"required" swaggertype:"object"`
	Links  DesignLinks `json:"links" validate:"required"`
}

// DesignLinks lead on from a design.
type DesignLinks struct {
	Self  string `json:"self" validate:"required" example:"/v1/designs"`
	Solve string `json:"solve" validate:"required" example:"/v1/solve/own"` // by POST, with the design beside the names of every kind
}

// Designs are those to learn from.
func Designs() DesignList {
	var list DesignList
	for _, e := range own.Examples() {
		list.Designs = append(list.Designs, OfDesign(&e, "/v1/designs"))
	}
	return list
}

// OfDesign is one design as it is told.
func OfDesign(e *own.Example, self string) Design {
	d := Design{Name: e.Name, Kind: e.Kind, Design: JSON(e.Text), Links: DesignLinks{Self: self, Solve: "/v1/solve/" + own.KindName}}
	if known, err := own.Decode(e.Text); err == nil { // a test reads all of them
		d.Title, d.Help = known.Title, known.Help
	}
	return d
}
