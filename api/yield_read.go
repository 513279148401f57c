package api

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

// yieldRequest is an order whose items may still have to be solved.
type yieldRequest struct {
	order      sheet.Order
	unit       measure.Unit
	items      []orderItem
	sheetNames []string // how the request leads to each sheet
	dark       bool
}

// orderItem is one item of a request: a blank, or an enclosure.
type orderItem struct {
	item    sheet.Item
	request *solve.Request // of an enclosure, else nil
	place   string         // how the request leads to it; empty for a single blank
}

// kindItem is what reading an enclosure as an item needs.
type kindItem struct {
	kind  *enclosure.Kind
	table *table
}

// itemTables is the names of an item by its kind; those of a blank have none.
func itemTables() map[string]kindItem {
	tables := map[string]kindItem{"": {table: newTable(itemParams())}}
	for _, k := range enclosure.Kinds() {
		tables[k.Name] = kindItem{k, newTable(kindItemParams(k))}
	}
	return tables
}

// The names that an enclosure has as an item, by their place behind the
// kind's own.
const (
	kindItemKind = iota
	kindItemName
	kindItemCount
)

// kindItemParams describes the names of a kind as an item. The grain is that
// of the blanks here; the sheet is the order's.
func kindItemParams(k *enclosure.Kind) []param {
	list := commonParams()
	list[pGrain] = itemGrainParam()
	for _, p := range k.Params {
		list = append(list, kindParam(p))
	}
	return append(list, kindChoice(), nameParam(), countParam("How many are wanted. May be left out if the kind is one piece: as many as one sheet gives."))
}

// kindChoice is the kind of an item.
func kindChoice() param {
	p := param{Name: "kind", Type: choiceType, Help: "What to make; its other names are those of /v1/solve/{kind}."}
	for _, k := range enclosure.Kinds() {
		p.Choices = append(p.Choices, k.Name)
	}
	p.Example = p.Choices[0]
	return p
}

// itemForms describes the two shapes of an item.
func itemForms() []form {
	return []form{
		{help: "A blank.", names: newTable(itemParams()), required: []string{"blank"}},
		{help: "An enclosure: every piece of it is planned. Takes the names of /v1/solve/{kind} as well.", open: true, required: []string{"kind"},
			names: newTable([]param{kindChoice(), nameParam(), countParam("How many are wanted."), itemGrainParam()})},
	}
}

// sheetForm describes the shape of a sheet.
func sheetForm() form {
	return form{help: "A size of sheet.", names: newTable(sheetParams()), required: []string{"size"}, short: "size"}
}

// yieldRequest turns the values of a reading into an order.
func (r *reading) yieldRequest(kinds map[string]kindItem) *yieldRequest {
	q := &yieldRequest{dark: r.values[yieldTheme].text == "dark"}
	q.order.Margin, q.order.Kerf, q.order.Trimmer = r.values[yieldMargin].length, r.values[yieldKerf].length, r.values[yieldTrimmer].length
	q.order.Effort = sheet.DefaultEffort
	if v := &r.values[yieldEffort]; v.given {
		q.order.Effort = time.Duration(v.number) * time.Millisecond
	}
	if r.values[yieldMinimize].text == "cost" {
		q.order.Minimize = sheet.LeastCost
	}
	r.readSheets(q)
	r.readItems(q, kinds)
	if r.unit == measure.NoUnit && len(r.faults) == 0 {
		r.missing(yieldUnit, "the request names no unit and has no length that does", "add unit=in or unit=mm")
	}
	q.unit = r.unit
	if q.order.Ruler = r.values[yieldRuler].step; q.order.Ruler.IsZero() {
		q.order.Ruler = defaultRuler(q.unit, measure.Step{})
	}
	return q
}

// readSheets takes the sizes of sheets.
func (r *reading) readSheets(q *yieldRequest) {
	if !r.has(yieldSheet) {
		r.missing(yieldSheet, "a sheet to cut from is needed", "add sheet=12x12in or sheet=letter")
	}
	r.limitObjects(yieldSheet, sheet.MostSizes)
	texts := r.values[yieldSheet].texts
	names := r.table.params[yieldSheet].Forms[0].names
	for i, text := range texts {
		name := entry("sheet", i)
		if len(texts) == 1 {
			name = "sheet"
		}
		inner, ok := r.object(names, text, "size")
		if ok {
			q.order.Sheets = append(q.order.Sheets, inner.sheet(sideOf(r.values[yieldSheetGrain].text)))
		}
		if !isObject(text) {
			shorten(inner.faults)
		}
		r.adopt(inner, name)
		q.sheetNames = append(q.sheetNames, name)
	}
}

// shorten names faults of a plain text after the object that it stands for.
func shorten(faults fault.Faults) {
	for i := range faults {
		faults[i].Field = ""
	}
}

