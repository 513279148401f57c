package api

import (
	"strings"

	"creasefit/api/tell"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// options is how a request wants to be answered.
type options struct {
	format   tell.Format
	byAccept bool // the Accept header decided the format
	pick     string
	show     []string
	bare     bool // no header row
	comma    bool // decimal comma
	download string
	cell     bool // errors are one line with status 200
}

// answerText returns the text of a name that says how to answer.
func (r *reading) answerText(name string) string {
	i, ok := r.table.index[name]
	if !ok {
		return ""
	}
	return r.values[i].text
}

// options settles how to answer. extension is that of the path, or empty.
func (r *reading) options(extension, accept string, offered []tell.Format) options {
	o := options{
		pick:     r.answerText("pick"),
		bare:     r.answerText("header") == "0",
		comma:    r.decimal == measure.DecimalComma,
		download: r.answerText("download"),
		cell:     r.answerText("errors") == "cell",
	}
	if show := r.answerText("show"); show != "" {
		o.show = strings.Split(show, ",")
	}
	r.chooseFormat(&o, extension, accept, offered)
	r.checkOptions(&o)
	return o
}

// chooseFormat follows the path's extension, then format, then Accept.
func (r *reading) chooseFormat(o *options, extension, accept string, offered []tell.Format) {
	named := r.answerText("format")
	chosen, ok := tell.FormatNamed(named, offered)
	switch {
	case extension != "":
		r.followExtension(o, extension, offered)
		if named != "" && chosen != o.format {
			r.reportOption("format", "the path ends in ."+extension, "leave one of the two out")
		}
	case ok:
		o.format = chosen
	case named == "" && o.pick == "":
		o.format, o.byAccept = tell.Accepted(accept, offered)
	}
}

// followExtension takes the format that the path ends in.
func (r *reading) followExtension(o *options, extension string, offered []tell.Format) {
	var ok bool
	if o.format, ok = tell.FormatNamed(extension, offered); !ok {
		r.report(fault.Fault{Code: fault.Unknown, Field: "format", Value: extension, Detail: "there is no answer in the format that the path ends in",
			Expected: "one of " + strings.Join(tell.FormatNames(offered), ", ")}, "")
	}
}

// checkOptions reports options that contradict each other.
func (r *reading) checkOptions(o *options) {
	explicit := r.answerText("format")
	switch {
	case o.pick != "" && !strings.HasPrefix(o.pick, "/"):
		r.reportOption("pick", "a JSON Pointer begins with a slash", "/"+o.pick)
	case o.pick != "" && o.show != nil:
		r.reportOption("show", "pick answers with one value already", "leave out pick or show")
	case o.pick != "" && (o.format != tell.JSON && o.format != tell.Text || explicit == "json"):
		r.reportOption("pick", "a picked value is plain text", "leave the format out")
	case o.show != nil && o.format != tell.JSON:
		r.reportOption("show", "show narrows JSON answers only", "leave out show or the format")
	}
	if !isFileName(o.download) {
		r.reportOption("download", "a name has letters, digits, hyphens and underscores", "")
		o.download = ""
	}
}

// reportOption reports a name that says how to answer.
func (r *reading) reportOption(name, detail, hint string) {
	r.report(fault.Fault{Code: fault.Conflict, Field: name, Value: r.answerText(name), Detail: detail, Hint: hint}, "")
}

// isFileName reports whether the text is safe as the name of a download.
func isFileName(name string) bool {
	for _, c := range []byte(name) {
		switch {
		case 'a' <= c && c <= 'z', 'A' <= c && c <= 'Z', '0' <= c && c <= '9', c == '-', c == '_':
		default:
			return false
		}
	}
	return true
}
