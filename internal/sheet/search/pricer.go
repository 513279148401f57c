package search

import "creasefit/internal/sheet"

// pricer finds the most valuable way to cut a board, with unlimited copies.
type pricer interface {
	// solve returns the greatest value for the given value of each kind; ok is
	// false if it was cut short.
	solve(e *effort, value []int64) (most int64, ok bool)
	// trace returns a layout of that value, nil if it is zero.
	trace() *layout
}

// exactOn lists pricers that together find the most valuable sheet of a board that
// the order allows: of any number of stages, or of as many as it says.
func (p *problem) exactOn(b *board) []pricer {
	if p.order.Stages == 0 {
		return []pricer{newTable(b)}
	}
	return rowsOn(b, p.order.Stages > 2, false)
}

// rowsOn lists pricers of rows along both sides of a board.
func rowsOn(b *board, stacks, trims bool) []pricer {
	return []pricer{newStaged(b, sheet.Width, stacks, trims), newStaged(b, sheet.Height, stacks, trims)}
}
