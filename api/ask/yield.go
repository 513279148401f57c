package ask

import (
	"math"
	"strconv"
	"strings"
	"time"
	"unicode"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
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
	Effort     Count
	Theme      Word
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
	kinds map[string]*Form[*Item]
}

// NewYield is the form of an order.
func NewYield(formats ...string) *Form[*Yield] {
	forms := &yieldForms{
		sheet: NewForm(func() *Sheet { return &Sheet{} }), blank: NewForm(func() *Blank { return &Blank{} }),
		kinds: map[string]*Form[*Item]{},
	}
	for _, k := range enclosure.Kinds() {
		forms.kinds[k.Name] = NewForm(func() *Item { return &Item{Enclosure: Enclosure{Kind: k}} })
	}
	return NewForm(func() *Yield { return &Yield{forms: forms} }, formats...).Large()
}

func (q *Yield) bind(b *Names) {
	nothing := measure.Length{}
	b.bind(&q.Unit, unitName())
	b.bind(&q.Sheets, Name{Name: "sheet", Most: sheet.MostSizes, MostCharacters: 512, Example: "12 x 12 in", Shapes: []Shape{q.forms.sheetShape()},
		Help: "The sheet that blanks are cut from: a size, or a name; or several, each with its price, its grain and the number in stock."})
	b.bind(&q.SheetGrain, Name{Name: "sheet_grain", Choices: sides(), Example: "height",
		Help: "The side of the sheet that the grain runs along. Needed if an item must keep it."})
	b.bind(&q.Margin, Name{Name: "margin", Example: "0 in", Default: Default{"0 in", "0 mm"}, Help: "Trimmed off every side of a sheet first."}.
		between(nothing, measure.Millimetres(500)))
	b.bind(&q.Kerf, Name{Name: "kerf", Example: "0 in", Default: Default{"0 in", "0 mm"}, Advanced: true, Help: "What a cut takes away; a trimmer takes nothing."}.
		between(nothing, measure.Millimetres(20)))
	b.bind(&q.Ruler, rulerName("The finest mark of the ruler that cuts are set to."))
	b.bind(&q.Trimmer, Name{Name: "trimmer_length", Example: "12 in", Help: "The longest cut that the trimmer makes. Default: as long as need be."}.
		between(measure.Millimetres(10), measure.Millimetres(10_000)))
	b.bind(&q.Minimize, Name{Name: "minimize", Choices: []string{"sheets", "cost"}, Example: "sheets", Default: Always("sheets"),
		Help: "What to keep small: the number of sheets, or the sum of their prices."})
	usual := strconv.FormatInt(sheet.DefaultEffort.Milliseconds(), 10)
	b.bind(&q.Effort, Name{Name: "effort_ms", Example: usual, Default: Always(usual), Advanced: true,
		Help: "How long to look for a proof that no plan needs less, in milliseconds."}.numbers(1, float64(sheet.MostEffort.Milliseconds())))
	theme := themeName("Dark lines on light paper, or the other way round; of SVG.")
	theme.Advanced = true
	b.bind(&q.Theme, theme)
	b.bind(&q.Items, Name{Name: "items", Most: sheet.MostItems, MostCharacters: 4096, Example: `{"blank":"8 1/4 x 1 3/4 in","count":25}`, Shapes: q.forms.itemShapes(),
		Help: "The blanks wanted, or enclosures of which every piece is wanted. For a single one blank, count and grain can be given instead."})
	q.Single.bind(b)
}

// Dark reports whether lines are to be light.
func (q *Yield) Dark() bool { return q.Theme.Is(themeDark) }

// sheetShape is the shape of a sheet.
func (f *yieldForms) sheetShape() Shape {
	s := shapeOf("A size of sheet.", f.sheet.Names(), "size")
	s.Short = "size"
	return s
}

// itemShapes are the two shapes of an item.
func (f *yieldForms) itemShapes() []Shape {
	item := shapeOf("An enclosure: every piece of it is planned. Takes the names of /v1/solve/{kind} as well.",
		pickNames(f.kinds[enclosure.Kinds()[0].Name].Names(), "kind", "name", "count", "grain"), "kind")
	item.Open = true
	return []Shape{shapeOf("A blank.", f.blank.Names(), "blank"), item}
}

func (q *Yield) settle(r *Reading) {
	q.Order = sheet.Order{Margin: q.Margin.On(r.unit), Kerf: q.Kerf.On(r.unit), Trimmer: q.Trimmer.Length, Effort: time.Duration(q.Effort.Count()) * time.Millisecond}
	if q.Minimize.Is("cost") {
		q.Order.Minimize = sheet.LeastCost
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
		if !isObject(text) {
			shorten(a.faults)
		}
		r.adopt(&a.Reading, name, nil)
		a.Release()
		q.SheetNames = append(q.SheetNames, name)
	}
}

// shorten names faults of a plain text after the object that it stands for.
func shorten(faults fault.Faults) {
	for i := range faults {
		faults[i].Field = ""
	}
}

