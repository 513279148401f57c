package api

import (
	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/solve"
)

// appendSolution appends a solution as JSON. It is written by hand, member by
// member, since this is what nearly every call waits for; the schema of
// Solution in the specification is what tests hold it to.
func appendSolution(dst []byte, s *solve.Solution, x *answering) []byte {
	q := s.Request
	dst = append(append(append(dst, `{"kind":"`...), q.Kind.Name...), `","unit":"`...)
	dst = append(append(dst, q.Unit.String()...), `","step":"`...)
	dst = append(append(dst, s.Step.String()...), `","given":`...)
	dst = x.appendGiven(dst)
	dst = append(dst, `,"pieces":[`...)
	for i := range s.Pattern.Pieces {
		dst = comma(dst, i)
		dst = appendPiece(dst, s.Step, &s.Pattern.Pieces[i], &s.Ideal.Pieces[i], "")
	}
	dst = appendFits(append(dst, `],"fit":`...), s.Step, s.Fits)
	link := x.Link(x.path)
	dst = appendAlternatives(append(dst, `,"alternatives":`...), s, link)
	dst = appendOutside(append(dst, `,"outside":`...), s)
	dst = appendProof(append(dst, `,"proof":`...), &s.Proof)
	dst = x.appendWarnings(append(dst, `,"warnings":`...), s.Warnings)
	if s.Ornament != nil {
		dst = appendOrnament(append(dst, `,"ornament":`...), s.Step, s.Ornament)
	}
	if s.Yields != nil {
		dst = appendYields(append(dst, `,"yield":`...), s)
	}
	dst = appendMailLink(appendLinks(append(dst, `,"links":`...), q.Kind.Name, link, x.path), s)
	if s.Yields != nil {
		dst = append(appendYieldLink(append(dst, `,"yield":"`...), s, x), '"')
	}
	return append(dst, `}}`...)
}

// appendLinks appends where to go on from a solution: the drawing and the
// guide of the same request. The object is left open.
func appendLinks(dst []byte, kind string, self []byte, path string) []byte {
	query := self[len(path):]
	dst = append(append(dst, `{"self":"`...), self...)
	dst = append(append(append(dst, `","kind":"/v1/kinds/`...), kind...), '"')
	for _, call := range [...]string{"drawing", "guide"} {
		dst = append(append(append(dst, `,"`...), call...), `":"/v1/`...)
		dst = append(append(append(append(dst, call...), '/'), kind...), query...)
		dst = append(dst, '"')
	}
	return dst
}

// appendMailLink appends the address of what posts make of the outside. Its
// mass is left out: only that of the paper is known.
func appendMailLink(dst []byte, s *solve.Solution) []byte {
	finest := measure.Finest(s.Request.Unit)
	dst = append(append(append(dst, `,"mail":"/v1/mail?unit=`...), s.Request.Unit.String()...), "&width="...)
	dst = append(finest.AppendURL(dst, s.Outside.Width), "&height="...)
	dst = append(finest.AppendURL(dst, s.Outside.Height), "&thickness="...)
	return append(finest.AppendURL(dst, s.Outside.Thickness), '"')
}

// appendPiece appends one piece; ideal is its twin on an endlessly fine ruler,
// layer is what it is part of in a portfolio, else empty.
func appendPiece(dst []byte, step measure.Step, p, ideal *pattern.Piece, layer string) []byte {
	dst = appendString(append(dst, `{"name":`...), p.Name)
	if layer != "" {
		dst = appendString(append(dst, `,"layer":`...), layer)
	}
	dst = appendInt(append(dst, `,"quantity":`...), p.Quantity)
	dst = appendLength(append(dst, `,"blank":{"width":`...), step, p.Width, ideal.Width)
	dst = appendLength(append(dst, `,"height":`...), step, p.Height, ideal.Height)
	dst = appendPanels(append(dst, `},"panels":`...), step, p, ideal)
	dst = appendScores(append(dst, `,"scores":`...), step, p, ideal)
	dst = appendCuts(append(dst, `,"cuts":`...), step, p, ideal)
	return append(dst, '}')
}

// appendPanels appends the sizes that follow one another along the edges.
func appendPanels(dst []byte, step measure.Step, p, ideal *pattern.Piece) []byte {
	dst = append(dst, '[')
	from := len(dst)
	for i := range p.Strips {
		for j := range p.Strips[i].Cells {
			if len(dst) > from {
				dst = append(dst, ',')
			}
			cell := &p.Strips[i].Cells[j]
			dst = appendString(append(dst, `{"name":`...), cell.Name)
			dst = append(append(append(dst, `,"across":"`...), p.Strips[i].Across.String()...), `","size":`...)
			dst = append(appendLength(dst, step, cell.Size, ideal.Strips[i].Cells[j].Size), '}')
		}
	}
	return append(dst, ']')
}

// appendScores appends the scores in the order of the blank from the left or
// the bottom, each as its position from that edge.
func appendScores(dst []byte, step measure.Step, p, ideal *pattern.Piece) []byte {
	dst = append(dst, '[')
	from := len(dst)
	eachScore(p, ideal, func(m mark) {
		if len(dst) > from {
			dst = append(dst, ',')
		}
		dst = appendScore(dst, step, m)
	})
	return append(dst, ']')
}

// mark is a score with its place.
type mark struct {
	score             *pattern.Score
	across            pattern.Axis
	at, ideal         measure.Length // from the left or the bottom
	total, idealTotal measure.Length // of the whole edge
}

