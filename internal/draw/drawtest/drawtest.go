// Package drawtest makes drawings for the tests of the encoders: solved
// requests of every kind, plain and at random. It is imported by tests only, and it
// checks nothing.
package drawtest

import (
	"context"
	"math/rand/v2"
	"testing"

	"creasefit/internal/assembly"
	"creasefit/internal/draw"
	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// Sample is a solved request.
type Sample struct {
	Name     string
	Solution *solve.Solution
}

// Options returns how the sample is to be drawn.
func (s *Sample) Options() draw.Options {
	return draw.Options{Title: s.Solution.Request.Kind.Title, Step: s.Solution.Step, Stops: s.Solution.Settings}
}

// Draw draws the sample.
func (s *Sample) Draw() *draw.Drawing { return draw.New(&s.Solution.Pattern, s.dressed(s.Options())) }

// Order returns the order of the sample's work.
func (s *Sample) Order() *assembly.Order {
	order, err := assembly.Find(&s.Solution.Ideal, &s.Solution.Pattern, s.Solution.Proof.Tolerance)
	if err != nil {
		panic(err) // samples can be made
	}
	if o := s.dressed(draw.Options{}); o.Beside != nil {
		return order.Dressed(o.Whole(&s.Solution.Pattern))
	}
	return order
}

// dressed are options with the ornament of the sample, if it has one.
func (s *Sample) dressed(o draw.Options) draw.Options {
	if s.Solution.Ornament != nil {
		o.Beside = []pattern.Piece{s.Solution.Ornament.Piece()}
	}
	return o
}

// Pictures returns how the steps of the sample's work are drawn.
func (s *Sample) Pictures(o draw.Options) func(steps []int) *draw.Drawing {
	picture, _, err := draw.Pictures([]draw.Work{{Pattern: &s.Solution.Pattern, Options: s.dressed(o), Order: func() (*assembly.Order, error) { return s.Order(), nil }}})
	if err != nil {
		panic(err)
	}
	return picture
}

// request makes a request in plain units for contents of the given size.
func request(k *enclosure.Kind, u measure.Unit, w, h, t measure.Length) *solve.Request {
	marks := measure.Marks(u)
	return &solve.Request{
		Kind: k, Unit: u, Width: w, Height: h, Thickness: t,
		Caliper: measure.Thousandths(12), Ruler: marks[min(5, len(marks)-1)],
		CutError: measure.Sixtyfourths(2), ScoreError: measure.Sixtyfourths(2),
		FitName: "easy", Fit: enclosure.NamedFits()[1].Range(u), Options: map[string]enclosure.Value{},
	}
}

// Every solves one plain request of every kind, in inches and in millimetres,
// for thin and for thick contents, as far as there is a solution.
func Every() []Sample {
	var samples []Sample
	for _, k := range repertoire.Kinds() {
		for _, c := range []struct {
			name    string
			unit    measure.Unit
			w, h, t measure.Length
		}{
			{"-thin-in", measure.Inch, measure.Sixtyfourths(224), measure.Sixtyfourths(320), measure.Thousandths(90)},
			{"-thick-mm", measure.Millimetre, measure.Millimetres(85), measure.Millimetres(120), measure.Millimetres(22)},
		} {
			s, err := solve.Solve(context.Background(), request(k, c.unit, c.w, c.h, c.t))
			if err == nil {
				samples = append(samples, Sample{k.Name + c.name, s})
			}
		}
	}
	return samples
}

// Adorned is a slotted band with an ornament of a stock of its own.
func Adorned() Sample {
	mm := measure.Millimetres
	k, _ := repertoire.Lookup("slotted-band")
	r := request(k, measure.Millimetre, mm(90), mm(120), mm(20))
	r.Options["ornament_width"], r.Options["ornament_caliper"] = enclosure.Value{Length: mm(60)}, enclosure.Value{Length: mm(2)}
	r.Options["ornament_shape"] = enclosure.Value{Choice: "heart"}
	s, err := solve.Solve(context.Background(), r)
	if err != nil {
		panic(err) // the request is sound
	}
	return Sample{k.Name + "-adorned", s}
}

// Random solves the request that a seed names: any kind, sizes, paper, unit,
// fit and parameters within their bounds. It reports false if that request has
// no solution.
func Random(seed uint64) (Sample, bool) {
	random := rand.New(rand.NewPCG(seed, 1))
	kinds := repertoire.Kinds()
	k := kinds[random.IntN(len(kinds))]
	u := measure.Inch + measure.Unit(random.IntN(2))
	r := request(k, u, some(random, 20, 320), some(random, 20, 320), some(random, 0.2, 60))
	r.Caliper = some(random, 0.08, 0.9)
	fit := enclosure.NamedFits()[random.IntN(3)]
	r.FitName, r.Fit = fit.Name, fit.Range(u)
	for _, p := range k.Params {
		if random.IntN(3) == 0 {
			r.Options[p.Name] = value(random, &p, r)
		}
	}
	s, err := solve.Solve(context.Background(), r)
	if err != nil {
		return Sample{}, false
	}
	return Sample{k.Name, s}, true
}

// some returns a length between two numbers of millimetres, small ones as
// often as large ones.
func some(random *rand.Rand, low, high float64) measure.Length {
	part := random.Float64()
	return measure.Micrometres(int64(1000 * (low + (high-low)*part*part)))
}

// value returns a value for a parameter, on a mark of the ruler if a length.
func value(random *rand.Rand, p *enclosure.Param, r *solve.Request) enclosure.Value {
	switch p.Type {
	case enclosure.CountParam:
		most := min(p.GreatestCount, p.LeastCount+12)
		return enclosure.Value{Count: p.LeastCount + random.Int64N(most-p.LeastCount+1)}
	case enclosure.ChoiceParam:
		return enclosure.Value{Choice: p.Choices[random.IntN(len(p.Choices))]}
	default:
		most := min(p.Greatest.Millimetres(), 90)
		l := r.Ruler.Nearest(some(random, p.Least.Millimetres(), max(most, p.Least.Millimetres())))
		return enclosure.Value{Length: measure.Max(p.Least, l)}
	}
}

// Files calls a check with the template and the cutter's lines of every kind, plain,
// with its own choices and adorned, in inches and in millimetres.
func Files(t *testing.T, check func(name string, d *draw.Drawing)) {
	for _, s := range append(append(Every(), Worked(t)...), Adorned()) {
		o := s.dressed(s.Options())
		check(s.Name+", template", draw.NewTemplate(&s.Solution.Pattern, o))
		d, err := draw.NewCutter(&s.Solution.Pattern, o, draw.CutterOptions{})
		if err != nil {
			t.Fatal(s.Name, err)
		}
		check(s.Name+", cutter", d)
	}
}

// EachRandom calls a check with n solved random requests, always the same ones;
// a tenth of them in short runs.
func EachRandom(t *testing.T, n int, check func(*testing.T, *Sample)) {
	t.Helper()
	if testing.Short() {
		n /= 10
	}
	for seed, done := uint64(0), 0; done < n; seed++ {
		if seed > uint64(100*n) {
			t.Fatalf("only %d of %d random requests have a solution", done, seed)
		}
		if s, ok := Random(seed); ok {
			check(t, &s)
			done++
		}
		if t.Failed() {
			t.Fatalf("at seed %d", seed)
		}
	}
}
