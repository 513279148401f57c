package ask

import (
	"strings"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
)

// kindName is the kind of an item or a layer.
func kindName() Name {
	n := Name{Name: "kind", Type: ChoiceType, Help: "What to make; its other names are those of /v1/solve/{kind}."}
	for _, k := range repertoire.Kinds() {
		n.Choices = append(n.Choices, k.Name)
	}
	n.Choices = append(n.Choices, OwnKind)
	n.Example = n.Choices[0]
	return n
}

// kindNamed returns the kind that an object names, empty if it names none.
func kindNamed(text string) string {
	if _, ok := UnreadableJSON([]byte(text)); !ok {
		return ""
	}
	return Member([]byte(text), "kind")
}

// noSuchKind is the fault of an object of a kind that there is not.
func noSuchKind(field, name string) fault.Fault {
	kinds := kindName()
	return fault.Fault{Code: fault.Unknown, Field: field, Value: name, Detail: "there is no such kind of enclosure", Expected: kinds.expected(measure.NoUnit),
		Hint: fault.Meant(fault.Nearest(strings.ToLower(name), kinds.Choices))}
}
