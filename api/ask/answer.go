package ask

import "slices"

// The words of decimal.
const decimalPoint, decimalComma = "point", "comma"

// Answer is how a request wants to be answered.
type Answer struct {
	Format     Word
	Pick, Show Text
	Header     Word
	Decimal    Word
	Download   Text
	Errors     Word
}

// bind binds the names that make sense for these formats; they are the last of
// every table.
func (a *Answer) bind(b *Names, formats []string) {
	isJSON, isTable := slices.Contains(formats, "json"), slices.Contains(formats, "csv") || len(formats) == 1
	bind := func(v value, n Name) {
		n.Advanced, n.Narrows = true, v != &a.Header && v != &a.Decimal
		b.bind(v, n)
	}
	bind(&a.Format, Name{Name: "format", Choices: formats, Example: formats[0],
		Help: "Format of the answer. Goes before the Accept header, and an extension of the path goes before it."})
	if isJSON {
		bind(&a.Pick, Name{Name: "pick", MostCharacters: mostPick, Example: "/unit",
			Help: "Answer with this one value of the JSON answer as plain text: a JSON Pointer (RFC 6901)."})
		bind(&a.Show, Name{Name: "show", MostCharacters: mostPick, Example: "links",
			Help: "Answer with these members of the JSON answer only: a list joined by commas."})
	}
	if isTable {
		bind(&a.Header, Name{Name: "header", Choices: []string{"0", "1"}, Example: "0", Help: "0 leaves the header row of CSV out."})
	}
	bind(&a.Decimal, Name{Name: "decimal", Choices: []string{decimalPoint, decimalComma}, Example: decimalComma,
		Help: "The decimal mark of the request's numbers, and of the answer's in CSV, in text and when picked."})
	bind(&a.Download, Name{Name: "download", Example: "band",
		Help: "Answer as an attachment of this name: letters, digits, hyphens, underscores."})
	bind(&a.Errors, Name{Name: "errors", Choices: []string{"cell", "problem"}, Example: "cell",
		Help: "cell answers every error with status 200 and one plain line that begins with an exclamation mark."})
}
