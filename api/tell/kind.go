package tell

import (
	"strings"

	"creasefit/api/wire"
)

// traitsOf says of a name what it takes.
func traitsOf(p *wire.Parameter) []string {
	traits := []string{p.Type}
	switch {
	case p.Catalogue != "":
		traits = append(traits, p.Catalogue)
	case len(p.Choices) > 0:
		traits[0] = strings.Join(p.Choices, "|")
	case p.Greatest != nil && p.Greatest.MM != nil:
		traits = append(traits, number(*p.Least.MM)+" to "+number(*p.Greatest.MM)+" mm")
	case p.Greatest != nil && p.Greatest.Number != nil:
		traits = append(traits, number(*p.Least.Number)+" to "+number(*p.Greatest.Number))
	}
	if d := p.Default; d != nil && d.In == d.MM {
		traits = append(traits, "default "+d.In)
	} else if d != nil {
		traits = append(traits, "default "+d.In+" or "+d.MM)
	}
	if p.List {
		traits = append(traits, "several")
	}
	return traits
}
