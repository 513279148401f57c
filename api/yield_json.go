package api

import (
	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/internal/measure"
	"creasefit/internal/sheet"
)

// yieldWriter writes a planned order as JSON.
type yieldWriter struct {
	*yieldAnswer
	step measure.Step
}

// appendYield appends a planned order as JSON.
func appendYield(dst []byte, a *yieldAnswer, x *answering) []byte {
	w := yieldWriter{a, a.order.Ruler}
	dst = append(append(append(dst, `{"unit":"`...), x.Unit().String()...), `","ruler":"`...)
	dst = appendInt(append(append(dst, a.order.Ruler.String()...), `","sheets":`...), a.plan.Sheets)
	dst = appendBool(append(dst, `,"proven":`...), a.plan.Proven)
	dst = appendDecimal(append(dst, `,"lower_bound":`...), a.bound(), 4)
	if a.plan.PerSheet > 0 {
		dst = appendInt(append(dst, `,"per_sheet":`...), a.plan.PerSheet)
	}
	if a.plan.Cost > 0 {
		dst = appendDecimal(append(dst, `,"cost":`...), float64(a.plan.Cost)/ask.PriceUnit, 4)
	}
	dst = appendDecimal(append(dst, `,"used":`...), a.plan.Used, 6)
	dst = w.appendItems(append(dst, `,"items":`...))
	dst = append(dst, `,"plans":[`...)
	for i := range a.plan.Plans {
		dst = w.appendPlan(comma(dst, i), &a.plan.Plans[i])
	}
	dst = appendString(append(dst, `],"proof":`...), a.plan.Proof)
	dst = x.appendWarnings(append(dst, `,"warnings":`...), a.warnings)
	self := string(x.Link(x.path))
	dst = appendString(append(dst, `,"links":{"self":`...), self)
	dst = appendString(append(dst, `,"picture":`...), self+"&format="+tell.SVG.String())
	return append(dst, `}}`...)
}

// bound is the greatest proven lower bound, of sheets or of cost.
func (a *yieldAnswer) bound() float64 {
	if a.order.Minimize == sheet.LeastCost {
		return float64(a.plan.LowerBound) / ask.PriceUnit
	}
	return float64(a.plan.LowerBound)
}

// appendItems appends the blanks and how many are made.
func (w yieldWriter) appendItems(dst []byte) []byte {
	dst = append(dst, '[')
	for i, it := range w.order.Items {
		dst = appendString(append(comma(dst, i), `{"name":`...), it.Name)
		dst = w.length(dst, `,"width":`, it.Width)
		dst = w.length(dst, `,"height":`, it.Height)
		dst = append(append(append(dst, `,"grain":"`...), sideName(it.Grain)...), '"')
		if it.Count > 0 {
			dst = appendInt(append(dst, `,"wanted":`...), it.Count)
		}
		dst = append(appendInt(append(dst, `,"made":`...), w.plan.Made[i]), '}')
	}
	return append(dst, ']')
}

// sideName returns the word of a side of the grain choices.
func sideName(s sheet.Side) string { return [...]string{"any", "width", "height"}[s] }

// length appends a member that is an exact LENGTH.
func (w yieldWriter) length(dst []byte, name string, l measure.Length) []byte {
	return appendExact(append(dst, name...), w.step, l)
}

