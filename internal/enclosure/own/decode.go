package own

import (
	"slices"
	"strconv"
	"strings"
	"unicode"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// Decode reads a design. What is wrong with it, everything at once where it can
// be, is a fault whose field is the place in the design.
func Decode(text []byte) (*Design, error) {
	return decode(text, MostWays)
}

func decode(text []byte, most int) (*Design, error) {
	root, err := parse(text)
	if err != nil {
		return nil, err
	}
	r := reader{most: most}
	ways := r.ways(root)
	ways[0].Ways = ways
	return ways[0], r.faults.Err()
}

// reader turns nodes into a design and gathers what is wrong with them.
type reader struct {
	faults  fault.Faults
	most    int // ways
	options []Option
	chosen  [2 * MostSizes]int // of these
}

func (r *reader) report(code fault.Code, place, detail, expected, hint string) {
	f := fault.Fault{Code: code, Field: place, Detail: detail, Expected: expected, Hint: hint}
	if len(r.faults) < 20 && !slices.Contains(r.faults, f) {
		r.faults = append(r.faults, f)
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
		r.report(fault.Unknown, under(n.place, name), "there is no such name here", "one of "+strings.Join(names, ", "), fault.Meant(fault.Nearest(name, names)))
	}
	return true
}

// axes are the words for the sizes of the contents.
var axes = [...]string{"width", "height", "thickness"}

func (r *reader) design(n *node, d *Design) {
	r.only(n, "design", "help", "words", "needs", "order", "sizes", "choices", "limits", "ornament", "pieces", "joins", "holds", "open", "into", "turned")
	d.Title, d.Help = r.name(n, "design"), r.text(n, "help", mostHelp)
	d.Open, _ = r.axes(n, "open")
	d.Into, d.Turned = r.axes(n, "into")
	if turned := n.members["turned"]; turned != nil {
		d.Turned = r.holds(turned)
	}
	for _, item := range r.list(n, "needs", len(axes)) {
		d.Needs = append(d.Needs, axes[max(0, r.wordAt(item, axes[:]))])
	}
	for _, item := range r.list(n, "order", MostPanels) {
		d.Order = append(d.Order, item.text)
	}
	r.words(n, d)
	r.limits(n, d)
	if o := n.members["ornament"]; o != nil && r.only(o, "tab", "height") {
		for i, name := range [...]string{"tab", "height"} {
			if d.Ornament[i] = r.name(o, name); d.Ornament[i] != "" {
				r.sizeAt(o.members[name])
			}
		}
		for _, p := range enclosure.OrnamentParams {
			if slices.ContainsFunc(r.options, func(o Option) bool { return o.Name == p.Name }) {
				r.report(fault.Repeated, o.place, "the ornament has a "+p.Name+" already", "", "call the size or choice otherwise")
			}
		}
	}
	for _, item := range r.list(n, "pieces", MostPieces) {
		if r.there(item) {
			d.Pieces = append(d.Pieces, r.piece(item))
		}
	}
	r.holder(n, d)
	for _, item := range r.list(n, "joins", MostJoins) {
		if r.there(item) {
			d.Joins = append(d.Joins, r.join(item))
		}
	}
}

// words reads what a design is called in further languages, by their tags.
func (r *reader) words(n *node, d *Design) {
	if words := n.members["words"]; words != nil && r.only(words, words.names...) {
		d.Words = map[string]enclosure.Words{}
		for _, tag := range words.names {
			if in := words.members[tag]; r.only(in, "design", "help") {
				d.Words[tag] = enclosure.Words{Title: r.name(in, "design"), Help: r.text(in, "help", mostHelp)}
			}
		}
	}
}

// holder reads the panel that the contents lie on: of several the first that is there.
func (r *reader) holder(n *node, d *Design) {
	if holds := n.members["holds"]; holds == nil || !holds.isList {
		d.Holds = r.text(n, "holds", mostName)
		return
	}
	panels := d.panels()
	for _, item := range r.list(n, "holds", MostPanels) {
		if d.Holds = item.text; slices.ContainsFunc(panels, func(p *Panel) bool { return p.Name == d.Holds }) {
			return
		}
	}
}

// axes reads a list of sizes of the contents; turned says that the height comes before
// the width.
func (r *reader) axes(n *node, name string) (said [3]bool, turned bool) {
	for _, item := range r.list(n, name, len(axes)) {
		if k := slices.Index(axes[:], item.text); k >= 0 {
			turned = turned || k == 0 && said[1]
			said[k] = true
		} else {
			r.report(fault.Unknown, item.place, "the contents have no such size", "one of width, height, thickness", nearest(item.text, slices.Clone(axes[:])))
		}
	}
	return said, turned
}

// text returns a member that may be missing.
func (r *reader) text(n *node, name string, most int) string {
	if m := n.members[name]; m != nil {
		return r.textOf(m, most)
	}
	return ""
}

// textOf is what a text says, without control characters.
func (r *reader) textOf(m *node, most int) string {
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
	return max(0, r.wordAt(n.members[name], words))
}

// wordAt is which of several words a text is, -1 if none.
func (r *reader) wordAt(n *node, words []string) int {
	i := slices.Index(words, n.text)
	if i < 0 {
		r.report(fault.Unknown, n.place, "there is no such word here", "one of "+strings.Join(words, ", "), nearest(n.text, slices.Clone(words)))
	}
	return i
}

// nearest is a hint at the word that was probably meant.
func nearest(text string, words []string) string {
	slices.Sort(words)
	return fault.Meant(fault.Nearest(text, words))
}

func (r *reader) size(n *node) Option {
	if !r.only(n, "name", "help", "in", "mm", "least", "greatest", "advanced", "optional", "when") {
		return Option{}
	}
	s := r.option(n)
	s.Greatest = measure.Millimetres(2000)
	if s.optional = r.word(n, "optional", "", "yes") == 1; s.optional {
		s.of = []string{LeftOut, Given}
	}
	for _, m := range [...]struct {
		name string
		to   *measure.Length
	}{{"in", &s.DefaultInch}, {"mm", &s.DefaultMillimetre}, {"least", &s.Least}, {"greatest", &s.Greatest}} {
		if name := m.name; n.members[name] != nil {
			*m.to = r.length(n.members[name])
		} else if (name == "in" || name == "mm") && !s.optional {
			r.report(fault.Missing, under(n.place, name), "a size has a default on rulers of both units", `such as "1/2 in" and "15 mm"`, "")
		}
	}
	if s.optional {
		s.such, s.DefaultInch, s.DefaultMillimetre = s.DefaultMillimetre, measure.Length{}, measure.Length{}
		return s
	}
	for _, usual := range [...]measure.Length{s.DefaultInch, s.DefaultMillimetre} {
		if usual.Less(s.Least) || s.Greatest.Less(usual) {
			r.report(fault.OutOfRange, n.place, "the default does not lie between least and greatest", "", "")
			break
		}
	}
	return s
}

// optionName is what a request gives something by.
func (r *reader) optionName(n *node) string {
	name := r.name(n, "name")
	if !plainName(name) {
		r.report(fault.Unreadable, under(n.place, "name"), "the name of a size or a choice is written in small letters, digits and underscores, a letter first", "such as lap_2", "")
	}
	return name
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
