package own

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"strconv"

	"creasefit/internal/fault"
)

// node is a value of a JSON text with the place that it stands at.
type node struct {
	place   string
	text    string // of a text or a number
	isText  bool
	members map[string]*node // of an object
	names   []string         // of its members, in their order
	items   []*node          // of a list
	isList  bool
}

// parse reads a text as a tree. What cannot be one is refused at the first place
// that is wrong.
func parse(text []byte) (*node, error) {
	if len(text) > MostBytes {
		return nil, fault.Fault{Code: fault.TooMany, Detail: "the design has more than " + strconv.Itoa(MostBytes) + " bytes", Hint: "leave out what is drawn and not folded"}
	}
	p := parser{json.NewDecoder(bytes.NewReader(text))}
	p.UseNumber()
	n, err := p.value("", 0)
	if err != nil {
		return nil, err
	}
	if _, err := p.Token(); err != io.EOF {
		return nil, unreadable("", "something stands behind the design")
	}
	if n.members == nil {
		return nil, unreadable("", "a design is a JSON object")
	}
	return n, nil
}

type parser struct{ *json.Decoder }

func unreadable(place, detail string) error {
	return fault.Fault{Code: fault.Unreadable, Field: place, Detail: detail, Expected: "a design as /v1/designs lists them"}
}

// value reads one value.
func (p *parser) value(place string, depth int) (*node, error) {
	if depth > mostDepth {
		return nil, unreadable(place, "brackets are nested deeper than a design needs")
	}
	token, err := p.Token()
	if err != nil {
		return nil, unreadable(place, "the design is not JSON: "+err.Error())
	}
	n := &node{place: place}
	switch token := token.(type) {
	case json.Delim:
		if token == '{' {
			return n, p.object(n, depth)
		}
		return n, p.list(n, depth)
	case string:
		n.text, n.isText = token, true
	case json.Number:
		n.text = token.String()
	default:
		return nil, unreadable(place, "a design has texts, lists and objects only")
	}
	return n, nil
}

// object reads the members of an object up to its end.
func (p *parser) object(n *node, depth int) error {
	n.members = map[string]*node{}
	for p.More() {
		token, err := p.Token()
		if err != nil {
			return unreadable(n.place, "the design is not JSON: "+err.Error())
		}
		name, _ := token.(string)
		at := under(n.place, name)
		if n.members[name] != nil {
			return fault.Fault{Code: fault.Repeated, Field: at, Detail: "this name is given twice", Hint: "give it once"}
		}
		if n.members[name], err = p.value(at, depth+1); err != nil {
			return err
		}
		n.names = append(n.names, name)
	}
	return p.end(n.place)
}

// list reads the items of a list up to its end.
func (p *parser) list(n *node, depth int) error {
	n.isList = true
	for p.More() {
		if len(n.items) > MostPanels {
			return fault.Fault{Code: fault.TooMany, Field: n.place, Detail: "the list has too many entries", Expected: "at most " + strconv.Itoa(MostPanels)}
		}
		item, err := p.value(fmt.Sprintf("%s[%d]", n.place, len(n.items)), depth+1)
		if err != nil {
			return err
		}
		n.items = append(n.items, item)
	}
	return p.end(n.place)
}

func (p *parser) end(place string) error {
	if _, err := p.Token(); err != nil {
		return unreadable(place, "the design is not JSON: "+err.Error())
	}
	return nil
}

// under names a member of an object.
func under(place, name string) string {
	if place == "" {
		return name
	}
	return place + "." + name
}
