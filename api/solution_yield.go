package api

import (
	"context"
	"net/url"

	"creasefit/api/ask"
	"creasefit/internal/pattern"
	"creasefit/internal/solve"
)

// solveAndCount solves, and counts how many blanks the request's sheet gives.
func solveAndCount(ctx context.Context, q *solve.Request) (*solve.Solution, error) {
	s, err := solve.Solve(ctx, q)
	if err != nil {
		return nil, err
	}
	return s, s.CountYields(ctx)
}

// appendYields appends how the pieces come out of the request's sheet.
func appendYields(dst []byte, s *solve.Solution) []byte {
	dst = appendExact(append(dst, `{"sheet":{"width":`...), s.Step, s.Request.SheetWidth)
	dst = appendExact(append(dst, `,"height":`...), s.Step, s.Request.SheetHeight)
	dst = append(dst, `},"pieces":[`...)
	for i, y := range s.Yields {
		dst = appendString(append(comma(dst, i), `{"piece":`...), s.Pattern.Pieces[i].Name)
		if y.Counted {
			dst = appendInt(append(dst, `,"per_sheet":`...), y.PerSheet)
			dst = appendInt(append(dst, `,"turned":`...), y.Turned)
			dst = appendDecimal(append(dst, `,"used":`...), y.Used, 6)
		}
		if y.Grain != solve.GrainUnasked {
			dst = append(append(append(dst, `,"folds":"`...), y.Grain.String()...), '"')
		}
		dst = append(dst, '}')
	}
	return append(dst, `]}`...)
}

// appendYieldLink appends the address of the cut plan: as many as one sheet
// gives of a single piece, or one set of several.
func appendYieldLink(dst []byte, s *solve.Solution, x *answering) []byte {
	dst = append(append(append(dst, "/v1/yield?unit="...), s.Request.Unit.String()...), "&sheet="...)
	dst = x.AppendValue(dst, "sheet")
	if s.Request.Grain != solve.GrainUnknown {
		dst = append(append(dst, "&sheet_grain="...), s.Request.Grain.String()...)
	}
	dst = s.Request.Ruler.AppendURL(append(dst, "&ruler="...), s.Request.Ruler.Size())
	pieces := s.Pattern.Pieces
	if len(pieces) == 1 && pieces[0].Quantity == 1 {
		dst = append(append(dst, "&name="...), url.QueryEscape(pieces[0].Name)...)
		dst = appendBlankURL(append(dst, "&blank="...), s, &pieces[0])
		if s.Yields[0].Grain == solve.GrainAlong {
			dst = append(append(dst, "&grain="...), s.FoldSide(0).String()...)
		}
		return dst
	}
	for i := range pieces {
		item := appendString([]byte(`{"name":`), pieces[i].Name)
		item = append(appendBlankURL(append(item, `,"blank":"`...), s, &pieces[i]), '"')
		item = appendInt(append(item, `,"count":`...), pieces[i].Quantity)
		if s.Yields[i].Grain == solve.GrainAlong {
			item = append(append(append(item, `,"grain":"`...), s.FoldSide(i).String()...), '"')
		}
		dst = append(append(dst, "&items="...), url.QueryEscape(string(append(item, '}')))...)
	}
	return dst
}

// appendBlankURL appends the size of a piece's blank as it stands in a URL.
func appendBlankURL(dst []byte, s *solve.Solution, p *pattern.Piece) []byte {
	return ask.AppendSize(dst, s.Step.Unit(), p.Width, p.Height)
}
