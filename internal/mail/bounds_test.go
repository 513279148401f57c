package mail

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/golden"
)

// mm and grams are what limits of millimetres and grams are counted in.
func mm(x int64) int64    { return x * 1_000_000 }
func grams(x int64) int64 { return x * 1_000_000_000_000 }

// eachLimit calls do with every limit of every post: of classes, of surcharges, and those
// that waive others.
func eachLimit(do func(place string, l *Limit)) {
	var walk func(place string, limits []Limit)
	walk = func(place string, limits []Limit) {
		for i := range limits {
			do(place, &limits[i])
			walk(place+" unless", limits[i].Unless)
		}
	}
	for _, p := range Posts() {
		for i := range p.Classes {
			c := &p.Classes[i]
			walk(p.Name+" "+c.Name, c.Limits)
			for _, s := range c.Surcharges {
				walk(p.Name+" "+c.Name+" "+s.Name, s.Limits)
			}
		}
	}
}

// TestEveryBoundToTheUnit: a value at the bound is taken, or not if the rules say more or
// less than, and the next one beyond it is not; a grace ends as exactly, hearsay keeps
// nothing out, and a tolerance that reaches beyond makes it unsure.
func TestEveryBoundToTheUnit(t *testing.T) {
	limits := 0
	eachLimit(func(place string, l *Limit) {
		limits++
		out := int64(1) // the way out of the bound
		if l.Least {
			out = -1
		}
		last := l.Bound.n // the last value that is taken
		if l.Open {
			last -= out
		}
		at := func(n int64) State { return l.state(spread{n, n, n}) }
		beyond := Outside
		if l.Hearsay || !l.Grace.IsZero() {
			beyond = Disputed
		}
		name := fmt.Sprint(place, " ", l.Bound)
		assert.Equal(t, Inside, at(last), name)
		assert.Equal(t, beyond, at(last+out), name)
		assert.Equal(t, Unsure, l.state(spread{last - 1, last, last + 1}), name)
		assert.Equal(t, Inside, l.state(spread{last - out - 1, last - out, last - out + 1}), name)
		if !l.Grace.IsZero() {
			assert.Equal(t, l.Bound.of, l.Grace.of, name)
			assert.Equal(t, Disputed, at(l.Grace.n), name)
			assert.Equal(t, Outside, at(l.Grace.n+out), name)
			assert.NotEmpty(t, l.Doubt, name)
		}
		if !strings.HasSuffix(place, " unless") {
			assert.NotEmpty(t, l.Source, name)
		}
	})
	assert.Greater(t, limits, 100)
}

// TestTablesAreFrozen: a changed bound, rule or source is a change that somebody meant.
func TestTablesAreFrozen(t *testing.T) {
	var b strings.Builder
	eachLimit(func(place string, l *Limit) {
		fmt.Fprintf(&b, "%s: %s", place, map[bool]string{false: "at most", true: "at least"}[l.Least])
		if l.Open {
			b.WriteString(", not itself,")
		}
		fmt.Fprintf(&b, " %s %d", l.Bound.of, l.Bound.n)
		if !l.Grace.IsZero() {
			fmt.Fprintf(&b, ", disputed up to %d: %s", l.Grace.n, l.Doubt)
		}
		if l.Hearsay {
			b.WriteString(", hearsay")
		}
		fmt.Fprintf(&b, " (%s)\n", l.Source)
	})
	for _, p := range Posts() {
		fmt.Fprintf(&b, "%s, %q, by address %t, not confirmed %q\n", p.Name, p.Edition, p.ByAddress, p.NotConfirmed)
		for i := range p.Classes {
			c := &p.Classes[i]
			fmt.Fprintf(&b, "%s %s: conditions %q\n", p.Name, c.Name, c.Conditions)
			for _, r := range c.Rules {
				fmt.Fprintf(&b, "%s %s: has %d lacks %d %s (%s)\n", p.Name, c.Name, r.Has, r.Lacks, r.Why, r.Source)
			}
			for _, s := range c.Surcharges {
				for _, r := range s.Rules {
					fmt.Fprintf(&b, "%s %s %s: has %d lacks %d %s (%s)\n", p.Name, c.Name, s.Name, r.Has, r.Lacks, r.Why, r.Source)
				}
			}
		}
	}
	golden.Check(t, "testdata/tables.txt", []byte(b.String()))
}

// TestSidesWhicheverWayTheAddressReads: the length follows the address, the longer and
// the shorter side do not.
func TestSidesWhicheverWayTheAddressReads(t *testing.T) {
	for address, length := range map[Side]int64{LongerSide: mm(200), WidthSide: mm(100), HeightSide: mm(200)} {
		q := piece("100 x 200 mm")
		q.Address = address
		m := q.seenBy(post(t, "us"))
		assert.Equal(t, []int64{length, mm(200), mm(100)}, []int64{m.length.nominal, m.longer.nominal, m.shorter.nominal}, "%d", address)
	}
}

// TestTablesAreRead: what a table says that has no place is refused, in words.
func TestTablesAreRead(t *testing.T) {
	for text, want := range map[string]string{
		`[{"source": "a", "bounds": ["length >= 5"]}]`:                                    `"5" has no unit of ours`,
		`[{"source": "a", "bounds": ["length >="]}]`:                                      `"length >=" is no bound`,
		`[{"source": "a", "bounds": ["girth >= 5 mm"]}]`:                                  `"girth" is no quantity`,
		`[{"source": "a", "bounds": ["length >= x mm"]}]`:                                 "invalid syntax",
		`[{"source": "a", "bounds": [{"at": "mass < 2 oz", "grace": "two"}]}]`:            `"two" has no unit of ours`,
		`[{"source": "a", "bounds": [{"at": "mass < 2 oz", "unless": ["mass < 1 st"]}]}]`: `"1 st" has no unit of ours`,
		`[{"source": "a", "bound": []}]`:                                                  `unknown field "bound"`,
	} {
		var l Limits
		assert.ErrorContains(t, l.UnmarshalJSON([]byte(text)), want, text)
	}
	var trait Trait
	assert.ErrorContains(t, trait.UnmarshalText([]byte("round")), `"round" is no trait`)
	var l Limits
	require.NoError(t, l.UnmarshalJSON([]byte(`[{"source": "a", "bounds": ["mass < 3.5 oz", {"at": "ratio >= 1.3", "grace": "1.2", "doubt": "b"}]}]`)))
	assert.Equal(t, Limits{ // an ounce is 28.349 523 125 g
		{Bound: Amount{OfMass, 99_223_330_937_500}, Open: true, Source: "a"},
		{Bound: Amount{OfRatio, 1_300_000}, Least: true, Grace: Amount{OfRatio, 1_200_000}, Doubt: "b", Source: "a"},
	}, l)
}
