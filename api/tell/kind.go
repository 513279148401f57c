package tell

import (
	"fmt"
	"strconv"
	"strings"

	"creasefit/api/wire"
)

// appendKindText appends what a kind can be asked, a line a name, for readers with
// little room; how to answer is the same for all kinds and left out.
func appendKindText(dst []byte, k *wire.Kind) []byte {
	dst = fmt.Appendf(dst, "%s: %s. %s\nneeds %s\nGET or POST %s\n", k.Name, k.Title, k.Help, strings.Join(k.Needs, ", "), k.Links.Solve)
	for i := range k.Parameters {
		if p := &k.Parameters[i]; p.About == "calculation" {
			dst = append(append(append(dst, p.Name+" ("...), strings.Join(traitsOf(p), ", ")...), "): "...)
			dst = append(append(dst, p.Help...), '\n')
		}
	}
	return dst
}

// traitsOf says of a name what it takes.
func traitsOf(p *wire.Parameter) []string {
	traits := []string{p.Type}
	switch {
	case p.Catalogue != "":
		traits = append(traits, p.Catalogue)
	case len(p.Choices) > 0:
		traits[0] = strings.Join(p.Choices, "|")
	case p.Greatest != nil && p.Greatest.MM != nil:
		traits = append(traits, decimal(*p.Least.MM)+" to "+decimal(*p.Greatest.MM)+" mm")
	case p.Greatest != nil && p.Greatest.Number != nil:
		traits = append(traits, decimal(*p.Least.Number)+" to "+decimal(*p.Greatest.Number))
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

// decimal writes a bound.
func decimal(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
