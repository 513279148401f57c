package edge

import (
	"crypto/sha256"
	"encoding/base64"
	"strings"
)

// Tag returns a strong entity tag for what identifies an answer. The suffixes
// are for people to read: its format, its encoding.
func Tag(identity []byte, suffixes ...string) string {
	sum := sha256.Sum256(identity)
	tag := append(make([]byte, 0, 40), '"')
	tag = base64.RawURLEncoding.AppendEncode(tag, sum[:12])
	for _, suffix := range suffixes {
		if suffix != "" {
			tag = append(append(tag, '-'), suffix...)
		}
	}
	return string(append(tag, '"'))
}

// Matches reports whether an If-None-Match header names the tag (RFC 9110,
// 13.1.2: compared weakly, with any of the list). A star matches no tag here:
// it asks whether there is any answer, which AnyTag tells.
func Matches(header, tag string) bool {
	if header == "" {
		return false
	}
	for item := range strings.SplitSeq(header, ",") {
		if strings.TrimPrefix(strings.TrimSpace(item), "W/") == strings.TrimPrefix(tag, "W/") {
			return true
		}
	}
	return false
}

// AnyTag reports whether an If-None-Match header asks for nothing if there is
// any answer at all.
func AnyTag(header string) bool { return strings.TrimSpace(header) == "*" }
