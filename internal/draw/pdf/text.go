package pdf

import (
	"strconv"
	"strings"

	"creasefit/internal/draw"
	"creasefit/internal/guide"
)

// spacing is from line to line of a guide, in sizes of letters.
const spacing = 1.19

// text is all that a guide says and shows, set for a size of letters.
type text struct {
	size       float64
	full, wide float64 // of the page's content and of a column
	long       float64 // of the page's content
	columns    int
	title      []string
	summary    []string
	rows       []row
}

// row is one line of a column, or a picture in it.
type row struct {
	mark, label, text string // the label stands before the text
	hang, indent      float64
	size              float64
	above             float64 // what is left free above, but at the head of a column
	heading           bool    // stays with the next row
	picture           *picture
	of                *element
}

func (r *row) height() float64 {
	if r.picture != nil {
		return r.picture.high
	}
	return spacing * r.size
}

// after returns how far the text stands after its label.
func (r *row) after() float64 {
	if r.label == "" {
		return 0
	}
	return draw.Width(r.label+" ", r.size)
}

// story sets the sections of a guide one after the other. show returns the picture
// of a step, nil for none.
func (t *text) story(g *guide.Guide, show func(step int) *picture) {
	l := &g.Labels
	for i := range g.Warnings {
		t.item(g.Warnings[i].Text, 0)
	}
	t.run(l.Materials, len(g.Materials), func(i int) string { return g.Materials[i].Text })
	t.run(l.Tools, len(g.Tools), func(i int) string { return g.Tools[i].Text })
	cuts := g.Cuts()
	t.run(l.CutList, len(cuts), func(i int) string { return cuts[i].String() })
	t.heading(l.Steps)
	for i := range g.Steps {
		t.step(i+1, &g.Steps[i])
		if p := show(i); p != nil {
			t.rows = append(t.rows, row{picture: p, above: 0.5 * t.size, of: &element{tag: "Figure", alt: p.d.Description}})
		}
	}
	t.heading(l.Cautions)
	for _, caution := range g.Cautions {
		t.item(caution, 0)
	}
	t.run(l.FitNotes, len(g.FitNotes), func(i int) string { return g.FitNotes[i] })
}

// run sets a section of short texts as one paragraph after its label, unless there
// are none.
func (t *text) run(label string, n int, item func(int) string) {
	if n == 0 {
		return
	}
	texts := make([]string, n)
	for i := range texts {
		texts[i] = item(i)
	}
	between := " · "
	if strings.HasSuffix(texts[0], ".") {
		between = " "
	}
	first := len(t.rows)
	t.paragraph(label+": "+strings.Join(texts, between), 0)
	if r := &t.rows[first]; strings.HasPrefix(r.text, label+": ") {
		r.label, r.text = label+":", r.text[len(label)+2:]
	}
	t.rows[first].above = 0.5 * t.size
}

// heading sets the title of a section.
func (t *text) heading(label string) {
	first, of := len(t.rows), &element{tag: "H2"}
	for _, line := range draw.Wrap(label, 1.15*t.size, t.wide) {
		t.rows = append(t.rows, row{text: line, size: 1.15 * t.size, heading: true, of: of})
	}
	t.rows[first].above = 0.8 * t.size
}

// step sets one step with its number.
func (t *text) step(number int, s *guide.Step) {
	first, indent, of := len(t.rows), t.inset(), &element{tag: "H3"}
	for _, line := range draw.Wrap(s.Title, 1.05*t.size, t.wide-indent) {
		t.rows = append(t.rows, row{text: line, indent: indent, size: 1.05 * t.size, heading: true, of: of})
	}
	t.rows[first].mark, t.rows[first].above = strconv.Itoa(number), 0.5*t.size
	t.paragraph(s.Text, indent)
	for _, line := range s.Lines {
		t.item(line, indent)
	}
	if s.After != "" {
		t.paragraph(s.After, indent)
	}
}

// inset is how far the text of a step stands to the right of its number.
func (t *text) inset() float64 { return 1.8 * t.size }

// item sets one of several texts with a dot before it.
func (t *text) item(of string, hang float64) {
	first := len(t.rows)
	t.paragraph(of, hang+0.9*t.size)
	t.rows[first].mark, t.rows[first].hang = "•", hang+0.1*t.size
}

// paragraph wraps a text to the column.
func (t *text) paragraph(text string, indent float64) {
	first, of := len(t.rows), &element{tag: "P"}
	for _, line := range draw.Wrap(text, t.size, t.wide-indent) {
		t.rows = append(t.rows, row{text: line, indent: indent, size: t.size, of: of})
	}
	t.rows[first].above = 0.12 * t.size
}

// head returns the height of title and summary.
func (t *text) head(title float64) float64 {
	return spacing*(title*float64(len(t.title))+t.size*float64(len(t.summary))) + 0.9*t.size
}

// pages returns how many pages it takes.
func (t *text) pages(title float64) (n int) {
	high := t.long - t.head(title)
	for rows := t.rows; n == 0 || len(rows) > 0; n++ {
		for range t.columns {
			rows = rows[take(rows, high):]
		}
		high = t.long
	}
	return n
}

// take returns how many rows a column of a height holds: at least one, and no
// heading at its end if anything follows.
func take(rows []row, high float64) int {
	n := 0
	for y := 0.0; n < len(rows); n++ {
		if n > 0 {
			y += rows[n].above
		}
		if y += rows[n].height(); y > high {
			break
		}
	}
	if n == len(rows) {
		return n
	}
	for k := n; k > 0; k-- {
		if !rows[k-1].heading {
			return k
		}
	}
	return max(n, min(1, len(rows)))
}
