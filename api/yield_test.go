package api

import (
	"context"
	"encoding/json"
	"fmt"
	"math"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"creasefit/api/ask"
	"creasefit/api/wire"
	"creasefit/internal/measure"
	"creasefit/internal/sheet"
	"creasefit/internal/sheet/verify"
)

// stall is the stock of bands and cards that the market stall cuts for a
// weekend. Its effort is never used up, so that its plan is the same on any machine.
const stall = `{"unit":"in","effort_ms":10000,"sheet":"12 x 12 in","sheet_grain":"height","margin":"0","kerf":"0","ruler":"1/16 in","trimmer_length":"12 in","minimize":"sheets",` +
	`"items":[{"name":"band","blank":"8 1/4 x 1 3/4 in","count":25,"grain":"any"},{"name":"tasting card","blank":"3 1/2 x 5 in","count":6,"grain":"height"}]}`

// stallOrder is the same order, written without the service's reader.
func stallOrder() sheet.Order {
	inch := func(sixteenths int64) measure.Length { return measure.Sixtyfourths(4 * sixteenths) }
	return sheet.Order{
		Sheets: []sheet.Stock{{Width: inch(192), Height: inch(192), Grain: sheet.AlongHeight}}, Ruler: measure.Marks(measure.Inch)[4], Trimmer: inch(192), Least: inch(32),
		Items: []sheet.Item{
			{Name: "band", Width: inch(132), Height: inch(28), Count: 25},
			{Name: "tasting card", Width: inch(56), Height: inch(80), Count: 6, Grain: sheet.AlongHeight},
		},
	}
}

// exactly is the length that an answer states in whole nanometres.
func exactly(l wire.Length) measure.Length {
	return measure.Nanometres(int64(math.Round(l.ExactMM * 1e6)))
}

// asSet is where a ruler is set.
func asSet(l wire.Length) measure.Length { return measure.Nanometres(int64(math.Round(l.MM * 1e6))) }

// planned turns an answer back into the planner's own terms, so that its
// verifier can replay what a caller is told.
func planned(y wire.Yield) sheet.Answer {
	a := sheet.Answer{Sheets: y.Sheets, Proven: y.Proven, LowerBound: int64(math.Round(y.LowerBound)), Used: y.Used, Proof: y.Proof}
	if y.Cost > 0 {
		a.Cost = int64(math.Round(y.Cost * ask.PriceUnit))
	}
	for _, it := range y.Items {
		a.Made, a.Ready = append(a.Made, it.Made), append(a.Ready, it.Ready)
	}
	for _, u := range y.UsableOffcuts {
		a.Usable = append(a.Usable, sheet.Usable{Extent: sheet.Extent{Width: exactly(u.Width), Height: exactly(u.Height)}, Times: u.Count})
	}
	for i := range y.Plans {
		a.Plans = append(a.Plans, plannedSheets(&y.Plans[i]))
	}
	a.Work = sheet.Work{Settings: y.Work.Settings, Cuts: y.Work.Cuts, Turns: y.Work.Turns, Stages: y.Work.Stages}
	for _, s := range y.CutList {
		set := sheet.Setting{Reading: asSet(s.At), Cuts: s.Cuts}
		for _, at := range s.Steps {
			set.Steps = append(set.Steps, sheet.StepAt{Plan: at.Plan - 1, Step: at.Step - 1})
		}
		a.Settings = append(a.Settings, set)
	}
	return a
}

