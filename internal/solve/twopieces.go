package solve

import (
	"context"
	"slices"

	"creasefit/internal/enclosure"
)

// tooLarge is the code of the warning of a blank that is larger than the sheet.
const tooLarge = "larger-than-sheet"

// offerTwoPieces adds to each warning of a blank that is larger than the sheet
// that the kind can be made in two pieces, if all of these come out of it. The
// error is the context's.
func (s *Solution) offerTwoPieces(ctx context.Context) error {
	if !slices.ContainsFunc(s.Warnings, ofTooLarge) {
		return nil
	}
	option, fits, err := s.Request.inTwoPieces(ctx)
	if err != nil || !fits {
		return err
	}
	for i := range s.Warnings {
		if w := &s.Warnings[i]; ofTooLarge(*w) {
			w.Try = option
			w.Detail += " In two pieces it does: " + option.Name + "=" + option.Choice + "."
		}
	}
	return nil
}

// ofTooLarge reports whether a warning is of a blank that is larger than the
// sheet.
func ofTooLarge(w enclosure.Warning) bool { return w.Code == tooLarge }

// inTwoPieces reports whether the request has an answer in two pieces, each of
// which comes out of the sheet, and the option that asks for it.
func (r *Request) inTwoPieces(ctx context.Context) (option enclosure.Option, fits bool, err error) {
	option, offered := r.Kind.InTwoPieces()
	if !offered || r.Options[option.Name].Choice == option.Choice {
		return option, false, nil
	}
	changed := r.with(option)
	s, err := Solve(ctx, &changed)
	if err != nil {
		return option, false, ctx.Err() // it cannot be made in two pieces either
	}
	defer s.GiveBack()
	return option, !slices.ContainsFunc(s.Warnings, ofTooLarge), nil
}
