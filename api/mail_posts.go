package api

import (
	"github.com/labstack/echo/v4"
)

// listPosts answers with the size classes of the posts.
//
//	@Summary	Posts and their size classes
//	@ID			posts
//	@Tags		presets
//	@Produce	json
//	@Success	200	{object}	wire.PostList
//	@Header		200	{string}	ETag	"strong"
//	@Produce	application/problem+json
//	@Produce	json
//	@Router		/v1/posts [get]
func (l lists) listPosts(c echo.Context) error { return l.posts.serve(l.host, c, c.Param("extension")) }
