package sheet

import "creasefit/internal/measure"

// Turns lists how an item may lie on a sheet: as given, turned, or both,
// depending on the grain; in no way on another paper. A grain-locked item has no way to lie on a sheet
// whose grain is not known.
func (o Order) Turns(item, stock int) []bool {
	it, grain := o.Items[item], o.Sheets[stock].Grain
	switch {
	case it.Paper != o.Sheets[stock].Paper:
		return nil
	case it.Grain == AnySide && it.Width == it.Height:
		return []bool{false}
	case it.Grain == AnySide:
		return []bool{false, true}
	case grain == AnySide:
		return nil
	default:
		return []bool{it.Grain != grain}
	}
}

// Lying returns an item's extent along the sheet's width and height.
func (it Item) Lying(turned bool) (width, height measure.Length) {
	if turned {
		return it.Height, it.Width
	}
	return it.Width, it.Height
}

// Reachable reports whether edge-to-edge cuts no longer than the trimmer can
// free an item lying so. A blank with a side longer than the trimmer is never
// cut along that side, so it must span the whole sheet the other way, with no
// margin there to trim.
func (o Order) Reachable(item, stock int, turned bool) bool {
	w, h := o.Items[item].Lying(turned)
	uw, uh := o.Usable(stock)
	if uw.Less(w) || uh.Less(h) {
		return false
	}
	if o.Trimmer.IsZero() {
		return true
	}
	if _, late := o.trimsLate(stock); !late && !o.trimsFirst(stock, Width) && !o.trimsFirst(stock, Height) {
		return false
	}
	s := o.Sheets[stock]
	whole := w == s.Width && h == s.Height
	if o.Trimmer.Less(measure.Min(s.Width, s.Height)) {
		return whole
	}
	wide, high := o.Trimmer.Less(w), o.Trimmer.Less(h)
	return (!wide || h == s.Height) && (!high || w == s.Width)
}
