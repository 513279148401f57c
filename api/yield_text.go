package api

import (
	"fmt"
	"io"
	"strconv"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/internal/draw"
	"creasefit/internal/draw/pdf"
	"creasefit/internal/draw/svg"
	"creasefit/internal/sheet"
)

// caution is said once, before the first cut.
const caution = "Keep your fingers behind the guard and out of the blade's way, cut on a firm table, and lock the blade after the last cut."

// writeYield writes a planned order in the format.
func writeYield(dst []byte, f tell.Format, a *yieldAnswer, x *answering) []byte {
	switch f {
	case tell.CSV:
		return a.appendCSV(dst, x.rowStyle())
	case tell.Text:
		return a.appendText(dst)
	case tell.SVG:
		return svg.Append(dst, a.picture(), svg.Options{Dark: a.request.Dark()})
	case tell.PDF:
		return x.encoded(dst, func(w io.Writer) error { return pdf.Encode(w, a.picture(), pdf.Options{Fit: true, Context: x.ctx}) })
	default:
		return appendYield(dst, a, x)
	}
}

// picture draws the sheets of the plan.
func (a *yieldAnswer) picture() *draw.Drawing {
	return draw.NewPlan(&a.order, &a.plan, draw.Options{Title: "Cut plan", Description: a.summary(), Step: a.order.Ruler})
}

// summary says in a sentence or two what a plan comes to.
func (a *yieldAnswer) summary() string {
	sheets := count(a.plan.Sheets, "sheet", "sheets")
	used := string(appendDecimal(nil, 100*a.plan.Used, 0)) + " percent of the paper is used."
	if a.order.Items[0].Count == 0 && a.plan.PerSheet > 0 {
		return fmt.Sprintf("One sheet gives %d. %s", a.plan.PerSheet, used)
	}
	if a.order.Minimize == sheet.LeastCost {
		sheets += " for " + string(appendDecimal(nil, float64(a.plan.Cost)/ask.PriceUnit, 4))
	}
	return sheets + ". " + used
}

// appendText appends the steps to read aloud.
func (a *yieldAnswer) appendText(dst []byte) []byte {
	dst = fmt.Appendf(dst, "%s %s\n%s\n", a.summary(), a.plan.Proof, caution)
	for _, w := range a.warnings {
		dst = append(append(dst, w.Detail...), '\n')
	}
	for i := range a.plan.Plans {
		p := &a.plan.Plans[i]
		stock := a.order.Sheets[p.Stock]
		dst = fmt.Appendf(dst, "Plan %d: cut %s of %s by %s like this.\n", i+1, count(p.Times, "sheet", "sheets"),
			a.order.Ruler.Format(stock.Width), a.order.Ruler.Format(stock.Height))
		for n := range p.Steps {
			dst = fmt.Appendf(dst, "%d. %s\n", n+1, p.Steps[n].Text)
		}
		if len(p.Steps) == 0 {
			dst = append(dst, "Nothing to cut: the sheet is the blank.\n"...)
		}
	}
	return dst
}

// appendCSV appends one row for each setting of the trimmer. There is no name
// of the request's in it.
func (a *yieldAnswer) appendCSV(dst []byte, style rowStyle) []byte {
	separator := byte(',')
	if style.comma {
		separator = ';'
	}
	if !style.bare {
		dst = appendCells(dst, separator, "plan", "sheets", "step", "across", "from", "reading", "in", "mm", "exact mm", "length in", "length mm", "trim", "stack", "cuts")
	}
	for i := range a.plan.Plans {
		p := &a.plan.Plans[i]
		for n := range p.Steps {
			s := &p.Steps[n]
			at, exact, long := row{step: a.order.Ruler, length: s.Reading}, row{length: s.At}, row{length: s.Length}
			dst = appendCells(dst, separator, strconv.Itoa(i+1), strconv.Itoa(p.Times), strconv.Itoa(n+1), s.Cut.String(), edgeOf(s),
				style.mark(at.reading()), style.mark(at.in()), style.mark(at.mm()), style.mark(exact.mm()), style.mark(long.in()), style.mark(long.mm()),
				trimWord(s.Trim), strconv.Itoa(len(s.Parts)), strconv.Itoa(s.Repeat))
		}
	}
	return dst
}

// trimWord writes whether a cut takes a margin off.
func trimWord(trim bool) string {
	if trim {
		return "margin"
	}
	return "cut"
}
