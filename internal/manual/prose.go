package manual

import (
	"html/template"
	"regexp"
	"strings"
)

// Prose turns the little Markdown that our own lists are written in into HTML:
// headings, paragraphs, items and code. A heading is one level lower than in the
// text, whose first one is left out.
func Prose(text string) template.HTML {
	var b strings.Builder
	in := ""
	tag := func(next string) {
		if in != next && in != "" {
			b.WriteString("</" + in + ">\n")
		}
		if in != next && next != "" {
			b.WriteString("<" + next + ">\n")
		}
		in = next
	}
	for block := range strings.SplitSeq(strings.TrimSpace(text), "\n\n") {
		tag("")
		switch {
		case strings.HasPrefix(block, "# "):
		case strings.HasPrefix(block, "## "):
			b.WriteString("<h2>" + inline(block[3:]) + "</h2>\n")
		case strings.HasPrefix(block, "- "):
			tag("ul")
			for item := range strings.SplitSeq(block[2:], "\n- ") {
				b.WriteString("<li>" + inline(item) + "</li>\n")
			}
		default:
			tag("p")
			b.WriteString(inline(block))
		}
	}
	tag("")
	return template.HTML(b.String())
}

var code = regexp.MustCompile("`([^`]+)`")

// inline escapes a text and marks its code.
func inline(text string) string {
	return code.ReplaceAllString(template.HTMLEscapeString(strings.Join(strings.Fields(text), " ")), "<code>$1</code>")
}
