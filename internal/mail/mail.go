// Package mail is how posts sort what is handed in by size, mass and make: for
// each post its classes from the cheapest on, and for a finished piece the
// class that takes it, what keeps it out of the cheaper ones and by how much,
// surcharges, what is not known, and how near it is to a limit.
//
// Every limit names its source. One that no post, regulator or official body
// was found to state is marked as hearsay: it keeps no piece out, but is told.
// Limits are inclusive unless their source says otherwise, and comparisons are
// exact.
//
// The package knows no prices and no parcels, does not read addresses, and
// never replaces what the post office says. France is left out: no edition of
// its own rules was at hand.
package mail

import "creasefit/internal/measure"

// Trait is what a post's rules ask about a piece beside its sizes; traits are
// combined by |.
type Trait uint16

// The traits.
const (
	Rigid         Trait = 1 << iota // does not bend
	Uneven                          // not equally thick all over
	Clasp                           // closed with a clasp, a string or a button
	Plastic                         // the outside is not paper
	Box                             // a box, hinged or not
	Irregular                       // not a rectangle
	SingleCard                      // one card without an envelope, not folded
	FoldedCard                      // a folded card without an envelope
	addressAcross                   // the address reads along the shorter side
)

// Side is the side of a piece that its address reads along.
type Side uint8

// The sides. The zero Side is the longer one, whichever that is.
const (
	LongerSide Side = iota
	WidthSide
	HeightSide
)

// Piece is what is to be mailed, closed and with everything inside. Width and
// Height are positive; a zero Thickness or Mass is not known. Where nothing is
// said of the address, the three sizes may change places. Tolerances are plus
// or minus; SizeTolerance is that of Width and Height.
type Piece struct {
	Width, Height, Thickness          measure.Length
	SizeTolerance, ThicknessTolerance measure.Length
	Mass, MassTolerance               Mass
	Address                           Side
	Traits                            Trait
}

// Rule is a condition of a class or a surcharge that is no limit. A piece
// breaks it if it has one of the traits of Has, or not all of Lacks.
type Rule struct {
	Has, Lacks Trait
	Why        string // a piece breaks it, to follow "it": "is a box"
	Source     string
}

// broken reports whether a piece of these traits breaks the rule.
func (r *Rule) broken(t Trait) bool { return t&r.Has != 0 || t&r.Lacks != r.Lacks }

// Surcharge is what a class takes only for more than its usual price.
type Surcharge struct {
	Name   string
	Limits Limits // beyond any of them it is due
	Rules  []Rule // and if any of them is broken
}

// Class is one size class of a post.
type Class struct {
	Name       string // on the wire: lower case with hyphens
	Title      string // as the post's public rules print it
	Limits     Limits
	Rules      []Rule
	Surcharges []Surcharge
	Conditions []string // what neither sizes nor traits say
}

// Post is one post, or one set of rules that posts follow.
type Post struct {
	Name         string // on the wire
	Title        string
	Unit         measure.Unit // of its rules
	Edition      string       // which rules, and of when
	Classes      []Class      // the cheapest first
	ByAddress    bool         // the length is the side that the address reads along, where that is told (DMM 601.1.1.2)
	NotConfirmed []string     // what its rules have but this table has not, or not for certain
}

// Names returns the posts' names in the same order.
func Names() []string {
	posts := Posts()
	names := make([]string, len(posts))
	for i, p := range posts {
		names[i] = p.Name
	}
	return names
}
