package tell

import (
	"fmt"

	"creasefit/api/wire"
)

// adaptTable has both patterns side by side, a row a size.
func adaptTable(a *wire.Adapted) table {
	t := table{header: AdaptColumns}
	for i := range a.Sizes {
		s := &a.Sizes[i]
		t.rows = append(t.rows, []any{s.Name, reading(s.Was.Reading), reading(s.Now.Reading), yesNo(s.Was.MM != s.Now.MM)})
	}
	return t
}

// appendAdaptText appends what it comes to, and each size that changes.
func appendAdaptText(dst []byte, style Style, a *wire.Adapted) []byte {
	dst = append(append(dst, a.Words...), '\n')
	for i := range a.Sizes {
		s := &a.Sizes[i]
		if s.Was.MM != s.Now.MM {
			dst = fmt.Appendf(dst, "%s: %s instead of %s\n", s.Name, style.mark(s.Now.Reading), style.mark(s.Was.Reading))
		}
	}
	return dst
}
