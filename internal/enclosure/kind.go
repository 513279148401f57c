// Package enclosure is the catalogue: one file a kind, kind_<name>.go, each with
// its words in every language, its parameters, its formulas in trade symbols and
// its flat pattern. What several kinds are made of is in the files shape_<what>.go.
//
// A kind states what must hold; it rounds nothing by itself, folds nothing and
// knows neither HTTP nor drawings.
package enclosure

import (
	"slices"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/rounding"
)

// Kind is one construction.
type Kind struct {
	Name   string // on the wire: lower case with hyphens
	Title  string
	Help   string           // one line: what it is and how it closes
	Words  map[string]Words // title and help in further languages, by language tag
	Needs  []string         // the contents' sizes it cannot do without: "width", "height", "thickness"
	Box    bool             // it has walls all round and does not bend
	Sealed bool             // it is glued shut with the contents inside, and opened by tearing
	Params []Param
	Design string // the text of the design that a caller's kind was made of, "" for the catalogue's
	Plan   func(*Input) (*Plan, error)
}

// Words are what a kind is called and its one line of help in a language.
type Words struct{ Title, Help string }

// In returns the kind's words in a language: English where it has none.
func (k *Kind) In(language string) Words {
	if w, ok := k.Words[language]; ok {
		return w
	}
	return Words{k.Title, k.Help}
}

// german gives a kind its words in German.
func german(title, help string) map[string]Words {
	return map[string]Words{"de": {title, help}}
}

// Input is a request in exact lengths, with every default filled in.
type Input struct {
	Unit      measure.Unit // of the ruler
	Width     measure.Length
	Height    measure.Length
	Thickness measure.Length
	Caliper   measure.Length
	BoardFrom measure.Length   // caliper from which the stock does not give way; zero for the usual one
	Sheet     measure.Length   // the longer side of the sheet, zero if none is named
	Fit       Range            // the wanted clearance along each fitted axis
	Given     map[string]Value // the kind's own parameters, as far as given
	Params    []Param          // the kind's own parameters, for their defaults
}

// Range is a least and a greatest length.
type Range = measure.Range

// Plan is what a kind states about one request.
type Plan struct {
	Problem rounding.Problem
	Sources []string // for each reading the parameter that fixes it, "" for none
	Strips  []Strip  // how the readings lie along the edges of the blanks
	Fits    []Fit
	// Over lists pairs of readings on opposite sides: A goes round one layer of
	// stock more than B, and must hold whatever B holds.
	Over []rounding.Pair
	// Allowances are readings that are set nowhere by themselves: they move the
	// lines of the panels that they are taken from.
	Allowances []int
	// Build lays out the flat pattern for the given sizes of the readings: the
	// rounded ones, or the ideal ones.
	Build func(sizes []measure.Length) pattern.Pattern
	// OnRuler lays out as Build does what hands set: where a place follows from no
	// reading, a whole number of papers beside one. It is nil for kinds that have no
	// such place.
	OnRuler func(sizes []measure.Length) pattern.Pattern
	// Check says what is wrong with the plan itself where no answer to it holds; nil for
	// the kinds of the catalogue, whose ideal sizes always do.
	Check    func() error
	Warnings []Warning
	Ornament *Ornament // of a slotted band's closure; nil if none is asked for
	// Memory is what the plan is a part of, which another one can have once it is given
	// back: the plan must not be used any more then, nor what it has built.
	Memory interface{ GiveBack() }
	Laid   *pattern.Memory // where patterns lie that were built, which can be given back alone
}

// Lay lays out the flat pattern as hands set it.
func (p *Plan) Lay(sizes []measure.Length) pattern.Pattern {
	if p.OnRuler != nil {
		return p.OnRuler(sizes)
	}
	return p.Build(sizes)
}

// Ideals are the sizes of the readings on an endlessly fine ruler.
func (p *Plan) Ideals() []measure.Length {
	sizes := make([]measure.Length, len(p.Problem.Readings))
	for i := range sizes {
		sizes[i] = p.Problem.Readings[i].Ideal
	}
	return sizes
}

// Faulty is what is wrong with the plan itself, nil if nothing is.
func (p *Plan) Faulty() error {
	if p.Check == nil {
		return nil
	}
	return p.Check()
}

// Strip is a pattern strip in terms of the problem's readings: what the
// tolerance stack needs to know about where a size is measured from.
type Strip struct {
	Piece    int
	Across   pattern.Axis
	Readings []int
	Beside   measure.Length // how far beyond the end of the first size its score is made, see pattern.Score
}

// Made returns how far beyond the end of size i its score is made.
func (s *Strip) Made(i int) measure.Length {
	if i == 0 {
		return s.Beside
	}
	return measure.Length{}
}

// Fit is a clearance that the request wants in a window: Problem.Windows
// [Window] is its form, whose constant is minus Need.
type Fit struct {
	Axis   pattern.Axis
	Window int
	Need   Need
	// Between names the pieces that the clearance is between, such as "lid over
	// tray"; it is "" for the contents'.
	Between string
	// Curve turns a value of the form into a clearance where that is no linear
	// function of it, as where panels bend; nil for all others. No clearance is
	// at the value zero.
	Curve func(measure.Length) measure.Length
	// Scale is how often a value of the form goes into the clearance where its
	// readings are marked at another angle than it is measured, and Share how
	// often the error of a mark does; both are zero where they would be one.
	Scale, Share float64
	Wanted       Range // the clearance
}

// Clearance turns a value of the fit's form into a clearance: the same length,
// or a curve of it, or so many times it, to the nanometre.
func (f *Fit) Clearance(value measure.Length) measure.Length {
	switch {
	case f.Curve != nil:
		return f.Curve(value)
	case f.Scale > 0:
		return scaled(value, f.Scale)
	default:
		return value
	}
}

// Need is what a clearance is measured against: how many times the contents'
// sizes and half of the caliper go into it. The uncertain quantities of a
// tolerance stack come from here and from the readings.
type Need struct{ Width, Height, Thickness, HalfCalipers int64 }

// Warning is something the maker should know; the answer still holds.
type Warning struct {
	Code   string
	Detail string
	Try    Option // what would do away with it; zero if nothing known would
}

// Option is a choice of one of a kind's parameters.
type Option struct{ Name, Choice string }

// Of returns the length that the need amounts to.
func (n Need) Of(in *Input) measure.Length {
	return measure.Sum(in.Width.Times(n.Width), in.Height.Times(n.Height),
		in.Thickness.Times(n.Thickness), in.Caliper.Times(n.HalfCalipers).Over(2))
}

// Placed reports whether a reading lies along an edge of a blank.
func (p *Plan) Placed(reading int) bool {
	for i := range p.Strips {
		if slices.Contains(p.Strips[i].Readings, reading) {
			return true
		}
	}
	return false
}