// appendPlan appends one way of cutting a sheet.
func (w yieldWriter) appendPlan(dst []byte, p *sheet.Sheets) []byte {
	stock := w.order.Sheets[p.Stock]
	dst = appendInt(append(dst, `{"times":`...), p.Times)
	dst = w.length(append(dst, `,"sheet":{`...), `"width":`, stock.Width)
	dst = w.length(dst, `,"height":`, stock.Height)
	dst = append(appendInt(append(dst, `,"number":`...), p.Stock), '}')
	dst = append(w.appendRect(append(dst, `,"usable":{`...), p.Usable), '}')
	dst = w.appendNode(append(dst, `,"tree":`...), p.Tree)
	dst = append(dst, `,"placed":[`...)
	for i, b := range p.Placed {
		dst = w.appendItem(append(comma(dst, i), '{'), b.Item)
		dst = w.appendRect(append(dst, ','), b.Rect)
		dst = append(appendBool(append(dst, `,"turned":`...), b.Turned), '}')
	}
	dst = append(dst, `],"steps":[`...)
	for i := range p.Steps {
		dst = appendString(comma(dst, i), p.Steps[i].Text)
	}
	dst = append(dst, `],"settings":[`...)
	for i := range p.Steps {
		dst = w.appendSetting(comma(dst, i), &p.Steps[i])
	}
	dst = append(dst, `],"parts":[`...)
	for i, part := range p.Parts {
		dst = appendInt(append(comma(dst, i), `{"part":`...), part.ID)
		dst = append(w.appendLeaf(append(dst, ','), part.Item, part.Turned), '}')
	}
	dst = append(dst, `],"offcuts":[`...)
	for i, r := range p.Offcuts {
		dst = append(w.appendRect(append(comma(dst, i), '{'), r), '}')
	}
	return append(dst, `]}`...)
}

// appendRect appends the members of a rectangle.
func (w yieldWriter) appendRect(dst []byte, r sheet.Rect) []byte {
	dst = w.length(dst, `"x":`, r.X)
	dst = w.length(dst, `,"y":`, r.Y)
	dst = w.length(dst, `,"width":`, r.Width)
	return w.length(dst, `,"height":`, r.Height)
}

// appendItem appends the name and the number of an item.
func (w yieldWriter) appendItem(dst []byte, item int) []byte {
	dst = appendString(append(dst, `"item":`...), w.order.Items[item].Name)
	return appendInt(append(dst, `,"number":`...), item)
}

// appendLeaf appends the members of an item or of an offcut.
func (w yieldWriter) appendLeaf(dst []byte, item int, turned bool) []byte {
	if item == sheet.Offcut {
		return append(dst, `"offcut":true`...)
	}
	return appendBool(append(w.appendItem(dst, item), `,"turned":`...), turned)
}

// appendNode appends one rectangle of a tree.
func (w yieldWriter) appendNode(dst []byte, n *sheet.Node) []byte {
	if !n.IsCut() {
		return append(w.appendLeaf(append(dst, '{'), n.Item, n.Turned), '}')
	}
	dst = append(append(append(dst, `{"cut":"`...), n.Cut.String()...), '"')
	dst = w.length(dst, `,"at":`, n.At)
	dst = w.appendNode(append(dst, `,"low":`...), n.Low)
	return append(w.appendNode(append(dst, `,"high":`...), n.High), '}')
}

// appendSetting appends one step in numbers. Its reading is the mark nearest
// to where the cut ought to be.
func (w yieldWriter) appendSetting(dst []byte, s *sheet.Step) []byte {
	dst = append(append(append(dst, `{"across":"`...), s.Cut.String()...), `","from":"`...)
	dst = appendLength(append(append(dst, edgeOf(s)...), `","at":`...), w.step, s.Reading, s.At)
	dst = w.length(dst, `,"length":`, s.Length)
	dst = appendBool(append(dst, `,"trim":`...), s.Trim)
	dst = appendInt(append(dst, `,"repeat":`...), s.Repeat)
	dst = appendInts(append(dst, `,"parts":`...), s.Parts)
	dst = appendInts(append(dst, `,"low":`...), s.Low)
	return append(appendInts(append(dst, `,"rest":`...), s.Rest), '}')
}

// edgeOf returns the edge that a step is measured from.
func edgeOf(s *sheet.Step) string {
	names := [...][2]string{sheet.Width: {"left", "right"}, sheet.Height: {"bottom", "top"}}[s.Cut]
	if s.Turned {
		return names[1]
	}
	return names[0]
}

// appendInts appends a list of whole numbers.
func appendInts(dst []byte, list []int) []byte {
	dst = append(dst, '[')
	for i, n := range list {
		dst = appendInt(comma(dst, i), n)
	}
	return append(dst, ']')
}
