package tell

import (
	"bytes"
	_ "embed" // for the texts
	"fmt"
	"reflect"
	"regexp"
	"strings"
	"text/template"

	"creasefit/api/wire"
)

// decimals are numbers with a decimal point that a unit or a further number follows:
// what else has dots, such as the edition of a table, is no number.
var decimals = regexp.MustCompile(`(\d)\.(\d+ ?(?:mm|in|g|%|°|x|×|to|and)(?:\W|$))`)

// appendText appends an answer in lines to read aloud.
func appendText(dst []byte, s Style, answer any) []byte {
	from := len(dst)
	if dst = appendLines(dst, s, answer); s.Comma {
		dst = append(dst[:from], decimals.ReplaceAll(dst[from:], []byte("$1,$2"))...)
	}
	return dst
}

//go:embed texts.tmpl
var textsSource string

// texts are the texts of answers, by the names of their types.
var texts = template.Must(template.New("texts").Funcs(template.FuncMap{
	"join": strings.Join, "count": wire.Count, "details": details, "why": whyOf, "traits": traitsOf,
}).Parse(textsSource))

func appendLines(dst []byte, s Style, answer any) []byte {
	switch a := answer.(type) {
	case *wire.Yield:
		return appendCuttingText(dst, a)
	case *wire.Solution:
		dst = appendWarnings(dst, a.Warnings)
	case *wire.Portfolio:
		dst = appendWarnings(dst, a.Warnings)
	}
	if rows := rowsOf(answer); rows != nil {
		return appendRowText(dst, s, rows)
	}
	text := texts.Lookup(reflect.Indirect(reflect.ValueOf(answer)).Type().Name())
	if text == nil {
		return appendTableText(dst, s, tableOf(answer))
	}
	b := bytes.NewBuffer(dst)
	if err := text.Execute(b, answer); err != nil {
		panic(err) // a text of ours that no test has written
	}
	return b.Bytes()
}

// adaptRow has one size of both patterns side by side.
func adaptRow(s wire.SizeBeside) []any {
	return []any{s.Name, reading(s.Was.Reading), reading(s.Now.Reading), yesNo(s.Was.MM != s.Now.MM)}
}

// portfolioCheckTable has the rows of every layer, each named by the layer.
func portfolioCheckTable(p *wire.PortfolioCheck) table {
	t := table{header: CheckColumns, rows: [][]any{{"verdict", "", yesNo(p.Works), p.Sure.Chance, nil, nil, nil}}}
	for i := range p.Layers {
		for _, row := range checkTable(&p.Layers[i].Check).rows {
			row[1] = strings.TrimSpace(p.Layers[i].Name + " " + row[1].(string))
			t.rows = append(t.rows, row)
		}
	}
	return t
}

// checkTable has a row for the verdict, each clearance, sum and limit, what would
// mend it, and the greatest contents.
func checkTable(c *wire.Check) table {
	t := table{header: CheckColumns}
	add := func(what, name, says string, chance any, l *wire.Length) {
		t.rows = append(t.rows, []any{what, name, says, chance, reading(l.Reading), l.In, l.MM})
	}
	t.rows = append(t.rows, []any{"verdict", "", yesNo(c.Works), c.Sure.Chance, nil, nil, nil})
	for i := range c.Fit {
		add("fit", strings.TrimSpace(c.Fit[i].Axis+" "+c.Fit[i].Between), c.Fit[i].Verdict, c.Fit[i].Chance, &c.Fit[i].Nominal)
	}
	for i := range c.Closures {
		add("closure", c.Closures[i].Name, yesNo(c.Closures[i].Off.MM == 0), nil, &c.Closures[i].Off)
	}
	for i := range c.Limits {
		l := &c.Limits[i]
		add("limit", l.Name, yesNo(l.Allowed[0].MM <= l.Value.MM && l.Value.MM <= l.Allowed[1].MM), nil, &l.Value)
	}
	for i := range c.Mend {
		add("mend", c.Mend[i].Name, "from "+c.Mend[i].From.Reading, nil, &c.Mend[i].To)
	}
	for i, l := range [...]*wire.Length{c.Greatest.Width, c.Greatest.Height, c.Greatest.Thickness} {
		if l != nil {
			add("greatest", [...]string{"width", "height", "thickness"}[i], "", nil, l)
		}
	}
	return t
}

// yesNo says whether something is so.
func yesNo(is bool) string {
	if is {
		return "yes"
	}
	return "no"
}

// caution is said once, before the first cut.
const caution = "Keep your fingers behind the guard and out of the blade's way, cut on a firm table, and lock the blade after the last cut."

