package api

import (
	"strings"

	"creasefit/internal/mail"
	"creasefit/internal/measure"
)

// mailAmountText writes an amount in the unit of the answer; a mass in ounces
// where lengths are in inches.
func mailAmountText(a mail.Amount, unit measure.Unit) string {
	switch {
	case a.Of() == mail.OfRatio:
		return string(appendDecimal(nil, a.Ratio(), 4))
	case a.Of() != mail.OfMass:
		return string(appendReading(nil, measure.Finest(unit), a.Length()))
	case unit == measure.Inch:
		return string(appendDecimal(nil, a.Mass().Ounces(), 3)) + " oz"
	default:
		return string(appendDecimal(nil, a.Mass().Grams(), 2)) + " g"
	}
}

// mailNoun names a quantity in a sentence.
func mailNoun(q mail.Quantity) string {
	switch q {
	case mail.OfSum:
		return "the sum of length, height and thickness"
	case mail.OfRatio:
		return "the length divided by the height"
	default:
		return "the " + strings.ReplaceAll(q.String(), "-", " ")
	}
}

// mailDetail says in a sentence how a piece stands to a limit.
func mailDetail(f *mail.Finding, unit measure.Unit) string {
	bound := " (" + mailBoundWords(f.Limit) + mailAmountText(f.Bound, unit) + ")"
	if f.State == mail.Unknown {
		return mailNoun(f.Bound.Of()) + " is not known" + bound
	}
	return mailNoun(f.Bound.Of()) + " is " + mailAmountText(f.Value, unit) + bound + ": " + mailStanding(f, unit)
}

// mailBoundWords begins to name a bound.
func mailBoundWords(l *mail.Limit) string {
	switch {
	case l.Open && l.Least:
		return "more than "
	case l.Open:
		return "less than "
	case l.Least:
		return "at least "
	default:
		return "at most "
	}
}

// mailStanding says how much is left to a bound or how much it is beyond.
func mailStanding(f *mail.Finding, unit measure.Unit) string {
	beyond := "over"
	if f.Least {
		beyond = "under"
	}
	much := mailAmountText(f.Left.Abs(), unit)
	switch f.State {
	case mail.Inside:
		return much + " left"
	case mail.Unsure:
		return much + " left, it may be " + beyond + " by its tolerance"
	case mail.Disputed:
		if f.Hearsay {
			return much + " " + beyond + ", but the bound is not confirmed"
		}
		return much + " " + beyond + ", but " + f.Doubt
	default:
		return much + " " + beyond
	}
}

// mailWords says in one line where a piece goes.
func mailWords(list []mail.Judgement) string {
	posts := make([]string, len(list))
	for i := range list {
		posts[i] = list[i].Post.Name + ": " + strings.Join(append([]string{mailClassWords(&list[i])}, surchargeNames(&list[i])...), ", ")
	}
	return strings.Join(posts, "; ")
}

// mailClassWords names the class as the wire does.
func mailClassWords(j *mail.Judgement) string {
	if j.Class == nil {
		return "none"
	}
	return perhaps(j.Verdict == mail.Takes, j.Class.Name)
}

// surchargeNames names the surcharges.
func surchargeNames(j *mail.Judgement) []string {
	var names []string
	for _, d := range j.Surcharges {
		names = append(names, perhaps(d.Certain, d.Name))
	}
	return names
}

// perhaps marks a name that is not for certain.
func perhaps(certain bool, name string) string {
	if certain {
		return name
	}
	return "perhaps " + name
}

// appendMailText appends lines to read aloud.
func appendMailText(dst []byte, unit measure.Unit, list []mail.Judgement) []byte {
	for i := range list {
		dst = appendPostText(dst, unit, &list[i])
	}
	return append(append(dst, mailAdvice...), '\n')
}

// appendPostText appends what one post makes of the piece.
func appendPostText(dst []byte, unit measure.Unit, j *mail.Judgement) []byte {
	say := func(words ...string) { dst = append(append(dst, strings.Join(words, "")...), '\n') }
	title := "no class of the table takes it"
	if j.Class != nil {
		title = perhaps(j.Verdict == mail.Takes, j.Class.Title)
	}
	say(j.Post.Title, ": ", title, ".")
	for i, d := range j.Surcharges {
		say("  Surcharge, ", surchargeNames(j)[i], ": ", mailReasons(d.Limits, d.Rules, unit), ".")
	}
	for _, r := range j.Refusals {
		say("  Not ", r.Class.Title, ": ", mailReasons(r.Limits, r.Rules, unit), ".")
	}
	for i := range j.Limits {
		if j.Limits[i].State != mail.Inside {
			say("  Note: ", mailDetail(&j.Limits[i], unit), ".")
		}
	}
	if f, ok := j.Nearest(); ok && f.State == mail.Inside {
		say("  Nearest limit: ", mailDetail(&f, unit), ".")
	}
	if j.Class != nil && len(j.Class.Conditions) > 0 {
		say("  Also: ", strings.Join(j.Class.Conditions, " "))
	}
	say("  Not confirmed: ", strings.Join(j.Post.NotConfirmed, " "))
	say("  By ", j.Post.Edition, ".")
	return dst
}

// mailReasons joins reasons into a line.
func mailReasons(limits []mail.Finding, rules []*mail.Rule, unit measure.Unit) string {
	var list []string
	for _, r := range wireReasons(limits, rules, unit) {
		list = append(list, r.Detail)
	}
	return strings.Join(list, "; ")
}

// appendMailCSV appends one row for each post: its class, and the limit that
// the piece is nearest to.
func appendMailCSV(dst []byte, style rowStyle, list []mail.Judgement) []byte {
	separator := byte(',')
	if style.comma {
		separator = ';'
	}
	if !style.bare {
		dst = appendCells(dst, separator, "post", "class", "verdict", "surcharges", "unknown", "nearest", "bound", "limit", "value", "left", "unit")
	}
	for i := range list {
		j := &list[i]
		v := wireVerdict(j, j.Post.Unit)
		dst = appendCells(dst, separator, append([]string{v.Post, v.Class, v.Verdict, strings.Join(surchargeNames(j), " "), strings.Join(v.Unknown, " ")},
			nearestCells(v.Nearest, style)...)...)
	}
	return dst
}

// nearestCells are the cells of the nearest limit: millimetres, grams or a
// bare ratio.
func nearestCells(n *MailStanding, style rowStyle) []string {
	if n == nil {
		return make([]string, 6)
	}
	unit := "ratio"
	number := func(a *MailAmount) string {
		x, places := a.Ratio, 4
		switch {
		case a.MM != nil:
			x, unit, places = a.MM, "mm", 6
		case a.G != nil:
			x, unit = a.G, "g"
		}
		return style.mark(string(appendDecimal(nil, *x, places)))
	}
	return []string{n.Of, n.Bound, number(&n.At), number(n.Value), number(n.Left), unit}
}
