package solve

import (
	"context"
	"math/rand/v2"
	"strconv"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/assembly"
	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/mail"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
	"creasefit/internal/sheet"
)

// A kind that the order of its work glues with the contents inside, by itself or
// by a fold of its flap, cannot call itself one to open again.
func TestGluedShutKindsSaySo(t *testing.T) {
	for _, k := range repertoire.Kinds() {
		r := seen(t, k.Name, 1, 95, 60, 24)
		s, err := Solve(context.Background(), r)
		if err != nil {
			r.Thickness = measure.Micrometres(1200)
			s, err = Solve(context.Background(), r)
		}
		require.NoError(t, err, k.Name)
		order, err := assembly.Find(&s.Ideal, &s.Pattern, s.Proof.Tolerance)
		require.NoError(t, err, k.Name)
		in := false
		for _, step := range order.Steps {
			in = in || step.Do == assembly.PutIn
			assert.False(t, in && step.Do == assembly.Glue && !k.Sealed, k.Name)
		}
	}
}

func things(t *testing.T) map[string]*Request {
	t.Helper()
	jar, cards := seen(t, "sleeve", 1, 58, 78, 58), seen(t, "sleeve", 1, 89, 127, 2)
	jar.SheetWidth, jar.SheetHeight = measure.Millimetres(210), measure.Millimetres(297)
	round := *jar
	round.Options = map[string]enclosure.Value{"shape": {Choice: "round"}}
	return map[string]*Request{"jar": jar, "round jar": &round, "cards": cards}
}

// Whatever is told of a kind is what a solve of it tells.
func TestSuggestAgreesWithSolve(t *testing.T) {
	for name, base := range things(t) {
		list, err := Suggest(context.Background(), repertoire.Kinds(), base, &Wishes{Class: -1})
		require.NoError(t, err)
		require.Len(t, list, len(repertoire.Kinds()))
		works := true
		for _, g := range list {
			r := *base
			if r.Kind = g.Kind; !g.Kind.Rolls() {
				r.Options = nil
			}
			s, err := Solve(context.Background(), &r)
			if err != nil {
				var faults fault.Faults
				require.NoError(t, faults.Add(err))
				assert.Equal(t, faults, g.Why, "%s in %s", name, g.Kind.Name)
				works = false
				continue
			}
			assert.True(t, works, "what works comes first")
			require.NotNil(t, g.Solution, "%s in %s", name, g.Kind.Name)
			assert.Equal(t, s.Pattern, g.Solution.Pattern)
			assert.Equal(t, s.Sure, g.Solution.Sure)
			t.Logf("%s %-18s %.3f %3d strokes %v %d sheets", name, g.Kind.Name, s.Sure.Chance, g.Strokes, g.Work, g.Sheets)
		}
	}
}

// Kinds that keep a wish come before those that do not, whatever else they are.
func TestWishesComeFirst(t *testing.T) {
	us := mail.Posts()[0]
	for _, w := range []Wishes{{Reusable: true, Class: -1}, {NoGlue: true, Class: -1}, {OneSheet: true, Class: -1}, {Post: us, Class: 1}, {Within: 10 * time.Minute, Class: -1}} {
		list, err := Suggest(context.Background(), repertoire.Kinds(), things(t)["jar"], &w)
		require.NoError(t, err)
		missed := 0
		for _, g := range list {
			if g.Solution == nil {
				continue
			}
			assert.LessOrEqual(t, missed, len(g.Missed))
			missed = len(g.Missed)
			assert.Equal(t, w.NoGlue && g.Glued() || w.Reusable && g.Kind.Sealed || w.OneSheet && g.Sheets != 1 || w.Within > 0 && g.Work > w.Within || w.Post != nil && g.beyondClass(w.Class), len(g.Missed) > 0, g.Kind.Name)
		}
	}
	few, err := Suggest(context.Background(), repertoire.Kinds(), things(t)["cards"], &Wishes{FewCuts: true, Class: -1})
	require.NoError(t, err)
	for i := 1; i < len(few) && few[i].Solution != nil; i++ {
		if few[i].inside() == few[i-1].inside() {
			assert.LessOrEqual(t, few[i-1].Strokes, few[i].Strokes)
		}
	}
}

