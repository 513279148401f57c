package wire

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/mail"
	"creasefit/internal/measure"
)

// postNamed is the table of a post.
func postNamed(t *testing.T, name string) *mail.Post {
	t.Helper()
	i := slices.IndexFunc(mail.Posts(), func(p *mail.Post) bool { return p.Name == name })
	require.GreaterOrEqual(t, i, 0, name)
	return mail.Posts()[i]
}

// letter is a piece of 5 x 7 in, 1/16 in thick and an ounce heavy.
func letter() *mail.Piece {
	return &mail.Piece{Width: measure.Inches(5), Height: measure.Inches(7), Thickness: measure.Sixtyfourths(4), Mass: mail.Ounces(1)}
}

// judged is what one post makes of a piece as it is told.
func judged(t *testing.T, post string, q *mail.Piece, unit measure.Unit) PostVerdict {
	t.Helper()
	return OfMail([]mail.Judgement{postNamed(t, post).Judge(q)}, Voice{Unit: unit}, &Asked{}).Posts[0]
}

// TestALetterOfTheUnitedStates by the sizes of DMM 101.1.1: 3 1/2 to 6 1/8 in high, 5 to 11 1/2
// in long, 0.007 to 1/4 in thick, and 3.5 ounces.
func TestALetterOfTheUnitedStates(t *testing.T) {
	v := judged(t, "us", letter(), measure.Inch)
	assert.Equal(t, []string{"us", "takes", "letter", "Letter"}, []string{v.Post, v.Verdict, v.Class, v.ClassTitle})
	bounds := map[string]string{}
	for _, l := range v.Limits {
		bounds[l.Of+" "+l.Bound] = l.At.Text
		assert.Equal(t, "inside", l.State, l.Detail)
		assert.NotEmpty(t, l.Source)
		assert.True(t, l.Inclusive && l.Confirmed, "%s %s", l.Of, l.Bound)
	}
	for of, want := range map[string]string{"height least": "3 1/2 in", "height greatest": "6 1/8 in", "length least": "5 in", "length greatest": "11 1/2 in", "thickness greatest": "1/4 in", "mass greatest": "3.5 oz"} {
		assert.Equal(t, want, bounds[of], of)
	}
	assert.Empty(t, v.Unknown)
	assert.True(t, v.Certain())
}

// TestAmountsAreInBothUnits: an ounce is 28.349523125 g (NIST SP 811), an inch 25.4 mm.
func TestAmountsAreInBothUnits(t *testing.T) {
	v := judged(t, "us", letter(), measure.Inch)
	for _, l := range v.Limits {
		for _, a := range []*MailAmount{&l.At, l.Value, l.Left} {
			require.NotNil(t, a)
			switch {
			case a.G != nil:
				assert.InDelta(t, *a.G/28.349523125, *a.Oz, 1e-4)
				assert.Nil(t, a.MM)
			case a.MM != nil:
				assert.InDelta(t, *a.MM/25.4, *a.In, 1e-6)
				assert.Nil(t, a.Ratio)
			default:
				require.NotNil(t, a.Ratio)
			}
		}
	}
	millimetres := judged(t, "us", letter(), measure.Millimetre)
	for i, l := range millimetres.Limits {
		assert.Equal(t, numberOf(&v.Limits[i].At), numberOf(&l.At), "the same bound in another unit's words")
		assert.NotContains(t, l.At.Text, " in")
		assert.NotContains(t, l.At.Text, " oz")
	}
}

// TestWhatKeepsAPieceOut: every cheaper class says why not, and a surcharge why.
func TestWhatKeepsAPieceOut(t *testing.T) {
	q := letter()
	q.Width, q.Height, q.Traits = measure.Inches(9), measure.Inches(12), mail.Clasp
	v := judged(t, "us", q, measure.Inch)
	assert.Equal(t, "flat", v.Class)
	assert.Equal(t, []string{"postcard", "letter"}, Each(v.NotIn, func(n MailNotIn) string { return n.Class }))
	for _, n := range v.NotIn {
		require.NotEmpty(t, n.Reasons)
		for _, r := range n.Reasons {
			assert.NotEmpty(t, r.Source)
			if r.Limit != nil {
				assert.Equal(t, r.Limit.Detail, r.Detail)
				assert.Equal(t, "outside", r.Limit.State)
			}
		}
	}
	q = letter()
	q.Traits = mail.Clasp
	v = judged(t, "us", q, measure.Inch)
	require.Len(t, v.Surcharges, 1)
	due := v.Surcharges[0]
	assert.Equal(t, []string{"nonmachinable"}, Voice{}.DueNames(&v))
	assert.True(t, due.Certain)
	assert.Equal(t, "it has a clasp, a string or a button", due.Reasons[0].Detail)
	assert.Nil(t, due.Reasons[0].Limit, "it is no matter of size")
}

// TestPostsInOneLine: the class of each, perhaps before what is not certain.
func TestPostsInOneLine(t *testing.T) {
	list := []PostVerdict{
		{Post: "us", Verdict: "takes", Class: "letter", Surcharges: []MailDue{{Name: "nonmachinable", Certain: true}, {Name: "heavy"}}},
		{Post: "de", Verdict: "may-take", Class: "standardbrief"}, {Post: "au", Verdict: "none"},
	}
	assert.Equal(t, "us: letter, nonmachinable, perhaps heavy; de: perhaps standardbrief; au: none", mailWords(list, Voice{}))
}

// TestTheTablesAreThoseThatJudge: each class of each post, in its order and in the unit of its
// rules, with all limits and what waives them.
func TestTheTablesAreThoseThatJudge(t *testing.T) {
	tables := Posts(Voice{}).Posts
	require.Len(t, tables, len(mail.Posts()))
	graced, unless := 0, 0
	for i, p := range mail.Posts() {
		w := tables[i]
		assert.Equal(t, []any{p.Name, p.Title, p.Edition, p.ByAddress}, []any{w.Name, w.Title, w.Edition, w.ByAddress})
		require.Len(t, w.Classes, len(p.Classes))
		for j, c := range w.Classes {
			made := &p.Classes[j]
			assert.Equal(t, []string{made.Name, made.Title}, []string{c.Name, c.Title})
			require.Len(t, c.Limits, len(made.Limits))
			require.Len(t, c.Surcharges, len(made.Surcharges))
			assert.Len(t, c.Rules, len(made.Rules))
			for k, l := range c.Limits {
				of := &made.Limits[k]
				assert.Equal(t, map[bool]string{true: "least", false: "greatest"}[of.Least], l.Bound)
				assert.Equal(t, []bool{!of.Open, !of.Hearsay, !of.Grace.IsZero()}, []bool{l.Inclusive, l.Confirmed, l.Grace != nil})
				assert.Equal(t, amountText(of.Bound, Voice{Unit: p.Unit}), l.At.Text)
				if l.Grace != nil {
					graced++
					assert.Equal(t, amountText(of.Grace, Voice{Unit: p.Unit}), l.Grace.Text)
					assert.NotEmpty(t, l.Doubt, "%s %s: a grace says why", w.Name, c.Name)
				}
				unless += len(l.Unless)
				assert.Len(t, l.Unless, len(of.Unless))
			}
		}
	}
	assert.Positive(t, graced)
	assert.Positive(t, unless)
}
