package ask

import (
	"creasefit/internal/enclosure"
	"creasefit/internal/enclosure/own"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// MostMatched is how many holders or things one call compares.
const MostMatched = 10_000

// Match is one thing and many holders, or many things and one.
type Match struct {
	Unit            Unit
	Contents        Contents
	Things, Holders Objects
	List            Text
	Turn, Only      Word
	Top             Count

	Into    []Holder
	What    []NamedThing
	Content []string // the holders as given, so that they can be remembered

	recall func(list string) ([]string, bool)
	unit   measure.Unit
	thing  *Form[*Thing]
	inside *Form[*Inside]
	kinds  *kindForms[*Held]
}

// Thing is one of many things.
type Thing struct {
	ID       Text
	Contents Contents

	sized solve.Thing
}

// Inside is a holder whose room is known.
type Inside struct {
	ID                       Text
	Width, Height, Thickness Length
	Tolerance                Spread
}

// Held is a holder that is made: a request for its kind.
type Held struct {
	Enclosure
	ID       Text
	KindWord Word
}

// NamedThing is a thing with what it is called.
type NamedThing struct {
	ID    string
	Thing solve.Thing
}

// Holder is a holder with what it is called: either its inside or the request
// that it is made by.
type Holder struct {
	ID     string
	Inside *solve.Inside
	Made   *solve.Request
}

// NewMatch is the form of the call that compares things and holders; recall
// returns the holders of a list that was sent before.
func NewMatch(recall func(list string) ([]string, bool), formats ...string) *Form[*Match] {
	thing, inside := New[Thing](), New[Inside]()
	kinds := newKindForms(func(k *enclosure.Kind) *Held { return &Held{Enclosure: Enclosure{Kind: k}} })
	f := NewForm(func() *Match { return &Match{recall: recall, thing: thing, inside: inside, kinds: &kinds} }, formats...).Large()
	f.names.rows = "holders"
	return f
}

func (q *Match) bind(b *Names) {
	b.bind(&q.Unit, unitName())
	q.Contents.bind(b)
	thing := Shape{Help: "One thing: contents by name, or its sizes.", Names: q.thing.Names(), Required: []string{"id"}}
	b.bind(&q.Things, Name{Name: "things", Most: MostMatched, MostCharacters: MostValue * 8, Shapes: []Shape{thing}, Example: `{"id":"tin","width":"76 mm","height":"95 mm","thickness":"76 mm"}`,
		Help: "Things to compare with one holder, instead of contents: at most 10000."})
	inside := Shape{Help: "A holder that was measured inside; a side that is open is left out.", Names: q.inside.Names(), Required: []string{"id"}}
	made := Shape{Help: "A holder by how it is made. Takes the kind's names as well.", Required: []string{"id", "kind"}, Open: true,
		Names: pickNames(q.kinds.any().Names(), "id", "kind", "unit", "width", "height", "thickness", "caliper")}
	b.bind(&q.Holders, Name{Name: "holders", Most: MostMatched, MostCharacters: own.MostBytes, Shapes: []Shape{inside, made}, Example: `{"id":"sleeve-4","width":"80 mm","height":"100 mm","thickness":"80 mm"}`,
		Help: "What the thing may go into: at most 10000. In CSV a row a holder, with these names as its header."})
	b.bind(&q.List, Name{Name: "list", Example: "0f4a53e3a1c0b7d2",
		Help: "The name that an answer gave to its holders, instead of sending them again; they are asked for again once they are forgotten."})
	b.bind(&q.Turn, Name{Name: "turn", Choices: []string{"no", "yes"}, Example: "yes", Default: Always("no"),
		Help: "Whether width and height of a thing may change places, in holders that were measured inside."})
	b.bind(&q.Only, Name{Name: "only", Choices: []string{"all", "fits"}, Example: "fits", Default: Always("all"),
		Help: "fits leaves out what does not go together."})
	b.bind(&q.Top, Name{Name: "top", Example: "5", Help: "Answer with so many at the most, the best."}.numbers(1, MostMatched))
}

func idName(of string) Name {
	return Name{Name: "id", MostCharacters: MostValue, Example: "tin-4", Help: "What the " + of + " is called in the answer."}
}

func (q *Thing) bind(b *Names) {
	b.bind(&q.ID, idName("thing"))
	q.Contents.bind(b)
}

// settle needs a unit of nobody: the lengths have theirs.
func (q *Thing) settle(r *Reading) {
	q.sized = thingOf(r, &q.Contents)
}

func (q *Inside) bind(b *Names) {
	side := func(what string) Name {
		return Name{Name: what, Example: "80 mm", Help: "Inside " + what + "."}.between(measure.Millimetres(1), measure.Millimetres(5000))
	}
	b.bind(&q.ID, idName("holder"))
	b.bind(&q.Width, side("width"))
	b.bind(&q.Height, side("height"))
	b.bind(&q.Thickness, side("thickness"))
	b.bind(&q.Tolerance, Name{Name: "tolerance", Example: "0.5 mm",
		Help: "How much every size of the inside varies. Default: nothing."}.spread())
}

func (q *Inside) settle(r *Reading) {
	if !q.Width.Given && !q.Height.Given && !q.Thickness.Given {
		r.missing(&q.Width, "a holder has a size inside, or a kind", `add width, such as "80 mm"`)
	}
}

func (q *Held) bind(b *Names) {
	q.Enclosure.bind(b)
	b.bind(&q.ID, idName("holder"))
	b.bind(&q.KindWord, kindName())
}

func (q *Match) settle(r *Reading) {
	q.Into, q.What, q.Content = q.Into[:0], q.What[:0], nil
	q.settleThings(r)
	q.settleHolders(r)
	r.needUnit(&q.Unit)
	q.unit = r.unit
	if len(q.What) > 1 && len(q.Into) > 1 {
		r.conflict(&q.Things, "many things and many holders are too many pairs", "send one thing with all holders, or one holder with all things")
	}
}

// Answered is the unit of the answer.
func (q *Match) Answered() measure.Unit { return q.unit }

// settleThings reads the thing, or all of them.
func (q *Match) settleThings(r *Reading) {
	r.limitObjects(&q.Things)
	if !q.Things.Given {
		q.What = append(q.What, NamedThing{"", thingOf(r, &q.Contents)})
		return
	}
	for _, v := range [...]value{&q.Contents.Preset, &q.Contents.Width, &q.Contents.Height, &q.Contents.Thickness, &q.Contents.Tolerance} {
		if v.field().Given {
			r.conflict(v, "the things have sizes of their own", "leave it out, or leave out things")
		}
	}
	for i, text := range q.Things.Texts {
		a, ok := inner(r, q.thing, text, "")
		if ok && a.Check() {
			q.What = append(q.What, NamedThing{a.Q.ID.Text, a.Q.sized})
		}
		q.finish(r, a, &a.Q.ID, entry("things", i))
	}
}

// thingOf settles the sizes of a thing.
func thingOf(r *Reading, c *Contents) solve.Thing {
	var to solve.Request
	c.settle(r, &to)
	c.require(r, []string{"width"})
	return solve.Thing{Width: to.Width, Height: to.Height, Thickness: to.Thickness, SizeTolerance: to.SizeTolerance, ThicknessTolerance: to.ThicknessTolerance}
}

// finish reports what is wrong with an entry, and that it must have a name.
func (q *Match) finish(r *Reading, a interface{ reading() *Reading }, id *Text, place string) {
	inner := a.reading()
	if !id.Given && len(inner.faults) == 0 {
		inner.missing(id, "every entry has an id, so that the answer can name it", `add "id"`)
	}
	r.adopt(inner, place, nil)
}

// settleHolders reads the holders, or recalls them.
func (q *Match) settleHolders(r *Reading) {
	r.limitObjects(&q.Holders)
	q.Content = q.Holders.Texts
	switch {
	case q.List.Given && q.Holders.Given:
		r.conflict(&q.List, "a list stands in the place of holders", "leave one of them out")
	case q.List.Given:
		known, ok := q.recall(q.List.Text)
		if !ok {
			r.Report(fault.Fault{Code: fault.Unknown, Field: "list", Value: q.List.Text, Detail: "this list of holders is not remembered any more",
				Hint: "send the holders again: the answer names their list"}, "")
		}
		q.Content = known
	case !q.Holders.Given:
		r.missing(&q.Holders, "a match needs holders", `add "holders": [{"id": "a", "width": "80 mm"}], or list`)
	}
	for i, text := range q.Content {
		q.settleHolder(r, text, entry("holders", i))
	}
}

// settleHolder reads one holder.
func (q *Match) settleHolder(r *Reading, text, place string) {
	name := kindNamed(text)
	if name == "" {
		a, ok := inner(r, q.inside, text, "")
		if ok && a.Check() {
			q.Into = append(q.Into, Holder{ID: a.Q.ID.Text, Inside: &solve.Inside{Width: a.Q.Width.Length, Height: a.Q.Height.Length, Thickness: a.Q.Thickness.Length, Tolerance: a.Q.Tolerance.Source()}})
		}
		q.finish(r, a, &a.Q.ID, place)
		a.Release()
		return
	}
	form, ok := q.kinds.find(r, name, text, place)
	if !ok {
		return
	}
	a, ok := inner(r, form, text, "")
	if ok && a.Check() {
		q.Into = append(q.Into, Holder{ID: a.Q.ID.Text, Made: a.Q.Request})
	}
	q.finish(r, a, &a.Q.ID, place)
}
