package ask

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/sheet"
)

// Sheet is one size of sheet.
type Sheet struct {
	Size      Size
	Grain     Word
	Price     Number
	Available Count
	Paper     Text
	Offcut    Word
}

func (q *Sheet) bind(b *Names) {
	b.bind(&q.Size, Name{Name: "size", Catalogue: "/v1/sheets/sizes", Example: "12 x 12 in", Help: "Width and height, or a name."}.
		between(measure.Millimetres(10), measure.Millimetres(10_000)))
	b.bind(&q.Grain, Name{Name: "grain", Choices: sides(), Example: "height",
		Help: "The side that the grain runs along, if another than sheet_grain."})
	b.bind(&q.Price, Name{Name: "price", Example: "0.35",
		Help: "Of one sheet, with at most four decimals, in any currency that all sizes share."}.
		numbers(1.0/PriceUnit, 100_000))
	b.bind(&q.Available, Name{Name: "available", Example: "10",
		Help: "Sheets in stock. Default: as many as needed."}.numbers(1, sheet.MostPieces))
	b.bind(&q.Paper, itemPaperName("The paper, if there are several: items that name it are cut from it."))
	b.bind(&q.Offcut, Name{Name: "offcut", Choices: []string{"no", "yes"}, Example: "yes", Default: Always("no"),
		Help: "An offcut of earlier work, used up before whole sheets are. Needs available."})
}

func (q *Sheet) settle(r *Reading) {
	if !q.Size.Given {
		r.missing(&q.Size, "the size of the sheet is needed", "")
	}
	q.Paper.Text = r.label(&q.Paper)
	if price := q.Price.Number * PriceUnit; price > 1 && math.Abs(price-math.Round(price)) > 1e-3 { // less is below the least
		r.Report(fault.Fault{Code: fault.TooFine, Field: q.Price.name().Name, Value: q.Price.Text, Detail: "the price has too many decimals", Expected: "at most four decimals"}, "")
	}
}

// stock is the size of sheet; grain is what holds if it names none.
func (q *Sheet) stock(grain sheet.Side) sheet.Stock {
	s := sheet.Stock{Width: q.Size.Width, Height: q.Size.Height, Grain: grain, Available: q.Available.Count(), Price: int64(math.Round(q.Price.Number * PriceUnit)),
		Paper: q.Paper.Text, Offcut: q.Offcut.Is("yes")}
	if q.Grain.Given {
		s.Grain = sideOf(q.Grain.Word)
	}
	return s
}

// sideOf returns the side of a word of the grain choices.
func sideOf(word string) sheet.Side {
	return sheet.Side(slices.Index(sides(), word) + 1) // any for others
}

// Blank is one blank as an item.
type Blank struct {
	Name  Text
	Size  Size
	Count Count
	Grain Word
	Shop
}

func (q *Blank) bind(b *Names) {
	b.bind(&q.Name, itemName())
	b.bind(&q.Size, Name{Name: "blank", Example: "8 1/4 x 1 3/4 in",
		Help: "Width and height of the blank."}.between(measure.Millimetres(1), measure.Millimetres(10_000)))
	b.bind(&q.Count, countName("How many are wanted. Default: as many as one sheet gives."))
	b.bind(&q.Grain, blankGrainName())
	q.Shop.bind(b)
}

func (q *Blank) settle(r *Reading) {
	if !q.Size.Given {
		r.missing(&q.Size, "the size of the blank is needed", "add blank, such as 8 1/4 x 1 3/4 in")
	}
	q.Shop.settle(r, &q.Count)
}

// item is the blank as the planner wants it.
func (q *Blank) item(r *Reading) sheet.Item {
	return q.Shop.add(sheet.Item{Name: r.label(&q.Name), Width: q.Size.Width, Height: q.Size.Height, Count: q.Count.Count(), Grain: sideOf(q.Grain.Word)})
}

// Item is an enclosure as an item: all of its blanks. The grain is that of the
// blanks; the sheet is the order's.
type Item struct {
	Enclosure
	KindWord Word
	Name     Text
	Count    Count
	Shop
}

func (q *Item) bind(b *Names) {
	q.Enclosure.bindWith(b, blankGrainName())
	b.bind(&q.KindWord, kindName())
	b.bind(&q.Name, itemName())
	b.bind(&q.Count, countName("How many are wanted. May be left out if the kind is one piece: as many as one sheet gives."))
	q.Shop.bind(b)
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
	q.Shop.settle(r, &q.Count)
	q.Request.Grain = sheet.AnySide // that of the blanks was meant
}

// item is what the planner wants to know of it before it is solved.
func (q *Item) item(r *Reading) sheet.Item {
	return q.Shop.add(sheet.Item{Name: r.label(&q.Name), Count: q.Count.Count(), Grain: sideOf(q.Stock.Grain.Word)})
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
