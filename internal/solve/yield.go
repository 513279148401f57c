package solve

import (
	"context"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/sheet"
)

// MostCounted is how many blanks a sheet may have the area of for their yield
// to be counted beside a solution; counting more is a calculation of its own.
const MostCounted = 100

// Yield is how the blanks of one piece come out of the request's sheet.
type Yield struct {
	Counted  bool // the blank is no smaller than MostCounted allows
	PerSheet int  // most that one sheet gives, in edge-to-edge cuts
	Turned   int  // so many of them lie with their width along the sheet's height
	Used     float64
	Grain    GrainKept
}

// GrainKept says how the main folds of a blank lie to the grain.
type GrainKept uint8

// GrainUnasked is for a sheet of unknown grain and for a blank without main
// folds, which may lie either way.
const (
	GrainUnasked GrainKept = iota
	GrainAlong
	GrainAcross // the blank comes out of the sheet in no other way
)

// String returns how the folds lie as it is written on the wire.
func (g GrainKept) String() string { return [...]string{"", "along", "across"}[g] }

// CountYields fills in the yield of every piece if the request names a sheet.
// Where the grain is known, the main folds run along it if the blank fits so.
// The error is the context's.
func (s *Solution) CountYields(ctx context.Context) error {
	if s.Request.SheetWidth.IsZero() {
		return nil
	}
	for i := range s.Pattern.Pieces {
		y, err := s.Request.yield(ctx, &s.Pattern.Pieces[i])
		if err != nil {
			return err
		}
		s.Yields = append(s.Yields, y)
	}
	return nil
}

// FoldSide returns the side of a piece's blank that most of its crease length runs
// along, AnySide if that is neither: the grain ought to run with it.
func FoldSide(p *pattern.Piece) sheet.Side {
	var up, across measure.Length
	for _, c := range p.Creases {
		up = up.Add(c.B.Y.Sub(c.A.Y).Abs())
		across = across.Add(c.B.X.Sub(c.A.X).Abs())
	}
	switch {
	case across.Less(up):
		return sheet.AlongHeight
	case up.Less(across):
		return sheet.AlongWidth
	default:
		return sheet.AnySide
	}
}

// yield counts the blanks of one piece.
func (r *Request) yield(ctx context.Context, p *pattern.Piece) (Yield, error) {
	if area(r.SheetWidth, r.SheetHeight) > MostCounted*area(p.Width, p.Height) {
		return Yield{}, nil
	}
	side := FoldSide(p)
	if r.Grain == sheet.AnySide || side == sheet.AnySide {
		return r.count(ctx, p, sheet.AnySide)
	}
	y, err := r.count(ctx, p, side)
	y.Grain = GrainAlong
	if err == nil && y.PerSheet == 0 {
		y, err = r.count(ctx, p, sheet.AnySide)
		y.Grain = GrainAcross
	}
	if y.PerSheet == 0 {
		y.Grain = GrainUnasked
	}
	return y, err
}

// count counts the blanks that may lie with the grain along a side of theirs.
func (r *Request) count(ctx context.Context, p *pattern.Piece, side sheet.Side) (Yield, error) {
	stock := sheet.Stock{Width: r.SheetWidth, Height: r.SheetHeight, Grain: r.Grain}
	order := sheet.Order{Sheets: []sheet.Stock{stock}, Ruler: r.Ruler, Items: []sheet.Item{{Name: p.Name, Width: p.Width, Height: p.Height, Grain: side}}}
	if order.Check() != nil {
		return Yield{Counted: true}, nil // it is larger than the sheet, of which a warning says more
	}
	a, err := PlanCuts(ctx, order)
	if err != nil {
		return Yield{}, err
	}
	y := Yield{Counted: true, PerSheet: a.PerSheet, Used: a.Used}
	for i := range a.Plans {
		for _, placed := range a.Plans[i].Placed {
			if placed.Turned {
				y.Turned++
			}
		}
	}
	return y, nil
}

// area is in square millimetres.
func area(width, height measure.Length) float64 { return width.Millimetres() * height.Millimetres() }
