package ask

import (
	"slices"

	"creasefit/internal/enclosure"
	"creasefit/internal/enclosure/own"
	"creasefit/internal/solve"
)

// Portfolio is several enclosures round one another.
type Portfolio struct {
	Common
	Objects Objects
	kinds   *kindForms[*Layer]

	Layers []solve.Layer         // what the names come to
	Own    []*solve.Measurements // of each layer of a check
	Alone  []*Asked[*Layer]      // each layer as a request of its own
}

// Layer is one enclosure of a portfolio.
type Layer struct {
	Enclosure
	KindWord Word
	Turned   Word
	measured *Measured // of a check; else nil

	outer     *Common         // what stands beside the layers
	innermost bool            // of all layers
	taken     map[string]bool // the names that it has from there
}

// Turns are the words for how a layer takes what it goes round, in the order
// of solve.Turn.
func Turns() []string { return []string{"no", "quarter", "edge", "end"} }

// Portfolios returns what makes empty requests for portfolios.
func Portfolios() func() *Portfolio {
	return portfoliosOf(func(k *enclosure.Kind) *Layer { return &Layer{Enclosure: Enclosure{Kind: k}} })
}

// PortfolioChecks returns what makes empty requests for checks of portfolios,
// whose layers have somebody's own measurements.
func PortfolioChecks() func() *Portfolio {
	return portfoliosOf(func(k *enclosure.Kind) *Layer { return &Layer{Enclosure: Enclosure{Kind: k}, measured: &Measured{}} })
}

func portfoliosOf(layer func(*enclosure.Kind) *Layer) func() *Portfolio {
	kinds := newKindForms(layer)
	return func() *Portfolio { return &Portfolio{kinds: &kinds} }
}

func (q *Portfolio) bind(b *Names) {
	q.Common.bindWith(b, sheetGrainName())
	b.bind(&q.Objects, Name{Name: "layers", Most: solve.MostLayers, MostCharacters: own.MostBytes, Shapes: []Shape{layerShape(q.kinds)},
		Example: `{"kind":"tray","corners":"outside"}`,
		Help:    "The enclosures, the innermost first: a kind by name, or with names of its own. What a layer does not say is taken from beside the layers."})
}

// layerShape is the shape of a layer.
func layerShape(kinds *kindForms[*Layer]) Shape {
	names := kinds.any().Names()
	picked := []string{"kind", "turned", "stock", "caliper", "grammage", "sheet", "grain", "step", "fit", "clearance_min", "clearance_max"}
	if names[len(names)-1].Name == "depths" {
		picked = append(picked, "blank", "marks", "rises", "depths")
	}
	return Shape{Help: "One enclosure. Takes the kind's own names as well.", Names: pickNames(names, picked...), Required: []string{"kind"}, Short: "kind", Open: true}
}

func (q *Layer) bind(b *Names) {
	q.Enclosure.bind(b)
	b.bind(&q.KindWord, kindName())
	b.bind(&q.Turned, Name{Name: "turned", Choices: Turns(), Example: Turns()[1], Default: Always(Turns()[0]),
		Help: "How what is inside is turned first: no, a quarter (width and height change places), onto its edge (height and thickness) or " +
			"its end (width and thickness)."})
	if q.measured != nil {
		q.measured.bind(b)
	}
}

func (q *Portfolio) settle(r *Reading) {
	q.Layers, q.Alone, q.Own = nil, nil, nil
	if !q.Objects.Given {
		r.missing(&q.Objects, "a portfolio needs its layers, the innermost first", "add layers=tray&layers=sleeve")
	}
	r.limitObjects(&q.Objects)
	for i, text := range q.Objects.Texts {
		q.settleLayer(r, text, entry("layers", i))
	}
	if len(q.Alone) > 0 { // what it was filled in with holds for the whole
		first := q.Alone[0].Q
		q.Contents, q.Bench.Ruler = first.Contents, first.Bench.Ruler
	}
}

// settleLayer reads one layer.
func (q *Portfolio) settleLayer(r *Reading, text, place string) {
	name := text
	if isObject(text) {
		name = kindNamed(text)
	}
	form, ok := q.kinds.find(r, name, text, place)
	if !ok {
		return
	}
	a, ok := inner(r, form, text, "kind")
	if !ok {
		r.adopt(&a.Reading, place, nil)
		return
	}
	a.Q.outer, a.Q.innermost = &q.Common, len(q.Layers) == 0
	a.Check()
	q.Layers = append(q.Layers, solve.Layer{Request: a.Q.Request, Place: place, Turn: solve.Turn(slices.Index(Turns(), a.Q.Turned.Word))})
	r.adopt(&a.Reading, place, a.Q.taken)
	if m := a.Q.measured; m != nil {
		q.Own = append(q.Own, m.Measurements())
	}
	a.Q.KindWord.reset() // a request for the layer alone has no such names
	a.Q.Turned.reset()
	q.Alone = append(q.Alone, a)
}

