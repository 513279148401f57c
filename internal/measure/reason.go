package measure

import "fmt"

// Reason is why a text was refused; reasons are stable names.
type Reason string

// The reasons.
const (
	ReasonEmpty       Reason = "empty"        // nothing but white space
	ReasonTooLong     Reason = "too-long"     // more than 32 characters a length
	ReasonSyntax      Reason = "syntax"       // not a length at all
	ReasonNoUnit      Reason = "no-unit"      // a bare number, and the request names no unit
	ReasonUnknownUnit Reason = "unknown-unit" // a unit that is not read: m, pt, mil, ...
	ReasonFeet        Reason = "feet"         // feet, alone or with inches
	ReasonAmbiguous   Reason = "ambiguous"    // can be read in two ways
	ReasonThousands   Reason = "thousands"    // digits grouped in threes
	ReasonDecimalMark Reason = "decimal-mark" // a decimal comma in a request that says point
	ReasonExponent    Reason = "exponent"     // 1e3
	ReasonHex         Reason = "hex"          // 0x1f
	ReasonSign        Reason = "sign"         // a leading plus or minus
	ReasonDigits      Reason = "digits"       // digits other than 0 to 9
	ReasonImproper    Reason = "improper"     // numerator not below the denominator in a mixed number
	ReasonZeroBelow   Reason = "zero-below"   // denominator zero
	ReasonDenominator Reason = "denominator"  // thirds, fifths: not on a ruler
	ReasonTooFine     Reason = "too-fine"     // 1/128 in; a step below 1/64 in or 0.5 mm
	ReasonNotWhole    Reason = "not-whole"    // not a whole number of nanometres
	ReasonTooLarge    Reason = "too-large"    // longer than Largest
	ReasonNotAMark    Reason = "not-a-mark"   // a step that no ruler is divided in
	ReasonCount       Reason = "wrong-count"  // a size of too few or too many lengths
)

// ParseError is a text that cannot be read as a length, a size or a step.
type ParseError struct {
	Reason Reason
	Text   string // as given
	At     int    // byte offset of the first character that is wrong
	Detail string // one plain sentence without the text
	// Hint is a text that can be read instead, two of them joined by " or ",
	// or empty.
	Hint string
}

// Error returns the text and what is wrong with it.
func (e *ParseError) Error() string {
	return fmt.Sprintf("cannot read %q: %s", e.Text, e.Detail)
}