// plannedSheets does so for one way of cutting a sheet.
func plannedSheets(p *wire.CutPlan) sheet.Sheets {
	s := sheet.Sheets{Times: p.Times, Stock: p.Sheet.Number, Usable: plannedRect(p.Usable), Tree: plannedNode(&p.Tree)}
	for _, b := range p.Placed {
		s.Placed = append(s.Placed, sheet.Placement{Item: b.Number, Turned: b.Turned, Rect: plannedRect(b.SheetPart)})
	}
	for _, r := range p.Offcuts {
		s.Offcuts = append(s.Offcuts, plannedRect(r))
	}
	for i, c := range p.Settings {
		s.Steps = append(s.Steps, sheet.Step{
			Cut: axisOf(c.Across), At: exactly(c.At), Reading: asSet(c.At), OnMark: exactly(c.At) == asSet(c.At), Length: exactly(c.Length),
			Trim: c.Trim, Turned: c.From == "right" || c.From == "top", Parts: c.Parts, Repeat: c.Repeat, Low: c.Low, Rest: c.Rest, Text: p.Steps[i],
		})
	}
	for _, part := range p.Parts {
		end := sheet.Part{ID: part.Part, Item: sheet.Offcut}
		if !part.Offcut {
			end.Item, end.Turned = *part.Number, *part.Turned
		}
		s.Parts = append(s.Parts, end)
	}
	return s
}

func plannedRect(p wire.SheetPart) sheet.Rect {
	return sheet.Rect{X: exactly(p.X), Y: exactly(p.Y), Width: exactly(p.Width), Height: exactly(p.Height)}
}

func axisOf(word string) sheet.Axis {
	if word == "width" {
		return sheet.Width
	}
	return sheet.Height
}

func plannedNode(n *wire.CutNode) *sheet.Node {
	switch {
	case n.Cut != "":
		return &sheet.Node{Cut: axisOf(n.Cut), At: exactly(*n.At), Low: plannedNode(n.Low), High: plannedNode(n.High)}
	case n.Offcut:
		return &sheet.Node{Item: sheet.Offcut}
	default:
		return &sheet.Node{Item: *n.Number, Turned: *n.Turned}
	}
}

// verified reads an answer and has the planner's verifier replay it.
func verified(t *testing.T, order sheet.Order, a answer) wire.Yield {
	t.Helper()
	y := decode[wire.Yield](a.ok())
	require.NoError(t, verify.Plan(order, planned(y)))
	for _, p := range y.Plans {
		require.Len(t, p.Settings, len(p.Steps))
	}
	return y
}

func TestYieldOfAnOrder(t *testing.T) {
	y := verified(t, stallOrder(), postJSON(t, "/v1/yield", stall))
	assert.Equal(t, 4, y.Sheets, "25 bands and 6 cards have the area of 3.24 sheets")
	assert.True(t, y.Proven)
	assert.InDelta(t, 4, y.LowerBound, 0)
	assert.Zero(t, y.PerSheet, "there are two items")
	assert.NotEmpty(t, y.Proof)
	assert.Equal(t, []int{25, 6}, []int{y.Items[0].Made, y.Items[1].Made})
	assert.Equal(t, "8 1/4 in", y.Items[0].Width.Reading)
}

// Eight bands come out of a 12 x 12 in sheet: six beside each other and two
// across the strip that is left (3 3/4 in wide).
func TestYieldOfOneBlank(t *testing.T) {
	order := stallOrder()
	order.Items, order.Trimmer = order.Items[:1], measure.Length{}
	order.Items[0].Count = 0
	y := verified(t, order, get(t, "/v1/yield?unit=in&sheet=12x12&sheet_grain=height&blank=8-1/4x1-3/4&name=band"))
	assert.Equal(t, 8, y.PerSheet)
	assert.Equal(t, 1, y.Sheets)
	assert.Equal(t, "8", get(t, "/v1/yield?unit=in&sheet=12x12&blank=8-1/4x1-3/4&pick=/per_sheet").ok().Body.String())
	order.Items[0].Count = 25
	y = verified(t, order, get(t, "/v1/yield?unit=in&sheet=12x12&sheet_grain=height&blank=8-1/4x1-3/4&name=band&count=25&effort_ms=10000"))
	assert.Equal(t, 4, y.Sheets)
	assert.Equal(t, 8, y.PerSheet, "also when a number is wanted")
}

