package solve

import "creasefit/internal/settings"

// Settings lists the stops that the solution is made with, measured from the
// edges that its chance counts on.
func (s *Solution) Settings() []settings.Setting {
	return settings.Of(&s.Pattern, s.Step, s.Request.Ruler, s.Sure.Datum)
}
