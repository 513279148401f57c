package tell

import (
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
