package api

import (
	"github.com/labstack/echo/v4"

	"creasefit/internal/bench"
	"creasefit/internal/contents"
	"creasefit/internal/measure"
	"creasefit/internal/stock"
)

// lists are the calls that answer with one of our own tables.
type lists struct{ kinds, portfolio, contents, stocks, sheets, benches, posts, limits *listing }

// newLists writes the tables.
func newLists(c Config) lists {
	return lists{
		kinds: newListing("/v1/kinds", describeKinds()), portfolio: newListing("/v1/kinds/"+portfolioName, describePortfolio()), contents: newListing("/v1/contents", describeContents()),
		stocks: newListing("/v1/stocks", describeStocks()), sheets: newListing("/v1/sheets/sizes", describeSheets()),
		benches: newListing("/v1/benches", describeBenches()), posts: newListing("/v1/posts", describePosts()), limits: newListing("/v1/limits", c.describeLimits()),
	}
}

// listContents answers with the named contents.
//
//	@Summary	Contents by name
//	@ID			contents
//	@Tags		presets
//	@Produce	json
//	@Success	200	{object}	ContentsList
//	@Header		200	{string}	ETag	"strong"
//	@Produce	application/problem+json
//	@Failure	400,414,429,500,503	{object}	Problem
//	@Produce	json
//	@Router		/v1/contents [get]
func (s *Service) listContents(c echo.Context) error { return s.lists.contents.serve(s, c, "") }

// listStocks answers with the named papers.
//
//	@Summary	Papers by name
//	@ID			stocks
//	@Tags		presets
//	@Produce	json
//	@Success	200	{object}	StockList
//	@Header		200	{string}	ETag	"strong"
//	@Produce	application/problem+json
//	@Failure	400,414,429,500,503	{object}	Problem
//	@Produce	json
//	@Router		/v1/stocks [get]
func (s *Service) listStocks(c echo.Context) error { return s.lists.stocks.serve(s, c, "") }

// listSheets answers with the named sheet sizes.
//
//	@Summary	Sheet sizes by name
//	@ID			sheets
//	@Tags		presets
//	@Produce	json
//	@Success	200	{object}	SheetList
//	@Header		200	{string}	ETag	"strong"
//	@Produce	application/problem+json
//	@Failure	400,414,429,500,503	{object}	Problem
//	@Produce	json
//	@Router		/v1/sheets/sizes [get]
func (s *Service) listSheets(c echo.Context) error { return s.lists.sheets.serve(s, c, "") }

// listBenches answers with the named benches.
//
//	@Summary	Benches by name
//	@ID			benches
//	@Tags		presets
//	@Produce	json
//	@Success	200	{object}	BenchList
//	@Header		200	{string}	ETag	"strong"
//	@Produce	application/problem+json
//	@Failure	400,414,429,500,503	{object}	Problem
//	@Produce	json
//	@Router		/v1/benches [get]
func (s *Service) listBenches(c echo.Context) error { return s.lists.benches.serve(s, c, "") }

// exact is a length that is its own ideal, as answers give it.
func exact(l measure.Length, unit measure.Unit) Length {
	return Length{Reading: measure.Finest(unit).Format(l), In: l.Rounded(measure.Inch), MM: l.Millimetres(), ExactMM: l.Millimetres()}
}

// optional is a length that may be unknown, which is zero.
func optional(l measure.Length, unit measure.Unit) *Length {
	if l.IsZero() {
		return nil
	}
	e := exact(l, unit)
	return &e
}

// describeContents is the contents as they are listed.
func describeContents() ContentsList {
	var list ContentsList
	for _, i := range contents.All() {
		list.Contents = append(list.Contents, ContentsPreset{
			Name: i.Name, Title: i.Title, Width: exact(i.Width, i.Unit), Height: exact(i.Height, i.Unit),
			Thickness: optional(i.Thickness, i.Unit), SizeTolerance: optional(i.SizeTolerance, i.Unit),
			ThicknessTolerance: optional(i.ThicknessTolerance, i.Unit), Source: i.Source, Invented: i.Invented,
		})
	}
	return list
}

// describeStocks is the papers as they are listed.
func describeStocks() StockList {
	var list StockList
	for _, p := range stock.All() {
		preset := StockPreset{
			Name: p.Name, Title: p.Title, Caliper: exact(p.Caliper, measure.Millimetre),
			CaliperTolerance: optional(p.CaliperTolerance, measure.Millimetre), Estimated: p.Estimated,
			CaliperRange: []Length{exact(p.Low, measure.Millimetre), exact(p.High, measure.Millimetre)}, Source: p.Source,
		}
		if p.Grammage > 0 {
			preset.Grammage = &p.Grammage
		}
		list.Stocks = append(list.Stocks, preset)
	}
	return list
}

// describeSheets is the sheet sizes as they are listed.
func describeSheets() SheetList {
	var list SheetList
	for _, p := range stock.Sheets() {
		list.Sheets = append(list.Sheets, SheetPreset{Name: p.Name, Title: p.Title, Width: exact(p.Width, p.Unit), Height: exact(p.Height, p.Unit), Source: p.Source})
	}
	return list
}

// describeBenches is the benches as they are listed.
func describeBenches() BenchList {
	var list BenchList
	for _, b := range bench.All() {
		list.Benches = append(list.Benches, BenchPreset{Name: b.Name, Title: b.Title,
			CutTolerance: exact(b.Cut, measure.Inch), ScoreTolerance: exact(b.Score, measure.Inch), Source: b.Source})
	}
	return list
}
