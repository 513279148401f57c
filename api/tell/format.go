// Package tell writes answers: which format a caller gets, and how a value of
// package wire is written in it.
//
// It computes nothing and knows no requests.
package tell

import (
	"slices"
	"strconv"
	"strings"

	"creasefit/api/wire"
)

// Format is a way of writing an answer.
type Format uint8

// The formats of calculations.
const (
	JSON Format = iota
	CSV
	XML
	Text
	Markdown
	HTML
	Lines // one JSON value a line, while they are computed
	SVG
	PDF
	PNG
	DXF
	FOLD
	GLB
	formats = iota // how many there are
)

// formatInfo is what is known of one format.
type formatInfo struct {
	name, media, extension string
}

// infos are what is known of each format.
var infos = [formats]formatInfo{
	JSON: {"json", "application/json", "json"},
	CSV:  {"csv", "text/csv; charset=utf-8", "csv"},
	XML:  {"xml", "application/xml", "xml"},
	Text: {"text", "text/plain; charset=utf-8", "txt"},
	// The media type of FOLD is that of JSON, since none is registered.
	Markdown: {"markdown", "text/markdown; charset=utf-8", "md"},
	HTML:     {"html", "text/html; charset=utf-8", "html"},
	Lines:    {"ndjson", "application/x-ndjson", "ndjson"},
	SVG:      {"svg", "image/svg+xml", "svg"},
	PDF:      {"pdf", "application/pdf", "pdf"},
	PNG:      {"png", "image/png", "png"},
	DXF:      {"dxf", "image/vnd.dxf", "dxf"},
	FOLD:     {"fold", "application/json", "fold"},
	GLB:      {"glb", "model/gltf-binary", "glb"},
}

// String returns the format as it is written on the wire.
func (f Format) String() string { return infos[f].name }

// Media returns the media type with its parameters.
func (f Format) Media() string { return infos[f].media }

// Extension returns the extension of files in the format, without a dot.
func (f Format) Extension() string { return infos[f].extension }

// MediaType returns the media type without its parameters.
func (f Format) MediaType() string {
	media, _, _ := strings.Cut(infos[f].media, ";")
	return media
}

// IsPicture reports whether the format is drawn rather than written.
func (f Format) IsPicture() bool { return f >= SVG }

// FormatNames lists the formats as they are written on the wire.
func FormatNames(list []Format) []string {
	return wire.Each(list, Format.String)
}

// FormatNamed finds a format by its name or by its file extension.
func FormatNamed(name string, offered []Format) (Format, bool) {
	for _, f := range offered {
		if name == f.String() || name == infos[f].extension {
			return f, true
		}
	}
	return JSON, false
}

// Accepted chooses by an Accept header: the offered format with the highest
// quality, the earlier one of equals. A header that nothing satisfies gets the
// first one, since spreadsheets send odd ones. A browser, which would rather have
// XML than JSON if there is no page, can show JSON as well.
func Accepted(accept string, offered []Format) Format {
	if accept == "" || accept == "*/*" || accept == "application/json" {
		return offered[0]
	}
	chosen, best := offered[0], 0.0
	browser := strings.Contains(accept, "text/html")
	for _, f := range offered {
		media := f.MediaType()
		kind, _, _ := strings.Cut(media, "/")
		if q := Quality(accept, "*/*", kind+"/*", media); q > best && !(browser && f == XML) {
			chosen, best = f, q
		}
	}
	return chosen
}

// Quality returns how much a header such as Accept wants something, 0 to 1: the weight
// of the last of its ranges that the header has, from the widest to the thing itself
// (RFC 9110, 12.5.1).
func Quality(header string, ranges ...string) float64 {
	best, rank := 0.0, 0
	for item := range strings.SplitSeq(header, ",") {
		name, parameters, _ := strings.Cut(item, ";")
		if r := slices.Index(ranges, strings.ToLower(strings.TrimSpace(name))) + 1; r > rank {
			best, rank = weight(parameters), r
		}
	}
	return best
}

// weight reads the q parameter; 1 if there is none, 0 if it is no weight.
func weight(parameters string) float64 {
	for p := range strings.SplitSeq(parameters, ";") {
		name, text, _ := strings.Cut(p, "=")
		if strings.EqualFold(strings.TrimSpace(name), "q") {
			q, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
			if err != nil || !(q >= 0 && q <= 1) {
				return 0
			}
			return q
		}
	}
	return 1
}
