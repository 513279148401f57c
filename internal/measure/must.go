package measure

// MustParse reads a length with its unit from a table in the program's own
// code; it panics if it cannot be read.
func MustParse(text string) Length { return must(Parse(text, NoUnit, ClearComma)) }

// MustParseSize reads a size with its unit from a table in the program's own
// code; it panics if it cannot be read.
func MustParseSize(text string, counts ...int) []Length {
	return must(ParseSize(text, NoUnit, ClearComma, counts...))
}

// MustParseStep is ParseStep for a text that is known to be one.
func MustParseStep(text string) Step { return must(ParseStep(text)) }

func must[T any](value T, err error) T {
	if err != nil {
		panic(err)
	}
	return value
}
