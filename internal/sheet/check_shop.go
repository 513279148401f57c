package sheet

import (
	"fmt"
	"slices"
	"strings"

	"creasefit/internal/fault"
)

// MostOffcuts bounds the offcuts of a stock, all sizes together.
const MostOffcuts = 1_000

// offcuts checks the offcuts in stock.
func (c *checker) offcuts() {
	sum := 0
	for i, s := range c.order.Sheets {
		field := fmt.Sprintf("sheet[%d].available", i)
		if s.Offcut && s.Available == 0 {
			c.add(fault.Missing, field, "", "Of an offcut it is not said how many there are.", "the number in stock")
		}
		if s.Offcut {
			sum += s.Available
		}
	}
	if sum > MostOffcuts {
		c.add(fault.TooMany, "sheet", fmt.Sprint(sum), "There are too many offcuts in stock.", fmt.Sprintf("at most %d", MostOffcuts))
	}
}

// paper checks that there are sheets of an item's paper, and reports whether there
// are.
func (c *checker) paper(i int) bool {
	it := c.order.Items[i]
	var papers []string
	for _, s := range c.order.Sheets {
		if s.Paper == it.Paper {
			return true
		}
		if s.Paper != "" && !slices.Contains(papers, s.Paper) {
			papers = append(papers, s.Paper)
		}
	}
	field := fmt.Sprintf("items[%d].paper", i)
	if it.Paper == "" {
		c.add(fault.Missing, field, "", c.name(i)+" names no paper, but every sheet does.", "one of "+strings.Join(papers, ", "))
		return false
	}
	expected := "a paper that a sheet names"
	if len(papers) > 0 {
		expected = "one of " + strings.Join(papers, ", ")
	}
	c.add(fault.Unknown, field, it.Paper, c.name(i)+" is of a paper that there is no sheet of.", expected)
	c.faults[len(c.faults)-1].Hint = fault.Meant(fault.Nearest(it.Paper, papers))
	return false
}

// onePaper checks that an order without counts is of one paper.
func (c *checker) onePaper() {
	if papers := c.order.Papers(); !c.order.Counted() && len(papers) > 1 {
		c.add(fault.Conflict, "items", strings.Join(papers, ", "), "Without counts all items share one sheet, so they are of one paper.", "a count for every item, or one paper")
	}
}
