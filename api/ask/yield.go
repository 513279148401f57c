package ask

import (
	"strconv"
	"time"

	"creasefit/internal/enclosure"
	"creasefit/internal/enclosure/own"
	"creasefit/internal/guide"
	"creasefit/internal/measure"
	"creasefit/internal/sheet"
	"creasefit/internal/solve"
)

// PriceUnit is what a price is counted in: the planner wants whole numbers,
// and a price has at most four decimals.
const PriceUnit = 10_000

// Yield is an order of blanks and enclosures.
type Yield struct {
	Unit       Unit
	Sheets     Objects
	SheetGrain Word
	Margin     Length
	Kerf       Length
	Ruler      Step
	Trimmer    Length
	Minimize   Word
	Prefer     Word
	Stages     Count
	Offcut     Length
	Effort     Count
	Theme      Word
	Pictures   Word
	Language   Word
	Items      Objects
	Single     Blank // the only item, if Items are not given

	forms *yieldForms

	Order      sheet.Order // what the names come to, but for the items
	Wanted     []Wanted
	SheetNames []string // how the request leads to each sheet
}

// Wanted is one item of an order: a blank, or an enclosure.
type Wanted struct {
	Item    sheet.Item
	Request *solve.Request // of an enclosure, else nil
	Place   string         // how the request leads to it; empty for a single blank
}

// yieldForms are the forms of the objects in an order.
type yieldForms struct {
	sheet *Form[*Sheet]
	blank *Form[*Blank]
	kinds kindForms[*Item]
}

// NewYield is the form of an order.
func NewYield(formats ...string) *Form[*Yield] {
	forms := &yieldForms{
		sheet: New[Sheet](), blank: New[Blank](),
		kinds: newKindForms(func(k *enclosure.Kind) *Item { return &Item{Enclosure: Enclosure{Kind: k}} }),
	}
	return NewForm(func() *Yield { return &Yield{forms: forms} }, formats...).Large()
}

func (q *Yield) bind(b *Names) {
	nothing := measure.Length{}
	b.bind(&q.Unit, unitName())
	size := Shape{Help: "A size of sheet.", Names: q.forms.sheet.Names(), Required: []string{"size"}, Short: "size"}
	b.bind(&q.Sheets, Name{Name: "sheet", Most: sheet.MostSizes, MostCharacters: 512, Example: "12 x 12 in", Shapes: []Shape{size},
		Help: "The sheet that blanks are cut from: a size, or a name; or several, each with its price, its grain and the number in stock."})
	b.bind(&q.SheetGrain, Name{Name: "sheet_grain", Choices: sides(), Example: "height",
		Help: "The side of the sheet that the grain runs along. Needed if an item must keep it."})
	b.bind(&q.Margin, Name{Name: "margin", Example: "0 in", Default: Default{"0 in", "0 mm"},
		Help: "Trimmed off every side of a sheet first."}.
		between(nothing, measure.Millimetres(500)))
	b.bind(&q.Kerf, Name{Name: "kerf", Example: "0 in", Default: Default{"0 in", "0 mm"}, Advanced: true,
		Help: "What a cut takes away; a trimmer takes nothing."}.
		between(nothing, measure.Millimetres(20)))
	b.bind(&q.Ruler, rulerName("The finest mark of the ruler that cuts are set to."))
	b.bind(&q.Trimmer, Name{Name: "trimmer_length", Example: "12 in",
		Help: "The longest cut that the trimmer makes. Default: as long as need be."}.
		between(measure.Millimetres(10), measure.Millimetres(10_000)))
	b.bind(&q.Minimize, Name{Name: "minimize", Choices: []string{"sheets", "cost"}, Example: "sheets", Default: Always("sheets"),
		Help: "What to keep small: the number of sheets, or the sum of their prices."})
	b.bind(&q.Prefer, Name{Name: "prefer", Choices: []string{"settings", "offcut", "stages"}, Example: "settings", Default: Always("settings"),
		Help: "Which of the plans with as few sheets: the fewest settings of the trimmer, the largest usable offcut, or the fewest stages."})
	b.bind(&q.Stages, Name{Name: "stages", Example: "3",
		Help: "Most directions of cutting one after another, from a trimmed sheet to a blank. Default: as many as need be."}.numbers(2, 3))
	b.bind(&q.Offcut, Name{Name: "offcut_least", Example: "2 in", Default: Default{"2 in", "50 mm"},
		Help: "An offcut is usable if neither side is shorter."}.
		between(nothing, measure.Millimetres(10_000)))
	usual := strconv.FormatInt(sheet.DefaultEffort.Milliseconds(), 10)
	b.bind(&q.Effort, Name{Name: "effort_ms", Example: usual, Default: Always(usual), Advanced: true,
		Help: "How long to look for a proof that no plan needs less, in milliseconds."}.numbers(1, float64(sheet.MostEffort.Milliseconds())))
	theme := themeName("Dark lines on light paper, or the other way round; of SVG.")
	theme.Advanced = true
	b.bind(&q.Theme, theme)
	b.bind(&q.Pictures, picturesName("Adds a picture of the sheets of this very plan as SVG, for a light or a dark page."))
	b.bind(&q.Language, languageName("The language of the words of a plan."))
	b.bind(&q.Items, Name{Name: "items", Most: sheet.MostItems, MostCharacters: own.MostBytes, Example: `{"blank":"8 1/4 x 1 3/4 in","count":25}`, Shapes: q.forms.itemShapes(),
		Help: "The blanks wanted, or enclosures of which every piece is wanted. For a single one blank, count and grain can be given instead."})
	q.Single.bind(b)
}

