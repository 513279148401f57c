package mail

import (
	"math/big"
	"reflect"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"creasefit/internal/measure"
)

// rank is the place of the class that takes the piece; behind all for none.
func rank(p *Post, q *Piece) int { return len(p.Judge(q).Refusals) }

// drawPost draws a post.
func drawPost(t *rapid.T) *Post { return post(t, rapid.SampledFrom(Names()).Draw(t, "post")) }

// nearBound draws an amount that is often at a bound of the post, or one
// nanometre or picogram beside it.
func nearBound(p *Post, greatest int64, of ...Quantity) *rapid.Generator[int64] {
	bounds := []int64{}
	for i := range p.Classes {
		for _, l := range p.Classes[i].Limits {
			for _, q := range of {
				if l.Bound.of == q {
					bounds = append(bounds, l.Bound.n, l.Grace.n)
				}
			}
		}
	}
	return rapid.Custom(func(t *rapid.T) int64 {
		if rapid.Bool().Draw(t, "anywhere") {
			return rapid.Int64Range(1, greatest).Draw(t, "amount")
		}
		return max(1, rapid.SampledFrom(bounds).Draw(t, "bound")+rapid.Int64Range(-1, 1).Draw(t, "beside"))
	})
}

// drawPiece draws a piece near the bounds of a post.
func drawPiece(t *rapid.T, p *Post) *Piece {
	side := nearBound(p, mm(700), OfLength, OfHeight, OfLongerSide, OfShorterSide)
	return &Piece{
		Width: measure.Nanometres(side.Draw(t, "width")), Height: measure.Nanometres(side.Draw(t, "height")),
		Thickness: measure.Nanometres(nearBound(p, mm(60), OfThickness).Draw(t, "thickness")),
		Mass:      Mass{nearBound(p, grams(2500), OfMass).Draw(t, "mass")},
		Traits:    Trait(rapid.IntRange(0, int(addressAcross)-1).Draw(t, "traits")),
	}
}

// A piece that is greater all over is never in a cheaper class, unless it was
// too small for that one.
func TestLargerIsNeverCheaper(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPost(t)
		q := drawPiece(t, p)
		j := p.Judge(q)
		for _, r := range j.Refusals {
			for _, f := range r.Limits {
				if f.Least && f.Bound.of != OfRatio {
					return
				}
			}
		}
		n := rapid.Int64Range(2, 9).Draw(t, "times")
		larger := *q
		larger.Width, larger.Height, larger.Thickness = q.Width.Times(n), q.Height.Times(n), q.Thickness.Times(n)
		assert.GreaterOrEqual(t, rank(p, &larger), len(j.Refusals))
	})
}

// Of a piece that is heavy and thick enough for every class, a thicker or a
// heavier one is in no cheaper class, while its thickness stays the shortest
// side.
func TestThickerOrHeavierIsNeverCheaper(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPost(t)
		q := drawPiece(t, p)
		q.Mass.picograms += grams(5)                            // the greatest of the least masses
		q.Thickness = q.Thickness.Add(measure.Thousandths(251)) // beyond the least of them, and no least size any more
		more := *q
		more.Mass.picograms += rapid.Int64Range(0, grams(500)).Draw(t, "heavier")
		more.Thickness = more.Thickness.Add(measure.Nanometres(rapid.Int64Range(0, mm(30)).Draw(t, "thicker")))
		if measure.Min(q.Width, q.Height).Less(more.Thickness) {
			return
		}
		assert.GreaterOrEqual(t, rank(p, &more), rank(p, q))
	})
}

// Turning a piece over changes nothing, an address turned with it.
func TestTurning(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPost(t)
		q := drawPiece(t, p)
		q.Address = rapid.SampledFrom([]Side{LongerSide, WidthSide, HeightSide}).Draw(t, "address")
		turned := *q
		turned.Width, turned.Height = q.Height, q.Width
		turned.Address = [...]Side{LongerSide: LongerSide, WidthSide: HeightSide, HeightSide: WidthSide}[q.Address]
		if q.Address == LongerSide && rapid.Bool().Draw(t, "on its edge") {
			turned.Height, turned.Thickness = turned.Thickness, turned.Height
		}
		assert.True(t, reflect.DeepEqual(p.Judge(q), p.Judge(&turned)))
	})
}

