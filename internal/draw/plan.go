package draw

import (
	"fmt"
	"math"
	"strconv"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/sheet"
)

// NewPlan draws the sheets of a cut plan: the blanks with their names, what is
// left over, which way the grain runs, the cuts with the numbers of their
// steps, and below each sheet the steps. Their texts are the plan's.
func NewPlan(order *sheet.Order, answer *sheet.Answer, o Options) *Drawing {
	l := o.layout(nil)
	longest := 0.0
	for _, s := range order.Sheets {
		longest = max(longest, s.Width.Millimetres(), s.Height.Millimetres())
	}
	l.suit(max(Lettering, longest/80))
	d := l.drawing(Measured, nil, o, func(o Options) *Drawing { return NewPlan(order, answer, o) })
	d.remarks = l.items(order, answer)
	for i := range answer.Plans {
		d.Figures = append(d.Figures, l.drawSheet(order, &answer.Plans[i], i+1))
	}
	if d.Description == "" {
		d.Description = fmt.Sprintf("%s: %d.", l.say("Sheets to cut"), answer.Sheets)
	}
	return l.stacked(d)
}

// items lists what is cut: the number that stands in small blanks, name, size
// and how many; then what other numbers mean.
func (l *layout) items(order *sheet.Order, answer *sheet.Answer) []string {
	list := make([]string, len(order.Items), len(order.Items)+1)
	for i, it := range order.Items {
		list[i] = fmt.Sprintf("%d: %s, %s", i+1, l.say(it.Name), l.size(it.Width, it.Height))
		if i < len(answer.Made) {
			list[i] += fmt.Sprintf(", %d %s", answer.Made[i], l.say("made"))
		}
	}
	return append(list, l.say("The small numbers beside the cuts are those of the steps."))
}

func (l *layout) size(w, h measure.Length) string {
	return l.length(w) + " × " + l.length(h)
}

// drawSheet draws one way of cutting a sheet.
func (l *layout) drawSheet(order *sheet.Order, s *sheet.Sheets, number int) Figure {
	stock := order.Sheets[s.Stock]
	f := &figure{layout: l, piece: &pattern.Piece{}, flat: flat{mesh: &Mesh{}}}
	f.w, f.h = stock.Width.Millimetres(), stock.Height.Millimetres()
	f.fig.Name = fmt.Sprintf("%s %d", l.say("cut plan"), number)
	f.fig.Size = Point{f.w, f.h}
	f.fig.Box = Box{High: f.fig.Size}
	f.paper(rectangle(f.fig.Box), l.say("sheet"))
	origin := pattern.At(s.Usable.X, s.Usable.Y)
	f.numberCuts(cutLines(order, s))
	f.grainArrow(stock.Grain)
	for _, p := range s.Placed {
		f.blank(order, p, origin)
	}
	for _, r := range s.Offcuts {
		path := lies(r, origin)
		f.fig.Lines = append(f.fig.Lines, Line{Layer: Waste, Name: l.say("left over"), Path: path, Closed: true})
		f.fig.Lines = f.shade(f.fig.Lines, Waste, path, Point{math.Sqrt2 / 2, math.Sqrt2 / 2}, 1.6*l.lettering)
	}
	f.steps(s.Steps)
	text := fmt.Sprintf("%s, %s %d", l.size(stock.Width, stock.Height), l.say("sheets:"), s.Times)
	if stock.Paper != "" {
		text = stock.Paper + ", " + text
	}
	f.title(text)
	f.ordered()
	return f.fig
}

// lies returns the path round a rectangle of the usable part of a sheet.
func lies(r sheet.Rect, origin pattern.Point) []Vertex {
	x, y := r.X.Add(origin.X), r.Y.Add(origin.Y)
	return rectangle(Box{place(pattern.At(x, y)), place(pattern.At(x.Add(r.Width), y.Add(r.Height)))})
}

// blank draws where a blank lies, with its name or its number as they fit.
func (f *figure) blank(order *sheet.Order, p sheet.Placement, origin pattern.Point) {
	path, item := lies(p.Rect, origin), &order.Items[p.Item]
	name := f.say(item.Name)
	f.fig.Lines = append(f.fig.Lines, Line{Layer: Outline, Name: name, Path: path, Closed: true})
	spot := room{figure: f, ring: Flatten(nil, path, true, 1)}
	for _, text := range [...]string{name + ", " + f.size(item.Width, item.Height), name, strconv.Itoa(p.Item + 1)} {
		if label, ok := spot.inscribe(text, f.lettering); ok {
			f.label(label)
			return
		}
	}
}

// steps writes the cuts in their order below the sheet.
func (f *figure) steps(steps []sheet.Step) {
	size := f.lettering
	most := max(f.w, 30*size)
	y := -size
	for i, s := range steps {
		lines := Wrap(fmt.Sprintf("%d. %s", i+1, s.Text), size, most)
		_, h := Block(lines, size)
		f.label(textAt(0, y, size, false, lines...))
		y -= h + 0.5*size
	}
}