// Dark reports whether lines are to be light.
func (q *Yield) Dark() bool { return q.Theme.Is(themeDark) }

// itemShapes are the two shapes of an item.
func (f *yieldForms) itemShapes() []Shape {
	names := pickNames(f.kinds.any().Names(), "kind", "name", "count", "grain", "paper", "priority", "spares")
	return []Shape{{Help: "A blank.", Names: f.blank.Names(), Required: []string{"blank"}},
		{Help: "An enclosure: every piece of it is planned. Takes the names of /v1/solve/{kind} as well.", Names: names, Required: []string{"kind"}, Open: true}}
}

func (q *Yield) settle(r *Reading) {
	q.Order = sheet.Order{Margin: q.Margin.On(r.unit), Kerf: q.Kerf.On(r.unit), Trimmer: q.Trimmer.Length, Effort: time.Duration(q.Effort.Count()) * time.Millisecond}
	q.Order.Least, q.Order.Stages = q.Offcut.On(r.unit), q.Stages.Count()
	switch {
	case q.Prefer.Is("offcut"):
		q.Order.Prefer = sheet.LargeOffcuts
	case q.Prefer.Is("stages"):
		q.Order.Prefer = sheet.FewStages
	}
	if q.Minimize.Is("cost") {
		q.Order.Minimize = sheet.LeastCost
	}
	if language := q.Language.Word; language != guide.Languages()[0] {
		q.Order.Say, _ = guide.Words(language) // one that there is no catalogue of has been refused
	}
	q.Wanted, q.SheetNames = nil, nil
	q.settleSheets(r)
	q.settleItems(r)
	r.needUnit(&q.Unit)
	if q.Order.Ruler = q.Ruler.Step; q.Order.Ruler.IsZero() {
		q.Order.Ruler = q.Ruler.on(r.unit)
	}
}

// settleSheets reads the sizes of sheets.
func (q *Yield) settleSheets(r *Reading) {
	if !q.Sheets.Given {
		r.missing(&q.Sheets, "a sheet to cut from is needed", "add sheet=12x12in or sheet=letter")
	}
	r.limitObjects(&q.Sheets)
	for i, text := range q.Sheets.Texts {
		name := entry("sheet", i)
		if len(q.Sheets.Texts) == 1 {
			name = "sheet"
		}
		a, ok := inner(r, q.forms.sheet, text, "size")
		if ok {
			a.Check()
			q.Order.Sheets = append(q.Order.Sheets, a.Q.stock(sideOf(q.SheetGrain.Word)))
		}
		for k := range a.faults {
			if !isObject(text) { // they are of the text that the object stands in the place of
				a.faults[k].Field = ""
			}
		}
		r.adopt(&a.Reading, name, nil)
		a.Release()
		q.SheetNames = append(q.SheetNames, name)
	}
}

// settleItems reads the items, or takes the single blank.
func (q *Yield) settleItems(r *Reading) {
	if !q.Items.Given {
		q.Single.settle(r)
		q.Wanted = []Wanted{{Item: q.Single.item(r)}}
		return
	}
	for _, v := range [...]value{&q.Single.Name, &q.Single.Size, &q.Single.Count, &q.Single.Grain, &q.Single.Paper, &q.Single.Priority, &q.Single.Spares} {
		r.exclude(v, &q.Items, "it belongs to a single blank; the items have their own")
	}
	r.limitObjects(&q.Items)
	for i, text := range q.Items.Texts {
		q.Wanted = append(q.Wanted, q.settleItem(r, text, entry("items", i)))
	}
}

// settleItem reads one item.
func (q *Yield) settleItem(r *Reading, text, place string) Wanted {
	w := Wanted{Place: place}
	name := kindNamed(text)
	if name == "" {
		a, ok := inner(r, q.forms.blank, text, "")
		if ok {
			a.Check()
			w.Item = a.Q.item(&a.Reading)
		}
		r.adopt(&a.Reading, place, nil)
		a.Release()
		return w
	}
	form, ok := q.forms.kinds.find(r, name, text, place)
	if !ok {
		return w
	}
	a, ok := inner(r, form, text, "")
	if ok {
		a.Q.beside(q.Ruler.Step)
		a.Check()
		w.Request, w.Item = a.Q.Request, a.Q.item(&a.Reading)
	}
	r.adopt(&a.Reading, place, nil)
	a.Release()
	return w
}