// eachScore calls use for every score, in order.
func eachScore(p, ideal *pattern.Piece, use func(mark)) {
	for i := range p.Strips {
		strip, twin := &p.Strips[i], &ideal.Strips[i]
		m := mark{across: strip.Across, total: extent(strip), idealTotal: extent(twin)}
		for j := range strip.Scores {
			m.at, m.ideal = m.at.Add(strip.Cells[j].Size), m.ideal.Add(twin.Cells[j].Size)
			m.score = &strip.Scores[j]
			if m.score.Fold != pattern.Flat {
				use(m)
			}
		}
	}
}

// extent is the length of the whole edge.
func extent(s *pattern.Strip) measure.Length {
	var sum measure.Length
	for i := range s.Cells {
		sum = sum.Add(s.Cells[i].Size)
	}
	return sum
}

// edges returns the edge that positions across the axis are measured from,
// and the one opposite.
func edges(across pattern.Axis) (from, opposite string) {
	if across == pattern.Height {
		return "bottom", "top"
	}
	return "left", "right"
}

// appendScore appends one score. Where it lies on a coarser mark when the
// blank is turned end for end, that reading is offered as well.
func appendScore(dst []byte, step measure.Step, m mark) []byte {
	from, opposite := edges(m.across)
	dst = appendString(append(dst, `{"name":`...), m.score.Name)
	dst = append(append(append(dst, `,"across":"`...), m.across.String()...), `","at":`...)
	dst = appendLength(dst, step, m.at, m.ideal)
	dst = append(append(append(dst, `,"from":"`...), from...), `","fold":"`...)
	dst = append(append(dst, m.score.Fold.String()...), `","angle":`...)
	dst = appendDecimal(dst, m.score.Angle, 3)
	turned := m.total.Sub(m.at)
	own, _ := measure.CoarsestMark(m.at, step.Unit())
	other, _ := measure.CoarsestMark(turned, step.Unit())
	if own.Size().Less(other.Size()) {
		dst = appendLength(append(dst, `,"or":{"at":`...), step, turned, m.idealTotal.Sub(m.ideal))
		dst = append(append(append(dst, `,"from":"`...), opposite...), `"}`...)
	}
	return append(dst, '}')
}

// appendCuts appends the cuts inside the blank.
func appendCuts(dst []byte, step measure.Step, p, ideal *pattern.Piece) []byte {
	dst = append(dst, '[')
	for i := range p.Cuts {
		dst = comma(dst, i)
		c, twin := &p.Cuts[i], &ideal.Cuts[i]
		dst = appendString(append(dst, `{"name":`...), c.Name)
		dst = append(append(append(dst, `,"kind":"`...), c.Kind.String()...), '"')
		if c.On != "" {
			dst = appendString(append(dst, `,"on":`...), c.On)
		} else {
			dst = appendLength(append(dst, `,"at":`...), step, c.At, twin.At)
		}
		dst = append(append(append(dst, `,"from":"`...), c.From...), `","depth":`...)
		dst = appendLength(dst, step, c.Depth, twin.Depth)
		dst = append(appendLength(append(dst, `,"width":`...), step, c.Width, twin.Width), '}')
	}
	return append(dst, ']')
}

// appendOutside appends the size of the closed enclosure.
func appendOutside(dst []byte, s *solve.Solution) []byte {
	dst = appendExact(append(dst, `{"width":`...), s.Step, s.Outside.Width)
	dst = appendExact(append(dst, `,"height":`...), s.Step, s.Outside.Height)
	dst = appendExact(append(dst, `,"thickness":`...), s.Step, s.Outside.Thickness)
	if s.Outside.Mass > 0 {
		dst = appendDecimal(append(dst, `,"mass_g":`...), s.Outside.Mass, 2)
	}
	return append(dst, '}')
}

// appendOrnament appends what becomes of a closure ornament.
func appendOrnament(dst []byte, step measure.Step, o *enclosure.Ornament) []byte {
	dst = appendBool(append(dst, `{"covers_tabs":`...), o.CoversTabs)
	dst = appendBool(append(dst, `,"covers_slits":`...), o.CoversSlits)
	for _, m := range [...]struct {
		name string
		size measure.Length
	}{
		{"half_width", o.HalfWidth}, {"height", o.Height}, {"glue_from", o.GlueFrom}, {"glue_to", o.GlueTo}, {"glue_height", o.GlueHeight},
		{"trim_width", o.TrimWidth}, {"shows_height", o.ShowsHeight}, {"adds_thickness", o.Adds},
	} {
		dst = append(append(append(dst, `,"`...), m.name...), `":`...)
		dst = appendExact(dst, step, m.size)
	}
	return append(dst, '}')
}

// appendProof appends what the fold proof found.
func appendProof(dst []byte, p *solve.Proof) []byte {
	dst = appendBool(append(dst, `{"closes":`...), p.Closes)
	dst = measure.AppendDecimal(append(dst, `,"gap_mm":`...), p.Gap, measure.Millimetre, 6)
	dst = measure.AppendDecimal(append(dst, `,"tolerance_mm":`...), p.Tolerance, measure.Millimetre, 6)
	return append(appendBool(append(dst, `,"holds":`...), p.Holds), '}')
}

// appendWarnings appends what the maker should know, with the address of a
// calculation that would do away with it if there is one.
func (x *answering) appendWarnings(dst []byte, warnings []enclosure.Warning) []byte {
	dst = append(dst, '[')
	for i, w := range warnings {
		dst = comma(dst, i)
		dst = appendString(append(dst, `{"code":`...), w.Code)
		dst = appendString(append(dst, `,"detail":`...), w.Detail)
		if link := x.LinkWith(x.path, w.Try.Name, w.Try.Choice); link != nil {
			dst = append(append(append(dst, `,"try":"`...), link...), '"')
		}
		dst = append(dst, '}')
	}
	return append(dst, ']')
}

// appendBool appends true or false.
func appendBool(dst []byte, b bool) []byte {
	if b {
		return append(dst, "true"...)
	}
	return append(dst, "false"...)
}
