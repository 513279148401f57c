// Package guide writes the making instructions of a solution: what is needed,
// what to cut, and every step in the order that hands do it, in words of a
// language. All of it follows from the flat pattern, so a new kind has its
// guide as soon as it has its pattern.
//
// A Guide knows no format; JSON, Markdown, plain text and HTML are written
// from it. The package works nothing out: every number comes from the
// solution. It draws nothing and does not know HTTP.
package guide

import (
	"strconv"
	"strings"
)

// Guide is the making instructions of one solution.
//
// All texts are plain, without markup. A number and its unit are joined by
// no-break spaces, so that a layout never parts them.
type Guide struct {
	Language  string    `json:"language"` // BCP 47: "en", "de"
	Kind      string    `json:"kind"`     // the kind's name on the wire
	Title     string    `json:"title"`
	Summary   string    `json:"summary"` // one paragraph: what it is and for which contents
	Labels    Labels    `json:"labels"`
	Materials []Item    `json:"materials"`
	Tools     []Item    `json:"tools"`
	CutList   []Blank   `json:"cut_list"`
	Steps     []Step    `json:"steps"`
	Cautions  []string  `json:"cautions"`
	FitNotes  []string  `json:"fit_notes,omitempty"` // how it fits, and what makes it tighter or looser
	Warnings  []Warning `json:"warnings,omitempty"`  // of the solution
}

// Labels are the headings of a guide in its language.
type Labels struct {
	Materials string `json:"materials"`
	Tools     string `json:"tools"`
	CutList   string `json:"cut_list"`
	Piece     string `json:"piece"`
	Quantity  string `json:"quantity"`
	Width     string `json:"width"`
	Height    string `json:"height"`
	Steps     string `json:"steps"`
	Cautions  string `json:"cautions"`
	FitNotes  string `json:"fit_notes"`
	Warnings  string `json:"warnings"`
	Figure    string `json:"figure"`
}

// Item is one material or tool.
type Item struct {
	Text    string   `json:"text"`
	Numbers []Number `json:"numbers,omitempty"`
}

// Blank is one line of the cut list.
type Blank struct {
	Piece    string `json:"piece"`
	Quantity int    `json:"quantity"`
	Width    Number `json:"width"`
	Height   Number `json:"height"`
}

// String says what the line of the cut list does, in one.
func (b Blank) String() string {
	return strconv.Itoa(b.Quantity) + " × " + b.Piece + ": " + b.Width.Text + " × " + b.Height.Text
}

// Cuts returns the cut list of several blanks; one alone is told by its first step.
func (g *Guide) Cuts() []Blank {
	if len(g.CutList) < 2 {
		return nil
	}
	return g.CutList
}

// Stage is what the hands are doing.
type Stage string

// The stages. What goes into another thing is made before that.
const (
	StageCut   Stage = "cut"
	StageScore Stage = "score"
	StageSlit  Stage = "slit" // every cut inside the blank, and its outline
	StageFold  Stage = "fold"
	StageGlue  Stage = "glue"  // folded and glued
	StageClose Stage = "close" // filled and closed, and pieces put into one another
	StageDress Stage = "dress" // an ornament
)

// Step is one step: a sentence or more, then what is done one after another.
// Numbers are those of the text and of the lines, in their order.
type Step struct {
	Stage    Stage    `json:"stage"`
	Title    string   `json:"title"`
	Text     string   `json:"text" validate:"required"`
	Lines    []string `json:"lines,omitempty"`
	After    string   `json:"after,omitempty"` // what to look out for when the lines are done
	Numbers  []Number `json:"numbers,omitempty"`
	Pictures []string `json:"pictures,omitempty"` // SVG of each of these, if asked for
	Order    []int    `json:"order,omitempty"`    // the steps of the order of work that it tells, counted as those of the solution's order
}

// Number is a length as it stands in a text.
type Number struct {
	What string  `json:"what"`         // "at", "width", "depth", ...
	Of   string  `json:"of,omitempty"` // the part it belongs to
	Text string  `json:"text"`         // as it is written
	In   float64 `json:"in"`
	MM   float64 `json:"mm"`
}

// Warning is something that the maker should know.
type Warning struct {
	Code string `json:"code"`
	Text string `json:"text"`
}

// Whole returns a step's text, lines and last sentences in one paragraph.
func (s *Step) Whole() string {
	parts := append([]string{s.Text}, s.Lines...)
	return strings.TrimSpace(strings.Join(append(parts, s.After), " "))
}
