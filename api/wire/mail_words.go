package wire

import (
	"strings"

	"creasefit/internal/mail"
	"creasefit/internal/measure"
)

// amountText writes an amount in the unit of the answer; a mass in ounces
// where lengths are in inches.
func amountText(a mail.Amount, unit measure.Unit) string {
	switch {
	case a.Of() == mail.OfRatio:
		return number(a.Ratio(), 4)
	case a.Of() != mail.OfMass:
		return Reading(measure.Finest(unit), a.Length())
	case unit == measure.Inch:
		return number(a.Mass().Ounces(), 3) + " oz"
	default:
		return number(a.Mass().Grams(), 2) + " g"
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
func standingWords(f *mail.Finding, unit measure.Unit) string {
	bound := " (" + mailBoundWords(f.Limit) + amountText(f.Bound, unit) + ")"
	if f.State == mail.Unknown {
		return mailNoun(f.Bound.Of()) + " is not known" + bound
	}
	return mailNoun(f.Bound.Of()) + " is " + amountText(f.Value, unit) + bound + ": " + mailStanding(f, unit)
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
	much := amountText(f.Left.Abs(), unit)
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
func mailWords(list []PostVerdict) string {
	posts := make([]string, len(list))
	for i := range list {
		v := &list[i]
		class := "none"
		if v.Class != "" {
			class = Perhaps(v.Certain(), v.Class)
		}
		posts[i] = v.Post + ": " + strings.Join(append([]string{class}, v.DueNames()...), ", ")
	}
	return strings.Join(posts, "; ")
}

// Certain reports whether the class takes the piece for certain.
func (v *PostVerdict) Certain() bool { return v.Verdict == mail.Takes.String() }

// DueNames names the surcharges, with perhaps before what is not certain.
func (v *PostVerdict) DueNames() []string {
	return Each(v.Surcharges, func(d MailDue) string { return Perhaps(d.Certain, d.Name) })
}

// Perhaps marks a name that is not for certain.
func Perhaps(certain bool, name string) string {
	if certain {
		return name
	}
	return "perhaps " + name
}
