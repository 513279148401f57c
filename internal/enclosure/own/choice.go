package own

import (
	"slices"
	"strconv"
	"strings"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// MostWays is how many designs the choices of one may come to together. A kind of the
// service may have more.
const (
	MostWays     = 8
	mostStanding = 256
)

// Option is what a request may give by name: a size, or a choice that says which pieces,
// panels and statements there are.
type Option struct {
	enclosure.Param
	of       []string       // what can be chosen, the default first; none of a size that makes no difference
	upTo     measure.Length // of a choice that may be left to the contents: the thickness up to which it is the first of these
	when     [2]int         // the option that it goes with and what must be chosen of that, from 1 on; zero for any
	optional bool           // a size without a default
	such     measure.Length // what it may be where it is given
}

// What is chosen of a size without a default.
const LeftOut, Given = "left out", "given"

// auto leaves a choice to the contents.
const auto = "auto"

// choices reads what a request may choose, and sizes that stand among that.
func (r *reader) choices(n *node) {
	for _, item := range r.list(n, "choices", MostSizes) {
		if item.members["in"] != nil || item.members["greatest"] != nil {
			r.options = append(r.options, r.size(item))
			continue
		}
		if !r.only(item, "name", "help", "of", "count", "usual", "advanced", "auto", "when") {
			continue
		}
		o := r.option(item)
		if item.members["count"] != nil {
			r.count(item, &o)
		} else {
			r.wordsOf(item, &o)
		}
		r.options = append(r.options, o)
	}
}

// option reads what sizes and choices have both.
func (r *reader) option(n *node) Option {
	o := Option{Param: enclosure.Param{Name: r.optionName(n), Help: r.text(n, "help", mostHelp)}}
	if slices.ContainsFunc(r.options, func(other Option) bool { return other.Name == o.Name }) {
		r.report(fault.Repeated, n.place, "another size or choice has this name", "", "give each a name of its own")
	}
	o.Advanced = r.word(n, "advanced", "", "yes") == 1
	if when := n.members["when"]; when != nil && r.only(when, r.names()...) {
		if len(when.names) != 1 {
			r.report(fault.Conflict, when.place, "an option goes with one choice", "", "name one of the choices before it")
			return o
		}
		if i := r.named(when.names[0]); i >= 0 {
			o.when = [2]int{i + 1, r.word(when, when.names[0], r.options[i].of...)}
		}
	}
	return o
}

// wordsOf reads the words of a choice, the first of which may leave it to the contents.
func (r *reader) wordsOf(n *node, o *Option) {
	o.Type = enclosure.ChoiceParam
	for _, word := range r.list(n, "of", MostWays) {
		o.Choices = append(o.Choices, r.optionWord(word))
	}
	if len(o.Choices) < 2 || len(slices.Compact(slices.Sorted(slices.Values(o.Choices)))) < len(o.Choices) {
		r.report(fault.Missing, under(n.place, "of"), "there is nothing to choose", "two words or more, all of them different", "")
		o.Choices = []string{""}
	}
	if o.of = o.Choices; n.members[auto] != nil {
		o.upTo, o.Choices = r.length(n.members[auto]), append([]string{auto}, o.of...)
	}
}

// count reads the bounds of a whole number.
func (r *reader) count(n *node, o *Option) {
	o.Type = enclosure.CountParam
	for i, to := range [...]*int64{&o.LeastCount, &o.GreatestCount, &o.DefaultCount} {
		from := n.members["usual"]
		if bounds := r.list(n, "count", 2); i < 2 && i < len(bounds) {
			from = bounds[i]
		}
		var err error
		if from != nil {
			*to, err = strconv.ParseInt(from.text, 10, 16)
		}
		if from == nil || err != nil {
			break
		}
	}
	if o.LeastCount < 1 || o.DefaultCount < o.LeastCount || o.GreatestCount < o.DefaultCount || o.GreatestCount > MostPanels {
		r.report(fault.Unreadable, n.place, "a count has bounds up to "+strconv.Itoa(MostPanels)+" and a usual number between them",
			`such as "count":["2","12"],"usual":"4"`, "")
		return
	}
	for k := o.LeastCount; k <= o.GreatestCount; k++ {
		o.of = append(o.of, strconv.FormatInt(k, 10))
	}
}

// optionWord is a word that can stand in a query.
func (r *reader) optionWord(n *node) string {
	if !n.isText || !plainName(n.text) || len(n.text) > mostName {
		r.report(fault.Unreadable, n.place, "a word to choose is written in small letters, digits and underscores, a letter first", "such as closed", "")
	}
	return n.text
}

// names lists the options that something can be chosen of.
func (r *reader) names() (names []string) {
	for i := range r.options {
		if len(r.options[i].of) > 0 {
			names = append(names, r.options[i].Name)
		}
	}
	return names
}

// named is the option of a name that something can be chosen of, -1 for none.
func (r *reader) named(name string) int {
	return slices.IndexFunc(r.options, func(o Option) bool { return o.Name == name && len(o.of) > 0 })
}

// ways reads a design once for every way to choose, by the number of that. What is wrong
// with several of them is told once.
func (r *reader) ways(root *node) map[int]*Design {
	for _, item := range r.list(root, "sizes", MostSizes) {
		r.options = append(r.options, r.size(item))
	}
	r.choices(root)
	most, ways := 1, map[int]*Design{}
	for i := 0; i < len(r.options) && most <= r.most; i++ {
		most *= max(1, len(r.options[i].of))
	}
	if most > r.most {
		r.report(fault.TooMany, "choices", "together there are "+strconv.Itoa(most)+" ways to choose", "at most "+strconv.Itoa(r.most), "")
		return map[int]*Design{0: {}}
	}
	for way := range most {
		r.choose(way)
		if numberOf(r.options, r.chosen[:]) == way { // else of something that is not there
			d := &Design{Options: r.options}
			r.design(root, d)
			r.check(d)
			ways[way] = d
		}
	}
	return ways
}

// choose chooses what makes a way.
func (r *reader) choose(way int) {
	r.chosen = chosen(r.options, func(o *Option, times int) int { return way / times % len(o.of) })
}

// chosen lists what is chosen of each option, -1 of those that are not there.
func chosen(options []Option, pick func(o *Option, times int) int) (all [2 * MostSizes]int) {
	times := 1
	for i := range options {
		o := &options[i]
		all[i] = -1
		if when := o.when; when[0] > 0 && all[when[0]-1] != when[1] {
			times *= max(1, len(o.of))
			continue
		}
		if all[i] = 0; len(o.of) > 0 {
			all[i] = pick(o, times)
			times *= len(o.of)
		}
	}
	return all
}

// numberOf is the number of what is chosen.
func numberOf(options []Option, chosen []int) (way int) {
	times := 1
	for i := range options {
		way += times * max(0, chosen[i])
		times *= max(1, len(options[i].of))
	}
	return way
}

// there reports whether something of a design is there as it is chosen.
func (r *reader) there(n *node) bool {
	when := n.members["when"]
	return when == nil || r.holds(when)
}

// holds reports whether all that a condition wants is chosen.
func (r *reader) holds(when *node) bool {
	if !r.only(when, r.names()...) {
		return true
	}
	for _, name := range when.names {
		if i := r.named(name); i >= 0 && !r.agrees(when.members[name], &r.options[i], r.chosen[i]) {
			return false
		}
	}
	return true
}

// agrees reports whether what is chosen of an option is what a condition wants: a word,
// one of several, or of a count so much at least.
func (r *reader) agrees(want *node, o *Option, chosen int) bool {
	if least, ok := strings.CutPrefix(want.text, "at least "); ok && slices.Contains(o.of, least) {
		return chosen >= slices.Index(o.of, least)
	}
	if want.isList {
		return slices.ContainsFunc(want.items, func(n *node) bool { return r.wordAt(n, o.of) == chosen && chosen >= 0 })
	}
	return r.wordAt(want, o.of) == chosen && chosen >= 0
}

// way is which of the ways of a design a request chooses, and what is wrong with it:
// options that go with another choice.
func (d *Design) way(in *enclosure.Input) (*Design, error) {
	picked := chosen(d.Options, func(o *Option, _ int) int { return o.pick(in) })
	var wrong fault.Faults
	for i := range d.Options {
		if o := &d.Options[i]; picked[i] < 0 {
			of := &d.Options[o.when[0]-1]
			wrong.Add(in.OnlyFor(o.Name, of.Name, of.of[o.when[1]]))
		}
	}
	return d.Ways[numberOf(d.Options, picked[:])], wrong.Err()
}

// pick is what a request chooses of an option.
func (o *Option) pick(in *enclosure.Input) int {
	v, given := in.Given[o.Name]
	switch {
	case o.Type == enclosure.CountParam && given:
		return int(min(max(v.Count, o.LeastCount), o.GreatestCount) - o.LeastCount)
	case o.Type == enclosure.CountParam:
		return int(o.DefaultCount - o.LeastCount)
	case o.optional && given:
		return 1
	case o.upTo.Sign() > 0 && (!given || v.Choice == auto):
		if o.upTo.Less(in.Thickness) || pattern.Stiff(in.Caliper, in.BoardFrom) {
			return 1
		}
		return 0
	}
	return max(0, slices.Index(o.of, v.Choice))
}
