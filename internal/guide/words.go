package guide

import (
	"slices"
	"strconv"
	"strings"

	"creasefit/internal/enclosure"
	"creasefit/internal/repertoire"
)

// Words returns how a language says the titles of kinds, the names of parts
// and the words of a drawing, the way that draw.Options.Say takes it. What the
// language has no word for stays as it is. The error is a fault.Fault for a
// language that there is no catalogue of.
func Words(language string) (func(string) string, error) {
	c, err := catalogueOf(language)
	if err != nil {
		return nil, err
	}
	return c.word, nil
}

// word says one text of a drawing. Its spaces may all be broken at.
func (c *catalogue) word(text string) string {
	if said, ok := c.Drawing[text]; ok {
		return said
	}
	i := slices.IndexFunc(repertoire.Kinds(), func(k *enclosure.Kind) bool { return k.Title == text })
	if i >= 0 {
		return repertoire.Kinds()[i].In(c.Language).Title
	}
	if said, ok := c.joined(text); ok {
		return said
	}
	return strings.ReplaceAll(c.name(noun(text), ""), noBreak, " ")
}

// joined says a text that is made of one or two names.
func (c *catalogue) joined(text string) (string, bool) {
	for joint, said := range c.Joined {
		of, on, found := strings.Cut(text, joint)
		_, known := c.Names[of]
		_, both := c.Names[on]
		if found && known && (both || on == "") {
			return (&writer{c: c}).write(said, joint, args{"of": noun(of), "on": noun(on)}), true
		}
	}
	return "", false
}

// name writes the name of a part in a case of the language. A name that ends
// in a number, such as "score 2", is that of its kind and the number.
func (c *catalogue) name(n noun, form string) string {
	if forms, ok := c.Names[string(n)]; ok {
		return forms[form]
	}
	i := strings.LastIndexByte(string(n), ' ')
	if _, err := strconv.Atoi(string(n[i+1:])); err != nil || i < 0 {
		return strings.ReplaceAll(c.Cases[form], nameMark, string(n))
	}
	numbered := c.name(n[:i], "") + noBreak + string(n[i+1:])
	if frame, ok := c.Numbered[form]; ok {
		return strings.ReplaceAll(frame, nameMark, numbered)
	}
	return numbered
}

// nameMark is where a name stands in its case.
const nameMark = "{name}"
