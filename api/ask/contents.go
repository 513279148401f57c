package ask

import (
	"creasefit/internal/contents"
	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
	"creasefit/internal/tolerance"
)

// Contents is what goes inside.
type Contents struct {
	Preset                   Word
	Width, Height, Thickness Total
	Tolerance                Spread
}

func (c *Contents) bind(b *Names) {
	b.bind(&c.Preset, Name{Name: "contents", Choices: contents.Names(), Catalogue: "/v1/contents", Example: "tasting-cards",
		Help: "What goes inside, by name, instead of width and height."})
	b.bind(&c.Width, Name{Name: "width", Example: "3 1/2 in",
		Help: "Width of the contents. Of several things it is 3 of 60 mm + 4 mm; of contents by name, 3 of them."}.
		between(enclosure.Widths().Min, enclosure.Widths().Max))
	b.bind(&c.Height, Name{Name: "height", Example: "5 in",
		Help: "Height of the contents."}.between(enclosure.Widths().Min, enclosure.Widths().Max))
	b.bind(&c.Thickness, Name{Name: "thickness", Example: "0.09 in",
		Help: "Thickness of the contents in all."}.between(enclosure.Thicknesses().Min, enclosure.Thicknesses().Max))
	b.bind(&c.Tolerance, Name{Name: "contents_tolerance", Example: "1/64 in", Advanced: true,
		Help: "How much the contents vary in every direction, plus or minus, or one way alone, such as -1/8 for what only shrinks. Default: " +
			"what the named contents state, else nothing."}.spread())
}

// hair is the thinnest that anything is taken for.
func hair() measure.Length { return measure.Micrometres(10) }

// spread bounds a tolerance or a clearance.
func (n Name) spread() Name { return n.between(measure.Length{}, measure.Millimetres(10)) }

// settle fills in what goes inside.
func (c *Contents) settle(r *Reading, q *solve.Request) {
	item, named := contents.Lookup(c.Preset.Word)
	if named && r.unit == measure.NoUnit && !r.mistaken {
		r.unit = item.Unit
	}
	times := max(1, c.Width.many(r, &c.Preset, item.Width), c.Height.many(r, &c.Preset, item.Height))
	piled := c.Thickness.many(r, &c.Preset, item.Thickness)
	if named {
		c.Width.fill(item.Width, "contents")
		c.Height.fill(item.Height, "contents")
		q.SizeTolerance = tolerance.Within(item.SizeTolerance.Times(times))
		if !c.Thickness.Given || piled > 0 {
			c.Thickness.fill(item.Thickness, "contents")
			q.ThicknessTolerance = tolerance.Within(item.ThicknessTolerance.Times(max(1, piled)))
		}
	}
	q.Width, q.Height, q.Thickness = c.Width.Length.Length, c.Height.Length.Length, c.Thickness.Length.Length
	if c.Tolerance.Given {
		q.SizeTolerance, q.ThicknessTolerance = c.Tolerance.Source(), c.Tolerance.Source()
	}
}

// roundOff makes round contents as thick as they are wide, unless a thickness is
// stated.
func (c *Contents) roundOff(q *solve.Request) {
	if enclosure.Round(q.Options) && q.Thickness.IsZero() {
		c.Thickness.fill(q.Width, "width")
		q.Thickness = q.Width
	}
}

// require reports the sizes that a kind needs and nobody stated.
func (c *Contents) require(r *Reading, needs []string) {
	for _, need := range needs {
		size := c.size(need)
		if size.Given || !size.Length.Length.IsZero() {
			continue
		}
		if !c.Preset.Given {
			r.missing(size, "the "+need+" of the contents is needed", "give "+need+", or contents by name")
		} else if _, known := contents.Lookup(c.Preset.Word); known {
			r.missing(size, "the source of these contents states no "+need, "add "+need+" to the request")
		}
	}
}

// size returns the size of that name.
func (c *Contents) size(name string) *Total {
	for _, size := range [...]*Total{&c.Width, &c.Height} {
		if size.name().Name == name {
			return size
		}
	}
	return &c.Thickness
}
