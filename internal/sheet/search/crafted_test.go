package search

import (
	"context"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
)

// crafter makes orders whose least number of sheets is known because whole
// sheets were cut up at random, edge to edge, and the pieces are too large
// together for one sheet less.
type crafter struct {
	stock        sheet.Stock
	step         measure.Length // grid of the cuts
	margin, kerf measure.Length
	sheets       int
	pieces       int     // about so many in all
	waste        float64 // of one sheet, in all
	shrink       bool    // it comes off the pieces, not from pieces left out
	repeats      bool    // equal strips and equal sheets
	locked       float64 // part of the pieces that keep the grain
	random       *rand.Rand
}

// String names the dimensions of an order.
func (c *crafter) String() string {
	return fmt.Sprintf("%.0fx%.0f mm/grid %.4f/margin %.1f/kerf %.1f/%d sheets/%d pieces/waste %.3f/shrink %t/repeats %t/locked %.1f",
		c.stock.Width.Millimetres(), c.stock.Height.Millimetres(), c.step.Millimetres(), c.margin.Millimetres(), c.kerf.Millimetres(),
		c.sheets, c.pieces, c.waste, c.shrink, c.repeats, c.locked)
}

// cut divides a rectangle of whole steps, each piece one kerf too long, into
// about so many pieces with no side shorter than least.
func (c *crafter) cut(w, h, least int64, pieces int) [][2]int64 {
	if pieces <= 1 || w < 2*least && h < 2*least {
		return [][2]int64{{w, h}}
	}
	if w < h {
		return turned(c.cut(h, w, least, pieces))
	}
	if n := int64(2 + c.random.IntN(3)); c.repeats && w >= n*least && int64(pieces) >= n && c.random.IntN(2) == 0 {
		strip := c.cut(w/n, h, least, pieces/int(n))
		return slices.Repeat(strip, int(n))
	}
	at := least + c.random.Int64N(w-2*least+1)
	low := max(1, min(pieces-1, int(float64(pieces)*float64(at)/float64(w)+0.5)))
	return append(c.cut(at, h, least, low), c.cut(w-at, h, least, pieces-low)...)
}

// turned exchanges the sides of pieces.
func turned(pieces [][2]int64) [][2]int64 {
	for i, p := range pieces {
		pieces[i] = [2]int64{p[1], p[0]}
	}
	return pieces
}

// order cuts up the sheets and wastes what may be wasted.
func (c *crafter) order() sheet.Order {
	ruler, _ := measure.ParseStep("1/16 in")
	o := sheet.Order{Sheets: []sheet.Stock{c.stock}, Margin: c.margin, Kerf: c.kerf, Ruler: ruler}
	usableW, usableH := o.Usable(0)
	w, h := usableW.Add(c.kerf).Nanometres()/c.step.Nanometres(), usableH.Add(c.kerf).Nanometres()/c.step.Nanometres()
	least := max(1, measure.Millimetres(13).Nanometres()/c.step.Nanometres())
	var pieces, sheet [][2]int64
	for n := range c.sheets {
		if n%2 == 0 || !c.repeats {
			sheet = c.cut(w, h, least, c.pieces/c.sheets)
		}
		pieces = append(pieces, sheet...)
	}
	c.random.Shuffle(len(pieces), func(i, j int) { pieces[i], pieces[j] = pieces[j], pieces[i] })
	for _, p := range c.wasted(pieces, int64(float64(w*h)*c.waste)) {
		c.add(&o, p)
	}
	return o
}

// wasted takes an area off the pieces.
func (c *crafter) wasted(pieces [][2]int64, spare int64) [][2]int64 {
	for tries := 0; c.shrink && spare > 0 && tries < 10_000; tries++ {
		p, side := &pieces[c.random.IntN(len(pieces))], c.random.IntN(2)
		if p[side] > 2 && p[1-side] <= spare {
			p[side]--
			spare -= p[1-side]
		}
	}
	return slices.DeleteFunc(pieces, func(p [2]int64) bool {
		small := !c.shrink && p[0]*p[1] <= spare
		if small {
			spare -= p[0] * p[1]
		}
		return small
	})
}

// add adds a piece, to an item of the same size if there is one.
func (c *crafter) add(o *sheet.Order, p [2]int64) {
	it := sheet.Item{Name: fmt.Sprint("piece ", len(o.Items)), Width: c.step.Times(p[0]).Sub(c.kerf), Height: c.step.Times(p[1]).Sub(c.kerf), Count: 1}
	switch {
	case c.random.Float64() < c.locked:
		it.Grain = sheet.AlongHeight
	case c.random.IntN(2) == 0:
		it.Width, it.Height = it.Height, it.Width
	}
	for i, known := range o.Items {
		if known.Width == it.Width && known.Height == it.Height && known.Grain == it.Grain {
			o.Items[i].Count++
			return
		}
	}
	o.Items = append(o.Items, it)
}

