package browser

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/peer"
)

// Accessible lets the engine look at the page by the rules of WCAG 2.2 AA. Of rules
// that hold it is asked for one element each: to describe all takes most of its time.
func (p *Tab) Accessible(t *testing.T) {
	t.Helper()
	engine, err := os.ReadFile(filepath.Join(peer.Modules(t, "axe-core@4.14.1"), "axe-core", "axe.min.js"))
	require.NoError(t, err)
	p.Do(chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		_, err := chromedp.Run(ctx, chromedp.Evaluate[any](string(engine)+";0"))
		return err
	}))
	found := Eval[[]string](p, `axe.run(document, { resultTypes: ["violations"], runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] })
		.then(({ passes, violations }) => [passes.length > 20 ? "" : "only " + passes.length + " rules were looked at"].filter(Boolean).concat(
			violations.map((v) => v.impact + " " + v.id + ": " + v.nodes.map((n) => n.target.flat().join(" ") + " " + n.failureSummary).join(" | "))))`)
	assert.Empty(t, found)
}
