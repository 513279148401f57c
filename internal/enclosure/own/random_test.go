package own

import (
	"encoding/json"
	"flag"
	"fmt"
	"math/rand/v2"
	"runtime"
	"runtime/debug"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/fold"
	"creasefit/internal/measure"
	"creasefit/internal/rounding"
)

// grown is how many random designs are grown.
var grown = flag.Int("grown", 400, "random designs")

// grow makes a design panel by panel: each hangs on a free edge of one before it. Of
// what it states some is too much, and what it leaves open is completed half of the
// time.
func grow(r *rand.Rand) map[string]any {
	n := 2 + r.IntN(1+r.IntN(23))
	taken := map[string]bool{}
	edges := []string{"left", "right", "bottom", "top"}
	reach := func() any {
		switch r.IntN(6) {
		case 0:
			return map[string]string{"covers": []string{"width", "height", "thickness"}[r.IntN(3)]}
		case 1:
			return map[string]string{"stands": "thickness"}
		case 2, 3:
			return fmt.Sprintf("%d mm", 5+r.IntN(120))
		}
		return "free"
	}
	panels := []map[string]any{{"panel": "0", "across": reach(), "up": reach()}}
	on := []string{"", ""}
	hung := []string{""}
	for len(panels) < n {
		parent := r.IntN(len(panels))
		edge := edges[r.IntN(4)]
		at := fmt.Sprint(parent, edge)
		if taken[at] || hung[parent] != "" && edge == opposite[hung[parent]] {
			if on = append(on, at); len(on) > 200 {
				break
			}
			continue
		}
		taken[at] = true
		p := map[string]any{"panel": fmt.Sprint(len(panels)), "on": fmt.Sprint(parent), "edge": edge, "fold": []string{"valley", "valley", "valley", "valley", "valley", "valley", "mountain", "flat"}[r.IntN(8)], "reach": reach()}
		if p["fold"] != "flat" && r.IntN(12) == 0 {
			p["angle"] = "180"
		}
		panels, hung = append(panels, p), append(hung, edge)
	}
	joins := []map[string]any{}
	for range max(0, r.IntN(5)-2) {
		a, b := fmt.Sprint(r.IntN(len(panels))), fmt.Sprint(r.IntN(len(panels)))
		switch r.IntN(4) {
		case 0:
			joins = append(joins, map[string]any{"glue": a, "to": b, "face": []string{"inside", "outside"}[r.IntN(2)]})
		case 1:
			joins = append(joins, map[string]any{"meet": "edge of " + a, "with": "fold of " + b})
		case 2:
			joins = append(joins, map[string]any{"even": a, "with": b})
		default:
			joins = append(joins, map[string]any{"lies": a, "to": b})
		}
	}
	return map[string]any{"design": "grown", "pieces": []any{map[string]any{"piece": "it", "panels": panels}}, "joins": joins}
}

var opposite = map[string]string{"left": "right", "right": "left", "bottom": "top", "top": "bottom"}

// complete gives every free reach of a design a length.
func complete(d map[string]any) {
	for _, p := range d["pieces"].([]any)[0].(map[string]any)["panels"].([]map[string]any) {
		for _, name := range []string{"reach", "across", "up"} {
			if p[name] == "free" {
				p[name] = "40 mm"
			}
		}
	}
}

// Random designs come to a proven solution or to problems that name a place, in short
// time and without a panic.
func TestRandomDesignsAreProvenOrToldWhy(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 19))
	proven, told, slow := 0, 0, time.Duration(0)
	causes := map[fault.Code]int{}
	defer debug.SetGCPercent(debug.SetGCPercent(-1)) // so that no design is taken to be as slow as the collector
	for i := range *grown {
		if i%100 == 0 {
			runtime.GC()
		}
		tree := grow(r)
		if i%2 == 0 {
			complete(tree)
		}
		text, err := json.Marshal(tree)
		require.NoError(t, err)
		var plan *enclosure.Plan
		slow = max(slow, OfProcessor(func() {
			var k *enclosure.Kind
			if k, err = Read(text); err == nil {
				if plan, err = k.Plan(trial()); err == nil {
					err = plan.Check()
				}
			}
		}))
		if err != nil {
			var faults fault.Faults
			require.NoError(t, faults.Add(err), "%s", text)
			for _, f := range faults {
				assert.NotEmpty(t, f.Detail)
				assert.NotEmpty(t, f.Field, "%s: %v", text, f)
				causes[f.Code]++
			}
			told++
			continue
		}
		p := plan.Build(plan.Ideals())
		proof := fold.Prove(&p, measure.Micrometres(1500))
		require.True(t, proof.Closes && proof.Holds, "%s: %v", text, proof.Faults)
		_ = rounding.NewSearch(&plan.Problem)
		proven++
	}
	t.Logf("%d proven, %d told why (%v), the slowest in %v", proven, told, causes, slow)
	assert.NotZero(t, proven)
	assert.NotZero(t, told)
}

// OfProcessor is how long the process has been on a processor for some work.
func OfProcessor(work func()) time.Duration {
	used := func() time.Duration {
		var u syscall.Rusage
		_ = syscall.Getrusage(syscall.RUSAGE_SELF, &u) // cannot fail with this memory
		return time.Duration(u.Utime.Nano() + u.Stime.Nano())
	}
	began := used()
	work()
	return used() - began
}