// TestYieldByGetAndPostAgree sends the same order as a body, as a query, by
// the address that the answer names, and as a form.
func TestYieldByGetAndPostAgree(t *testing.T) {
	posted := postJSON(t, "/v1/yield", stall).ok()
	first := decode[wire.Yield](posted)
	assert.Equal(t, first, decode[wire.Yield](get(t, posted.Header().Get("Content-Location")).ok()))
	assert.Equal(t, first, decode[wire.Yield](get(t, first.Links.Self).ok()))
	assert.Equal(t, get(t, first.Links.Self).Header().Get("Etag"), get(t, posted.Header().Get("Content-Location")).Header().Get("Etag"))
	form := call(t, shared(), http.MethodPost, "/v1/yield", strings.TrimPrefix(first.Links.Self, "/v1/yield?"), "Content-Type", "application/x-www-form-urlencoded")
	assert.Equal(t, first, decode[wire.Yield](form.ok()))
	flat := `{"unit":"in","effort_ms":10000,"sheet":"letter","blank":"3 1/2 x 2","count":7,"grain":"any","name":"card"}`
	query := "/v1/yield?unit=in&effort_ms=10000&sheet=letter&blank=3-1/2x2&count=7&grain=any&name=card"
	assert.Equal(t, decode[wire.Yield](postJSON(t, "/v1/yield", flat).ok()), decode[wire.Yield](get(t, query).ok()))
	assert.Contains(t, get(t, first.Links.Picture).ok().Header().Get("Content-Type"), "image/svg+xml")
}

// Two A5 cards need an A4 at 10 or two A5 at 6: the dearer sheet is cheaper,
// until the A4 are used up.
func TestYieldAtLeastCost(t *testing.T) {
	body := `{"unit":"mm","effort_ms":10000,"ruler":"1 mm","minimize":"cost","sheet":[{"size":"210 x 297","price":10,"available":2},{"size":"a5","price":6.25}],"items":[{"name":"card","blank":"148 x 210","count":7}]}`
	mm := measure.Millimetres
	order := sheet.Order{
		Sheets:   []sheet.Stock{{Width: mm(210), Height: mm(297), Price: 10 * ask.PriceUnit, Available: 2}, {Width: mm(148), Height: mm(210), Price: 62_500}},
		Ruler:    measure.Marks(measure.Millimetre)[len(measure.Marks(measure.Millimetre))-2],
		Minimize: sheet.LeastCost, Least: mm(50), Items: []sheet.Item{{Name: "card", Width: mm(148), Height: mm(210), Count: 7}},
	}
	a := postJSON(t, "/v1/yield", body).ok()
	y := decode[wire.Yield](a)
	assert.InDelta(t, 38.75, y.Cost, 1e-9, "2 A4 and 3 A5, by hand")
	assert.InDelta(t, 38.75, y.LowerBound, 1e-9)
	answer := planned(y)
	answer.LowerBound = int64(math.Round(y.LowerBound * ask.PriceUnit))
	require.NoError(t, verify.Plan(order, answer))
	short := strings.Replace(body, `"price":6.25`, `"price":6.25,"available":2`, 1)
	p := postJSON(t, "/v1/yield", short).problem(http.StatusUnprocessableEntity)
	assert.Contains(t, p.Detail, "in stock")
}

