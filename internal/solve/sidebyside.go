package solve

import (
	"slices"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// SideBySide is one pattern of all pieces of a portfolio, for drawings: folded
// up, the layers stand beside one another, the innermost on the left with the
// contents in it. The caliper is that of the thickest stock. Names come from
// name, which is asked for a piece of "" where a layer has only one; nothing is
// to be proven of it.
func (p *Portfolio) SideBySide(name func(l *Layer, piece string) string) pattern.Pattern {
	all := pattern.Pattern{Cavity: p.Solutions[0].Pattern.Cavity}
	var right measure.Length // of all that stands so far
	for i, s := range p.Solutions {
		first := len(all.Pieces)
		var widest measure.Length
		for _, piece := range s.Pattern.Pieces {
			if len(s.Pattern.Pieces) == 1 {
				piece.Name = ""
			}
			piece.Name = name(&p.Layers[i], piece.Name)
			all.Pieces = append(all.Pieces, piece)
			widest = measure.Max(widest, measure.Max(piece.Width, piece.Height))
		}
		if i > 0 {
			place := pattern.Place{Piece: first, On: first, X: right}
			all.Places = append(all.Places, slices.Repeat([]pattern.Place{place}, s.Pattern.Pieces[0].Quantity)...)
		}
		for _, place := range s.Pattern.Places {
			place.Piece, place.On = place.Piece+first, place.On+first
			all.Places = append(all.Places, place)
		}
		for _, bond := range s.Pattern.Bonds {
			bond.A, bond.B = bond.A+first, bond.B+first
			all.Bonds = append(all.Bonds, bond)
		}
		right = right.Add(widest)
		all.Caliper = measure.Max(all.Caliper, s.Pattern.Caliper)
	}
	return all
}