// beyondClass reports whether no class up to the wanted one takes the piece.
func (g *Suggestion) beyondClass(wanted int) bool { return g.Post.Class == nil || g.class() > wanted }

// A box is never called a flat: the post is told what the piece is.
func TestMailedPieceSaysWhatItIs(t *testing.T) {
	box, err := Solve(context.Background(), seen(t, "tuck-carton", 1, 95, 120, 12))
	require.NoError(t, err)
	piece := box.Mailed()
	judged := mail.Posts()[0].Judge(&piece)
	assert.Nil(t, judged.Class, "a box of a flat's size is no flat")
	piece.Traits = 0
	assert.NotNil(t, mail.Posts()[0].Judge(&piece).Class, "its size alone would be one")
	pillow, err := Solve(context.Background(), seen(t, "pillow-pack", 1, 60, 95, 10))
	require.NoError(t, err)
	assert.NotZero(t, pillow.MailTraits()&mail.Uneven)
}

// Of what the planner of orders proves, the count of sheets for one enclosure is
// no other.
func TestSheetsForOneAreThoseOfThePlanner(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 16))
	for range 60 {
		var boxes []box
		order := sheet.Order{Ruler: measure.Finest(measure.Millimetre), Sheets: []sheet.Stock{{Width: measure.Millimetres(210), Height: measure.Millimetres(297)}}}
		for i := range 1 + random.IntN(4) {
			b := box{measure.Millimetres(40 + random.Int64N(160)), measure.Millimetres(40 + random.Int64N(240))}
			boxes = append(boxes, b)
			order.Items = append(order.Items, sheet.Item{Name: strconv.Itoa(i), Width: b.width, Height: b.height, Count: 1})
		}
		plan, err := PlanCuts(context.Background(), order)
		require.NoError(t, err)
		if plan.Proven {
			assert.Equal(t, plan.Sheets, fewest(boxes, box{measure.Millimetres(210), measure.Millimetres(297)}), "%v", boxes)
		}
	}
}

// An enclosure whose blank is larger than the sheet takes no count of sheets at all.
func TestSheetsForOneAreNoneWhereABlankIsLarger(t *testing.T) {
	s, err := Solve(context.Background(), seen(t, "sleeve", 1, 58, 78, 10))
	require.NoError(t, err)
	assert.Zero(t, s.SheetsForOne(), "no sheet is named")
	blank := &s.Pattern.Pieces[0]
	for _, c := range []struct {
		width, height measure.Length
		sheets        int
	}{
		{blank.Width, blank.Height, 1},
		{blank.Height, blank.Width, 1},
		{blank.Width.Sub(measure.Nanometres(1)), blank.Height, 0},
		{blank.Height, blank.Width.Sub(measure.Nanometres(1)), 0},
	} {
		s.Request.SheetWidth, s.Request.SheetHeight = c.width, c.height
		assert.Equal(t, c.sheets, s.SheetsForOne(), "%s x %s", c.width.Plain(measure.Millimetre), c.height.Plain(measure.Millimetre))
	}
}

func BenchmarkSuggest(b *testing.B) {
	for _, thickness := range []int64{2, 58} {
		b.Run(strconv.FormatInt(thickness, 10), func(b *testing.B) {
			r := seen(b, "sleeve", 1, 58, 78, thickness)
			r.SheetWidth, r.SheetHeight = measure.Millimetres(210), measure.Millimetres(297)
			for b.Loop() {
				_, err := Suggest(context.Background(), repertoire.Kinds(), r, &Wishes{Class: -1})
				require.NoError(b, err)
			}
		})
	}
}