// sheet takes one size of sheet; grain is what holds if it names none.
func (r *reading) sheet(grain sheet.Side) sheet.Stock {
	if !r.has(sheetSize) {
		r.missing(sheetSize, "the size of the sheet is needed", "")
	}
	size := r.values[sheetSize].size
	s := sheet.Stock{Width: size[0], Height: size[1], Grain: grain, Available: int(r.values[sheetAvailable].number)}
	if r.has(sheetGrain) {
		s.Grain = sideOf(r.values[sheetGrain].text)
	}
	price := r.values[sheetPrice].number * priceUnit
	s.Price = int64(math.Round(price))
	if math.Abs(price-math.Round(price)) > 1e-3 {
		r.report(fault.Fault{Code: fault.TooFine, Field: "price", Value: r.values[sheetPrice].text, Detail: "the price has too many decimals", Expected: "at most four decimals"}, "")
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

// readItems takes the items, or the single blank.
func (r *reading) readItems(q *yieldRequest, kinds map[string]kindItem) {
	if !r.has(yieldItems) {
		q.items = []orderItem{{item: r.blank(yieldItem)}}
		return
	}
	for _, place := range []int{itemName, itemBlank, itemCount, itemGrain} {
		r.exclude(yieldItem+place, yieldItems, "it belongs to a single blank; the items have their own")
	}
	r.limitObjects(yieldItems, sheet.MostItems)
	for i, text := range r.values[yieldItems].texts {
		q.items = append(q.items, r.readItem(text, entry("items", i), kinds))
	}
}

// readItem takes one item.
func (r *reading) readItem(text, place string, kinds map[string]kindItem) orderItem {
	it := orderItem{place: place}
	name := kindNamed(text)
	known, ok := kinds[name]
	if !ok {
		r.report(noSuchItem(place+".kind", name), "")
		return it
	}
	inner, ok := r.object(known.table, text, "")
	switch {
	case !ok:
	case known.kind == nil:
		it.item = inner.blank(0)
	default:
		it.request, it.item = inner.enclosure(known.kind, r.values[yieldRuler].step)
	}
	r.adopt(inner, place)
	return it
}

// kindNamed returns the kind that an item names, empty if it names none.
func kindNamed(text string) string {
	if _, ok := unreadableJSON([]byte(text)); !ok {
		return ""
	}
	return memberText([]byte(text), "kind")
}

// noSuchItem is the fault of an item of a kind that there is not.
func noSuchItem(field, name string) fault.Fault {
	p := kindChoice()
	f := fault.Fault{Code: fault.Unknown, Field: field, Value: name, Detail: "there is no such kind of enclosure", Expected: p.expected(measure.NoUnit)}
	if nearest := fault.Nearest(strings.ToLower(name), p.Choices); nearest != "" {
		f.Hint = "did you mean " + nearest + "?"
	}
	return f
}

// enclosure takes the names of an enclosure; ruler is the order's, zero if it
// names none.
func (r *reading) enclosure(k *enclosure.Kind, ruler measure.Step) (*solve.Request, sheet.Item) {
	own := pOwn + len(k.Params)
	it := sheet.Item{Name: r.label(own + kindItemName), Count: int(r.values[own+kindItemCount].number), Grain: sideOf(r.values[pGrain].text)}
	if r.has(pSheet) {
		r.report(fault.Fault{Code: fault.Conflict, Field: r.name(pSheet), Value: r.values[pSheet].text, Detail: "an item has no sheet of its own", Hint: "name the sheet beside the items"}, "")
	}
	if !r.has(pRuler) && !ruler.IsZero() && len(measure.SearchSteps(ruler)) > 0 {
		r.values[pRuler].step = ruler
	}
	q := r.solveRequest(k)
	q.Grain = solve.GrainUnknown // that of the blanks was meant
	return q, it
}

// blank takes the names of a blank from a place of the table on.
func (r *reading) blank(first int) sheet.Item {
	if !r.has(first + itemBlank) {
		r.missing(first+itemBlank, "the size of the blank is needed", "add blank, such as 8 1/4 x 1 3/4 in")
	}
	size := r.values[first+itemBlank].size
	return sheet.Item{
		Name: r.label(first + itemName), Width: size[0], Height: size[1],
		Count: int(r.values[first+itemCount].number), Grain: sideOf(r.values[first+itemGrain].text),
	}
}

// label takes a name that will stand in steps, in a picture and on terminals.
func (r *reading) label(place int) string {
	text := strings.TrimSpace(r.values[place].text)
	if strings.ContainsFunc(text, func(c rune) bool { return !unicode.IsPrint(c) }) {
		r.report(fault.Fault{Code: fault.Unreadable, Field: r.name(place), Value: strconv.QuoteToASCII(text), Detail: "a name has no control characters",
			Expected: "letters, digits, spaces and punctuation"}, "")
	}
	return text
}
