package own

import (
	"slices"
	"strconv"
	"strings"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/pattern"
)

func (r *reader) piece(n *node) Piece {
	p := Piece{place: n.place}
	if !r.only(n, "piece", "high", "panels", "over", "round", "fit", "when") {
		return p
	}
	p.High = r.text(n, "high", mostName)
	p.Name, p.Over, p.Round = r.name(n, "piece"), r.text(n, "over", mostName), r.text(n, "round", mostName)
	if p.Over != "" && p.Round != "" {
		r.report(fault.Conflict, under(n.place, "round"), "a piece goes over another one or round one", "", "leave one of the two out")
		p.Round = ""
	}
	p.Fit = [...]string{"snug", "easy", "loose"}[r.word(n, "fit", "snug", "easy", "loose")]
	for _, item := range r.list(n, "panels", MostPanels) {
		if r.there(item) {
			p.Panels = append(p.Panels, r.panel(item))
		}
	}
	return p
}

func (r *reader) panel(n *node) Panel {
	p := Panel{place: n.place}
	if !r.only(n, "panel", "on", "edge", "fold", "angle", "reach", "least", "across", "up", "narrower", "taper", "window", "when") {
		return p
	}
	p.Name, p.On = r.name(n, "panel"), r.text(n, "on", mostName)
	if in := n.members["narrower"]; in != nil && in.text == "to be clear" {
		p.Clear = true
	} else {
		p.Narrower = r.amount(in)
	}
	p.Taper = r.amount(n.members["taper"])
	p.Window, p.Least = r.window(n.members["window"]), r.sums(n, "least")
	root := []string{"across", "up"}
	hung := []string{"edge", "fold", "angle", "reach", "narrower", "taper"}
	if p.On == "" {
		p.Across, p.Up = r.reach(n.members["across"]), r.reach(n.members["up"])
		r.without(n, hung, "a panel that hangs on another one", "say on which panel it hangs")
		return p
	}
	r.without(n, root, "a root, which hangs on nothing", "say reach instead")
	p.Edge = Edge(r.word(n, "edge", edgeNames[:]...))
	if n.members["edge"] == nil {
		r.report(fault.Missing, under(n.place, "edge"), "nothing says at which edge it hangs", "one of left, right, bottom, top", "")
	}
	fold := r.word(n, "fold", "valley", "mountain", "flat", "round")
	p.Fold, p.Rolled = [...]pattern.Fold{pattern.Valley, pattern.Mountain, pattern.Flat, pattern.Flat}[fold], fold == 3
	p.Angle = r.angle(n.members["angle"], p.Fold)
	p.Reach = r.reach(n.members["reach"])
	return p
}

// window reads the margins of a window.
func (r *reader) window(n *node) *Window {
	if n == nil || !r.only(n, "left", "right", "bottom", "top") {
		return nil
	}
	for _, name := range [...]string{"left", "right", "bottom", "top"} {
		if n.members[name] == nil {
			r.report(fault.Missing, under(n.place, name), "nothing says how far in the window begins here", "a named size or a length", "")
		}
	}
	at := func(name string) Amount { return r.amount(n.members[name]) }
	return &Window{at("left"), at("right"), at("bottom"), at("top")}
}

// without reports members that go with another sort of panel.
func (r *reader) without(n *node, names []string, of, hint string) {
	for _, name := range names {
		if n.members[name] != nil {
			r.report(fault.Conflict, under(n.place, name), "this goes with "+of, "", hint)
		}
	}
}

func (r *reader) angle(n *node, f pattern.Fold) int {
	switch {
	case f == pattern.Flat:
		return 0
	case n == nil || n.text == "90":
		return 90
	case n.text == "180":
		return 180
	}
	r.report(fault.Unknown, n.place, "a design folds by 90 or 180 degrees", "90 or 180", "")
	return 90
}

// reach reads how far a panel goes.
func (r *reader) reach(n *node) (to Reach) {
	switch {
	case n == nil || n.isText && n.text == "free":
		return to
	case n.isText:
		to.Fixed = r.amount(n)
		return to
	case !r.only(n, "like", "covers", "stands", "down", "less", "share", "of"):
		return to
	}
	to.Like, to.Of = r.text(n, "like", mostName), r.text(n, "of", mostName)
	words := append([]string{""}, axes[:]...)
	to.Covers, to.Stands = words[r.word(n, "covers", words...)], words[r.word(n, "stands", words...)]
	to.Less = r.amount(n.members["less"])
	to.Down = n.members["down"] != nil && r.word(n, "down", "", "table") == 1
	if s := n.members["share"]; s != nil {
		to.Share = r.share(s)
	}
	said := 0
	for _, name := range []string{"like", "covers", "stands", "down", "share"} {
		if n.members[name] != nil {
			said++
		}
	}
	if said != 1 || (to.Of != "") != (n.members["share"] != nil) {
		r.report(fault.Conflict, n.place, "a reach is said in one way", `one of {"like":...}, {"covers":...}, {"stands":...}, {"share":"1/2","of":...}`, "")
	}
	return to
}

