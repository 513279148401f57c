package api

import (
	"creasefit/api/ask"
	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// appendPortfolio appends a solved portfolio as JSON.
func appendPortfolio(dst []byte, a *portfolio, x *answering) []byte {
	first, last := a.asked.Layers[0].Request, a.Solutions[len(a.Solutions)-1]
	dst = append(append(append(dst, `{"kind":"`+portfolioName+`","unit":"`...), first.Unit.String()...), `","given":`...)
	dst = x.appendGiven(dst)
	dst = append(dst, `,"layers":[`...)
	for i := range a.Solutions {
		dst = a.appendLayer(comma(dst, i), i)
	}
	dst = a.appendPieces(append(dst, `],"pieces":[`...))
	dst = append(dst, `],"chain":[`...)
	for i, s := range a.Solutions {
		dst = appendString(append(comma(dst, i), `{"layer":`...), a.asked.Layers[i].Name())
		dst = appendSures(append(dst, `,"contents":`...), s.Step, &a.Chain[i].Contents)
		dst = appendFits(append(dst, `,"fit":`...), s.Step, s.Fits)
		dst = append(appendSures(append(dst, `,"outside":`...), s.Step, &a.Chain[i].Outside), '}')
	}
	whole := *last
	whole.Outside.Mass, whole.Proof = a.mass(), a.proof()
	dst = appendOutside(append(dst, `],"outside":`...), &whole)
	dst = appendProof(append(dst, `,"proof":`...), &whole.Proof)
	dst = x.appendWarnings(append(dst, `,"warnings":`...), a.warnings())
	link := x.Link(x.path)
	dst = appendLinks(append(dst, `,"links":`...), portfolioName, link, x.path)
	return append(appendMailLink(dst, &whole), `}}`...)
}

// appendLayer appends what one layer is, with the address of a request for it
// alone.
func (a *portfolio) appendLayer(dst []byte, i int) []byte {
	s := a.Solutions[i]
	path := "/v1/solve/" + s.Request.Kind.Name
	dst = appendString(append(dst, `{"name":`...), a.asked.Layers[i].Name())
	dst = append(append(append(dst, `,"kind":"`...), s.Request.Kind.Name...), `","turned":"`...)
	dst = append(append(append(dst, ask.Turns()[a.asked.Layers[i].Turn]...), `","step":"`...), s.Step.String()...)
	dst = appendProof(append(dst, `","proof":`...), &s.Proof)
	if s.Yields != nil {
		dst = appendYields(append(dst, `,"yield":`...), s)
	}
	alone := &answering{Reading: a.standAlone(i), path: path}
	dst = appendLinks(append(dst, `,"links":`...), s.Request.Kind.Name, alone.Link(path), path)
	if s.Yields != nil {
		dst = append(appendYieldLink(append(dst, `,"yield":"`...), s, alone), '"')
	}
	return append(dst, `}}`...)
}

// standAlone is the request for one layer by itself: with the sizes of what it
// goes round, and the greatest of their spreads.
func (a *portfolio) standAlone(i int) *ask.Reading {
	alone := a.asked.Alone[i]
	if i > 0 {
		var most measure.Length
		sizes := &a.Chain[i].Contents
		for axis := range sizes {
			most = measure.Max(most, sizes[axis].RSS.Max.Sub(sizes[axis].Nominal))
		}
		alone.Q.PutSizes(sizes[0].Nominal, sizes[1].Nominal, sizes[2].Nominal, most)
	}
	return &alone.Reading
}

// appendPieces appends the pieces of all layers.
func (a *portfolio) appendPieces(dst []byte) []byte {
	count := 0
	for i, s := range a.Solutions {
		for n := range s.Pattern.Pieces {
			dst = appendPiece(comma(dst, count), s.Step, &s.Pattern.Pieces[n], &s.Ideal.Pieces[n], a.asked.Layers[i].Name())
			count++
		}
	}
	return dst
}

// appendSures appends sizes with how sure they are.
func appendSures(dst []byte, step measure.Step, sures *[3]solve.Sure) []byte {
	for axis, name := range [...]string{`{"width":`, `,"height":`, `,"thickness":`} {
		size := &sures[axis]
		dst = appendExact(append(append(dst, name...), `{"nominal":`...), step, size.Nominal)
		dst = appendRange(append(dst, `,"worst_case":`...), step, size.WorstCase.Min, size.WorstCase.Max)
		dst = append(appendRange(append(dst, `,"rss":`...), step, size.RSS.Min, size.RSS.Max), '}')
	}
	return append(dst, '}')
}

// pieceName names a piece after its layer and, where that has several, itself.
func (a *portfolio) pieceName(layer int, piece string) string {
	if len(a.Solutions[layer].Pattern.Pieces) == 1 {
		return a.asked.Layers[layer].Name()
	}
	return a.asked.Layers[layer].Name() + " " + piece
}

// mass is that of the paper of all layers; zero if that of one is unknown.
func (a *portfolio) mass() float64 {
	sum := 0.0
	for _, s := range a.Solutions {
		if s.Outside.Mass <= 0 {
			return 0
		}
		sum += s.Outside.Mass
	}
	return sum
}

// proof is what folding all layers up has shown: the greatest gap, and the
// tolerance that it is to be held against.
func (a *portfolio) proof() solve.Proof {
	all := solve.Proof{Closes: true, Holds: true}
	for _, s := range a.Solutions {
		all.Closes, all.Holds = all.Closes && s.Proof.Closes, all.Holds && s.Proof.Holds
		if !s.Proof.Gap.Less(all.Gap) {
			all.Gap, all.Tolerance = s.Proof.Gap, s.Proof.Tolerance
		}
	}
	return all
}

// warnings are those of all layers, each named.
func (a *portfolio) warnings() []enclosure.Warning {
	var all []enclosure.Warning
	for i, s := range a.Solutions {
		for _, w := range s.Warnings {
			w.Detail = a.asked.Layers[i].Name() + ": " + w.Detail
			all = append(all, w)
		}
	}
	return all
}

// finest is the finest of the rulers that the readings are for.
func (a *portfolio) finest() measure.Step {
	finest := a.Solutions[0].Step
	for _, s := range a.Solutions[1:] {
		if s.Step.Size().Less(finest.Size()) {
			finest = s.Step
		}
	}
	return finest
}