func (q *Layer) settle(r *Reading) {
	q.Request = &solve.Request{Kind: q.Kind, Options: q.options()}
	q.refuseShared(r)
	q.takeFrom(q.outer)
	if q.innermost {
		q.Contents.settle(r, q.Request)
		q.Contents.roundOff(q.Request)
		q.Contents.require(r, q.Kind.Needs)
	}
	q.Common.settle(r, q.Request)
	if q.measured != nil {
		q.measured.settle(r)
	}
}

// refuseShared reports names that stand beside the layers only.
func (q *Layer) refuseShared(r *Reading) {
	for _, v := range [...]value{&q.Unit, &q.Stock.MadeAt, &q.Stock.UsedAt, &q.Bench.Ruler, &q.Bench.Preset, &q.Bench.Cut, &q.Bench.Score,
		&q.Contents.Preset, &q.Contents.Width, &q.Contents.Height, &q.Contents.Thickness, &q.Contents.Tolerance} {
		if v.field().Given {
			r.conflict(v, "a layer has no "+v.field().name().Name+" of its own", "name it beside the layers; what a layer goes round is the layer before it")
		}
	}
}

// takeFrom fills in what a layer takes from beside the layers, and the contents
// if it is the innermost one. What it names itself goes before that, and before
// what would contradict it.
func (q *Layer) takeFrom(outer *Common) {
	var t takings
	own, beside := &q.Stock, &outer.Stock
	take(&t, &own.Preset, &beside.Preset, &own.Caliper)
	take(&t, &own.Caliper, &beside.Caliper, &own.Preset)
	take(&t, &own.Varies, &beside.Varies, &own.Preset, &own.Caliper, &own.Grammage)
	take(&t, &own.Give, &beside.Give)
	take(&t, &own.Board, &beside.Board)
	take(&t, &own.Fold, &beside.Fold)
	take(&t, &own.Grammage, &beside.Grammage, &own.Preset, &own.Caliper)
	take(&t, &own.Sheet, &beside.Sheet)
	take(&t, &own.Grain, &beside.Grain, &own.Sheet)
	take(&t, &q.Bench.Step, &outer.Bench.Step)
	take(&t, &q.Fit.Named, &outer.Fit.Named, &q.Fit.Min, &q.Fit.Max)
	take(&t, &q.Fit.Min, &outer.Fit.Min, &q.Fit.Named)
	take(&t, &q.Fit.Max, &outer.Fit.Max, &q.Fit.Named)
	take(&t, &q.Wanted, &outer.Wanted)
	share(&t, &q.Unit, &outer.Unit)
	share(&t, &own.MadeAt, &beside.MadeAt)
	share(&t, &own.UsedAt, &beside.UsedAt)
	share(&t, &q.Bench.Ruler, &outer.Bench.Ruler)
	share(&t, &q.Bench.Preset, &outer.Bench.Preset)
	share(&t, &q.Bench.Cut, &outer.Bench.Cut)
	share(&t, &q.Bench.Score, &outer.Bench.Score)
	if q.innermost {
		share(&t, &q.Contents.Preset, &outer.Contents.Preset)
		share(&t, &q.Contents.Width, &outer.Contents.Width)
		share(&t, &q.Contents.Height, &outer.Contents.Height)
		share(&t, &q.Contents.Thickness, &outer.Contents.Thickness)
		share(&t, &q.Contents.Tolerance, &outer.Contents.Tolerance)
	}
	q.taken = map[string]bool{}
	for _, from := range t { // after all, so that what is taken is no rival
		q.taken[from()] = true
	}
}

// takings are fields to be filled from elsewhere; each says the name.
type takings []func() string

// share fills a field from the same one beside the layers.
func share[P interface {
	*F
	value
}, F any](t *takings, own, beside P) {
	*t = append(*t, func() (taken string) {
		if !own.field().Given { // else it is refused, as the layer's
			taken = beside.field().name().Name
		}
		*own = *beside
		return taken
	})
}

// take does so if the layer has neither the field nor one of its rivals.
func take[P interface {
	*F
	value
}, F any](t *takings, own, beside P, rivals ...value) {
	stands := func(v value) bool { return v.field().Given }
	if !stands(own) && stands(beside) && !slices.ContainsFunc(rivals, stands) {
		share(t, own, beside)
	}
}
