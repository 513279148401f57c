package guide

import (
	"slices"
	"strings"

	"golang.org/x/text/language"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// Units says in which units a guide writes lengths.
type Units uint8

// The units. Those of the solution's ruler are exact; what is converted is
// rounded, inches to 1/64 in and millimetres to 0.1 mm.
const (
	OfRuler Units = iota
	Inches
	Millimetres
	Both // those of the ruler, then the others in brackets
)

// Options are how a guide is to be written. The zero Options are English in
// the units of the solution's ruler.
type Options struct {
	Language string // BCP 47; "" is English. Regions are ignored: "de-AT" is "de".
	Units    Units
	Brief    bool // without the work step by step, which takes most of the time
}

// ParseUnits reads the word for the units: "in", "mm", "both", or "" for those
// of the ruler. The error is a fault.Fault.
func ParseUnits(word string) (Units, error) {
	i := slices.Index([]string{"", measure.Inch.String(), measure.Millimetre.String(), "both"}, word)
	if i < 0 {
		return OfRuler, fault.Fault{
			Code: fault.Unknown, Field: "units", Value: word, Detail: "a guide is not written in these units", Expected: "in, mm or both",
		}
	}
	return Units(i), nil
}

// Languages returns the languages that a guide can be written in, English
// first, as BCP 47 names.
func Languages() []string {
	names := make([]string, 0, len(catalogues()))
	for _, c := range catalogues() {
		names = append(names, c.Language)
	}
	return names
}

// Names returns what a language calls pieces, panels and cuts, by their English
// names; nothing for English.
func Names(language string) map[string]string {
	names := map[string]string{}
	if c, err := catalogueOf(language); err == nil {
		for name, forms := range c.Names {
			if said := strings.ReplaceAll(forms[""], noBreak, " "); said != name {
				names[name] = said
			}
		}
	}
	return names
}

// catalogueOf finds the catalogue of a language. The error is a fault.Fault.
func catalogueOf(name string) (*catalogue, error) {
	if name == "" {
		return catalogues()[0], nil
	}
	if tag, err := language.Parse(name); err == nil {
		base, _ := tag.Base()
		for _, c := range catalogues() {
			if c.Language == base.String() {
				return c, nil
			}
		}
	}
	return nil, fault.Fault{
		Code: fault.Unknown, Field: "language", Value: name, Detail: "there is no guide in this language", Expected: strings.Join(Languages(), " or "),
	}
}
