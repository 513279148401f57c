package own

import (
	"slices"
	"strconv"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
)

// MostWays is how many designs the choices of one may come to together.
const MostWays = 8

// Choice is a word that a request may give by name: an option of the kind that says which
// pieces, panels and statements there are. The first of its words is the default.
type Choice struct {
	Name, Help string
	Of         []string
	place      string
}

// choices reads what a request may choose.
func (r *reader) choices(n *node) (all []Choice) {
	for _, item := range r.list(n, "choices", MostWays) {
		if !r.only(item, "name", "help", "of") {
			continue
		}
		c := Choice{Name: r.optionName(item), Help: r.text(item, "help", mostHelp), place: item.place}
		for _, word := range r.list(item, "of", MostWays) {
			c.Of = append(c.Of, r.optionWord(word))
		}
		if len(c.Of) < 2 || len(slices.Compact(slices.Sorted(slices.Values(c.Of)))) < len(c.Of) {
			r.report(fault.Missing, under(item.place, "of"), "there is nothing to choose", "two words or more, all of them different", "")
			c.Of = []string{""}
		}
		all = append(all, c)
	}
	return all
}

// optionWord is a word that can stand in a query.
func (r *reader) optionWord(n *node) string {
	if !n.isText || !plainName(n.text) || len(n.text) > mostName {
		r.report(fault.Unreadable, n.place, "a word to choose is written in small letters, digits and underscores, a letter first", "such as closed", "")
	}
	return n.text
}

// ways reads a design once for every way to choose. What is wrong with several of them is
// told once.
func (r *reader) ways(root *node) (ways []*Design) {
	choices, most := r.choices(root), 1
	r.words, r.names = map[string][]string{}, nil
	for i := range choices {
		c := &choices[i]
		most *= len(c.Of)
		r.words[c.Name], r.names = c.Of, append(r.names, c.Name)
	}
	if most > MostWays {
		r.report(fault.TooMany, "choices", "together there are "+strconv.Itoa(most)+" ways to choose", "at most "+strconv.Itoa(MostWays), "")
		most = 1
	}
	for way := range most {
		r.chosen = map[string]int{}
		d := &Design{Choices: choices}
		for i, rest := 0, way; i < len(choices); i++ {
			n := len(choices[i].Of)
			r.chosen[choices[i].Name], rest = rest%n, rest/n
		}
		r.design(root, d)
		r.check(d)
		ways = append(ways, d)
	}
	return ways
}

// there reports whether something of a design is there as it is chosen.
func (r *reader) there(n *node) bool {
	when := n.members["when"]
	if when == nil || !r.only(when, r.names...) {
		return true
	}
	for _, name := range when.names {
		if words, ok := r.words[name]; ok && r.word(when, name, words...) != r.chosen[name] {
			return false
		}
	}
	return true
}

// way is which of the ways of a design a request chooses.
func (d *Design) way(in *enclosure.Input) (way int) {
	times := 1
	for i := range d.Choices {
		c := &d.Choices[i]
		way += times * max(0, slices.Index(c.Of, in.Given[c.Name].Choice))
		times *= len(c.Of)
	}
	return way
}
