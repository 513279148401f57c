package own

import "creasefit/internal/enclosure"

// sides are the words for the lower and the upper side of each size of the contents, as
// they lie on the panel that holds them.
var sides = [3][2]string{{"left", "right"}, {"bottom", "top"}, {"back", "front"}}

// openSides warns of sides where nothing keeps the contents in, unless the design says
// that they are meant to be open.
func (p *planner) openSides() {
	if p.goesInto() {
		return
	}
	for k, w := range p.panels[p.floor].ways() {
		walls := p.shown.walls[k]
		if w.sign < 0 {
			walls[0], walls[1] = walls[1], walls[0]
		}
		open := [2]bool{walls[0] < 0, walls[1] < 0}
		if p.Open[k] || !open[0] && !open[1] || p.in.Width.IsZero() {
			continue
		}
		at := sides[k][0]
		switch {
		case open[0] && open[1]:
			at += " and at the " + sides[k][1]
		case open[1]:
			at = sides[k][1]
		}
		p.plan.Warnings = append(p.plan.Warnings, enclosure.Warning{Code: "open-side",
			Detail: "Nothing keeps the contents in at the " + at + ": hang a panel there, or say \"open\": [\"" + axes[k] + "\"] if it is meant so."})
	}
}
