package own

import (
	"slices"
	"strconv"
	"strings"
	"unicode"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Decode reads a design. What is wrong with it, everything at once where it can
// be, is a fault whose field is the place in the design.
func Decode(text []byte) (*Design, error) {
	root, err := parse(text)
	if err != nil {
		return nil, err
	}
	r := reader{}
	d := r.design(root)
	r.check(d)
	return d, r.faults.Err()
}

// reader turns nodes into a design and gathers what is wrong with them.
type reader struct{ faults fault.Faults }

func (r *reader) report(code fault.Code, place, detail, expected, hint string) {
	if len(r.faults) < 20 {
		r.faults = append(r.faults, fault.Fault{Code: code, Field: place, Detail: detail, Expected: expected, Hint: hint})
	}
}

// only reports members that an object does not have, with the nearest that it does.
func (r *reader) only(n *node, names ...string) bool {
	if n.members == nil {
		r.report(fault.Unreadable, n.place, "this is an object", "an object with "+strings.Join(names, ", "), "")
		return false
	}
	for _, name := range n.names {
		if slices.Contains(names, name) {
			continue
		}
		hint := ""
		if nearest := fault.Nearest(name, names); nearest != "" {
			hint = "did you mean " + nearest + "?"
		}
		r.report(fault.Unknown, under(n.place, name), "there is no such name here", "one of "+strings.Join(names, ", "), hint)
	}
	return true
}

// axes are the words for the sizes of the contents.
var axes = [...]string{"width", "height", "thickness"}

func (r *reader) design(n *node) *Design {
	d := &Design{}
	r.only(n, "design", "help", "sizes", "pieces", "joins", "holds", "open")
	d.Title, d.Help = r.name(n, "design"), r.text(n, "help", mostHelp)
	d.Holds = r.text(n, "holds", mostName)
	for _, item := range r.list(n, "open", len(axes)) {
		if k := slices.Index(axes[:], item.text); k >= 0 {
			d.Open[k] = true
		} else {
			r.report(fault.Unknown, item.place, "the contents have no such size", "one of width, height, thickness", nearest(item.text, slices.Clone(axes[:])))
		}
	}
	for _, item := range r.list(n, "sizes", MostSizes) {
		d.Sizes = append(d.Sizes, r.size(item))
	}
	for _, item := range r.list(n, "pieces", MostPieces) {
		d.Pieces = append(d.Pieces, r.piece(item))
	}
	for _, item := range r.list(n, "joins", MostJoins) {
		d.Joins = append(d.Joins, r.join(item))
	}
	return d
}

// text returns a member that may be missing.
func (r *reader) text(n *node, name string, most int) string {
	m := n.members[name]
	if m == nil {
		return ""
	}
	switch {
	case !m.isText:
		r.report(fault.Unreadable, m.place, "this is a text", "a text", "")
		return ""
	case len(m.text) > most:
		r.report(fault.TooMany, m.place, "this text is too long", "at most "+strconv.Itoa(most)+" bytes", "")
		return ""
	case strings.ContainsFunc(m.text, func(c rune) bool { return !unicode.IsPrint(c) }):
		r.report(fault.Unreadable, m.place, "a name has no control characters", "letters, digits, spaces and punctuation", "")
		return ""
	}
	return strings.TrimSpace(m.text)
}

// name returns a member that must be there.
func (r *reader) name(n *node, name string) string {
	text := r.text(n, name, mostName)
	if text == "" && n.members != nil && (n.members[name] == nil || n.members[name].text == "") {
		r.report(fault.Missing, under(n.place, name), "this has no name", "a text", "")
	}
	return text
}

func (r *reader) list(n *node, name string, most int) []*node {
	m := n.members[name]
	switch {
	case m == nil:
		return nil
	case !m.isList:
		r.report(fault.Unreadable, m.place, "this is a list", "a list", "")
		return nil
	case len(m.items) > most:
		r.report(fault.TooMany, m.place, "the list has too many entries", "at most "+strconv.Itoa(most), "")
		return nil
	}
	return m.items
}

// word returns a member that is one of several words; the first is the default.
func (r *reader) word(n *node, name string, words ...string) int {
	text := r.text(n, name, mostName)
	if text == "" {
		return 0
	}
	i := slices.Index(words, text)
	if i < 0 {
		r.report(fault.Unknown, under(n.place, name), "there is no such word here", "one of "+strings.Join(words, ", "), nearest(text, slices.Clone(words)))
		return 0
	}
	return i
}

// nearest is a hint at the word that was probably meant.
func nearest(text string, words []string) string {
	slices.Sort(words)
	if n := fault.Nearest(text, words); n != "" {
		return "did you mean " + n + "?"
	}
	return ""
}

func (r *reader) size(n *node) Size {
	s := Size{place: n.place, Greatest: measure.Millimetres(2000)}
	if !r.only(n, "name", "help", "in", "mm", "least", "greatest") {
		return s
	}
	s.Name, s.Help = r.name(n, "name"), r.text(n, "help", mostHelp)
	if !plainName(s.Name) {
		r.report(fault.Unreadable, under(n.place, "name"), "the name of a size is written in small letters, digits and underscores, a letter first", "such as lap_2", "")
	}
	for _, m := range [...]struct {
		name string
		to   *measure.Length
	}{{"in", &s.Inch}, {"mm", &s.Millimetre}, {"least", &s.Least}, {"greatest", &s.Greatest}} {
		if name := m.name; n.members[name] != nil {
			*m.to = r.length(n.members[name])
		} else if name == "in" || name == "mm" {
			r.report(fault.Missing, under(n.place, name), "a size has a default on rulers of both units", `such as "1/2 in" and "15 mm"`, "")
		}
	}
	for _, usual := range [...]measure.Length{s.Inch, s.Millimetre} {
		if usual.Less(s.Least) || s.Greatest.Less(usual) {
			r.report(fault.OutOfRange, n.place, "the default does not lie between least and greatest", "", "")
			break
		}
	}
	return s
}

// plainName reports whether a name can stand in a query.
func plainName(name string) bool {
	for i, c := range name {
		if !(c >= 'a' && c <= 'z' || i > 0 && (c >= '0' && c <= '9' || c == '_')) {
			return false
		}
	}
	return name != ""
}

func (r *reader) length(n *node) measure.Length {
	if !n.isText {
		r.report(fault.Unreadable, n.place, "a length is a text with its unit", `such as "15 mm"`, "")
		return measure.Length{}
	}
	l, err := measure.Parse(n.text, measure.NoUnit, measure.DecimalPoint)
	if err != nil {
		r.report(fault.Unreadable, n.place, err.Error(), `a length with its unit, such as "15 mm"`, "")
	} else if measure.Millimetres(5000).Less(l) {
		r.report(fault.OutOfRange, n.place, "this is too large", "at most 5 m", "")
		l = measure.Length{}
	}
	return l
}

func (r *reader) piece(n *node) Piece {
	p := Piece{place: n.place}
	if !r.only(n, "piece", "panels", "over", "fit") {
		return p
	}
	p.Name, p.Over = r.name(n, "piece"), r.text(n, "over", mostName)
	p.Fit = [...]string{"snug", "easy", "loose"}[r.word(n, "fit", "snug", "easy", "loose")]
	for _, item := range r.list(n, "panels", MostPanels) {
		p.Panels = append(p.Panels, r.panel(item))
	}
	return p
}

func (r *reader) panel(n *node) Panel {
	p := Panel{place: n.place}
	if !r.only(n, "panel", "on", "edge", "fold", "angle", "reach", "across", "up", "narrower", "taper", "window") {
		return p
	}
	p.Name, p.On = r.name(n, "panel"), r.text(n, "on", mostName)
	p.Narrower, p.Taper = r.amount(n.members["narrower"]), r.amount(n.members["taper"])
	p.Window = r.window(n.members["window"])
	root := []string{"across", "up"}
	hung := []string{"edge", "fold", "angle", "reach", "narrower", "taper"}
	if p.On == "" {
		p.Across, p.Up = r.reach(n.members["across"]), r.reach(n.members["up"])
		r.without(n, hung, "a panel that hangs on another one", "say on which panel it hangs")
		return p
	}
	r.without(n, root, "a root, which hangs on nothing", "say reach instead")
	p.Edge = Edge(r.word(n, "edge", "left", "right", "bottom", "top"))
	if n.members["edge"] == nil {
		r.report(fault.Missing, under(n.place, "edge"), "nothing says at which edge it hangs", "one of left, right, bottom, top", "")
	}
	p.Fold = [...]pattern.Fold{pattern.Valley, pattern.Mountain, pattern.Flat}[r.word(n, "fold", "valley", "mountain", "flat")]
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
		a.Little = true
	case n.isText && plainName(n.text):
		a.Size = n.text
	default:
		a.Length = r.length(n)
	}
	a.given = true
	return a
}