// share reads a fraction of small whole numbers.
func (r *reader) share(n *node) [2]int64 {
	above, below, ok := strings.Cut(n.text, "/")
	p, err := strconv.ParseInt(above, 10, 64)
	q, wrong := strconv.ParseInt(below, 10, 64)
	if !ok || err != nil || wrong != nil || p < 1 || q < 1 || p > 16 || q > 16 {
		r.report(fault.Unreadable, n.place, "a share is a fraction", `such as "1/2", of numbers up to 16`, "")
		return [2]int64{1, 1}
	}
	return [2]int64{p, q}
}

// amount reads a length, the name of a size, or "a little".
func (r *reader) amount(n *node) (a Amount) {
	switch {
	case n == nil:
		return a
	case n.isText && n.text == "a little":
		a.Little = 1
	case n.isText && n.text == "two littles":
		a.Little = 2
	case n.isText && n.text == "an allowance":
		a.Allowance = true
	case n.isText && plainName(n.text):
		a.Size = r.sizeAt(n)
	default:
		a.Length = r.length(n)
	}
	a.given = true
	return a
}

// sizeAt reads the name of a size.
func (r *reader) sizeAt(n *node) string {
	var names []string
	for i := range r.options {
		if r.options[i].Type == enclosure.LengthParam {
			names = append(names, r.options[i].Name)
		}
	}
	if !slices.Contains(names, n.text) {
		r.report(fault.Unknown, n.place, "the design has no size called "+n.text, "a named size or a length with its unit", nearest(n.text, names))
	}
	return n.text
}

func (r *reader) join(n *node) Join {
	j := Join{place: n.place}
	if !r.only(n, "glue", "to", "face", "meet", "with", "short", "past", "even", "slits", "level", "lies", "clear", "of", "play", "name", "sum", "cuts", "sewn", "when") {
		return j
	}
	j.Short, j.Past, j.Play = r.amount(n.members["short"]), r.amount(n.members["past"]), r.amount(n.members["play"])
	j.Loose = r.word(n, "sewn", "yes", "no") == 1
	j.Name, j.Sum = r.text(n, "name", mostName), r.text(n, "sum", mostName)
	for i, cut := range r.list(n, "cuts", len(j.Cuts)) {
		j.Cuts[i] = r.textOf(cut, mostName)
	}
	said := 0
	for i, name := range [...]string{Glue: "glue", Meet: "meet", Even: "even", Slits: "slits", Level: "level", Lies: "lies", Clear: "clear"} {
		if n.members[name] == nil {
			continue
		}
		said++
		j.Type = JoinType(i)
		second := [...]string{Glue: "to", Meet: "with", Even: "with", Slits: "with", Level: "with", Lies: "to", Clear: "of"}[i]
		j.A, j.B = r.line(n, name), r.line(n, second)
		if j.Type == Clear {
			j.B.Of = InsideFold
		}
	}
	if said != 1 {
		r.report(fault.Conflict, n.place, "a join states one thing", "one of glue, meet, even, slits, level, lies, clear", "")
	}
	j.Face = [...]pattern.Face{pattern.Inside, pattern.Outside}[r.word(n, "face", "inside", "outside")]
	return j
}

// line reads which line of which panel is meant: "edge of NAME", "fold of NAME",
// "outside of NAME", "left edge of NAME" and the like or, where only a panel can be meant,
// its name.
func (r *reader) line(n *node, name string) Line {
	text := r.name(n, name)
	for of, prefix := range [...]string{FreeEdge: "edge of ", Crease: "fold of ", OutsideFold: "outside of "} {
		if panel, ok := strings.CutPrefix(text, prefix); ok {
			return Line{Panel: panel, Of: LineType(of)}
		}
	}
	for side, name := range edgeNames {
		if panel, ok := strings.CutPrefix(text, name+" edge of "); ok {
			return Line{panel, SideEdge, Edge(side)}
		}
	}
	return Line{Panel: text}
}
