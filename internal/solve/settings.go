package solve

import "creasefit/internal/settings"

// Settings lists the stops that the solution is made with.
func (s *Solution) Settings() []settings.Setting {
	return settings.Of(&s.Pattern, s.Step, settings.Nearer)
}
