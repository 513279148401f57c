package edge

import "strings"

// Trace returns the trace and the span of a traceparent header (W3C Trace
// Context, version 00 and those that extend it); empty for anything else.
func Trace(header string) (trace, span string) {
	parts := strings.Split(header, "-")
	if len(parts) < 4 || len(parts[0]) != 2 || parts[0] == "ff" || parts[0] == "00" && len(parts) != 4 ||
		!isID(parts[1], 32) || !isID(parts[2], 16) || len(parts[3]) != 2 {
		return "", ""
	}
	return parts[1], parts[2]
}

// isID reports whether a text is that many lower-case hexadecimal digits, not
// all of them zero.
func isID(text string, long int) bool {
	return len(text) == long && strings.Trim(text, "0123456789abcdef") == "" && strings.Trim(text, "0") != ""
}
