package own

import (
	"maps"
	"slices"
	"strconv"
	"strings"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
)

// check finds what is wrong with a design as a whole: names that are given twice
// or belong to nothing, panels that hang on no root, and what there is too much of.
func (r *reader) check(d *Design) {
	if len(d.Pieces) == 0 {
		r.report(fault.Missing, "pieces", "the design has no piece", "at least one, with its panels", "")
	}
	panels, edges := map[string]string{}, map[string]string{} // the root of each; what hangs where
	pieces, count := map[string]bool{}, 0
	for i := range d.Pieces {
		p := &d.Pieces[i]
		if pieces[p.Name] {
			r.report(fault.Repeated, under(p.place, "piece"), "another piece has this name", "", "give every piece a name of its own")
		}
		if inner := p.holds(); inner != "" && !pieces[inner] {
			r.report(fault.Unknown, p.place, "no piece before it is called "+inner, "", "list the inner piece first")
		}
		pieces[p.Name] = true
		count += len(p.Panels)
		r.checkPiece(p, panels, edges)
	}
	if count > MostPanels {
		r.report(fault.TooMany, "pieces", "the design has "+strconv.Itoa(count)+" panels", "at most "+strconv.Itoa(MostPanels), "")
	}
	sizes, options := map[string]bool{}, map[string]bool{}
	option := func(name, place string) {
		if options[name] {
			r.report(fault.Repeated, place, "another size or choice has this name", "", "give each a name of its own")
		}
		options[name] = true
	}
	for i := range d.Options {
		option(d.Options[i].Name, d.Options[i].place)
		sizes[d.Options[i].Name] = d.Options[i].Type == enclosure.LengthParam
	}
	c := references{r, panels, map[string]bool{}, sizes}
	c.design(d)
}

// checkPiece finds out whether the panels of a piece are a tree from its first one.
func (r *reader) checkPiece(p *Piece, panels, edges map[string]string) {
	if len(p.Panels) == 0 {
		r.report(fault.Missing, under(p.place, "panels"), "the piece has no panels", "", "begin with the panel that lies still")
	}
	if i := p.rolled(); i >= 0 && (i != 1 || len(p.Panels) != 2 || p.Panels[0].Up.Fixed.Size == "" || p.Panels[1].Reach.Fixed.Size == "") {
		r.report(fault.Conflict, under(p.place, "panels"), "what is rolled is a panel and its lap", "a root whose up is a named size, and one panel on it whose reach is one", "")
	}
	roots := 0
	for i := range p.Panels {
		panel := &p.Panels[i]
		if _, taken := panels[panel.Name]; taken {
			r.report(fault.Repeated, under(panel.place, "panel"), "another panel is called "+panel.Name, "", "give every panel a name of its own")
		}
		panels[panel.Name] = p.Name
		if panel.On == "" {
			if roots++; roots > 1 {
				r.report(fault.Missing, under(panel.place, "on"), "nothing says what "+panel.Name+" hangs on", "the name of a panel of the piece", "one panel of a piece hangs on nothing")
			}
			continue
		}
		at := panel.On + "\x00" + strconv.Itoa(int(panel.Edge))
		if other := edges[at]; other != "" {
			r.report(fault.Conflict, under(panel.place, "edge"), other+" hangs at this edge already", "", "hang it on another edge, or on "+other)
		}
		edges[at] = panel.Name
	}
	if len(p.Panels) > 0 && roots == 0 {
		r.report(fault.Missing, under(p.place, "panels"), "every panel hangs on another one: none lies still", "", "leave on out for one of them")
	}
	r.checkTree(p)
}

// opposite is the edge that lies on an edge of a neighbour.
func (e Edge) opposite() Edge { return e ^ 1 }

// checkTree reports panels that hang in a circle, on a panel of another piece, or
// on the edge that their own parent is at.
func (r *reader) checkTree(p *Piece) {
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

// references finds names that belong to nothing.
type references struct {
	*reader
	panels map[string]string
	roots  map[string]bool
	sizes  map[string]bool
}

func (c *references) design(d *Design) {
	for i := range d.Pieces {
		for k := range d.Pieces[i].Panels {
			if p := &d.Pieces[i].Panels[k]; p.On == "" {
				c.roots[p.Name] = true
			}
		}
	}
	if d.Holds != "" {
		c.panel("holds", d.Holds)
	}
	for _, size := range d.Ornament {
		c.amount("ornament", Amount{Size: size})
	}
	for i := range d.Pieces {
		for k := range d.Pieces[i].Panels {
			p := &d.Pieces[i].Panels[k]
			c.reach(under(p.place, "reach"), &p.Reach)
			c.reach(under(p.place, "across"), &p.Across)
			c.reach(under(p.place, "up"), &p.Up)
			c.amount(under(p.place, "narrower"), p.Narrower)
			c.amount(under(p.place, "taper"), p.Taper)
			if w := p.Window; w != nil {
				for _, a := range [...]Amount{w.Left, w.Right, w.Bottom, w.Top} {
					c.amount(under(p.place, "window"), a)
				}
			}
		}
	}
	for i := range d.Joins {
		j := &d.Joins[i]
		c.panel(j.place, j.A.Panel)
		c.panel(j.place, j.B.Panel)
		if j.A.Panel == j.B.Panel && j.A.Panel != "" {
			c.report(fault.Conflict, j.place, "both are "+j.A.Panel, "", "name two panels")
		}
		for _, a := range [...]Amount{j.Short, j.Past, j.Play} {
			c.amount(j.place, a)
		}
	}
}

func (c *references) reach(place string, to *Reach) {
	c.amount(place, to.Fixed)
	c.amount(place, to.Less)
	for _, name := range [...]string{to.Like, to.Of} {
		root, high := strings.CutPrefix(name, heightOf)
		if c.panel(place, root); high && !c.roots[root] {
			c.report(fault.Conflict, place, root+" hangs on another panel and has no height of its own", "", "name the panel that it hangs on")
		}
	}
}

func (c *references) panel(place, name string) {
	if _, ok := c.panels[name]; ok || name == "" {
		return
	}
	c.report(fault.Unknown, place, "there is no panel called "+name, "", nearest(name, slices.Collect(maps.Keys(c.panels))))
}

func (c *references) amount(place string, a Amount) {
	if a.Size == "" || c.sizes[a.Size] {
		return
	}
	names := make([]string, 0, len(c.sizes))
	for n, size := range c.sizes {
		if size {
			names = append(names, n)
		}
	}
	c.report(fault.Unknown, place, "the design has no size called "+a.Size, "a named size or a length with its unit", nearest(a.Size, names))
}
