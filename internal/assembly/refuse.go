package assembly

import (
	"strings"

	"creasefit/internal/fault"
)

// none says that no order of work was found, and which panels stay folded when all that
// can be opened is open. The first of them is the fault's value.
func none(left []string) error {
	f := fault.Fault{Code: fault.NoProof, Detail: "no order of work was found in which this can be folded, glued and closed by hand",
		Hint: "choose another size, thickness of the stock or option"}
	if len(left) > 0 {
		f.Value = left[0]
		f.Detail += ": nothing leads to the folds of " + strings.Join(left, ", ")
	}
	return f
}

// left names the panels that are still folded.
func (t *taking) left() (names []string) {
	for h := range t.rig.Hinges {
		if g := &t.rig.Hinges[h]; t.folded(h) {
			piece := &t.p.Pieces[t.rig.Units[g.Unit].Piece]
			names = append(names, piece.Panels[piece.Creases[g.Crease].To].Name)
		}
	}
	return names
}
