package ask

import (
	"strconv"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// Common is what calculations about enclosures have in common.
type Common struct {
	Unit     Unit
	Contents Contents
	Stock    Stock
	Bench    Bench
	Fit      Fit
	Wanted   Number // chance
}

// bindWith binds the common names; grain is what is known of the name grain.
func (q *Common) bindWith(b *Names, grain Name) {
	b.bind(&q.Unit, unitName())
	q.Contents.bind(b)
	q.Stock.bind(b, grain)
	q.Bench.bind(b)
	q.Fit.bind(b)
	b.bind(&q.Wanted, Name{Name: "wanted_chance", Example: "0.9", Advanced: true,
		Help: "How sure everything should go in, 0.5 to 0.999: the answer is the coarsest step that reaches it, else the surest. Default: the " +
			"plainest numbers."}.numbers(0.5, 0.999))
}

// unitName is the unit of bare numbers and of the answer.
func unitName() Name {
	return Name{Name: "unit", Choices: []string{measure.Inch.String(), measure.Millimetre.String()}, Example: "in",
		Help: "The unit of numbers without one, and of the answer. There is no default: give it, or write the unit with the lengths."}
}

// Enclosure is what is asked of one kind.
type Enclosure struct {
	Common
	Kind   *enclosure.Kind
	design Object  // that the kind was made of, if it was
	own    []value // the kind's own names, in its order

	Request *solve.Request // what the names come to
	partial bool           // the sizes of the contents need not be known
}

// NewSolve is the form of a solution of the kind.
func NewSolve(k *enclosure.Kind, formats ...string) *Form[*Enclosure] {
	return NewForm(func() *Enclosure { return &Enclosure{Kind: k} }, formats...)
}

func (q *Enclosure) bind(b *Names) { q.bindWith(b, sheetGrainName()) }

// bindWith binds the common names and the kind's own.
func (q *Enclosure) bindWith(b *Names, grain Name) {
	q.Common.bindWith(b, grain)
	if q.Kind.Design != "" {
		b.bind(&q.design, designName())
	}
	q.own = make([]value, len(q.Kind.Params))
	for i, p := range q.Kind.Params {
		q.own[i] = ownField(&p)
		b.bind(q.own[i], ownName(p))
	}
}

func (q *Enclosure) settle(r *Reading) {
	q.Request = &solve.Request{Kind: q.Kind, Options: q.options()}
	q.Contents.settle(r, q.Request)
	q.Contents.roundOff(q.Request)
	if !q.partial {
		q.Contents.require(r, q.Kind.Needs)
	}
	q.Common.settle(r, q.Request)
}

// settle fills in everything common but the contents.
func (q *Common) settle(r *Reading, to *solve.Request) {
	q.Stock.settle(r, to)
	r.needUnit(&q.Unit)
	to.Unit = r.unit
	q.Bench.settle(r, to)
	q.Fit.settle(r, to)
	to.WantedChance = q.Wanted.Number
}

// options are the kind's own names, as far as given.
func (q *Enclosure) options() map[string]enclosure.Value {
	var options map[string]enclosure.Value
	for i, v := range q.own {
		if !v.field().Given {
			continue
		}
		if options == nil {
			options = map[string]enclosure.Value{}
		}
		options[q.Kind.Params[i].Name] = ownValue(v)
	}
	return options
}

// ownField is an empty field of a kind's parameter.
func ownField(p *enclosure.Param) value {
	switch {
	case p.Type == enclosure.LengthParam:
		return &Length{}
	case p.Type == enclosure.CountParam:
		return &Count{}
	case p.Drawn:
		return &Outline{}
	default:
		return &Word{}
	}
}

// ownValue is what a field of a kind's parameter was given.
func ownValue(v value) enclosure.Value {
	switch v := v.(type) {
	case *Length:
		return enclosure.Value{Length: v.Length}
	case *Count:
		return enclosure.Value{Count: int64(v.Count())}
	case *Word:
		return enclosure.Value{Choice: v.Word}
	case *Outline:
		return enclosure.Value{Choice: v.Word.Word}
	default:
		return enclosure.Value{}
	}
}

// ownName is what is known of a kind's parameter.
func ownName(p enclosure.Param) Name {
	n := Name{Name: p.Name, Help: p.Help, Advanced: p.Advanced}
	switch p.Type {
	case enclosure.LengthParam:
		n.Default = Default{optionalReading(p.DefaultInch, measure.Inch), optionalReading(p.DefaultMillimetre, measure.Millimetre)}
		n.Example = lengthExample(p)
		return n.between(p.Least, p.Greatest)
	case enclosure.CountParam:
		n.Example = strconv.FormatInt(p.DefaultCount, 10)
		n.Default = Always(n.Example)
		return n.numbers(float64(p.LeastCount), float64(p.GreatestCount))
	default:
		n.Choices, n.Example, n.Default = p.Choices, p.Choices[0], Always(p.Choices[0])
		if p.Drawn {
			n.MostCharacters = enclosure.MostPath
		}
		return n
	}
}

// optionalReading writes a default, or nothing for one that the kind derives.
func optionalReading(l measure.Length, unit measure.Unit) string {
	if l.IsZero() {
		return ""
	}
	return measure.Finest(unit).Format(l)
}

// lengthExample is a length that the parameter takes.
func lengthExample(p enclosure.Param) string {
	if !p.DefaultInch.IsZero() {
		return measure.Finest(measure.Inch).Format(p.DefaultInch)
	}
	for _, l := range []measure.Length{measure.Sixtyfourths(32), measure.Inches(2), measure.Sixtyfourths(1)} {
		if !l.Less(p.Least) && !p.Greatest.Less(l) {
			return measure.Finest(measure.Inch).Format(l)
		}
	}
	return measure.Finest(measure.Inch).Format(p.Least)
}