func (r *reader) join(n *node) Join {
	j := Join{place: n.place}
	if !r.only(n, "glue", "to", "face", "meet", "with", "short", "past", "even", "slits", "level", "lies", "play") {
		return j
	}
	j.Short, j.Past, j.Play = r.amount(n.members["short"]), r.amount(n.members["past"]), r.amount(n.members["play"])
	said := 0
	for i, name := range [...]string{Glue: "glue", Meet: "meet", Even: "even", Slits: "slits", Level: "level", Lies: "lies"} {
		if n.members[name] == nil {
			continue
		}
		said++
		j.Type = JoinType(i)
		second := "with"
		if j.Type == Glue || j.Type == Lies {
			second = "to"
		}
		j.A, j.B = r.line(n, name), r.line(n, second)
	}
	if said != 1 {
		r.report(fault.Conflict, n.place, "a join states one thing", "one of glue, meet, even, slits, level, lies", "")
	}
	j.Face = [...]pattern.Face{pattern.Inside, pattern.Outside}[r.word(n, "face", "inside", "outside")]
	return j
}

// line reads which line of which panel is meant: "edge of NAME", "fold of NAME",
// "outside of NAME" or, where only a panel can be meant, its name.
func (r *reader) line(n *node, name string) Line {
	text := r.name(n, name)
	for of, prefix := range [...]string{FreeEdge: "edge of ", Crease: "fold of ", OutsideFold: "outside of "} {
		if panel, ok := strings.CutPrefix(text, prefix); ok {
			return Line{panel, LineType(of)}
		}
	}
	return Line{Panel: text}
}
