package browser

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/peer"
)

// axeCore returns the accessibility engine, which is installed for all users.
func axeCore(t *testing.T) string {
	t.Helper()
	npm := peer.Path(t, "npm", "apt-get install -y nodejs npm")
	root, err := exec.Command(npm, "root", "--global").Output()
	require.NoError(t, err)
	engine, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "axe-core", "axe.min.js"))
	if err != nil {
		const install = "the module axe-core is not installed; install it with: npm install --global axe-core@4.14.1"
		if os.Getenv("CREASEFIT_PEERS") == "require" {
			t.Fatal(install)
		}
		t.Skip(install)
	}
	return string(engine)
}

// Accessible lets the engine look at the page by the rules of WCAG 2.2 AA.
func (p *Tab) Accessible(t *testing.T) {
	t.Helper()
	engine := axeCore(t)
	p.Do(chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		_, err := chromedp.Run(ctx, chromedp.Evaluate[any](engine+";0"))
		return err
	}))
	found := Eval[[]string](p, `axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] })
		.then(({ passes, violations }) => [passes.length > 20 ? "" : "only " + passes.length + " rules were looked at"].filter(Boolean).concat(
			violations.map((v) => v.impact + " " + v.id + ": " + v.nodes.map((n) => n.target.flat().join(" ") + " " + n.failureSummary).join(" | "))))`)
	assert.Empty(t, found)
}
