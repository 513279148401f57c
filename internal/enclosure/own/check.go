package own

import (
	"maps"
	"slices"
	"strconv"
	"strings"

	"creasefit/internal/fault"
)

// check finds what is wrong with a design as a whole: names that are given twice
// or belong to nothing, panels that hang on no root, and what there is too much of.
func (r *reader) check(d *Design) {
	if len(d.Pieces) == 0 {
		r.report(fault.Missing, "pieces", "the design has no piece", "at least one, with its panels", "")
	}
	c, pieces := references{r, map[string]*Panel{}}, map[string]bool{}
	for i := range d.Pieces {
		p := &d.Pieces[i]
		if pieces[p.Name] {
			r.report(fault.Repeated, under(p.place, "piece"), "another piece has this name", "", "give every piece a name of its own")
		}
		if inner := p.holds(); inner != "" && !pieces[inner] {
			r.report(fault.Unknown, p.place, "no piece before it is called "+inner, "", "list the inner piece first")
		}
		pieces[p.Name] = true
		c.piece(p, len(d.Pieces) == 1)
		c.tree(p)
	}
	if count := len(d.panels()); count > MostPanels {
		r.report(fault.TooMany, "pieces", "the design has "+strconv.Itoa(count)+" panels", "at most "+strconv.Itoa(MostPanels), "")
	}
	c.design(d)
}

// references finds names that belong to nothing.
type references struct {
	*reader
	panels map[string]*Panel
}

// place is where a panel may hang.
type place struct {
	on   string
	edge Edge
}

// piece finds out whether a piece has one root, and one panel at an edge.
func (c *references) piece(p *Piece, alone bool) {
	if len(p.Panels) == 0 {
		c.report(fault.Missing, under(p.place, "panels"), "the piece has no panels", "", "begin with the panel that lies still")
	}
	if i := p.rolled(); i >= 0 && (!alone || i != 1 || len(p.Panels) != 2 || p.Panels[0].Up.Fixed.Size == "" || p.Panels[1].Reach.Fixed.Size == "") {
		c.report(fault.Conflict, under(p.place, "panels"), "what is rolled is one piece, a panel and its lap", "a root whose up is a named size, and one panel on it whose reach is one", "")
	}
	roots, edges := 0, map[place]string{}
	for i := range p.Panels {
		panel := &p.Panels[i]
		if c.panels[panel.Name] != nil {
			c.report(fault.Repeated, under(panel.place, "panel"), "another panel is called "+panel.Name, "", "give every panel a name of its own")
		}
		c.panels[panel.Name] = panel
		if panel.On == "" {
			if roots++; roots > 1 {
				c.report(fault.Missing, under(panel.place, "on"), "nothing says what "+panel.Name+" hangs on", "the name of a panel of the piece", "one panel of a piece hangs on nothing")
			}
			continue
		}
		at := place{panel.On, panel.Edge}
		if other := edges[at]; other != "" {
			c.report(fault.Conflict, under(panel.place, "edge"), other+" hangs at this edge already", "", "hang it on another edge, or on "+other)
		}
		edges[at] = panel.Name
	}
	if len(p.Panels) > 0 && roots == 0 {
		c.report(fault.Missing, under(p.place, "panels"), "every panel hangs on another one: none lies still", "", "leave on out for one of them")
	}
}

// tree reports panels that hang in a circle, on a panel of another piece, or on the edge
// that their own parent is at.
func (r *reader) tree(p *Piece) {
	byName := map[string]*Panel{}
	for i := range p.Panels {
		byName[p.Panels[i].Name] = &p.Panels[i]
	}
	for i := range p.Panels {
		panel := &p.Panels[i]
		if panel.On == "" {
			continue
		}
		on := byName[panel.On]
		if on == nil {
			r.report(fault.Unknown, under(panel.place, "on"), "the piece has no panel called "+panel.On, "", nearest(panel.On, slices.Collect(maps.Keys(byName))))
			continue
		}
		if on.On != "" && panel.Edge == on.Edge.opposite() {
			r.report(fault.Conflict, under(panel.place, "edge"), panel.On+" itself hangs by this edge", "", "hang it on "+on.On+", or on another edge")
		}
		steps := 0
		for at := panel; at != nil && at.On != "" && steps <= len(p.Panels); steps++ {
			at = byName[at.On]
		}
		if steps > len(p.Panels) {
			r.report(fault.Conflict, under(panel.place, "on"), panel.Name+" hangs on itself, by way of others", "", "lead every panel back to the one that lies still")
		}
	}
}

func (c *references) design(d *Design) {
	c.panel("holds", d.Holds)
	for _, p := range d.panels() {
		c.reach(under(p.place, "reach"), &p.Reach)
		c.reach(under(p.place, "across"), &p.Across)
		c.reach(under(p.place, "up"), &p.Up)
	}
	for i := range d.Joins {
		j := &d.Joins[i]
		c.panel(j.place, j.A.Panel)
		c.panel(j.place, j.B.Panel)
		if j.A.Panel == j.B.Panel && j.A.Panel != "" {
			c.report(fault.Conflict, j.place, "both are "+j.A.Panel, "", "name two panels")
		}
	}
}

func (c *references) reach(place string, to *Reach) {
	for _, name := range [...]string{to.Like, to.Of} {
		root, high := strings.CutPrefix(name, heightOf)
		if c.panel(place, root); high && c.panels[root] != nil && c.panels[root].On != "" {
			c.report(fault.Conflict, place, root+" hangs on another panel and has no height of its own", "", "name the panel that it hangs on")
		}
	}
}

func (c *references) panel(place, name string) {
	if name != "" && c.panels[name] == nil {
		c.report(fault.Unknown, place, "there is no panel called "+name, "", nearest(name, slices.Collect(maps.Keys(c.panels))))
	}
}
