package solve

import (
	"slices"

	"creasefit/internal/enclosure"
	"creasefit/internal/mail"
)

// MailTraits is what posts ask about the finished piece and the solution knows:
// whether it is a box, whether it bends, and whether it is equally thick all
// over. What the contents are is not known; those that are to stay flat are
// taken to bend.
func (s *Solution) MailTraits() mail.Trait {
	var traits mail.Trait
	if s.Request.Kind.Box {
		traits |= mail.Box
	}
	if s.Request.Kind.Box || s.Request.stiff() {
		traits |= mail.Rigid
	}
	if slices.ContainsFunc(s.plan.Fits, func(f enclosure.Fit) bool { return f.Curve != nil }) {
		traits |= mail.Uneven // its sides are curved
	}
	return traits
}

// Mailed is the finished piece as posts see it. Its mass is not known, since
// only that of the paper is.
func (s *Solution) Mailed() mail.Piece {
	return mail.Piece{Width: s.Outside.Width, Height: s.Outside.Height, Thickness: s.Outside.Thickness, Traits: s.MailTraits()}
}