// An enclosure as an item is solved first and all of its pieces are planned.
func TestYieldOfEnclosures(t *testing.T) {
	body := `{"unit":"in","effort_ms":10000,"sheet":"12 x 12 in","ruler":"1/64 in","items":[` +
		`{"kind":"slotted-band","name":"card band","count":10,"width":"3 1/2","thickness":0.09,"caliper":0.012,"fit":"snug"},` +
		`{"name":"tag","blank":"2 x 2","count":4},{"kind":"lidded-box","count":2,"width":3,"height":3,"thickness":1,"caliper":0.012}]}`
	y := decode[wire.Yield](postJSON(t, "/v1/yield", body).ok())
	band := decode[wire.Solution](get(t, "/v1/solve/slotted-band?unit=in&width=3-1/2&thickness=0.09&caliper=0.012&fit=snug&ruler=1/64in").ok())
	box := decode[wire.Solution](get(t, "/v1/solve/lidded-box?unit=in&width=3&height=3&thickness=1&caliper=0.012&ruler=1/64in").ok())
	require.Len(t, y.Items, 2+len(box.Pieces))
	assert.Equal(t, "card band", y.Items[0].Name)
	assert.Equal(t, band.Pieces[0].Blank.Width.Reading, y.Items[0].Width.Reading)
	assert.Equal(t, 10, y.Items[0].Made)
	for i, piece := range box.Pieces {
		it := y.Items[2+i]
		assert.Equal(t, "lidded-box "+piece.Name, it.Name)
		assert.InDelta(t, piece.Blank.Height.MM, it.Height.MM, 0)
		assert.Equal(t, 2*piece.Quantity, it.Made)
	}
	order := sheet.Order{Sheets: []sheet.Stock{{Width: measure.Inches(12), Height: measure.Inches(12)}}, Ruler: measure.Marks(measure.Inch)[6], Least: measure.Inches(2)}
	for _, it := range y.Items {
		order.Items = append(order.Items, sheet.Item{Name: it.Name, Width: exactly(it.Width), Height: exactly(it.Height), Count: it.Wanted})
	}
	require.NoError(t, verify.Plan(order, planned(y)))
}

// bodyOf writes an order as a request.
func bodyOf(order sheet.Order) string {
	mm := func(l measure.Length) string { return fmt.Sprintf("%g mm", l.Millimetres()) }
	size := func(w, h measure.Length) string { return mm(w) + " x " + mm(h) }
	sides := [...]string{sheet.AnySide: "any", sheet.AlongWidth: "width", sheet.AlongHeight: "height"}
	var sheets, items []map[string]any
	for _, s := range order.Sheets {
		sheets = append(sheets, map[string]any{"size": size(s.Width, s.Height), "grain": sides[s.Grain], "price": float64(s.Price) / ask.PriceUnit})
	}
	for _, it := range order.Items {
		item := map[string]any{"name": it.Name, "blank": size(it.Width, it.Height), "grain": sides[it.Grain]}
		if it.Count > 0 {
			item["count"] = it.Count
		}
		items = append(items, item)
	}
	body := map[string]any{"unit": "mm", "sheet": sheets, "items": items, "margin": mm(order.Margin), "kerf": mm(order.Kerf), "offcut_least": mm(order.Least), "ruler": order.Ruler.String(), "effort_ms": 100}
	if !order.Trimmer.IsZero() {
		body["trimmer_length"] = mm(order.Trimmer)
	}
	if order.Minimize == sheet.LeastCost {
		body["minimize"] = "cost"
	}
	text, err := json.Marshal(body)
	if err != nil {
		panic(err)
	}
	return string(text)
}

