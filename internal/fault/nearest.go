package fault

import "strings"

// Nearest returns the name closest to got by edit distance. When none is closer than
// half of its own length it is the only one that begins or ends with got as a word of
// its own, or "": a hint for a name that was mistyped or shortened.
func Nearest(got string, names []string) string {
	best, least := "", 0
	for _, name := range names {
		d := editDistance(got, name)
		if 2*d < len(name) && (best == "" || d < least) {
			best, least = name, d
		}
	}
	if best != "" || got == "" {
		return best
	}
	for _, name := range names {
		if hasWord(name, got) {
			if best != "" {
				return ""
			}
			best = name
		}
	}
	return best
}

// hasWord reports whether a name begins or ends with a word.
func hasWord(name, word string) bool {
	for _, parted := range []string{"_", "-"} {
		if strings.HasPrefix(name, word+parted) || strings.HasSuffix(name, parted+word) {
			return true
		}
	}
	return false
}

// Meant is the hint that a name was probably meant; empty for none.
func Meant(name string) string {
	if name == "" {
		return ""
	}
	return "did you mean " + name + "?"
}

// editDistance counts the least insertions, deletions and substitutions of
// bytes that turn a into b (V. I. Levenshtein, 1966).
func editDistance(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(a); i++ {
		diagonal := row[0]
		row[0] = i
		for j := 1; j <= len(b); j++ {
			change := diagonal
			if a[i-1] != b[j-1] {
				change++
			}
			diagonal = row[j]
			row[j] = min(change, row[j]+1, row[j-1]+1)
		}
	}
	return row[len(b)]
}