// The class is the first whose every limit holds, by fractions.
func TestAgainstFractions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPost(t)
		q := drawPiece(t, p)
		q.Address = rapid.SampledFrom([]Side{LongerSide, WidthSide, HeightSide}).Draw(t, "address")
		want := 0
		for want < len(p.Classes) && !slowly(p, &p.Classes[want], q) {
			want++
		}
		assert.Equal(t, want, rank(p, q))
	})
}

// slowly reports whether a class takes a piece of which all is known.
func slowly(p *Post, c *Class, q *Piece) bool {
	w, h := q.Width.Nanometres(), q.Height.Nanometres()
	thickness := q.Thickness.Nanometres()
	sides := []int64{w, h}
	if q.Address == LongerSide {
		sides = append(sides, thickness)
	}
	slices.Sort(sides)
	slices.Reverse(sides)
	length, height := sides[0], sides[1]
	if q.Address == LongerSide {
		thickness = sides[2]
	}
	if p.ByAddress && q.Address == WidthSide {
		length, height = w, h
	}
	if p.ByAddress && q.Address == HeightSide {
		length, height = h, w
	}
	whole := func(n int64) *big.Rat { return new(big.Rat).SetInt64(n) }
	values := map[Quantity]*big.Rat{
		OfLength: whole(length), OfHeight: whole(height), OfLongerSide: whole(sides[0]), OfShorterSide: whole(sides[1]), OfThickness: whole(thickness), OfSum: whole(length + height + thickness),
		OfMass: whole(q.Mass.picograms), OfRatio: new(big.Rat).Mul(big.NewRat(length, height), whole(ratioUnit)),
	}
	holds := func(l Limit) bool {
		bound := l.Bound
		if !l.Grace.IsZero() {
			bound = l.Grace
		}
		order := values[bound.of].Cmp(whole(bound.n))
		if l.Least {
			order = -order
		}
		return l.Hearsay || order < 0 || order == 0 && !l.Open
	}
	for _, l := range c.Limits {
		spared := len(l.Unless) > 0
		for _, other := range l.Unless {
			spared = spared && holds(other)
		}
		if !spared && !holds(l) {
			return false
		}
	}
	for _, r := range c.Rules {
		if q.Traits&r.Has != 0 || q.Traits&r.Lacks != r.Lacks {
			return false
		}
	}
	return true
}

// Every limit has a source, a doubt where there is grace, and a class whose
// least bounds are below its greatest ones.
func TestTables(t *testing.T) {
	for _, p := range Posts() {
		assert.NotEmpty(t, p.Edition, p.Name)
		assert.NotEmpty(t, p.NotConfirmed, p.Name)
		for _, c := range p.Classes {
			lowest, highest := map[Quantity]int64{}, map[Quantity]int64{}
			for _, l := range c.Limits {
				assert.NotEmpty(t, l.Source, "%s %s", p.Name, c.Name)
				assert.Equal(t, l.Hearsay, l.Source == "from memory", "%s %s", p.Name, c.Name)
				assert.Equal(t, l.Grace.IsZero(), l.Doubt == "", "%s %s", p.Name, c.Name)
				assert.LessOrEqual(t, l.beyond(l.Bound, l.Grace.n)*l.Grace.n, l.Grace.n*l.Grace.n, "%s %s", p.Name, c.Name)
				if l.Least {
					lowest[l.Bound.of] = l.Bound.n
				} else {
					highest[l.Bound.of] = l.Bound.n
				}
			}
			for of, n := range lowest {
				if most, ok := highest[of]; ok {
					assert.Less(t, n, most, "%s %s %s", p.Name, c.Name, of)
				}
			}
			for _, r := range c.Rules {
				assert.NotEmpty(t, r.Source, "%s %s", p.Name, c.Name)
			}
		}
	}
}
