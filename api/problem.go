package api

import (
	"creasefit/api/ask"
	"creasefit/api/wire"
	"creasefit/internal/fault"
)

// Codes of what can be wrong with a call rather than with its values. They
// extend the codes of package fault.
const (
	codeNotFound     fault.Code = "not-found"
	codeMethod       fault.Code = "method-not-allowed"
	codeURLTooLong   fault.Code = "url-too-long"
	codeTooManyCalls fault.Code = "too-many-calls"
	codeOverloaded   fault.Code = "overloaded"
	codeDraining     fault.Code = "draining"
	codeTookTooLong  fault.Code = "took-too-long"
	codeCallerGone   fault.Code = "caller-gone"
	codeInternal     fault.Code = "internal"
	problemMediaType            = "application/problem+json"
)

// problemKind is one row of the table from fault codes to answers.
type problemKind struct {
	code   fault.Code
	status int
	title  string
	help   string // a sentence or two for the page that the type leads to
}

// problemKinds is the only place where faults meet HTTP statuses.
var problemKinds = []problemKind{
	{fault.Unreadable, 400, "A value cannot be read", "The text is not a value of the type that the name takes. Lengths are written 3 5/8 " +
		"in, 3-5/8in in addresses, 92.1 mm or 9.21 cm; numbers have digits and one decimal mark."},
	{fault.NoUnit, 400, "A number has no unit", "There is no default unit. Write the unit with the number, or add unit=in or unit=mm to " +
		"the request."},
	{fault.Ambiguous, 400, "A value can be read in two ways", "A comma between digits can be a decimal mark or group thousands, and a bare " +
		"fraction is no number of millimetres. Say decimal=comma or decimal=point, or write the unit."},
	{fault.Unknown, 400, "A name is unknown", "Names are case-exact and in lower case with underscores; unknown ones are refused, since a " +
		"mistyped name would otherwise change the answer in silence."},
	{ask.NoFormat, 400, "There is no such format", "The call is not answered in this format. The formats of every call are listed at " +
		"/docs/formats."},
	{fault.Missing, 400, "A value is missing", "The calculation needs this value and cannot guess it."},
	{fault.Repeated, 400, "A name is given twice", "Each name is given once, in the query string and the body together."},
	{fault.Conflict, 400, "Two values contradict each other", "Leave one of the two names out."},
	{fault.OutOfRange, 400, "A value is out of bounds", "The bounds of every name are listed by /v1/kinds/{kind} and in /openapi.json."},
	{fault.TooFine, 400, "A value is finer than a ruler", "Rulers are divided down to 1/64 in or 0.5 mm."},
	{fault.TooMany, 400, "There are too many values", "The limits are listed at /v1/limits."},
	{fault.NoFit, 422, "No ruler reading fits", "The request was understood, but no multiples of any mark of the ruler keep every " +
		"clearance in its window. Allow a finer ruler or a wider fit."},
	{fault.Impossible, 422, "There is no such enclosure", "The request was understood, but these sizes and options do not make an enclosure."},
	{fault.NoProof, 422, "The pattern does not fold up", "The flat pattern was folded up and does not close or does not hold the contents."},
	{fault.NoPlan, 422, "There is no such cut plan", "The request was understood, but the sheets in stock and the trimmer do not give all blanks."},
	{fault.OverBudget, 422, "The request takes too much work", "The request was understood, but answering it would take more work than one " +
		"call may ask for. The detail says how much, expected how much may be, and the hint what is within it. Sending it again does not help."},
	{codeNoKey, 401, "A key is needed", "This service answers callers with a key alone. Send the header Authorization: Bearer followed by " +
		"the key."},
	{codeNotFound, 404, "There is nothing here", "The address names no call. /openapi.json lists them all."},
	{codeMethod, 405, "The method is not allowed here", "The Allow header lists the methods that are."},
	{ask.BodyTimeout, 408, "The body did not arrive in time", "Send the whole body at once, or use a query string."},
	{ask.BodyTooLarge, 413, "The body is too large", "The limits are listed at /v1/limits."},
	{codeURLTooLong, 414, "The address is too long", "Send the same names in a JSON body by POST."},
	{ask.MediaType, 415, "The body's media type is not read", "Send application/json or application/x-www-form-urlencoded, in UTF-8 and " +
		"not compressed."},
	{codeTooManyCalls, 429, "Too many calls", "Wait for as long as Retry-After says."},
	{codeOverloaded, 503, "The service is busy", "Wait for as long as Retry-After says, then send the same request again."},
	{codeDraining, 503, "The service is going down", "Another instance will answer; send the same request again."},
	{codeTookTooLong, 422, "The calculation takes too long", "It was broken off at the limit that /v1/limits lists. Sending it again does " +
		"not help; a coarser ruler or fewer parts may."},
	{codeCallerGone, 499, "The caller went away", "Nobody is left to read this; it stands in the log alone."},
	{codeInternal, 500, "Something went wrong here", "It is the service's fault, not the request's. Report the request id."},
}

// kindOf returns the row of a code; the internal one for a code without.
func kindOf(code fault.Code) *problemKind {
	for i := range problemKinds {
		if problemKinds[i].code == code {
			return &problemKinds[i]
		}
	}
	return kindOf(codeInternal)
}

// problem is an answer that is none, in the form of RFC 9457.
type problem struct {
	kind   *problemKind
	detail string
	faults fault.Faults
	hidden int    // faults that are not listed
	try    string // a corrected address, if one can be guessed
}

// problemOf chooses the kind that stands for all faults: the first that makes
// the request unreadable, or else the first.
func problemOf(faults fault.Faults) *problem {
	leading := faults[0]
	for _, f := range faults {
		if leading.Understood() && !f.Understood() {
			leading = f
		}
	}
	p := &problem{kind: kindOf(leading.Code), detail: leading.Error(), faults: faults}
	if more := len(faults) - 1; more > 0 {
		p.detail += " (and " + wire.Count(more, "more fault", "more faults") + ")"
	}
	return p
}

// single is a problem that is not about a value.
func single(code fault.Code, detail, hint string) *problem {
	return problemOf(fault.Faults{{Code: code, Detail: detail, Hint: hint}})
}

// overloaded is the problem of a call that there is no room for.
func overloaded() *problem {
	return single(codeOverloaded, "too many calculations are running", "")
}

// answer is the document.
func (p *problem) answer() *wire.Problem {
	a := &wire.Problem{Type: "/problems/" + string(p.kind.code), Title: p.kind.title, Status: p.kind.status, Detail: p.detail, NotListed: p.hidden, Try: p.try}
	for _, f := range p.faults {
		// A fault may come from elsewhere than the reader.
		value := ask.Cut(f.Value, ask.MostValue)
		a.Errors = append(a.Errors, wire.Invalid{Code: string(f.Code), Name: f.Field, Value: value, Detail: f.Detail, Expected: f.Expected, Hint: f.Hint})
	}
	return a
}

// cellLine is the whole problem as one line for a spreadsheet cell.
func (p *problem) cellLine() string {
	line := "! " + p.detail
	return ask.Cut(line, 1000)
}