// TestYieldOfRandomOrders sends orders with everything in them: what comes
// back can be cut, and what is refused is refused by name.
func TestYieldOfRandomOrders(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		mm := func(least, most int, label string) measure.Length {
			return measure.Micrometres(500 * int64(rapid.IntRange(2*least, 2*most).Draw(rt, label)))
		}
		order := sheet.Order{Ruler: measure.Marks(measure.Millimetre)[len(measure.Marks(measure.Millimetre))-1], Margin: mm(0, 10, "margin"), Kerf: mm(0, 1, "kerf"), Least: mm(0, 80, "least")}
		for range rapid.IntRange(1, 2).Draw(rt, "sizes") {
			order.Sheets = append(order.Sheets, sheet.Stock{Width: mm(100, 320, "W"), Height: mm(100, 320, "H"), Price: int64(rapid.IntRange(1, 50_000).Draw(rt, "price")),
				Grain: rapid.SampledFrom([]sheet.Side{sheet.AlongWidth, sheet.AlongHeight}).Draw(rt, "sheet grain")})
		}
		if rapid.Bool().Draw(rt, "short trimmer") {
			order.Trimmer = mm(200, 400, "trimmer")
		}
		order.Minimize = rapid.SampledFrom([]sheet.Goal{sheet.FewestSheets, sheet.LeastCost}).Draw(rt, "goal")
		counts := rapid.IntRange(0, 6).Draw(rt, "most")
		for i := range rapid.IntRange(1, 4).Draw(rt, "items") {
			it := sheet.Item{Name: fmt.Sprint("blank ", i), Width: mm(20, 200, "w"), Height: mm(20, 200, "h")}
			it.Grain = rapid.SampledFrom([]sheet.Side{sheet.AnySide, sheet.AlongWidth, sheet.AlongHeight}).Draw(rt, "grain")
			if counts > 0 {
				it.Count = rapid.IntRange(1, counts).Draw(rt, "count")
			}
			order.Items = append(order.Items, it)
		}
		a := postJSON(t, "/v1/yield", bodyOf(order))
		if order.Check() != nil {
			require.Contains(rt, []int{http.StatusBadRequest, http.StatusUnprocessableEntity}, a.Code)
			for _, e := range a.problem(a.Code).Errors {
				require.NotEmpty(rt, e.Name)
			}
			return
		}
		y := decode[wire.Yield](a.ok())
		answer := planned(y)
		if order.Minimize == sheet.LeastCost {
			answer.LowerBound = int64(math.Round(y.LowerBound * ask.PriceUnit))
		}
		require.NoError(rt, verify.Plan(order, answer))
	})
}

