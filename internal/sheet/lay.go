package sheet

import (
	"fmt"

	"creasefit/internal/measure"
)

// Extent is the size of a rectangle.
type Extent struct{ Width, Height measure.Length }

// Along returns the side along an axis.
func (e Extent) Along(a Axis) measure.Length {
	if a == Width {
		return e.Width
	}
	return e.Height
}

// Divide returns the two parts of a rectangle that is cut: the low one is at
// long, the kerf comes off the high one.
func (o Order) Divide(a Axis, at measure.Length, have Extent) (low, high Extent) {
	rest := measure.Max(measure.Length{}, measure.Sum(have.Along(a), at.Neg(), o.Kerf.Neg()))
	if a == Width {
		return Extent{at, have.Height}, Extent{rest, have.Height}
	}
	return Extent{have.Width, at}, Extent{have.Width, rest}
}

// Lay returns the plan of one sheet that is cut by a tree: where its blanks and
// offcuts lie, and the steps that cut them, without words.
func (o Order) Lay(stock int, tree *Node) Sheets { return o.lay(stock, tree, false) }

// Described returns a plan with the words of its steps.
func (o Order) Described(s Sheets) Sheets {
	s.Steps = o.lay(s.Stock, s.Tree, true).Steps
	return s
}

// lay plans one sheet, with words or without.
func (o Order) lay(stock int, tree *Node, words bool) Sheets {
	w, h := o.Usable(stock)
	s := Sheets{Times: 1, Stock: stock, Usable: Rect{o.Margin, o.Margin, w, h}, Tree: tree}
	s.place(o, tree, Rect{Width: w, Height: h})
	st := &stepper{order: o, words: words}
	j := st.trims(stock)
	j.node = tree
	st.run(j)
	s.Steps, s.Parts = st.steps, st.ends
	return s
}

// place walks a tree and appends where its blanks and offcuts lie.
func (s *Sheets) place(o Order, n *Node, at Rect) {
	switch {
	case n.IsCut():
	case n.Item != Offcut:
		s.Placed = append(s.Placed, Placement{n.Item, n.Turned, at})
		return
	default:
		if at.Width.Sign() > 0 && at.Height.Sign() > 0 { // else the kerf took it whole
			s.Offcuts = append(s.Offcuts, at)
		}
		return
	}
	low, high := o.Divide(n.Cut, n.At, Extent{at.Width, at.Height})
	s.place(o, n.Low, Rect{at.X, at.Y, low.Width, low.Height})
	if n.Cut == Width {
		s.place(o, n.High, Rect{at.X.Add(at.Width).Sub(high.Width), at.Y, high.Width, high.Height})
	} else {
		s.place(o, n.High, Rect{at.X, at.Y.Add(at.Height).Sub(high.Height), high.Width, high.Height})
	}
}

// ItemName names an item in a step.
func (o Order) ItemName(i int) string {
	if o.Items[i].Name != "" {
		return o.Word(o.Items[i].Name)
	}
	return fmt.Sprintf(o.Word("item %d"), i+1)
}