// craftWastes are wastes of so many sheets, as parts of one sheet.
var craftWastes = []struct {
	name string
	of   func(sheets int) float64
}{
	{"none", func(int) float64 { return 0 }},
	{"2 percent", func(n int) float64 { return 0.02 * float64(n) }},
	{"5 percent", func(n int) float64 { return 0.05 * float64(n) }},
	{"tenth of a sheet", func(int) float64 { return 0.1 }},
	{"half a sheet", func(int) float64 { return 0.5 }},
}

// newCrafter draws the dimensions of an order of at least low and at most high
// pieces.
func newCrafter(seed uint64, low, high int, waste func(sheets int) float64) *crafter {
	r := rand.New(rand.NewPCG(seed, uint64(low)))
	inch, mm := measure.Inches, func(n int64) measure.Length { return measure.Millimetres(n) }
	stock := [][2]measure.Length{{inch(12), inch(12)}, {inch(17).Over(2), inch(11)}, {mm(210), mm(297)}, {mm(148), mm(210)}}[seed%4]
	steps := [][]measure.Length{{inch(1).Over(8), inch(1).Over(4), inch(1).Over(16)}, {mm(1), mm(5), mm(2)}}[seed%4/2]
	margins := []measure.Length{{}, {}, steps[1], mm(4)}
	c := &crafter{
		stock: sheet.Stock{Width: stock[0], Height: stock[1], Grain: sheet.AlongHeight}, step: steps[r.IntN(3)], margin: margins[r.IntN(4)],
		sheets: 1 + r.IntN(6), pieces: low + r.IntN(high-low+1),
		shrink: r.IntN(2) == 0, repeats: r.IntN(3) == 0, locked: []float64{0, 0, 0.5, 1}[r.IntN(4)], random: r,
	}
	c.sheets = min(c.sheets, c.pieces/3)
	if r.IntN(4) == 0 {
		c.kerf = inch(1).Over(32)
	}
	c.waste = waste(c.sheets)
	return c
}

func TestCraftedOrders(t *testing.T) {
	t.Parallel()
	for _, w := range craftWastes {
		for seed := range seeds(12) {
			assertCrafted(t, newCrafter(seed, 5, 14, w.of))
		}
	}
	half := craftWastes[len(craftWastes)-1]
	for seed := range seeds(12) {
		assertCrafted(t, newCrafter(seed, 20, 70, half.of))
	}
}

// seeds is how many random orders to plan.
func seeds(n uint64) uint64 {
	if testing.Short() {
		return n / 4
	}
	return n
}

// assertCrafted plans an order on no more sheets than it was cut from.
func assertCrafted(t *testing.T, c *crafter) {
	a := proven(t, c.order(), muchWork)
	assert.LessOrEqual(t, a.Sheets, c.sheets, c)
	assert.True(t, a.Proven, c)
}

// BenchmarkCrafted reports which part of orders is planned best and which is
// proven within what is allowed: 100 ms up to 25 pieces, 2 s up to 70.
func BenchmarkCrafted(b *testing.B) {
	for _, allowed := range []struct {
		low, high int
		effort    time.Duration
	}{{5, 12, 100 * time.Millisecond}, {13, 25, 100 * time.Millisecond}, {26, 45, 2 * time.Second}, {46, 70, 2 * time.Second}} {
		for _, waste := range craftWastes {
			b.Run(fmt.Sprintf("pieces=%d-%d/waste=%s", allowed.low, allowed.high, waste.name), func(b *testing.B) {
				for b.Loop() {
					benchmarkCrafters(b, allowed.effort, func(seed uint64) *crafter { return newCrafter(seed, allowed.low, allowed.high, waste.of) })
				}
			})
		}
	}
}

// benchmarkCrafters plans some orders and reports how they went.
func benchmarkCrafters(b *testing.B, effort time.Duration, crafter func(seed uint64) *crafter) {
	const orders = 16
	proven, best := 0, 0
	for seed := range uint64(orders) {
		c := crafter(seed)
		o := c.order()
		o.Effort = effort
		a, err := Plan(context.Background(), o)
		require.NoError(b, err)
		if a.Sheets <= c.sheets {
			best++
		}
		if a.Proven {
			proven++
		} else if testing.Verbose() {
			b.Log(c)
		}
	}
	b.ReportMetric(float64(best)/orders, "best")
	b.ReportMetric(float64(proven)/orders, "proven")
}