// TestYieldNamesWhatIsWrong sends one wrong thing at a time.
func TestYieldNamesWhatIsWrong(t *testing.T) {
	item := func(members string) string {
		return `{"unit":"in","sheet":"12 x 12","items":[{"name":"band","blank":"8 x 2","count":2},{` + members + `}]}`
	}
	rows := map[string]struct {
		body   string
		name   string
		code   string
		status int
	}{
		"a blank larger than the sheet":   {item(`"blank":"13 x 2","count":1`), "items[1].blank", "out-of-range", 400},
		"a blank larger when turned":      {item(`"blank":"12 1/16 x 12","count":1`), "items[1].blank", "out-of-range", 400},
		"a count of zero":                 {item(`"blank":"3 x 2","count":0`), "items[1].count", "out-of-range", 400},
		"a count below zero":              {item(`"blank":"3 x 2","count":-1`), "items[1].count", "unreadable", 400},
		"a count that is not whole":       {item(`"blank":"3 x 2","count":1.5`), "items[1].count", "unreadable", 400},
		"one count of two":                {item(`"blank":"3 x 2"`), "items[1].count", "conflict", 400},
		"too many of one":                 {item(`"blank":"3 x 2","count":100001`), "items[1].count", "out-of-range", 400},
		"too many in all":                 {item(`"blank":"3 x 2","count":99999`), "items", "too-many", 400},
		"a grain that no sheet tells":     {item(`"blank":"3 x 2","count":1,"grain":"width"`), "sheet_grain", "missing", 400},
		"a grain that does not fit":       {strings.Replace(item(`"blank":"12 x 2","count":1,"grain":"height"`), `"sheet":"12 x 12"`, `"sheet":"12 x 3","sheet_grain":"width"`, 1), "items[1].blank", "out-of-range", 400},
		"a grain in other words":          {item(`"blank":"3 x 2","count":1,"grain":"along"`), "items[1].grain", "unknown", 400},
		"no blank":                        {item(`"count":1`), "items[1].blank", "missing", 400},
		"an unreadable blank":             {item(`"blank":"3 5/7 x 2","count":1`), "items[1].blank", "unreadable", 400},
		"a blank of no size":              {item(`"blank":"0 x 2","count":1`), "items[1].blank", "out-of-range", 400},
		"an unknown member":               {item(`"blank":"3 x 2","cuont":1`), "items[1].cuont", "unknown", 400},
		"a member in the wrong case":      {item(`"Blank":"3 x 2","count":1`), "items[1].Blank", "unknown", 400},
		"a member twice":                  {item(`"blank":"3 x 2","count":1,"count":2`), "items[1].count", "repeated", 400},
		"a member that is null":           {item(`"blank":"3 x 2","count":null`), "items[1].count", "missing", 400},
		"a member that is a list":         {item(`"blank":["3 x 2"],"count":1`), "items[1].blank", "unreadable", 400},
		"an object in an item":            {item(`"blank":{"width":3},"count":1`), "items[1].blank", "unreadable", 400},
		"a name with a line break":        {item(`"blank":"3 x 2","count":1,"name":"a\nb"`), "items[1].name", "unreadable", 400},
		"an unknown kind":                 {item(`"kind":"sloted-band","count":1`), "items[1].kind", "unknown", 400},
		"a kind without its sizes":        {item(`"kind":"slotted-band","count":1,"caliper":0.012`), "items[1].width", "missing", 400},
		"a kind with a sheet":             {item(`"kind":"slotted-band","count":1,"caliper":0.012,"width":3,"thickness":0.1,"sheet":"letter"`), "items[1].sheet", "conflict", 400},
		"a kind of pieces without count":  {`{"unit":"in","sheet":"12 x 12","items":[{"kind":"lidded-box","width":3,"height":3,"thickness":1,"caliper":0.012}]}`, "items[0].count", "missing", 400},
		"a kind that fits no ruler":       {item(`"kind":"slotted-band","count":1,"caliper":0.012,"width":3.03,"thickness":0.1,"clearance_min":0,"clearance_max":0`), "items[1].fit", "no-fit", 422},
		"items that are a text":           {`{"unit":"in","sheet":"12 x 12","items":["band"]}`, "items[0]", "unreadable", 400},
		"a blank beside items":            {`{"unit":"in","sheet":"12 x 12","blank":"2 x 2","items":[{"blank":"8 x 2"}]}`, "blank", "conflict", 400},
		"no blank at all":                 {`{"unit":"in","sheet":"12 x 12"}`, "blank", "missing", 400},
		"an empty list":                   {`{"unit":"in","sheet":"12 x 12","items":[]}`, "blank", "missing", 400},
		"no sheet":                        {`{"unit":"in","blank":"2 x 2"}`, "sheet", "missing", 400},
		"no unit":                         {`{"sheet":"letter","blank":"2 x 2"}`, "blank", "no-unit", 400},
		"an unreadable sheet":             {`{"unit":"in","sheet":"leter","blank":"2 x 2"}`, "sheet", "unreadable", 400},
		"an unreadable size of several":   {`{"unit":"in","sheet":["letter",{"size":"12 by"}],"blank":"2 x 2"}`, "sheet[1].size", "unreadable", 400},
		"a size that is missing":          {`{"unit":"in","sheet":["letter",{"price":1}],"blank":"2 x 2"}`, "sheet[1].size", "missing", 400},
		"no price for the least cost":     {`{"unit":"in","minimize":"cost","sheet":[{"size":"letter","price":1},"a4"],"blank":"2 x 2","count":1}`, "sheet[1].price", "missing", 400},
		"a price with too many decimals":  {`{"unit":"in","sheet":[{"size":"letter","price":0.12345}],"blank":"2 x 2","count":1}`, "sheet.price", "too-fine", 400},
		"none in stock":                   {`{"unit":"in","sheet":[{"size":"letter","available":0}],"blank":"2 x 2","count":1}`, "sheet.available", "out-of-range", 400},
		"margins that leave nothing":      {`{"unit":"in","sheet":"4 x 4","margin":2,"blank":"1 x 1"}`, "margin", "out-of-range", 400},
		"a trimmer that is too short":     {`{"unit":"in","sheet":"12 x 12","trimmer_length":6,"blank":"2 x 2"}`, "trimmer_length", "no-plan", 422},
		"too much effort":                 {`{"unit":"in","sheet":"12 x 12","effort_ms":10001,"blank":"2 x 2"}`, "effort_ms", "out-of-range", 400},
		"a blank larger than its sheet":   {`{"unit":"in","sheet":"4 x 4","blank":"5 x 1"}`, "blank", "out-of-range", 400},
		"more blanks than a plan lists":   {`{"unit":"mm","sheet":"1000 x 1000","blank":"1 x 5"}`, "blank", "over-budget", 422},
		"too many items":                  {`{"unit":"in","sheet":"12 x 12","items":[` + strings.Repeat(`{"blank":"1 x 1","count":1},`, 200) + `{"blank":"1 x 1","count":1}]}`, "items", "too-many", 400},
		"too many sizes":                  {`{"unit":"in","blank":"1 x 1","sheet":[` + strings.Repeat(`"letter",`, 20) + `"letter"]}`, "sheet", "too-many", 400},
		"nested too deep":                 {`{"unit":"in","sheet":"12 x 12","items":[{"blank":` + strings.Repeat("[", 17) + strings.Repeat("]", 17) + `}]}`, "", "unreadable", 400},
		"a list of names that takes none": {`{"unit":["in"],"sheet":"12 x 12","blank":"1 x 1"}`, "unit", "unreadable", 400},
	}
	for name, row := range rows {
		t.Run(name, func(t *testing.T) {
			p := postJSON(t, "/v1/yield", row.body).problem(row.status)
			var found *wire.Invalid
			for i := range p.Errors {
				if p.Errors[i].Name == row.name && p.Errors[i].Code == row.code {
					found = &p.Errors[i]
				}
			}
			require.NotNil(t, found, "%+v", p.Errors)
			assert.NotEmpty(t, found.Detail)
		})
	}
}

