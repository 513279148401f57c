package wire

import (
	"creasefit/api/ask"
	"creasefit/internal/bench"
	"creasefit/internal/contents"
	"creasefit/internal/measure"
	"creasefit/internal/stock"
)

// ContentsList is the answer of /v1/contents.
type ContentsList struct {
	Contents []ContentsPreset `json:"contents" validate:"required"`
}

// Contents are the contents that have names, as far as they are wanted.
func Contents(wanted *ask.Near) ContentsList {
	var list []sized[ContentsPreset]
	for _, i := range contents.All() {
		list = append(list, sized[ContentsPreset]{ContentsPreset{
			Name: i.Name, Title: i.Title, Width: exactIn(i.Unit, i.Width), Height: exactIn(i.Unit, i.Height),
			Thickness: known(i.Unit, i.Thickness), SizeTolerance: known(i.Unit, i.SizeTolerance),
			ThicknessTolerance: known(i.Unit, i.ThicknessTolerance), Source: i.Source, Invented: i.Invented,
		}, i.Width, i.Height, i.Unit})
	}
	return ContentsList{picked(list, wanted, func(p *ContentsPreset, n Near) { p.Near = n })}
}

// ContentsPreset is one thing that goes inside.
type ContentsPreset struct {
	Name               string  `json:"name" validate:"required" example:"id-1"`
	Title              string  `json:"title" validate:"required"`
	Width              Length  `json:"width" validate:"required"`
	Height             Length  `json:"height" validate:"required"`
	Thickness          *Length `json:"thickness,omitempty"` // none: the request must say
	SizeTolerance      *Length `json:"size_tolerance,omitempty"`
	ThicknessTolerance *Length `json:"thickness_tolerance,omitempty"`
	Source             string  `json:"source" validate:"required"`
	Invented           bool    `json:"invented" validate:"required"` // made up for the examples
	Near
}

// StockList is the answer of /v1/stocks.
type StockList struct {
	Stocks []StockPreset `json:"stocks" validate:"required"`
}

// Stocks are the papers that have names.
func Stocks() StockList {
	var list StockList
	for _, p := range stock.All() {
		list.Stocks = append(list.Stocks, StockPreset{
			Name: p.Name, Title: p.Title, Caliper: exactIn(measure.Millimetre, p.Caliper),
			CaliperTolerance: known(measure.Millimetre, p.CaliperTolerance), Estimated: p.Estimated,
			CaliperRange: [2]Length{exactIn(measure.Millimetre, p.Low), exactIn(measure.Millimetre, p.High)}, Grammage: round(p.Grammage, 2), Source: p.Source,
		})
	}
	return list
}

// StockPreset is one paper.
type StockPreset struct {
	Name             string    `json:"name" validate:"required" example:"index-110"`
	Title            string    `json:"title" validate:"required"`
	Caliper          Length    `json:"caliper" validate:"required"`
	CaliperTolerance *Length   `json:"caliper_tolerance,omitempty"`
	Estimated        bool      `json:"estimated" validate:"required"` // ought to be measured
	CaliperRange     [2]Length `json:"caliper_range" validate:"required,min=2,max=2"`
	Grammage         float64   `json:"grammage,omitempty" example:"200"` // g/m2
	Source           string    `json:"source" validate:"required"`
}

// SheetList is the answer of /v1/sheets/sizes.
type SheetList struct {
	Sheets []SheetPreset `json:"sheets" validate:"required"`
}

// Sheets are the sizes of sheets that have names, as far as they are wanted.
func Sheets(wanted *ask.Near) SheetList {
	var list []sized[SheetPreset]
	for _, p := range stock.Sheets() {
		list = append(list, sized[SheetPreset]{SheetPreset{p.Name, p.Title, exactIn(p.Unit, p.Width), exactIn(p.Unit, p.Height), p.Source, Near{}}, p.Width, p.Height, p.Unit})
	}
	return SheetList{picked(list, wanted, func(p *SheetPreset, n Near) { p.Near = n })}
}

// SheetPreset is one size that paper is sold in.
type SheetPreset struct {
	Name   string `json:"name" validate:"required" example:"letter"`
	Title  string `json:"title" validate:"required"`
	Width  Length `json:"width" validate:"required"`
	Height Length `json:"height" validate:"required"`
	Source string `json:"source" validate:"required"`
	Near
}

// BenchList is the answer of /v1/benches.
type BenchList struct {
	Benches []BenchPreset `json:"benches" validate:"required"`
}

// Benches are the benches that have names.
func Benches() BenchList {
	var list BenchList
	exactly := measure.Finest(measure.Inch).FormatURL
	for _, b := range bench.All() {
		query := "cut_tolerance=" + exactly(b.Cut) + "&score_tolerance=" + exactly(b.Score)
		list.Benches = append(list.Benches, BenchPreset{b.Name, b.Title, exactIn(measure.Inch, b.Cut), exactIn(measure.Inch, b.Score), query, b.Source})
	}
	return list
}

// BenchPreset is one way of cutting and scoring.
type BenchPreset struct {
	Name           string `json:"name" validate:"required" example:"hand"`
	Title          string `json:"title" validate:"required"`
	CutTolerance   Length `json:"cut_tolerance" validate:"required"`
	ScoreTolerance Length `json:"score_tolerance" validate:"required"`
	Query          string `json:"query" validate:"required" example:"cut_tolerance=1/32in&score_tolerance=1/32in"` // the bench as names, exactly
	Source         string `json:"source" validate:"required"`
}
