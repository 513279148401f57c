package api

import (
	"slices"
	"strings"

	"creasefit/api/ask"
	"creasefit/api/edge"
	"creasefit/api/tell"
	"creasefit/internal/fault"
)

// options is how a request wants to be answered.
type options struct {
	format   tell.Format
	byAccept bool // the address does not say which format: the Accept header does
	pick     string
	show     []string
	bare     bool // no header row
	comma    bool // decimal comma
	download string
	page     bool // a browser shows it: the text or the data in a plain page
}

// optionsOf settles how to answer and reports what contradicts itself.
// extension is that of the path, or empty.
func optionsOf(r *ask.Reading, extension, accept string, offered []tell.Format) options {
	a := &r.Answer
	o := options{
		pick:     a.Pick.Text,
		bare:     a.Header.Is("0"),
		comma:    a.Decimal.Is("comma"),
		download: a.Download.Text,
	}
	if a.Show.Text != "" {
		o.show = strings.Split(a.Show.Text, ",")
	}
	o.chooseFormat(r, extension, accept, offered)
	o.check(r)
	return o
}

// names reports whether the request names a member of the answer.
func (o *options) names(member string) bool {
	return slices.ContainsFunc(o.show, func(name string) bool { return strings.TrimSpace(name) == member }) ||
		o.pick == "/"+member || strings.HasPrefix(o.pick, "/"+member+"/")
}

// chooseFormat follows the path's extension, then format, then Accept.
func (o *options) chooseFormat(r *ask.Reading, extension, accept string, offered []tell.Format) {
	named := r.Answer.Format.Text
	chosen, ok := tell.FormatNamed(named, offered)
	switch {
	case extension != "":
		if o.format, ok = tell.FormatNamed(extension, offered); !ok {
			r.Report(fault.Fault{Code: ask.NoFormat, Field: "format", Value: extension, Detail: "there is no answer in the format that the path ends in",
				Expected: "one of " + strings.Join(tell.FormatNames(offered), ", ")}, "")
		}
		if named != "" && chosen != o.format {
			r.ReportAnswer(&r.Answer.Format.Field, "the path ends in ."+extension, "leave one of the two out")
		}
	case ok:
		o.format = chosen
	case named == "" && o.pick == "":
		o.format, o.byAccept = tell.Accepted(accept, offered), len(offered) > 1
	}
}

// check reports options that contradict each other.
func (o *options) check(r *ask.Reading) {
	a := &r.Answer
	switch {
	case o.pick != "" && !strings.HasPrefix(o.pick, "/"):
		r.ReportAnswer(&a.Pick.Field, "a JSON Pointer begins with a slash", "/"+o.pick)
	case o.pick != "" && o.show != nil:
		r.ReportAnswer(&a.Show.Field, "pick answers with one value already", "leave out pick or show")
	case o.pick != "" && (o.format.IsPicture() || o.format == tell.Markdown || o.format == tell.HTML || o.format == tell.Lines || a.Format.Is("json")):
		r.ReportAnswer(&a.Pick.Field, "a picked value is plain text, or a table in CSV or XML", "leave the format out")
	case o.show != nil && o.format != tell.JSON:
		r.ReportAnswer(&a.Show.Field, "show narrows JSON answers only", "leave out show or the format")
	}
	if !edge.IsWord(o.download) {
		r.ReportAnswer(&a.Download.Field, "a name has letters, digits, hyphens and underscores", "")
		o.download = ""
	}
}
