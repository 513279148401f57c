package sheet

// generate prices patterns by column generation: the linear program over the
// patterns known so far prices the kinds, and the most valuable sheet at those
// prices is a new pattern, until none is worth more than it costs.
func (pl *planner) generate() {}
