package api

import (
	"slices"
	"strings"

	"creasefit/api/ask"
	"creasefit/internal/fault"
)

// mostColumns is how many columns a table has, and how many pointers columns
// may name.
const mostColumns = 256

// batchOrder is what the query of a batch says.
type batchOrder struct {
	call, kind string    // of lines that name none
	usual      ask.Usual // the names of lines that do not say them
	columns    []string  // pointers to the values of a table with one row a line; none for all rows
	bare       bool      // a table has no header row
}

// readOrder reads the query of a batch. A name that no line could have is
// refused, as it is in a call of its own.
func (s *batches) readOrder(raw string) (batchOrder, fault.Faults) {
	usual, faults := ask.ReadUsual(raw)
	always := func(string) bool { return true }
	isPointer := func(text string) bool { return strings.HasPrefix(text, "/") }
	o := batchOrder{call: usual.Take("call", always), kind: usual.Take("kind", always), bare: usual.Take("header", always) == "0"}
	if columns := usual.Take("columns", isPointer); columns != "" {
		o.columns = strings.Split(columns, ",")
	}
	usual.Take("errors", always) // of the batch as a whole; a line has its problem in its place
	for _, f := range s.wrongOrder(&o, &usual) {
		if len(faults) < ask.MostReported {
			faults = append(faults, f)
		}
	}
	o.usual = usual
	return o, faults
}

// wrongOrder lists what is wrong with the query of a batch.
func (s *batches) wrongOrder(o *batchOrder, usual *ask.Usual) (faults fault.Faults) {
	for _, pointer := range o.columns {
		if !strings.HasPrefix(pointer, "/") {
			faults = append(faults, fault.Fault{Code: fault.Unreadable, Field: "columns", Value: pointer, Detail: "a JSON Pointer begins with a slash",
				Expected: "pointers parted by commas, such as /pieces/0/blank/width/reading,/sure/chance", Hint: "/" + pointer})
		}
	}
	if len(o.columns) > mostColumns {
		faults = append(faults, fault.Fault{Code: fault.TooMany, Field: "columns", Detail: "there are too many pointers", Expected: "at most 256"})
	}
	calls := s.callsOf(o.call, o.kind)
	if o.call != "" && len(calls) == 0 {
		f := s.noSuchCall(o.call)
		f.Code = fault.Unknown
		return append(faults, f)
	}
	usual.Each(func(name, text string) {
		switch {
		case name == "format" || name == "download":
			faults = append(faults, fault.Fault{Code: fault.Conflict, Field: name, Value: text, Detail: "a batch is answered in the form that it is sent in", Hint: "leave " + name + " out"})
		case !slices.ContainsFunc(calls, func(c lineCall) bool { return slices.Contains(c.words(), name) }):
			faults = append(faults, unknownInBatch(name, text, calls))
		}
	})
	return faults
}

// unknownInBatch is the fault of a name that no line could have.
func unknownInBatch(name, text string, calls []lineCall) fault.Fault {
	names := []string{"call", "kind", "columns", "header"}
	for _, c := range calls {
		names = append(names, c.words()...)
	}
	return fault.Fault{Code: fault.Unknown, Field: name, Value: text, Detail: "no line of this batch could have such a name",
		Expected: "call, kind, columns, header, or a name of the call", Hint: fault.Meant(fault.Nearest(strings.ToLower(name), names))}
}

// pathOf is the path of a call that is named in full, without its version, or
// without its kind, which stands beside it.
func (s *batches) pathOf(call, kind string) string {
	path := strings.TrimSuffix(call, "/")
	if path != "" && !strings.HasPrefix(path, "/v1/") {
		path = "/v1/" + strings.TrimPrefix(path, "/")
	}
	if full := path + "/" + kind; kind != "" && s.lines[path] == nil {
		return full
	}
	return path
}

// callsOf lists the calls that lines may name which leave out what is given
// here: one, those of every kind, or all.
func (s *batches) callsOf(call, kind string) []lineCall {
	path := s.pathOf(call, kind)
	if one := s.lines[path]; one != nil {
		return []lineCall{one}
	}
	var all []lineCall
	for other, c := range s.lines {
		if call == "" || familyOf(other) == path {
			all = append(all, c)
		}
	}
	return all
}

// familyOf is the part of a path that calls about all kinds have in common.
func familyOf(path string) string {
	if i := strings.LastIndexByte(path, '/'); i > len("/v1") {
		return path[:i]
	}
	return path
}

// familyKnows reports whether any call that differs from this one in its kind
// alone knows a name. Such a column of a table is meant as a name; any other is
// passed through.
func (s *batches) familyKnows(path, name string) bool {
	return s.families()[familyOf(path)][name]
}

// nameFamilies lists the names that the calls of every family know.
func (s *batches) nameFamilies() map[string]map[string]bool {
	families := map[string]map[string]bool{}
	for path, c := range s.lines {
		known := families[familyOf(path)]
		if known == nil {
			known = map[string]bool{}
			families[familyOf(path)] = known
		}
		for _, name := range c.words() {
			known[name] = true
		}
	}
	return families
}
