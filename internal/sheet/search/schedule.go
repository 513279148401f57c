package search

import (
	"math"
	"slices"
)

// firstShare is the effort that every way is lent in its first turn, about three
// milliseconds; it doubles from turn to turn.
const firstShare = 1 << 20

// run has all ways take turns until the best plan is proven or time is up. The
// order of work does not depend on the time there is: more of it only goes on.
func (pl *planner) run() {
	if pl.weights == nil {
		pl.rest = (*planner).runRest
		pl.begin()
		switch {
		case pl.order.Stages > 0:
			pl.ways = []way{pl.boundingByRaster(), pl.generating(), pl.filling}
		case pl.pieces() > mostReworked: // rework moves single pieces
			pl.ways = []way{pl.boundingByRaster(), pl.generating(), pl.enumerating()}
		case pl.pieces() > manyPieces: // rounding a fractional plan loses little
			pl.ways = []way{pl.boundingByRaster(), pl.generating(), pl.reworking(), pl.enumerating()}
		case int64(len(pl.kinds))*pl.dearest() > manyTogether*pl.lower:
			pl.ways = []way{pl.reworking(), pl.boundingByRaster(), pl.fitOneSheet}
		default:
			pl.ways = []way{pl.reworking(), pl.boundingByRaster(), pl.fitOneSheet, pl.enumerating(), pl.generating()}
		}
	}
	pl.take()
}

// runRest is run for what a part of a plan leaves.
func (pl *planner) runRest() {
	pl.begin()
	pl.ways = []way{pl.reworking(), pl.boundingByRaster(), pl.enumerating()}
	if pl.order.Stages > 0 {
		pl.ways = []way{pl.filling}
	}
	pl.take()
}

// begin proves cheap bounds and makes a first plan, whatever that takes.
func (pl *planner) begin() {
	pl.boundByArea()
	pl.boundByExtents()
	pl.offer(pl.greedy.run(1, 0.3, math.MaxInt64))
	pl.tryGreedy(8, 4)
	if !pl.done() { // it settles small orders, for work that is known before
		pl.within(1, 2, func() { pl.fitOneSheet(0) })
	}
}

// take gives the ways their turns.
func (pl *planner) take() {
	for ; len(pl.ways) > 0 && !pl.done() && !pl.ended(); pl.turn++ {
		pl.ways = slices.DeleteFunc(pl.ways, func(next way) bool {
			again := true
			if !pl.done() && !pl.ended() {
				pl.lend(firstShare<<min(pl.turn, 40), func() { again = next(pl.turn) })
			}
			return !again
		})
	}
}

// manyTogether is how many different blanks on a sheet, on average, are too many for all
// sets of them to be of use.
const manyTogether = 16

// Above manyPieces rounding a fractional plan loses little.
const manyPieces = 100