// All wrong values are named at once, twenty at most.
func TestYieldNamesAllThatIsWrong(t *testing.T) {
	p := postJSON(t, "/v1/yield", `{"unit":"in","sheet":"12 x","items":[`+strings.Repeat(`{"blank":"1 x","count":0},`, 12)+`{"count":"x"}]}`).problem(http.StatusBadRequest)
	require.Len(t, p.Errors, ask.MostReported)
	assert.Equal(t, 7, p.NotListed, "1 of the sheet, 24 of the first items, 2 of the last")
	assert.Equal(t, "sheet", p.Errors[0].Name)
	assert.Equal(t, []string{"items[0].blank", "1 x"}, []string{p.Errors[1].Name, p.Errors[1].Value})
	assert.NotEmpty(t, p.Errors[1].Expected)
	assert.Contains(t, get(t, "/v1/yield?errors=cell&unit=in&sheet=12x12&blank=13x1").ok().Body.String(), "! blank: ")
}

func TestYieldTakesLargeBodies(t *testing.T) {
	padded := strings.Replace(stall, `"unit"`, strings.Repeat(" ", 80<<10)+`"unit"`, 1)
	postJSON(t, "/v1/yield", padded).ok()
	assert.Equal(t, "body-too-large", postJSON(t, "/v1/yield", strings.Repeat(" ", 1<<20)+stall).problem(http.StatusRequestEntityTooLarge).Errors[0].Code)
	assert.Equal(t, "body-too-large", postJSON(t, "/v1/ruler", strings.Repeat(" ", 80<<10)+`{"length":"1 in"}`).problem(http.StatusRequestEntityTooLarge).Errors[0].Code)
	var items []string
	for i := range 200 {
		items = append(items, fmt.Sprintf(`{"name":"tag %d","blank":"%d x 20 mm","count":1}`, i, 20+i%3))
	}
	y := decode[wire.Yield](postJSON(t, "/v1/yield", `{"items":[`+strings.Join(items, ",")+`],"sheet":"a4","unit":"mm","effort_ms":50}`).ok())
	assert.Len(t, y.Items, 200)
}

