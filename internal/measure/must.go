package measure

// MustParse reads a length with its unit from a table in the program's own
// code; it panics if it cannot be read.
func MustParse(text string) Length {
	l, err := Parse(text, NoUnit, ClearComma)
	if err != nil {
		panic(err)
	}
	return l
}

// MustParseSize reads a size with its unit from a table in the program's own
// code; it panics if it cannot be read.
func MustParseSize(text string, counts ...int) []Length {
	ls, err := ParseSize(text, NoUnit, ClearComma, counts...)
	if err != nil {
		panic(err)
	}
	return ls
}

// MustParseStep is ParseStep for a text that is known to be one.
func MustParseStep(text string) Step {
	s, err := ParseStep(text)
	if err != nil {
		panic(err)
	}
	return s
}
