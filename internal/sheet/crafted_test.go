package sheet

import (
	"context"
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
)

// crafter makes orders whose least number of sheets is known because whole
// sheets were cut up at random, edge to edge, and the pieces are too large
// together for one sheet less.
type crafter struct {
	random *rand.Rand
	step   measure.Length
	least  int64 // steps of the shortest side of a piece
	waste  float64
}

// cut divides a rectangle of whole steps into so many pieces.
func (c *crafter) cut(w, h int64, pieces int) [][2]int64 {
	if pieces <= 1 || w < 2*c.least && h < 2*c.least {
		return [][2]int64{{w, h}}
	}
	if w < h {
		return c.turned(c.cut(h, w, pieces))
	}
	at := c.least + c.random.Int64N(w-2*c.least+1)
	low := max(1, min(pieces-1, int(float64(pieces)*float64(at)/float64(w)+0.5)))
	return append(c.cut(at, h, low), c.cut(w-at, h, pieces-low)...)
}

// turned exchanges the sides of pieces.
func (c *crafter) turned(pieces [][2]int64) [][2]int64 {
	for i, p := range pieces {
		pieces[i] = [2]int64{p[1], p[0]}
	}
	return pieces
}

// order cuts up so many sheets and drops pieces as long as the rest is still
// too large for one sheet less.
func (c *crafter) order(sheet Stock, margin measure.Length, sheets, pieces int, grain float64) Order {
	unit, _ := measure.ParseStep("1/16 in")
	o := Order{Sheets: []Stock{sheet}, Margin: margin, Ruler: unit}
	w := sheet.Width.Sub(margin.Times(2)).Nanometres() / c.step.Nanometres()
	h := sheet.Height.Sub(margin.Times(2)).Nanometres() / c.step.Nanometres()
	spare := int64(float64(w*h) * c.waste)
	for range sheets {
		for _, p := range c.cut(w, h, pieces/sheets) {
			if area := p[0] * p[1]; area <= spare {
				spare -= area
				continue
			}
			it := Item{Name: fmt.Sprint("piece ", len(o.Items)), Width: c.step.Times(p[0]), Height: c.step.Times(p[1]), Count: 1}
			switch {
			case c.random.Float64() < grain:
				it.Grain = AlongHeight
			case c.random.IntN(2) == 0:
				it.Width, it.Height = it.Height, it.Width
			}
			o.Items = append(o.Items, it)
		}
	}
	c.random.Shuffle(len(o.Items), func(i, j int) { o.Items[i], o.Items[j] = o.Items[j], o.Items[i] })
	return o
}

// craftSheets are the sheets that orders are cut from.
func craftSheets() map[string]Stock {
	return map[string]Stock{
		"12x12":  {Width: measure.Inches(12), Height: measure.Inches(12), Grain: AlongHeight},
		"letter": {Width: measure.Inches(17).Over(2), Height: measure.Inches(11), Grain: AlongHeight},
		"A4":     {Width: measure.Millimetres(210), Height: measure.Millimetres(297), Grain: AlongHeight},
		"A5":     {Width: measure.Millimetres(148), Height: measure.Millimetres(210), Grain: AlongHeight},
	}
}

// craftCase is one order with a known least number of sheets.
type craftCase struct {
	name   string
	order  Order
	sheets int
}

// craftCases makes orders of about so many pieces on all craft sheets, some
// with margins, some partly locked to the grain.
func craftCases(pieces int, sheets []int, waste []float64, seeds uint64) []craftCase {
	var all []craftCase
	for name, stock := range craftSheets() {
		for _, n := range sheets {
			for _, w := range waste {
				for seed := range seeds {
					c := &crafter{random: rand.New(rand.NewPCG(seed, uint64(pieces))), step: measure.Inches(1).Over(4), least: 3, waste: w}
					margin := measure.Inches(1).Over(4).Times(int64(seed % 2))
					if name[0] == 'A' {
						c.step, margin = measure.Millimetres(3), measure.Millimetres(5*int64(seed%2))
					}
					o := c.order(stock, margin, n, pieces, 0.3*float64(seed%3))
					all = append(all, craftCase{fmt.Sprintf("%s/%d pieces/%d sheets/%g waste/%d", name, pieces, n, w, seed), o, n})
				}
			}
		}
	}
	return all
}

func TestCraftedOrders(t *testing.T) {
	cases := craftCases(12, []int{2, 3}, []float64{0, 0.1, 0.5}, 4)
	cases = append(cases, craftCases(25, []int{3, 4}, []float64{0, 0.5}, 3)...)
	for _, c := range cases {
		c.order.Effort = 5 * time.Second
		a := planned(t, c.order)
		assert.LessOrEqual(t, a.Sheets, c.sheets, c.name)
		assert.True(t, a.Proven, c.name)
	}
}

// The same with every piece wanted several times.
func TestCraftedRepeats(t *testing.T) {
	for _, pieces := range []int{5, 8} {
		for _, c := range craftCases(pieces, []int{1}, []float64{0, 0.05}, 2) {
			for i := range c.order.Items {
				c.order.Items[i].Count = 3
			}
			c.order.Effort = 5 * time.Second
			a := planned(t, c.order)
			assert.LessOrEqual(t, a.Sheets, 3*c.sheets, c.name)
			assert.True(t, a.Proven, c.name)
		}
	}
}

// BenchmarkCrafted reports which part of hard orders is proven within what is
// allowed: 100 ms for 25 pieces, 2 s for 70.
func BenchmarkCrafted(b *testing.B) {
	for _, allowed := range []struct {
		pieces int
		effort time.Duration
	}{{12, 100 * time.Millisecond}, {25, 100 * time.Millisecond}, {45, 2 * time.Second}, {70, 2 * time.Second}} {
		for _, waste := range []float64{0, 0.1, 0.3, 0.6} {
			b.Run(fmt.Sprintf("pieces=%d/waste=%g", allowed.pieces, waste), func(b *testing.B) {
				cases := craftCases(allowed.pieces, []int{2, 3, 5}, []float64{waste}, 1)
				for b.Loop() {
					proven := 0
					for _, c := range cases {
						c.order.Effort = allowed.effort
						a, err := Plan(context.Background(), c.order)
						require.NoError(b, err)
						if a.Proven {
							proven++
						}
					}
					b.ReportMetric(float64(proven)/float64(len(cases)), "proven")
				}
			})
		}
	}
}
