package api

import (
	"slices"
	"strconv"
	"strings"
)

// format is a way of writing an answer.
type format uint8

// The formats of calculations.
const (
	formatJSON format = iota
	formatCSV
	formatXML
	formatText
	formatMarkdown
	formatHTML
	formatSVG
	formatPDF
	formatPNG
	formatDXF
	formatFOLD
	formatGLB
	formats = iota // how many there are
)

// formatInfo is what is known of one format.
type formatInfo struct {
	name, media, extension string
}

// infoOf returns what is known of the format.
func infoOf(f format) formatInfo {
	return [formats]formatInfo{
		formatJSON: {"json", "application/json", "json"},
		formatCSV:  {"csv", "text/csv; charset=utf-8", "csv"},
		formatXML:  {"xml", "application/xml", "xml"},
		formatText: {"text", "text/plain; charset=utf-8", "txt"},
		// The media type of FOLD is that of JSON, since none is registered.
		formatMarkdown: {"markdown", "text/markdown; charset=utf-8", "md"},
		formatHTML:     {"html", "text/html; charset=utf-8", "html"},
		formatSVG:      {"svg", "image/svg+xml", "svg"},
		formatPDF:      {"pdf", "application/pdf", "pdf"},
		formatPNG:      {"png", "image/png", "png"},
		formatDXF:      {"dxf", "image/vnd.dxf", "dxf"},
		formatFOLD:     {"fold", "application/json", "fold"},
		formatGLB:      {"glb", "model/gltf-binary", "glb"},
	}[f]
}

// String returns the format as it is written on the wire.
func (f format) String() string { return infoOf(f).name }

// mediaType returns the type without its parameters.
func (f format) mediaType() string {
	media, _, _ := strings.Cut(infoOf(f).media, ";")
	return media
}

// formatNames lists the formats as they are written on the wire.
func formatNames(list []format) []string {
	names := make([]string, len(list))
	for i, f := range list {
		names[i] = f.String()
	}
	return names
}

// formatNamed finds a format by its name or by its file extension.
func formatNamed(name string, offered []format) (format, bool) {
	for _, f := range offered {
		if name == f.String() || name == infoOf(f).extension {
			return f, true
		}
	}
	return formatJSON, false
}

// acceptedFormat chooses by an Accept header: the offered format with the
// highest quality, the earlier one of equals. A header that nothing satisfies
// gets JSON, since spreadsheets send odd ones. decided says that the header
// made a difference.
func acceptedFormat(accept string, offered []format) (chosen format, decided bool) {
	if accept == "" || accept == "*/*" || accept == "application/json" {
		return offered[0], accept != "" && accept != "*/*"
	}
	best := 0.0
	for _, f := range offered {
		if q := quality(accept, f.mediaType()); q > best {
			chosen, best = f, q
		}
	}
	if best == 0 {
		return offered[0], true
	}
	return chosen, true
}

// quality returns how much an Accept header wants a media type, 0 to 1: the
// weight of the most specific range that matches (RFC 9110, 12.5.1).
func quality(accept, media string) float64 {
	kind, _, _ := strings.Cut(media, "/")
	best, rank := 0.0, 0
	for item := range strings.SplitSeq(accept, ",") {
		name, parameters, _ := strings.Cut(item, ";")
		ranges := []string{"*/*", kind + "/*", media}
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
