package measure

import "strings"

// unitName is one way to write a unit. unit is NoUnit for those that are not
// read but can be converted in a hint.
type unitName struct {
	unit Unit
	nm   int64 // nanometres in one
}

// UnitNamed finds the unit that a word or a mark is of, as lengths may be written with
// it: "inches" is Inch. whole is false for what is a multiple of the unit, as cm are.
// A word of no unit that is read is NoUnit.
func UnitNamed(word string) (unit Unit, whole bool) {
	named, _ := unitNamed(strings.TrimSpace(word))
	return named.unit, named.unit != NoUnit && named.nm == perUnit(named.unit)
}

// unitNamed finds a unit by its name or mark.
func unitNamed(name string) (unitName, bool) {
	switch strings.ToLower(name) {
	case "in", "in.", "inch", "inches", "zoll", `"`, "″", "”":
		return unitName{Inch, nmPerInch}, true
	case "mm", "millimetre", "millimetres", "millimeter", "millimeters":
		return unitName{Millimetre, nmPerMillimetre}, true
	case "cm", "centimetre", "centimetres", "centimeter", "centimeters":
		return unitName{Millimetre, 10 * nmPerMillimetre}, true
	case "m", "metre", "metres", "meter", "meters":
		return unitName{NoUnit, 1000 * nmPerMillimetre}, true
	case "µm", "μm", "um", "micron", "microns":
		return unitName{NoUnit, nmPerMillimetre / 1000}, true
	case "mil", "mils", "thou", "pt", "point", "points":
		return unitName{NoUnit, nmPerInch / 1000}, true
	case "yd", "yard", "yards":
		return unitName{NoUnit, 36 * nmPerInch}, true
	default:
		return unitName{}, false
	}
}

// feetMark returns the mark or name of feet that the text begins with.
func feetMark(tail string) string {
	lower := strings.ToLower(tail)
	for _, mark := range []string{"'", "′", "’", "ft.", "ft", "foot", "feet"} {
		if strings.HasPrefix(lower, mark) {
			return tail[:len(mark)]
		}
	}
	return ""
}
