package tell

import (
	"strings"

	"creasefit/api/wire"
)

// suggestionTable has one row a kind, in their order.
func suggestionTable(a *wire.Suggestions) table {
	t := table{header: SuggestionColumns}
	for i := range a.Kinds {
		k := &a.Kinds[i]
		row := []any{k.Kind, yesNo(k.Works), whyOf(k), "", "", "", "", "", "", "", k.Link}
		if k.Works {
			row[3], row[4], row[5], row[6], row[8] = k.Step, *k.Chance, reading(k.Blank.Width.Reading), reading(k.Blank.Height.Reading), k.Minutes
		}
		if k.Sheets != nil {
			row[7] = *k.Sheets
		}
		if k.Post != nil {
			row[9] = strings.TrimSpace(k.Post.Class + " " + k.Post.Verdict)
		}
		t.rows = append(t.rows, row)
	}
	return t
}

// whyOf joins what is said of a kind: sentences, or what is wrong with what is taken.
func whyOf(k *wire.Suggestion) string {
	words := ""
	for _, r := range k.Why {
		switch {
		case strings.HasSuffix(words, "."):
			words += " "
		case words != "":
			words += "; "
		}
		if words += r.Detail; r.Expected != "" {
			words += " (" + r.Expected + ")"
		}
	}
	return words
}
