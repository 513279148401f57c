package api

import (
	"encoding/json"
	"math"

	"creasefit/api/tell"
	"creasefit/internal/mail"
	"creasefit/internal/measure"
)

// mailAdvice stands in every answer about mailing.
const mailAdvice = "Confirm with your post office before mailing: rules change, and its own measuring decides."

// writeMail writes what posts make of a piece.
func writeMail(dst []byte, f tell.Format, list []mail.Judgement, x *answering) []byte {
	switch f {
	case tell.CSV:
		return appendMailCSV(dst, x.rowStyle(), list)
	case tell.Text:
		return appendMailText(dst, x.Unit(), list)
	default:
		return appendMail(dst, list, x)
	}
}

// appendMail appends the answer as JSON.
func appendMail(dst []byte, list []mail.Judgement, x *answering) []byte {
	dst = append(append(append(dst, `{"unit":"`...), x.Unit().String()...), `","given":`...)
	dst = appendString(append(x.appendGiven(dst), `,"words":`...), mailWords(list))
	dst = append(dst, `,"posts":`...)
	verdicts := make([]PostVerdict, len(list))
	for i := range list {
		verdicts[i] = wireVerdict(&list[i], x.Unit())
	}
	dst = append(dst, marshalled(verdicts)...)
	dst = appendString(append(dst, `,"advice":`...), mailAdvice)
	dst = appendString(append(dst, `,"links":{"self":`...), string(x.Link(x.path)))
	return append(dst, `,"posts":"/v1/posts"}}`...)
}

// marshalled writes one of our own shapes as JSON.
func marshalled(shape any) []byte {
	text, err := json.Marshal(shape)
	if err != nil {
		panic(err) // a shape of numbers and texts
	}
	return text
}

// wireVerdict is the verdict of one post as it is answered.
func wireVerdict(j *mail.Judgement, unit measure.Unit) PostVerdict {
	v := PostVerdict{
		Post: j.Post.Name, Title: j.Post.Title, Edition: j.Post.Edition, Verdict: j.Verdict.String(), NotConfirmed: j.Post.NotConfirmed,
		Surcharges: []MailDue{}, Limits: wireStandings(j.Limits, unit), NotIn: []MailNotIn{}, Unknown: []string{}, Conditions: []string{},
	}
	if j.Class != nil {
		v.Class, v.ClassTitle, v.Conditions = j.Class.Name, j.Class.Title, append(v.Conditions, j.Class.Conditions...)
	}
	if f, ok := j.Nearest(); ok {
		nearest := wireStanding(&f, unit)
		v.Nearest = &nearest
	}
	for _, d := range j.Surcharges {
		v.Surcharges = append(v.Surcharges, MailDue{d.Name, d.Certain, wireReasons(d.Limits, d.Rules, unit)})
	}
	for _, r := range j.Refusals {
		v.NotIn = append(v.NotIn, MailNotIn{r.Class.Name, r.Class.Title, wireReasons(r.Limits, r.Rules, unit)})
	}
	for _, q := range j.Unknown {
		v.Unknown = append(v.Unknown, q.String())
	}
	return v
}

// wireReasons joins limits and rules that a piece does not keep.
func wireReasons(limits []mail.Finding, rules []*mail.Rule, unit measure.Unit) []MailReason {
	reasons := make([]MailReason, 0, len(limits)+len(rules))
	for i := range limits {
		standing := wireStanding(&limits[i], unit)
		reasons = append(reasons, MailReason{standing.Detail, limits[i].Source, &standing})
	}
	for _, r := range rules {
		reasons = append(reasons, MailReason{"it " + r.Why, r.Source, nil})
	}
	return reasons
}

// wireStandings are findings as they are answered.
func wireStandings(list []mail.Finding, unit measure.Unit) []MailStanding {
	standings := make([]MailStanding, len(list))
	for i := range list {
		standings[i] = wireStanding(&list[i], unit)
	}
	return standings
}

// wireStanding is one finding as it is answered.
func wireStanding(f *mail.Finding, unit measure.Unit) MailStanding {
	s := MailStanding{MailLimit: wireLimit(f.Limit, unit), State: f.State.String(), Detail: mailDetail(f, unit)}
	if f.State != mail.Unknown {
		value, left := wireAmount(f.Value, unit), wireAmount(f.Left, unit)
		s.Value, s.Left = &value, &left
	}
	return s
}

// wireLimits are limits as they are listed.
func wireLimits(list []mail.Limit, unit measure.Unit) []MailLimit {
	limits := make([]MailLimit, len(list))
	for i := range list {
		limits[i] = wireLimit(&list[i], unit)
	}
	return limits
}

// wireLimit is one limit.
func wireLimit(l *mail.Limit, unit measure.Unit) MailLimit {
	w := MailLimit{Of: l.Bound.Of().String(), Bound: "greatest", At: wireAmount(l.Bound, unit), Inclusive: !l.Open,
		Doubt: l.Doubt, Confirmed: !l.Hearsay, Unless: wireLimits(l.Unless, unit), Source: l.Source}
	if l.Least {
		w.Bound = "least"
	}
	if !l.Grace.IsZero() {
		grace := wireAmount(l.Grace, unit)
		w.Grace = &grace
	}
	return w
}

// wireAmount is a length in both units, a mass in both, or a ratio.
func wireAmount(a mail.Amount, unit measure.Unit) MailAmount {
	w := MailAmount{Text: mailAmountText(a, unit)}
	switch a.Of() {
	case mail.OfMass:
		w.G, w.Oz = rounded(a.Mass().Grams()), rounded(a.Mass().Ounces())
	case mail.OfRatio:
		w.Ratio = rounded(a.Ratio())
	default:
		in, mm := a.Length().Rounded(measure.Inch), a.Length().Millimetres()
		w.In, w.MM = &in, &mm
	}
	return w
}

// rounded rounds to four decimals, never to a negative zero.
func rounded(x float64) *float64 {
	x = math.Round(x*1e4)/1e4 + 0
	return &x
}
