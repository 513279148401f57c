package wire

import (
	"fmt"
	"strings"

	"creasefit/internal/mail"
	"creasefit/internal/measure"
)

// Voice is what words are written in: a unit, and a language.
type Voice struct {
	Unit measure.Unit
	// In says an English text, with its places for values, in the language; units and
	// the decimal mark, too. Nil for English.
	In func(string) string
}

// Say says a text with values.
func (v Voice) Say(text string, with ...any) string {
	if v.In != nil && text != "" {
		text = v.In(text)
	}
	if len(with) == 0 {
		return text
	}
	return fmt.Sprintf(text, with...)
}

// count says a number of things.
func (v Voice) count(n int, one, many string) string {
	if n != 1 {
		one = many
	}
	return v.Say("%d "+one, n)
}

// each says every one of the texts.
func (v Voice) each(texts []string) []string {
	return Each(texts, func(text string) string { return v.Say(text) })
}

// Perhaps marks a name that is not for certain.
func (v Voice) Perhaps(certain bool, name string) string {
	if certain {
		return name
	}
	return v.Say("perhaps %s", name)
}

// DueNames names the surcharges, with perhaps before what is not certain.
func (v Voice) DueNames(of *PostVerdict) []string {
	return Each(of.Surcharges, func(d MailDue) string { return v.Perhaps(d.Certain, d.Name) })
}

// figure writes a number and its unit, if it has one.
func (v Voice) figure(text string) string {
	unit := ""
	if at := strings.LastIndexByte(text, ' '); at > 0 {
		text, unit = text[:at], " "+v.Say(text[at+1:])
	}
	return strings.ReplaceAll(text, ".", v.Say(".")) + unit
}

// amountText writes an amount in the unit of the answer; a mass in ounces
// where lengths are in inches.
func amountText(a mail.Amount, in Voice) string {
	switch {
	case a.Of() == mail.OfRatio:
		return in.figure(number(a.Ratio(), 4))
	case a.Of() != mail.OfMass:
		return in.figure(Reading(measure.Finest(in.Unit), a.Length()))
	case in.Unit == measure.Inch:
		return in.figure(number(a.Mass().Ounces(), 3) + " oz")
	default:
		return in.figure(number(a.Mass().Grams(), 2) + " g")
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

// standingWords says in a sentence how a piece stands to a limit.
func standingWords(f *mail.Finding, in Voice) string {
	noun, bound := in.Say(mailNoun(f.Bound.Of())), in.Say(mailBound(f.Limit), amountText(f.Bound, in))
	if f.State == mail.Unknown {
		return in.Say("%s is not known (%s)", noun, bound)
	}
	return in.Say("%s is %s (%s): %s", noun, amountText(f.Value, in), bound, mailStanding(f, in))
}

// mailBound is how a bound is named.
func mailBound(l *mail.Limit) string {
	switch {
	case l.Open && l.Least:
		return "more than %s"
	case l.Open:
		return "less than %s"
	case l.Least:
		return "at least %s"
	default:
		return "at most %s"
	}
}

// mailStanding says how much is left to a bound or how much it is beyond.
func mailStanding(f *mail.Finding, in Voice) string {
	beyond, perhaps := "%s over", "%s left, it may be over by its tolerance"
	if f.Least {
		beyond, perhaps = "%s under", "%s left, it may be under by its tolerance"
	}
	much := amountText(f.Left.Abs(), in)
	switch f.State {
	case mail.Inside:
		return in.Say("%s left", much)
	case mail.Unsure:
		return in.Say(perhaps, much)
	case mail.Disputed:
		doubt := f.Doubt
		if f.Hearsay {
			doubt = "the bound is not confirmed"
		}
		return in.Say("%s, but %s", in.Say(beyond, much), in.Say(doubt))
	default:
		return in.Say(beyond, much)
	}
}

// mailWords says in one line where a piece goes.
func mailWords(list []PostVerdict, in Voice) string {
	posts := make([]string, len(list))
	for i := range list {
		v := &list[i]
		class := in.Say("none")
		if v.Class != "" {
			class = in.Perhaps(v.Certain(), v.Class)
		}
		posts[i] = v.Post + ": " + strings.Join(append([]string{class}, in.DueNames(v)...), ", ")
	}
	return strings.Join(posts, "; ")
}

// Certain reports whether the class takes the piece for certain.
func (v *PostVerdict) Certain() bool { return v.Verdict == mail.Takes.String() }
