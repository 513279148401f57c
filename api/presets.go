package api

import (
	"context"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/api/wire"
)

// lists are the calls that answer with one of our own tables.
func lists(c Config) []computing {
	return []computing{listKinds(), newListing("/v1/kinds/"+portfolioName, describePortfolio()),
		listContents(), listStocks(), listSheets(), listBenches(), listDesigns(), listPosts(), listLimits(c)}
}

// listContents answers with the named contents, those nearest to a size first.
//
//	@Summary	Contents by name, or by size
//	@ID			contents
//	@Tags		presets
//	@Success	200	{object}	wire.ContentsList
//	@Router		/v1/contents [get]
func listContents() computing {
	return newSearch("/v1/contents", func(q *ask.Near) any { return wire.Contents(q) })
}

// listStocks answers with the named papers.
//
//	@Summary	Papers by name
//	@ID			stocks
//	@Tags		presets
//	@Success	200	{object}	wire.StockList
//	@Router		/v1/stocks [get]
func listStocks() computing { return newListing("/v1/stocks", wire.Stocks()) }

// listSheets answers with the named sheet sizes, those nearest to a size first.
//
//	@Summary	Sheet sizes by name, or by size
//	@ID			sheets
//	@Tags		presets
//	@Success	200	{object}	wire.SheetList
//	@Router		/v1/sheets/sizes [get]
func listSheets() computing {
	return newSearch("/v1/sheets/sizes", func(q *ask.Near) any { return wire.Sheets(q) })
}

// listBenches answers with the named benches.
//
//	@Summary	Benches by name
//	@ID			benches
//	@Tags		presets
//	@Success	200	{object}	wire.BenchList
//	@Router		/v1/benches [get]
func listBenches() computing { return newListing("/v1/benches", wire.Benches()) }

// listPosts answers with the size classes of the posts.
//
//	@Summary	Posts and their size classes
//	@ID			posts
//	@Tags		presets
//	@Success	200	{object}	wire.PostList
//	@Router		/v1/posts [get]
func listPosts() computing {
	return &calculation[*ask.Posts, *ask.Posts]{
		form: ask.New[ask.Posts](tell.FormatNames(tableFormats)...), path: "/v1/posts", formats: tableFormats,
		compute: func(_ context.Context, q *ask.Posts) (*ask.Posts, error) { return q, nil },
		answer:  func(q *ask.Posts, x *answering) any { return wire.Posts(voiceOf(q.Language.Word, x.Unit())) },
	}
}
