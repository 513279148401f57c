package pdf

import (
	"strconv"

	"creasefit/internal/draw"
	"creasefit/internal/guide"
)

// spacing is from line to line of a guide, in sizes of letters.
const spacing = 1.28

// text is all that a guide says, wrapped for a size of letters.
type text struct {
	size       float64
	full, wide float64 // of the page's content and of a column
	long       float64 // of the page's content
	title      []string
	summary    []string
	rows       []row
}

// row is one line of a column.
type row struct {
	mark, text   string
	hang, indent float64 // where mark and text begin
	size         float64
	above        float64 // what is left free above, but at the head of a column
	heading      bool    // stays with the next row
}

func (r *row) ink() draw.Colour {
	if r.heading {
		return draw.Light().Of(draw.ValleyFold)
	}
	return draw.Light().Text
}

// room returns the height that the columns of the page have.
func (t *text) room() float64 {
	if len(t.title) == 0 {
		return t.long
	}
	return t.long - spacing*(1.9*float64(len(t.title))+float64(len(t.summary)))*t.size - 1.4*t.size
}

// caption returns the height of what is said below the picture, with the space
// round it.
func (t *text) caption() float64 { return 1.6*t.size + 2*spacing*smallest }

// story sets the sections of a guide one after the other.
func (t *text) story(g *guide.Guide) {
	l := &g.Labels
	t.list(l.Warnings, len(g.Warnings), func(i int) string { return g.Warnings[i].Text })
	t.list(l.Materials, len(g.Materials), func(i int) string { return g.Materials[i].Text })
	t.list(l.Tools, len(g.Tools), func(i int) string { return g.Tools[i].Text })
	t.list(l.CutList, len(g.CutList), func(i int) string {
		b := &g.CutList[i]
		return strconv.Itoa(b.Quantity) + " × " + b.Piece + ": " + b.Width.Text + " × " + b.Height.Text
	})
	t.heading(l.Steps)
	for i := range g.Steps {
		t.step(i+1, &g.Steps[i])
	}
	t.list(l.Cautions, len(g.Cautions), func(i int) string { return g.Cautions[i] })
	t.list(l.FitNotes, len(g.FitNotes), func(i int) string { return g.FitNotes[i] })
}

// list sets a section of short texts, unless there are none.
func (t *text) list(label string, n int, item func(int) string) {
	if n == 0 {
		return
	}
	t.heading(label)
	for i := range n {
		t.item(item(i), 0)
	}
}

// heading sets the title of a section.
func (t *text) heading(label string) {
	first := len(t.rows)
	for _, line := range draw.Wrap(label, 1.2*t.size, t.wide) {
		t.rows = append(t.rows, row{text: line, size: 1.2 * t.size, heading: true})
	}
	t.rows[first].above = 0.9 * t.size
}

// step sets one step with its number.
func (t *text) step(number int, s *guide.Step) {
	first, indent := len(t.rows), 2*t.size
	for _, line := range draw.Wrap(s.Title, 1.05*t.size, t.wide-indent) {
		t.rows = append(t.rows, row{text: line, indent: indent, size: 1.05 * t.size, heading: true})
	}
	t.rows[first].mark, t.rows[first].above = strconv.Itoa(number), 0.45*t.size
	t.paragraph(s.Text, indent)
	for _, line := range s.Lines {
		t.item(line, indent)
	}
	if s.After != "" {
		t.paragraph(s.After, indent)
	}
}

// item sets one of several texts with a dot before it.
func (t *text) item(of string, hang float64) {
	first := len(t.rows)
	t.paragraph(of, hang+1.1*t.size)
	t.rows[first].mark, t.rows[first].hang = "•", hang+0.2*t.size
}

// paragraph wraps a text to the column.
func (t *text) paragraph(of string, indent float64) {
	first := len(t.rows)
	for _, line := range draw.Wrap(of, t.size, t.wide-indent) {
		t.rows = append(t.rows, row{text: line, indent: indent, size: t.size})
	}
	t.rows[first].above = 0.12 * t.size
}

// height returns the least height of two columns that hold everything.
func (t *text) height() float64 {
	low, high := 0.0, tall(t.rows)
	for high-low > 0.1 {
		middle := (low + high) / 2
		if n := take(t.rows, middle); take(t.rows[n:], middle) == len(t.rows)-n {
			high = middle
		} else {
			low = middle
		}
	}
	return high
}

// tall returns the height of rows in one column.
func tall(rows []row) (high float64) {
	for i := range rows {
		high += rows[i].above + spacing*rows[i].size
	}
	return high
}

// take returns how many rows a column of a height holds: at least one, and no
// heading at its end if anything follows.
func take(rows []row, high float64) int {
	n := 0
	for y := 0.0; n < len(rows); n++ {
		if n > 0 {
			y += rows[n].above
		}
		if y += spacing * rows[n].size; y > high {
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
