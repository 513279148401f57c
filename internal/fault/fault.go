// Package fault is the vocabulary of what can be wrong with a request. Every
// package below the API reports problems in it, several at once, and only the
// API turns them into HTTP answers.
//
// It does not know HTTP, statuses or media types, and it never carries the
// text of an unexpected internal error.
package fault

import (
	"errors"
	"slices"
	"strings"
)

// Code names a kind of fault; codes are part of the wire contract.
type Code string

// The codes. Unreadable to TooMany mean that the request cannot be read or is
// out of bounds; NoFit to OverBudget mean that it was understood, but that there
// is no such enclosure or cut plan, or that working it out would take too much.
const (
	Unreadable Code = "unreadable"   // the text is not a value of the expected type
	NoUnit     Code = "no-unit"      // a bare number in a request that names no unit
	Ambiguous  Code = "ambiguous"    // the text can be read in two ways
	Unknown    Code = "unknown"      // no parameter, kind or preset has this name
	Missing    Code = "missing"      // a value that is needed was not given
	Repeated   Code = "repeated"     // a name was given twice
	Conflict   Code = "conflict"     // two values contradict each other
	OutOfRange Code = "out-of-range" // below the least or above the greatest value
	TooFine    Code = "too-fine"     // finer than a ruler can be
	TooMany    Code = "too-many"     // more items than the service takes

	NoFit      Code = "no-fit"      // no ruler reading keeps every clearance in its window
	Impossible Code = "impossible"  // the options do not give an enclosure
	NoProof    Code = "no-proof"    // the fold proof failed
	NoPlan     Code = "no-plan"     // the sheets or the trimmer do not give all blanks
	OverBudget Code = "over-budget" // it would take more work than one call may
)

// Fault is one thing that is wrong.
type Fault struct {
	Code     Code
	Field    string // the parameter's name on the wire; empty for the request as a whole
	Value    string // the value as given; empty if none was
	Detail   string // one plain sentence
	Expected string // what would have been right: a form, a list or a bound
	Hint     string // a suggested value, or what to do
	// Least and Greatest are the bound that Expected writes, in nanometres, for
	// whoever tries it; both zero if it writes none.
	Least, Greatest int64
}

// Error returns the field and the sentence.
func (f Fault) Error() string {
	if f.Field == "" {
		return f.Detail
	}
	return f.Field + ": " + f.Detail
}

// Under returns the fault of a member of an object or a list that has a name
// of its own: "sheet" with the fault of "size" is "sheet.size".
func (f Fault) Under(name string) Fault {
	switch {
	case name == "":
	case f.Field == "":
		f.Field = name
	default:
		f.Field = name + "." + f.Field
	}
	return f
}

// Understood reports whether the request was read but has no answer, rather
// than being unreadable or out of bounds.
func (f Fault) Understood() bool {
	return slices.Contains([]Code{NoFit, Impossible, NoProof, NoPlan, OverBudget}, f.Code)
}

// Faults is everything found wrong with one request, in the order found. An
// empty list is no error: return it through Err.
type Faults []Fault

// Error returns all sentences, one a line.
func (fs Faults) Error() string {
	lines := make([]string, len(fs))
	for i, f := range fs {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "\n")
}

// Add appends what err carries: a Fault, Faults or nil. Any other error is
// not about the request and is returned.
func (fs *Faults) Add(err error) error {
	if err == nil {
		return nil
	}
	var many Faults
	var one Fault
	switch {
	case errors.As(err, &many):
		*fs = append(*fs, many...)
	case errors.As(err, &one):
		*fs = append(*fs, one)
	default:
		return err
	}
	return nil
}

// Err returns the list as an error, or nil when it is empty.
func (fs Faults) Err() error {
	if len(fs) == 0 {
		return nil
	}
	return fs
}

// Join gathers the faults of several errors into one, nil if there are none.
// An error that is no fault is returned as it is.
func Join(errs ...error) error {
	var fs Faults
	for _, err := range errs {
		if other := fs.Add(err); other != nil {
			return other
		}
	}
	return fs.Err()
}

// Under puts a name before the fields of the faults that err carries; any
// other error is returned as it is.
func Under(name string, err error) error {
	var fs Faults
	if other := fs.Add(err); other != nil {
		return other
	}
	for i := range fs {
		fs[i] = fs[i].Under(name)
	}
	return fs.Err()
}
