package api

import (
	"context"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"creasefit/api/ask"
	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/guide"
	"creasefit/internal/sheet"
	"creasefit/internal/solve"
)

// yieldAnswer is a planned order.
type yieldAnswer struct {
	request  *ask.Yield
	order    sheet.Order
	plan     sheet.Answer
	warnings []enclosure.Warning
}

// timed reports whether more time might have found another plan, of an order
// with counts.
func (a *yieldAnswer) timed() bool {
	return !a.plan.Settled && slices.ContainsFunc(a.order.Items, func(it sheet.Item) bool { return it.Count > 0 })
}

// followOrder solves the items that are enclosures and plans the order; each better
// plan is given away on the way, if anybody takes it.
func followOrder(ctx context.Context, q *ask.Yield, each func(*yieldAnswer)) (*yieldAnswer, error) {
	a := &yieldAnswer{request: q, order: q.Order}
	var places []string // of the request, one for each item of the order
	var faults fault.Faults
	for i := range q.Wanted {
		it := &q.Wanted[i]
		items, err := a.expand(ctx, it, i)
		if other := faults.Add(fault.Under(it.Place, err)); other != nil {
			return nil, other
		}
		a.order.Items = append(a.order.Items, items...)
		for range items {
			places = append(places, it.Place)
		}
	}
	if len(faults) > 0 {
		return nil, faults
	}
	var better func(sheet.Answer)
	if each != nil {
		better = func(plan sheet.Answer) { each(a.with(plan)) }
	}
	plan, err := solve.FollowCuts(ctx, a.order, better)
	if err != nil {
		return nil, renamed(err, places, q.SheetNames)
	}
	a = a.with(plan)
	return a, a.countPerSheet(ctx)
}

// with is the answer with a plan.
func (a *yieldAnswer) with(plan sheet.Answer) *yieldAnswer {
	b := *a
	b.plan, b.warnings = plan, slices.Clone(a.warnings)
	for _, w := range plan.Warnings {
		b.warnings = append(b.warnings, enclosure.Warning{Code: w.Code, Detail: w.Detail})
	}
	return &b
}

// countPerSheet finds how many blanks one sheet gives, of an order of a single
// blank with a count, unless they are too many to be planned.
func (a *yieldAnswer) countPerSheet(ctx context.Context) error {
	if len(a.order.Items) != 1 || a.plan.PerSheet > 0 {
		return nil
	}
	one, item := a.order, a.order.Items[0]
	item.Count, one.Effort = 0, 0
	one.Items = []sheet.Item{item}
	if one.Check() != nil {
		return nil
	}
	most, err := solve.PlanCuts(ctx, one)
	a.plan.PerSheet = most.PerSheet
	return err
}

// expand returns the blanks of an item, number i of the request.
func (a *yieldAnswer) expand(ctx context.Context, it *ask.Wanted, i int) ([]sheet.Item, error) {
	if it.Request == nil {
		blank := it.Item
		if blank.Name == "" {
			blank.Name = fmt.Sprintf("item %d", i+1)
		}
		return []sheet.Item{blank}, nil
	}
	s, err := solve.Solve(ctx, it.Request)
	if err != nil {
		return nil, err
	}
	pieces := s.Pattern.Pieces
	if it.Item.Count == 0 && (len(pieces) > 1 || pieces[0].Quantity > 1) {
		return nil, fault.Fault{Code: fault.Missing, Field: "count", Detail: "the kind has several pieces, which are needed in equal numbers", Expected: "how many are wanted", Hint: "add count=1"}
	}
	var items []sheet.Item
	for p := range pieces {
		piece := it.Item
		piece.Width, piece.Height = pieces[p].Width, pieces[p].Height
		piece.Count, piece.Spares = it.Item.Count*pieces[p].Quantity, it.Item.Spares*pieces[p].Quantity
		piece.Name = pieceName(it, pieces[p].Name, len(pieces))
		items = append(items, piece)
	}
	warnings, err := guide.Warnings(s, a.request.Language.Word)
	for _, w := range warnings {
		a.warnings = append(a.warnings, enclosure.Warning{Code: w.Code, Detail: pieceName(it, "", 1) + ": " + w.Text})
	}
	return items, err
}

// pieceName names a piece after its item and, where there are several, itself.
func pieceName(it *ask.Wanted, piece string, pieces int) string {
	name := it.Item.Name
	if name == "" {
		name = it.Request.Kind.Name
	}
	if pieces > 1 {
		name += " " + piece
	}
	return name
}

// renamed gives the faults of an order the names of the request: an enclosure
// is several items of the order, a single blank and a single sheet are in no
// list.
func renamed(err error, places, sheets []string) error {
	var faults fault.Faults
	if other := faults.Add(err); other != nil {
		return other
	}
	for i := range faults {
		f := &faults[i]
		f.Field = renamedEntry(f.Field, "items", places)
		f.Field = renamedEntry(f.Field, "sheet", sheets)
	}
	return faults.Err()
}

// renamedEntry replaces the entry of a list that a name begins with by what
// stands for it.
func renamedEntry(name, list string, entries []string) string {
	rest, ok := strings.CutPrefix(name, list+"[")
	if !ok {
		return name
	}
	number, member, _ := strings.Cut(rest, "]")
	if i, err := strconv.Atoi(number); err == nil && i < len(entries) {
		return fault.Fault{Field: strings.TrimPrefix(member, ".")}.Under(entries[i]).Field
	}
	return name
}
