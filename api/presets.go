package api

import (
	"github.com/labstack/echo/v4"

	"creasefit/api/wire"
)

// lists are the calls that answer with one of our own tables.
type lists struct {
	*host
	kinds, portfolio, stocks, benches, designs, posts, limits *listing
	contents, sheets                                          *search
}

// newLists writes the tables.
func newLists(h *host) lists {
	return lists{
		host:  h,
		kinds: newListing("/v1/kinds", describeKinds()), portfolio: newListing("/v1/kinds/"+portfolioName, describePortfolio()), contents: newContentsSearch(),
		stocks: newListing("/v1/stocks", wire.Stocks()), sheets: newSheetSearch(),
		benches: newListing("/v1/benches", wire.Benches()), designs: newListing("/v1/designs", wire.Designs()), posts: newListing("/v1/posts", wire.Posts()), limits: newListing("/v1/limits", describeLimits(h.config)),
	}
}

// showPortfolio answers with the portfolio's parameters, as of any kind.
func (l lists) showPortfolio(c echo.Context) error {
	return l.portfolio.serve(l.host, c, c.Param("extension"))
}

// listContents answers with the named contents, those nearest to a size first.
//
//	@Summary	Contents by name, or by size
//	@ID			contents
//	@Tags		presets
//	@Success	200	{object}	wire.ContentsList
//	@Router		/v1/contents [get]
func (l lists) listContents(c echo.Context) error {
	return l.contents.serve(l.host, c, c.Param("extension"))
}

// listStocks answers with the named papers.
//
//	@Summary	Papers by name
//	@ID			stocks
//	@Tags		presets
//	@Success	200	{object}	wire.StockList
//	@Router		/v1/stocks [get]
func (l lists) listStocks(c echo.Context) error {
	return l.stocks.serve(l.host, c, c.Param("extension"))
}

// listSheets answers with the named sheet sizes, those nearest to a size first.
//
//	@Summary	Sheet sizes by name, or by size
//	@ID			sheets
//	@Tags		presets
//	@Success	200	{object}	wire.SheetList
//	@Router		/v1/sheets/sizes [get]
func (l lists) listSheets(c echo.Context) error {
	return l.sheets.serve(l.host, c, c.Param("extension"))
}

// listBenches answers with the named benches.
//
//	@Summary	Benches by name
//	@ID			benches
//	@Tags		presets
//	@Success	200	{object}	wire.BenchList
//	@Router		/v1/benches [get]
func (l lists) listBenches(c echo.Context) error {
	return l.benches.serve(l.host, c, c.Param("extension"))
}

// listPosts answers with the size classes of the posts.
//
//	@Summary	Posts and their size classes
//	@ID			posts
//	@Tags		presets
//	@Success	200	{object}	wire.PostList
//	@Router		/v1/posts [get]
func (l lists) listPosts(c echo.Context) error { return l.posts.serve(l.host, c, c.Param("extension")) }
