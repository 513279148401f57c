package own

import (
	"slices"
	"strings"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// mostLimits is how many limits a design has at the most.
const mostLimits = 16

// oneScore is the code of what is warned of.
const oneScore = "one-score"

// Limit is a bound of one of the contents' sizes or of a named size, and what is told of
// what lies outside of it.
type Limit struct {
	of              int // what forms are made of
	name            string
	above           form   // up to which it is not asked
	least, greatest []form // all of which it is at the least and at the most
	detail, hint    string
	warning         string // the code of what is only warned of, "" for what is refused
	paper           string // what board is told that it cannot be, and nothing else
}

// given are the words for what a request gives of every design, in the order of forms.
var given = [...]string{"caliper", "width", "height", "thickness", "", "little", "beside", "", "middle", "loosest"}

// limits reads what a design is bounded by.
func (r *reader) limits(n *node, d *Design) {
	for _, item := range r.list(n, "limits", mostLimits) {
		if !r.there(item) || !r.only(item, "paper", "of", "above", "least", "greatest", "detail", "hint", "warning", "when") {
			continue
		}
		if paper := r.text(item, "paper", mostHelp); paper != "" {
			d.Limits = append(d.Limits, Limit{paper: paper})
			continue
		}
		l := Limit{name: r.name(item, "of"), detail: r.text(item, "detail", mostHelp), hint: r.text(item, "hint", mostHelp)}
		l.warning = [...]string{"", oneScore}[r.word(item, "warning", "", oneScore)]
		if of := r.term(l.name); of != nil {
			l.of = of[0].of
		} else {
			r.report(fault.Unknown, under(item.place, "of"), "there is no size called "+l.name, "width, height, thickness or a named size", "")
		}
		if above := item.members["above"]; above != nil {
			l.above = r.sum(above)
		}
		l.least, l.greatest = r.sums(item, "least"), r.sums(item, "greatest")
		d.Limits = append(d.Limits, l)
	}
}

// sums reads a list of sums.
func (r *reader) sums(n *node, name string) (all []form) {
	for _, item := range r.list(n, name, mostLimits) {
		all = append(all, r.sum(item))
	}
	return all
}

// sum reads a sum such as "width - 2 beside + 1/8 in" as a form.
func (r *reader) sum(n *node) (sum form) {
	times, rest := int64(1), n.text
	for rest != "" {
		at := strings.IndexAny(rest, "+-")
		word := rest
		if at >= 0 {
			word = rest[:at]
		}
		term := r.term(strings.TrimSpace(word))
		if term == nil {
			r.report(fault.Unreadable, n.place, "cannot read "+strings.TrimSpace(word), `a sum such as "width - 2 beside + 1/8 in"`, "")
		}
		if sum = sum.plus(times, term); at < 0 {
			break
		}
		times = 1
		if rest[at] == '-' {
			times = -1
		}
		rest = rest[at+1:]
	}
	return sum
}

// term reads so many times something, or a length; nil for what is neither.
func (r *reader) term(text string) form {
	count, name, many := strings.Cut(text, " ")
	if !many {
		count, name = "1", text
	}
	of := slices.Index(given[:], name)
	if of < 0 {
		of = slices.IndexFunc(r.options, func(o Option) bool { return o.Name == name && o.Type == enclosure.LengthParam })
		of += min(firstSize, firstSize*(of+1))
	}
	quarters := map[string]int64{"1/4": 1, "1/2": 2, "3/4": 3, "1": 4, "3/2": 6, "2": 8, "3": 12, "4": 16}[count]
	if of >= 0 && name != "" && quarters > 0 {
		return only(of, quarters)
	}
	if l, err := measure.Parse(text, measure.NoUnit, measure.DecimalPoint); err == nil {
		return length(l)
	}
	return nil
}

// bounds is the range that a limit leaves a request.
func (l *Limit) bounds(lengths []measure.Length) enclosure.Range {
	r := enclosure.Range{Max: measure.Largest()}
	for _, f := range l.least {
		r.Min = measure.Max(r.Min, f.exact(lengths))
	}
	for _, f := range l.greatest {
		r.Max = measure.Min(r.Max, f.exact(lengths))
	}
	return r
}

// limited refuses what lies outside of the limits of a design, and warns of what is only
// warned of.
func (d *Design) limited(p *planner) error {
	var wrong fault.Faults
	for i := range d.Limits {
		l := &d.Limits[i]
		switch r, size := l.bounds(p.lengths), p.lengths[l.of]; {
		case l.paper != "":
			wrong.Add(p.in.PaperOnly(l.paper))
		case l.above != nil && !l.above.exact(p.lengths).Less(size), !size.Less(r.Min) && !r.Max.Less(size):
		case l.warning != "":
			p.plan.Warnings = append(p.plan.Warnings, enclosure.Warning{Code: l.warning, Detail: l.detail})
		default:
			wrong = append(wrong, p.in.Outside(l.name, r, l.detail, l.hint))
		}
	}
	return wrong.Err()
}
