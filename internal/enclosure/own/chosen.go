package own

import (
	"maps"
	"slices"
	"strconv"

	"creasefit/internal/enclosure"
)

// ways lists what the design of a kind comes to for everything that can be chosen, each a
// design without choices.
func (e Example) ways() (all []Example) {
	root, err := parse(e.Text)
	if err != nil {
		panic(err)
	}
	r := reader{most: mostStanding}
	ways := r.ways(root)
	for _, way := range slices.Sorted(maps.Keys(ways)) {
		if ways[way].Pieces[0].rolled() >= 0 {
			continue // it is a kind of its own, with nothing to fold
		}
		r.choose(way)
		x := Example{Name: e.Name, Kind: e.Name, Text: r.write(nil, r.plain(root, ways[way])), With: map[string]string{}}
		for i := range r.options {
			if o, k := &r.options[i], r.chosen[i]; k >= 0 && len(o.of) > 0 {
				if x.With[o.Name] = o.of[k]; o.of[k] != LeftOut {
					x.Name += "." + o.Name + "-" + o.of[k]
				}
			}
		}
		all = append(all, x)
	}
	return all
}

// write writes a node as it is chosen: without what is not there, and without conditions.
func (r *reader) write(to []byte, n *node) []byte {
	switch {
	case n.isText:
		return strconv.AppendQuote(to, n.text)
	case n.isList:
		return r.listed(to, n)
	case n.members == nil:
		return append(to, n.text...)
	}
	to = append(to, '{')
	for _, name := range n.names {
		if name != "when" && name != "optional" {
			to = append(r.write(append(strconv.AppendQuote(to, name), ':'), n.members[name]), ',')
		}
	}
	return closed(to, '}')
}

// plain is a design in whose members nothing is left to choose.
func (r *reader) plain(root *node, d *Design) *node {
	n := &node{members: maps.Clone(root.members), names: slices.Clone(root.names)}
	delete(n.members, "turned")
	n.names = slices.DeleteFunc(n.names, func(name string) bool { return name == "turned" })
	if into := n.members["into"]; d.Turned {
		n.members["into"] = &node{isList: true, items: []*node{into.items[1], into.items[0]}}
	}
	if n.members["holds"] != nil {
		n.members["holds"] = &node{isText: true, text: d.Holds}
	}
	if i := slices.Index(n.names, "choices"); i >= 0 {
		n.names[i], n.members["sizes"] = "sizes", r.sizesOf(n.members["choices"])
	}
	return n
}

// listed writes those of a list that are there.
func (r *reader) listed(to []byte, n *node) []byte {
	to = append(to, '[')
	for _, item := range n.items {
		if r.there(item) {
			to = append(r.write(to, item), ',')
		}
	}
	return closed(to, ']')
}

// closed ends an object or a list.
func closed(to []byte, with byte) []byte {
	if last := len(to) - 1; to[last] == ',' {
		to = to[:last]
	}
	return append(to, with)
}

// sizesOf are the sizes among what can be chosen, as far as they are there.
func (r *reader) sizesOf(choices *node) *node {
	sizes := &node{isList: true}
	for i, item := range choices.items {
		if o := &r.options[i]; o.Type == enclosure.LengthParam && r.chosen[i] >= 0 && (!o.optional || r.chosen[i] == 1) {
			sizes.items = append(sizes.items, item)
		}
	}
	return sizes
}
