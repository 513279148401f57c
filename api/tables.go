package api

import (
	"slices"

	"creasefit/api/tell"
	"creasefit/internal/bench"
	"creasefit/internal/contents"
	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/stock"
)

// The common names of a calculation about an enclosure, by their place in its
// table. The kind's own names follow, then the names that say how to answer.
const (
	pUnit = iota
	pContents
	pWidth
	pHeight
	pThickness
	pContentsTolerance
	pStock
	pCaliper
	pGrammage
	pSheet
	pGrain
	pRuler
	pStep
	pBench
	pCutTolerance
	pScoreTolerance
	pFit
	pClearanceMin
	pClearanceMax
	pOwn // the first of the kind's own
)

const defaultFit, defaultBench = "easy", "hand"

// commonParams describes the common names, in the order of the constants.
func commonParams() []param {
	nothing, hair := measure.Length{}, measure.Micrometres(10)
	size := func(p param) param { return p.length(measure.Millimetres(3), measure.Millimetres(2000)) }
	spread := func(p param) param { return p.length(nothing, measure.Millimetres(10)) }
	return []param{
		unitParam(),
		{Name: "contents", Type: presetType, Choices: contents.Names(), Catalogue: "/v1/contents", Example: "tasting-cards",
			Help: "What goes inside, by name, instead of width and height."},
		size(param{Name: "width", Example: "3 1/2 in", Help: "Width of the contents."}),
		size(param{Name: "height", Example: "5 in", Help: "Height of the contents."}),
		param{Name: "thickness", Example: "0.09 in", Help: "Thickness of the contents in all."}.length(hair, measure.Millimetres(500)),
		spread(param{Name: "contents_tolerance", Example: "1/64 in", Advanced: true,
			Help: "How much the contents vary, plus or minus, in every direction. Default: what the named contents state, else nothing."}),
		{Name: "stock", Type: presetType, Choices: stock.Names(), Catalogue: "/v1/stocks", Example: "index-110",
			Help: "The paper, by name, instead of its caliper."},
		param{Name: "caliper", Example: "0.012 in", Help: "Thickness of one sheet of the paper."}.length(hair, measure.Millimetres(5)),
		{Name: "grammage", Type: numberType, LeastNumber: 10, GreatestNumber: 3000, Example: "270", Advanced: true,
			Help: "Mass of the paper in g/m2. Without a caliper the caliper is estimated from it."},
		param{Name: "sheet", Type: sizeType, Catalogue: "/v1/sheets/sizes", Example: "12 x 12 in", Advanced: true,
			Help: "The sheet that blanks are cut from: a size, or a name."}.bounded(measure.Millimetres(10), measure.Millimetres(5000)),
		{Name: "grain", Type: choiceType, Choices: []string{"width", "height"}, Example: "height", Advanced: true,
			Help: "The side of the sheet that the grain runs along."},
		{Name: "ruler", Type: stepType, Example: "1/16 in", DefaultInch: "1/16 in", DefaultMillimetre: "0.5 mm",
			Help: "The finest mark of the ruler."},
		{Name: "step", Type: stepType, Example: "1/8 in", Advanced: true,
			Help: "Force all readings onto multiples of this mark. Default: the coarsest that fits."},
		{Name: "bench", Type: choiceType, Choices: bench.Names(), Example: defaultBench, DefaultInch: defaultBench, DefaultMillimetre: defaultBench,
			Help: "How the paper is cut and scored; says how exact that is."},
		spread(param{Name: "cut_tolerance", Example: "1/32 in", Advanced: true, Help: "Error of one cut, plus or minus, instead of the bench's."}),
		spread(param{Name: "score_tolerance", Example: "1/32 in", Advanced: true, Help: "Error of one score, plus or minus, instead of the bench's."}),
		{Name: "fit", Type: choiceType, Choices: []string{"snug", "easy", "loose"}, Example: "snug", DefaultInch: defaultFit, DefaultMillimetre: defaultFit,
			Help: "The clearance wanted: snug 0 to 1/16 in (1.5 mm), easy to 1/8 in (3 mm), loose to 1/4 in (6 mm)."},
		spread(param{Name: "clearance_min", Example: "0 in", Advanced: true, Help: "The least clearance wanted along an axis, in total, instead of a named fit."}),
		spread(param{Name: "clearance_max", Example: "1/16 in", Advanced: true, Help: "The greatest clearance wanted along an axis, in total, instead of a named fit."}),
	}
}

// length makes the parameter a length with these bounds.
func (p param) length(least, greatest measure.Length) param {
	p.Type = lengthType
	return p.bounded(least, greatest)
}

// bounded sets the bounds of a length or of each length of a size.
func (p param) bounded(least, greatest measure.Length) param {
	p.Least, p.Greatest = least, greatest
	return p
}

// unitParam is the unit of bare numbers and of the answer.
func unitParam() param {
	return param{Name: "unit", Type: choiceType, Choices: []string{measure.Inch.String(), measure.Millimetre.String()}, Example: "in",
		Help: "The unit of numbers without one, and of the answer. There is no default: give it, or write the unit with the lengths."}
}

// answerParams says how to answer; they are the last of every table.
func answerParams(formats []tell.Format) []param {
	answer := []param{
		{Name: "format", Type: choiceType, Choices: tell.FormatNames(formats), Example: formats[0].String(),
			Help: "Format of the answer. Goes before the Accept header, and an extension of the path goes before it."},
		{Name: "pick", Type: textType, MostCharacters: mostPickValue, Example: "/unit",
			Help: "Answer with this one value of the JSON answer as plain text: a JSON Pointer (RFC 6901)."},
		{Name: "show", Type: textType, MostCharacters: mostPickValue, Example: "links",
			Help: "Answer with these members of the JSON answer only: a list joined by commas."},
		{Name: "header", Type: choiceType, Choices: []string{"0", "1"}, Example: "0", Help: "0 leaves the header row of CSV out."},
		{Name: "decimal", Type: choiceType, Choices: []string{"point", "comma"}, Example: "comma",
			Help: "The decimal mark of the request's numbers, and of the answer's in CSV, in text and when picked."},
		{Name: "download", Type: textType, Example: "band", Help: "Answer as an attachment of this name: letters, digits, hyphens, underscores."},
		{Name: "errors", Type: choiceType, Choices: []string{"cell", "problem"}, Example: "cell",
			Help: "cell answers every error with status 200 and one plain line that begins with an exclamation mark."},
	}
	for i := range answer {
		answer[i].Answer, answer[i].Advanced = true, true
	}
	return slices.DeleteFunc(answer, func(p param) bool {
		switch p.Name {
		case "pick", "show":
			return !slices.Contains(formats, tell.JSON)
		case "header":
			return !slices.Contains(formats, tell.CSV) && len(formats) > 1
		default:
			return false
		}
	})
}

// kindTable is every name that a calculation about the kind knows; further
// ones come behind the kind's own.
func kindTable(k *enclosure.Kind, formats []tell.Format, further ...param) *table {
	own := make([]param, len(k.Params))
	for i, p := range k.Params {
		own[i] = kindParam(p)
	}
	return newTable(commonParams(), own, further, answerParams(formats))
}

// sheetNamed returns the size of a named sheet.
func sheetNamed(name string) ([2]measure.Length, bool) {
	s, ok := stock.LookupSheet(name)
	return [2]measure.Length{s.Width, s.Height}, ok
}
