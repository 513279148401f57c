package tell

import "creasefit/api/wire"

// Append appends an answer of package wire in a format that is no picture.
func Append(dst []byte, f Format, answer any, s Style) []byte {
	switch f {
	case CSV:
		return appendCSV(dst, s, tableOf(answer))
	case XML:
		return appendAnswerXML(dst, answer)
	case Text:
		return appendText(dst, s, answer)
	default:
		return AppendJSON(dst, answer)
	}
}

// The headers of the tables that answers of one kind of call have, whatever was
// asked. Those of flat tables depend on the answer.
var (
	MeasurementColumns = []string{"piece", "what", "name", "from", "reading", "in", "mm"}
	CuttingColumns     = []string{"plan", "sheets", "step", "across", "from", "reading", "in", "mm", "exact mm", "length in", "length mm", "trim", "stack", "cuts"}
	MailColumns        = []string{"post", "class", "verdict", "surcharges", "unknown", "nearest", "bound", "limit", "value", "left", "unit"}
	CheckColumns       = []string{"what", "name", "says", "chance", "reading", "in", "mm"}
	SuggestionColumns  = []string{"kind", "works", "why", "step", "chance", "blank width", "blank height", "sheets", "minutes", "post", "link"}
	AdaptColumns       = []string{"name", "was", "now", "changed"}
	MatchColumns       = []string{"id", "fits", "verdict", "chance", "width", "height", "thickness", "why"}
	MemberColumns      = []string{"name", "value"}
)

// tableOf returns the one table that the answer is told in.
func tableOf(answer any) table {
	switch a := answer.(type) {
	case *wire.Yield:
		return cuttingTable(a)
	case *wire.Mail:
		return mailTable(a)
	case *wire.Adapted:
		return table{AdaptColumns, wire.Each(a.Sizes, adaptRow)}
	case *wire.Matches:
		return matchTable(a)
	case *wire.Suggestions:
		return suggestionTable(a)
	case *wire.Check:
		return checkTable(a)
	case *wire.PortfolioCheck:
		return portfolioCheckTable(a)
	case *wire.Solution, *wire.Portfolio, *wire.Ruler:
		return table{MeasurementColumns, wire.Each(flat(rowsOf(a)), measurementRow)}
	case *wire.Paper:
		return memberTable(AppendJSON(nil, a))
	default:
		return flatTable(AppendJSON(nil, answer))
	}
}

// appendAnswerXML appends an answer as XML: measurements as elements of their
// own, any other table as rows.
func appendAnswerXML(dst []byte, answer any) []byte {
	if rows := rowsOf(answer); rows != nil {
		return appendXML(dst, rows)
	}
	return appendTableXML(dst, tableOf(answer))
}