// settleItems reads the items, or takes the single blank.
func (q *Yield) settleItems(r *Reading) {
	if !q.Items.Given {
		q.Single.settle(r)
		q.Wanted = []Wanted{{Item: q.Single.item(r)}}
		return
	}
	for _, v := range [...]value{&q.Single.Name, &q.Single.Size, &q.Single.Count, &q.Single.Grain} {
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
	form, ok := q.forms.kinds[name]
	if !ok {
		r.Report(noSuchKind(place+".kind", name), "")
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

// Sheet is one size of sheet.
type Sheet struct {
	Size      Size
	Grain     Word
	Price     Number
	Available Count
}

func (q *Sheet) bind(b *Names) {
	b.bind(&q.Size, Name{Name: "size", Catalogue: "/v1/sheets/sizes", Example: "12 x 12 in", Help: "Width and height, or a name."}.
		between(measure.Millimetres(10), measure.Millimetres(10_000)))
	b.bind(&q.Grain, Name{Name: "grain", Choices: sides(), Example: "height", Help: "The side that the grain runs along, if another than sheet_grain."})
	b.bind(&q.Price, Name{Name: "price", Example: "0.35", Help: "Of one sheet, with at most four decimals, in any currency that all sizes share."}.
		numbers(1.0/PriceUnit, 100_000))
	b.bind(&q.Available, Name{Name: "available", Example: "10", Help: "Sheets in stock. Default: as many as needed."}.numbers(1, sheet.MostPieces))
}

func (q *Sheet) settle(r *Reading) {
	if !q.Size.Given {
		r.missing(&q.Size, "the size of the sheet is needed", "")
	}
	if price := q.Price.Number * PriceUnit; math.Abs(price-math.Round(price)) > 1e-3 {
		r.Report(fault.Fault{Code: fault.TooFine, Field: q.Price.name().Name, Value: q.Price.Text, Detail: "the price has too many decimals", Expected: "at most four decimals"}, "")
	}
}

// stock is the size of sheet; grain is what holds if it names none.
func (q *Sheet) stock(grain sheet.Side) sheet.Stock {
	s := sheet.Stock{Width: q.Size.Width, Height: q.Size.Height, Grain: grain, Available: q.Available.Count(), Price: int64(math.Round(q.Price.Number * PriceUnit))}
	if q.Grain.Given {
		s.Grain = sideOf(q.Grain.Word)
	}
	return s
}

// sideOf returns the side of a word of the grain choices.
func sideOf(word string) sheet.Side {
	switch word {
	case "width":
		return sheet.AlongWidth
	case "height":
		return sheet.AlongHeight
	default:
		return sheet.AnySide
	}
}

// Blank is one blank as an item.
type Blank struct {
	Name  Text
	Size  Size
	Count Count
	Grain Word
}

func (q *Blank) bind(b *Names) {
	b.bind(&q.Name, itemName())
	b.bind(&q.Size, Name{Name: "blank", Example: "8 1/4 x 1 3/4 in", Help: "Width and height of the blank."}.between(measure.Millimetres(1), measure.Millimetres(10_000)))
	b.bind(&q.Count, countName("How many are wanted. Default: as many as one sheet gives."))
	b.bind(&q.Grain, blankGrainName())
}

func (q *Blank) settle(r *Reading) {
	if !q.Size.Given {
		r.missing(&q.Size, "the size of the blank is needed", "add blank, such as 8 1/4 x 1 3/4 in")
	}
}

// item is the blank as the planner wants it.
func (q *Blank) item(r *Reading) sheet.Item {
	return sheet.Item{Name: r.label(&q.Name), Width: q.Size.Width, Height: q.Size.Height, Count: q.Count.Count(), Grain: sideOf(q.Grain.Word)}
}

// Item is an enclosure as an item: all of its blanks. The grain is that of the
// blanks; the sheet is the order's.
type Item struct {
	Enclosure
	KindWord Word
	Name     Text
	Count    Count
}

func (q *Item) bind(b *Names) {
	q.Enclosure.bindWith(b, blankGrainName())
	b.bind(&q.KindWord, kindName())
	b.bind(&q.Name, itemName())
	b.bind(&q.Count, countName("How many are wanted. May be left out if the kind is one piece: as many as one sheet gives."))
}

// beside takes the ruler of the order if it has one and the item names none.
func (q *Item) beside(ruler measure.Step) {
	if !q.Bench.Ruler.Given && len(measure.SearchSteps(ruler)) > 0 {
		q.Bench.Ruler.Step = ruler
	}
}

func (q *Item) settle(r *Reading) {
	if q.Stock.Sheet.Given {
		r.conflict(&q.Stock.Sheet, "an item has no sheet of its own", "name the sheet beside the items")
	}
	q.Enclosure.settle(r)
	q.Request.Grain = solve.GrainUnknown // that of the blanks was meant
}

// item is what the planner wants to know of it before it is solved.
func (q *Item) item(r *Reading) sheet.Item {
	return sheet.Item{Name: r.label(&q.Name), Count: q.Count.Count(), Grain: sideOf(q.Stock.Grain.Word)}
}

func itemName() Name {
	return Name{Name: "name", MostCharacters: MostValue, Example: "band", Help: "What the blank is called in the plan."}
}

func countName(help string) Name {
	return Name{Name: "count", Example: "25", Help: help}.numbers(1, sheet.MostPieces)
}

func blankGrainName() Name {
	return Name{Name: "grain", Choices: append([]string{"any"}, sides()...), Example: "any", Default: Always("any"),
		Help: "The side of the blank that the grain must run along; any lets it be turned."}
}

// label takes a name that will stand in steps, in a picture and on terminals.
func (r *Reading) label(name *Text) string {
	text := strings.TrimSpace(name.Text)
	if strings.ContainsFunc(text, func(c rune) bool { return !unicode.IsPrint(c) }) {
		r.Report(fault.Fault{Code: fault.Unreadable, Field: name.name().Name, Value: strconv.QuoteToASCII(text), Detail: "a name has no control characters",
			Expected: "letters, digits, spaces and punctuation"}, "")
	}
	return text
}
