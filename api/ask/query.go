package ask

import (
	"net/url"
	"strings"

	"creasefit/internal/fault"
)

// AddQuery adds the pairs of a query string or of a form body, in the order
// written. Unlike url.Query it refuses what it cannot decode, since a pair
// that is dropped in silence changes the answer.
func (r *Reading) AddQuery(raw string) {
	for raw != "" {
		var pair string
		pair, raw, _ = strings.Cut(raw, "&")
		if pair == "" {
			continue
		}
		if len(r.fields) == MostNames {
			r.Report(tooManyFields(), "")
			return
		}
		r.addPair(pair)
	}
}

// addPair adds one name=value.
func (r *Reading) addPair(pair string) {
	if strings.Contains(pair, ";") {
		r.Report(fault.Fault{Code: fault.Unreadable, Value: pair, Detail: "names are separated by &, not by a semicolon",
			Expected: "name=value pairs joined by &", Hint: "write %3B for a semicolon inside a value"}, "")
		return
	}
	name, text, _ := strings.Cut(pair, "=")
	decodedName, err := url.QueryUnescape(name)
	if err == nil {
		text, err = url.QueryUnescape(text)
	}
	if err != nil {
		r.Report(fault.Fault{Code: fault.Unreadable, Field: decodedName, Value: pair, Detail: "the percent sign does not begin two hexadecimal digits",
			Expected: "percent-encoded UTF-8", Hint: "write %25 for a percent sign"}, "")
		return
	}
	r.Add(decodedName, text)
}

// tooManyFields is the fault of a request with more names than are taken.
func tooManyFields() fault.Fault {
	return fault.Fault{Code: fault.TooMany, Detail: "the request has too many names", Expected: "at most 64 names"}
}