// appendWarnings appends a line for each warning. They are said before what they are about.
func appendWarnings(dst []byte, list []wire.Warning) []byte {
	for i := range list {
		dst = append(append(dst, list[i].Detail...), '\n')
	}
	return dst
}

// appendCuttingText appends the steps of a cut plan.
func appendCuttingText(dst []byte, y *wire.Yield) []byte {
	say := func(text string, values ...any) string { return fmt.Sprintf(y.Order.Word(text), values...) }
	count := func(n int, one string) string {
		if n != 1 {
			one += "s"
		}
		return say("%d "+one, n)
	}
	dst = fmt.Appendf(dst, "%s %s\n", y.Summary, y.Proof)
	w := &y.Work
	dst = append(append(dst, say("Work: %s, %s, %s.", count(w.Settings, "setting"), count(w.Cuts, "cut"), count(w.Turns, "turn"))...), '\n')
	if len(y.UsableOffcuts) > 0 {
		offcuts := wire.Each(y.UsableOffcuts, func(u wire.UsableOffcut) string { return fmt.Sprintf("%d x %s", u.Count, u.Words) })
		dst = append(append(dst, say("Usable offcuts: %s.", strings.Join(offcuts, ", "))...), '\n')
	}
	dst = append(append(dst, y.Order.Word(caution)...), '\n')
	dst = appendWarnings(dst, y.Warnings)
	for i := range y.CutList {
		s := &y.CutList[i]
		dst = append(append(dst, say("Set %s: %s (%s).", y.Order.Reading(s.At.Reading), count(s.Cuts, "cut"), stepRefs(s.Steps, say))...), '\n')
	}
	for i := range y.Plans {
		p := &y.Plans[i]
		what := "sheet"
		if p.Sheet.Offcut {
			what = "offcut"
		}
		dst = append(append(dst, say("Plan %d: cut %s of %s like this.", i+1, count(p.Times, what), p.Sheet.Words)...), '\n')
		for n, step := range p.Steps {
			dst = fmt.Appendf(dst, "%d. %s\n", n+1, step)
		}
		if len(p.Steps) == 0 {
			dst = append(append(dst, y.Order.Word("Nothing to cut: the sheet is the blank.")...), '\n')
		}
	}
	return dst
}

// cuttingTable has one row for each setting of the trimmer. There is no name of
// the request's in it.
func cuttingTable(y *wire.Yield) table {
	t := table{header: CuttingColumns}
	for i := range y.Plans {
		p := &y.Plans[i]
		for n := range p.Settings {
			s := &p.Settings[n]
			trim := "cut"
			if s.Trim {
				trim = "margin"
			}
			t.rows = append(t.rows, []any{i + 1, p.Times, n + 1, s.Across, s.From, reading(s.At.Reading), s.At.In, s.At.MM, s.At.ExactMM,
				s.Length.In, s.Length.MM, trim, len(s.Parts), s.Repeat})
		}
	}
	return t
}

// details joins reasons into a line.
func details(reasons []wire.MailReason) string {
	return strings.Join(wire.Each(reasons, func(r wire.MailReason) string { return r.Detail }), "; ")
}

// mailTable has one row for each post: its class, and the limit that the piece
// is nearest to, in millimetres, grams or a bare ratio.
func mailTable(m *wire.Mail) table {
	t := table{header: MailColumns}
	for i := range m.Posts {
		v := &m.Posts[i]
		cells := []any{v.Post, v.Class, v.Verdict, strings.Join(m.Voice.DueNames(v), " "), strings.Join(v.Unknown, " ")}
		if n := v.Nearest; n != nil {
			x, unit := bare(&n.At)
			value, _ := bare(n.Value)
			left, _ := bare(n.Left)
			cells = append(cells, n.Of, n.Bound, x, value, left, unit)
		} else {
			cells = append(cells, make([]any, 6)...)
		}
		t.rows = append(t.rows, cells)
	}
	return t
}

// bare is an amount as a number, with its unit.
func bare(a *wire.MailAmount) (float64, string) {
	switch {
	case a.MM != nil:
		return *a.MM, "mm"
	case a.G != nil:
		return *a.G, "g"
	default:
		return *a.Ratio, "ratio"
	}
}

// stepRefs names steps of plans.
func stepRefs(steps []wire.StepRef, say func(string, ...any) string) string {
	var b strings.Builder
	for i, s := range steps {
		switch {
		case i == 0:
			b.WriteString(say("plan %d step %d", s.Plan, s.Step))
		case s.Plan == steps[i-1].Plan:
			fmt.Fprintf(&b, ", %d", s.Step)
		default:
			b.WriteString("; " + say("plan %d step %d", s.Plan, s.Step))
		}
	}
	return b.String()
}