// hardOrder is one that is not proven in the time allowed: blanks of a fifth
// to two thirds of the sheet's side, all different.
func hardOrder() string {
	mm := measure.Millimetres
	order := sheet.Order{Sheets: []sheet.Stock{{Width: mm(300), Height: mm(300), Grain: sheet.AlongWidth, Price: 1}}, Ruler: measure.Marks(measure.Millimetre)[2]}
	for i := range int64(150) {
		order.Items = append(order.Items, sheet.Item{Name: fmt.Sprint("blank ", i), Width: mm(60 + (i*97+13)%140), Height: mm(60 + (i*61+89)%140), Count: 1})
	}
	return strings.Replace(bodyOf(order), `"effort_ms":100`, `"effort_ms":10000`, 1)
}

// A caller who goes away stops the computing long before its time is up, and
// frees the place for the next one.
func TestYieldStopsWhenTheCallerIsGone(t *testing.T) {
	s := quiet()
	ctx, cancel := context.WithCancel(context.Background())
	request := newRequest(http.MethodPost, "/v1/yield", hardOrder(), headers{"Content-Type", "application/json"}).WithContext(ctx)
	done := make(chan *httptest.ResponseRecorder, 1)
	began := time.Now()
	go func() {
		w := httptest.NewRecorder()
		s.Handler().ServeHTTP(w, request)
		done <- w
	}()
	_, free, _ := s.config.Places()
	for s.dear.State().Free == free && len(done) == 0 {
		time.Sleep(time.Millisecond)
	}
	cancel()
	w := <-done
	assert.Equal(t, 499, w.Code, "nobody reads it, but the log does")
	assert.Contains(t, w.Body.String(), "the caller went away")
	assert.Less(t, time.Since(began), sheet.MostEffort, "it did not compute to the end")
	assert.Equal(t, free, s.dear.State().Free)
}

func TestYieldInOtherFormats(t *testing.T) {
	query := url.Values{"unit": {"in"}, "sheet": {"12x12"}, "margin": {"1/4"}, "blank": {"3-1/2x5-1/16"}, "name": {"card & <tag>"}, "count": {"11"}, "effort_ms": {"10000"}}.Encode()
	rows := get(t, "/v1/yield.csv?"+query).ok().Body.String()
	y := decode[wire.Yield](get(t, "/v1/yield?"+query).ok())
	lines := strings.Split(strings.TrimSuffix(rows, "\r\n"), "\r\n")
	steps := 0
	for _, p := range y.Plans {
		steps += len(p.Steps)
	}
	require.Len(t, lines, 1+steps)
	for _, line := range lines {
		assert.Len(t, strings.Split(line, ","), len(strings.Split(lines[0], ",")))
	}
	assert.Contains(t, get(t, "/v1/yield?format=csv&decimal=comma&header=0&"+query).ok().Body.String(), ";11 3/4 in;11,75;298,45;")
	text := get(t, "/v1/yield.txt?"+query).ok().Body.String()
	assert.Equal(t, 1, strings.Count(text, "Keep your fingers behind the guard"))
	for _, p := range y.Plans {
		for _, step := range p.Steps {
			assert.Contains(t, text, ". "+step+"\n")
		}
	}
	picture := get(t, "/v1/yield.svg?"+query).ok().Body.String()
	assert.Contains(t, picture, "card &amp; &lt;tag&gt;")
	assert.NotContains(t, picture, "<tag>")
	assert.NotEqual(t, picture, get(t, "/v1/yield.svg?theme=dark&"+query).ok().Body.String())
	assert.True(t, strings.HasPrefix(get(t, "/v1/yield.pdf?"+query).ok().Body.String(), "%PDF-"))
}

func TestYieldGolden(t *testing.T) {
	for name, format := range map[string]string{"yield.json": "json", "yield.csv": "csv", "yield.txt": "text", "yield.svg": "svg"} {
		t.Run(name, func(t *testing.T) { kept(t, name, postJSON(t, "/v1/yield?format="+format, stall).ok().Body.String()) })
	}
}
