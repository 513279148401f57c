package sheet

import (
	"context"
	"fmt"
	"math/rand/v2"
	"os"
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

func TestCraftedReport(t *testing.T) {
	if os.Getenv("SHEET_CRAFT") == "" {
		t.Skip("report")
	}
	for _, pieces := range []int{12, 18, 25, 40, 70} {
		for _, sheets := range []int{2, 3, 5} {
			for _, waste := range []float64{0, 0.1, 0.3, 0.6} {
				n, ok, slow, worst := 0, 0, 0, time.Duration(0)
				allowed := 100 * time.Millisecond
				if pieces > 25 {
					allowed = 2 * time.Second
				}
				for seed := range uint64(8) {
					c := &crafter{random: rand.New(rand.NewPCG(seed, 7)), step: measure.Inches(1).Over(4), least: 4, waste: waste}
					sheet := craftSheets()["12x12"]
					if seed%2 == 1 {
						sheet, c.step, c.least = craftSheets()["A4"], measure.Millimetres(5), 4
					}
					margin := measure.Length{}
					o := c.order(sheet, margin, sheets, pieces, 0.3*float64(seed%3))
					o.Effort = allowed
					start := time.Now()
					a, err := Plan(context.Background(), o)
					require.NoError(t, err)
					took := time.Since(start)
					worst = max(worst, took)
					require.NoError(t, Verify(o, a))
					n++
					assert.LessOrEqual(t, int(a.LowerBound), sheets)
					if a.Sheets == sheets && a.Proven {
						ok++
					} else {
						slow++
					}
				}
				fmt.Printf("pieces %d sheets %d waste %.1f: %d of %d, worst %v\n", pieces, sheets, waste, ok, n, worst)
			}
		}
	}
}
