package sheet

import (
	"fmt"
	"math"
	"slices"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// checker gathers the faults of an order.
type checker struct {
	order  Order
	faults fault.Faults
}

// Check returns everything wrong with an order as fault.Faults, or nil.
func (o Order) Check() error {
	c := checker{order: o}
	c.bench()
	for i, s := range o.Sheets {
		c.sheet(i, s)
	}
	c.offcuts()
	c.counts()
	c.onePaper()
	if len(c.faults) == 0 {
		for i, it := range o.Items {
			c.item(i, it)
		}
	}
	return c.faults.Err()
}

// add notes one fault.
func (c *checker) add(code fault.Code, field, value, detail, expected string) {
	c.faults = append(c.faults, fault.Fault{Code: code, Field: field, Value: value, Detail: detail, Expected: expected})
}

// bench checks what holds for all sheets alike.
func (c *checker) bench() {
	o := c.order
	if o.Ruler.IsZero() {
		c.add(fault.Missing, "ruler", "", "A plan needs the ruler's finest mark.", "a step such as 1/16 in or 1 mm")
	}
	c.notNegative("margin", o.Margin)
	c.notNegative("kerf", o.Kerf)
	c.notNegative("trimmer_length", o.Trimmer)
	if o.Effort < 0 || o.Effort > MostEffort {
		c.add(fault.OutOfRange, "effort_ms", fmt.Sprint(o.Effort.Milliseconds()), "The time allowed is out of bounds.",
			fmt.Sprintf("0 to %d", MostEffort.Milliseconds()))
	}
	switch {
	case len(o.Sheets) == 0:
		c.add(fault.Missing, "sheet", "", "A plan needs a sheet to cut from.", "a size such as 12 x 12 in")
	case len(o.Sheets) > MostSizes:
		c.add(fault.TooMany, "sheet", fmt.Sprint(len(o.Sheets)), "There are too many sheet sizes.", fmt.Sprintf("at most %d", MostSizes))
	}
	if len(o.Items) == 0 {
		c.add(fault.Missing, "items", "", "A plan needs at least one blank.", "")
	}
	if len(o.Items) > MostItems {
		c.add(fault.TooMany, "items", fmt.Sprint(len(o.Items)), "There are too many items.", fmt.Sprintf("at most %d", MostItems))
	}
}

// notNegative checks one length of the bench.
func (c *checker) notNegative(field string, l measure.Length) {
	if l.Sign() < 0 || measure.Largest().Less(l) {
		c.add(fault.OutOfRange, field, c.text(l), "The length is out of bounds.", "0 to 100 m")
	}
}

// sheet checks one size of sheet.
func (c *checker) sheet(i int, s Stock) {
	field := fmt.Sprintf("sheet[%d]", i)
	o := c.order
	if !sensible(s.Width) || !sensible(s.Height) {
		c.add(fault.OutOfRange, field, c.size(s.Width, s.Height), "A sheet's sides must be positive lengths up to 100 m.", "")
		return
	}
	if s.Price < 0 || s.Price > 1_000_000_000 {
		c.add(fault.OutOfRange, field+".price", fmt.Sprint(s.Price), "The price is out of bounds.", "0 to 1000000000")
	}
	if o.Minimize == LeastCost && s.Price == 0 && !s.Offcut {
		c.add(fault.Missing, field+".price", "", "The least cost needs a price for every size of sheet.", "a positive price")
	}
	if s.Available < 0 {
		c.add(fault.OutOfRange, field+".available", fmt.Sprint(s.Available), "The number in stock is negative.", "0 or more")
	}
	w, h := o.Usable(i)
	if w.Sign() <= 0 || h.Sign() <= 0 {
		c.add(fault.OutOfRange, "margin", c.text(o.Margin), "The margins leave nothing of "+c.size(s.Width, s.Height)+".", "less than half of the shorter side")
	}
}

// counts checks how many pieces are wanted of everything.
func (c *checker) counts() {
	pieces, without := 0, 0
	for i, it := range c.order.Items {
		field := fmt.Sprintf("items[%d].count", i)
		switch {
		case it.Count < 0 || it.Count > MostPieces:
			c.add(fault.OutOfRange, field, fmt.Sprint(it.Count), c.name(i)+": the count is out of bounds.", fmt.Sprintf("1 to %d", MostPieces))
		case it.Count == 0:
			without++
		}
		pieces += max(it.Count, 0)
	}
	if pieces > MostPieces {
		c.add(fault.TooMany, "items", fmt.Sprint(pieces), "There are too many pieces in all.", fmt.Sprintf("at most %d", MostPieces))
	}
	if without > 0 && without < len(c.order.Items) {
		for i, it := range c.order.Items {
			if it.Count == 0 {
				c.add(fault.Conflict, fmt.Sprintf("items[%d].count", i), "", c.name(i)+" has no count while others have one.", "a count for every item, or for none")
			}
		}
	}
}

// item checks that one blank is possible at all.
func (c *checker) item(i int, it Item) {
	field := fmt.Sprintf("items[%d]", i)
	if !sensible(it.Width) || !sensible(it.Height) {
		c.add(fault.OutOfRange, field+".blank", c.size(it.Width, it.Height), c.name(i)+": a blank's sides must be positive lengths up to 100 m.", "")
		return
	}
	if !c.paper(i) {
		return
	}
	unknown, tooLarge, short, sheets, untrimmed := 0, 0, 0, 0, c.order
	untrimmed.Trimmer = measure.Length{}
	for s := range c.order.Sheets {
		if c.order.Sheets[s].Paper != it.Paper {
			continue
		}
		sheets++
		if it.Grain != AnySide && c.order.Sheets[s].Grain == AnySide {
			unknown++
		}
		if !untrimmed.cuttable(i, s) {
			tooLarge++
		}
		if !c.order.cuttable(i, s) {
			short++
		}
	}
	switch {
	case unknown == sheets:
		c.add(fault.Missing, "sheet_grain", "", c.name(i)+" must keep the grain, but the grain of the sheet is not given.", "width or height")
	case tooLarge == sheets:
		c.add(fault.OutOfRange, field+".blank", c.size(it.Width, it.Height), c.name(i)+" is larger than every sheet allows.",
			"at most the sheet inside its margins, with the grain as asked")
	case short == sheets:
		c.tooShort(i)
	case it.Count == 0:
		c.crowd(i)
	}
}

// tooShort says why the trimmer is too short for a blank: for the cut along it, or
// for every first cut across a sheet, which is said once.
func (c *checker) tooShort(i int) {
	it, shortest := c.order.Items[i], measure.Largest()
	for _, s := range c.order.Sheets {
		if s.Paper == it.Paper {
			shortest = measure.Min(shortest, measure.Min(s.Width, s.Height))
		}
	}
	side := c.text(measure.Max(it.Width, it.Height))
	detail := fmt.Sprintf("%s cannot be cut out: the cut along its side is %s long, longer than the trimmer.", c.name(i), side)
	if c.order.Trimmer.Less(shortest) {
		detail = fmt.Sprintf("Nothing can be cut: even the shortest first cut across a sheet is %s long, longer than the trimmer.", c.text(shortest))
	}
	least := c.order.leastTrimmer(i)
	f := fault.Fault{Code: fault.NoPlan, Field: "trimmer_length", Value: c.text(c.order.Trimmer), Detail: detail,
		Expected: "at least " + c.text(least), Least: least.Nanometres()}
	at := slices.IndexFunc(c.faults, func(g fault.Fault) bool { return g.Detail == detail })
	switch {
	case at < 0:
		c.faults = append(c.faults, f)
	case c.faults[at].Least < f.Least:
		c.faults[at] = f
	}
}

// leastTrimmer is the shortest trimmer that cuts an item out of some sheet: a side of
// either is its longest cut.
func (o Order) leastTrimmer(item int) measure.Length {
	sides := []measure.Length{o.Items[item].Width, o.Items[item].Height}
	for i, s := range o.Sheets {
		w, h := o.Usable(i)
		sides = append(sides, s.Width, s.Height, w, h)
	}
	slices.SortFunc(sides, measure.Length.Compare)
	for _, o.Trimmer = range sides {
		if o.Trimmer.Sign() > 0 && o.somewhere(item) {
			break
		}
	}
	return o.Trimmer
}

// crowd checks that a plan can list what comes out of a sheet, by areas.
func (c *checker) crowd(i int) {
	it, most := c.order.Items[i], 0.0
	for s := range c.order.Sheets {
		w, h := c.order.Usable(s)
		most = max(most, w.Millimetres()*h.Millimetres()/(it.Width.Millimetres()*it.Height.Millimetres()))
	}
	if most <= MostListed {
		return
	}
	c.add(fault.OverBudget, fmt.Sprintf("items[%d].blank", i), c.size(it.Width, it.Height),
		fmt.Sprintf("%s may come out of a sheet %.0f times, and a plan would list each.", c.name(i), most), fmt.Sprintf("at most %d times", MostListed))
	scale := measure.Nanometres(int64(float64(it.Width.Nanometres()) * math.Sqrt(most/MostListed)))
	tall := measure.Nanometres(int64(float64(it.Height.Nanometres()) * math.Sqrt(most/MostListed)))
	c.faults[len(c.faults)-1].Hint = "a blank of " + c.size(c.order.Ruler.Up(scale), c.order.Ruler.Up(tall)) + " is within it"
}

// cuttable reports whether a blank can be cut from a sheet.
func (o Order) cuttable(item, stock int) bool {
	return slices.ContainsFunc(o.Turns(item, stock), func(turned bool) bool { return o.Reachable(item, stock, turned) })
}

// somewhere reports whether a blank can be cut from some sheet.
func (o Order) somewhere(item int) bool {
	for s := range o.Sheets {
		if o.cuttable(item, s) {
			return true
		}
	}
	return false
}

// sensible reports whether a length can be the side of a rectangle.
func sensible(l measure.Length) bool { return l.Sign() > 0 && !measure.Largest().Less(l) }

// name names an item in a sentence.
func (c *checker) name(i int) string {
	if n := c.order.Items[i].Name; n != "" {
		return fmt.Sprintf("%q", n)
	}
	return fmt.Sprintf("item %d", i+1)
}

// text writes a length at the ruler's marks, where there is a ruler.
func (c *checker) text(l measure.Length) string {
	if c.order.Ruler.IsZero() {
		return fmt.Sprintf("%g mm", l.Millimetres())
	}
	return c.order.Ruler.Format(l)
}

// size writes a rectangle.
func (c *checker) size(w, h measure.Length) string { return c.text(w) + " x " + c.text(h) }
