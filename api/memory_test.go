package api

import (
	"context"
	"net/http"
	"net/http/httptest"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
)

// leaving is the context of a caller who goes away after so many looks at it.
type leaving struct {
	context.Context
	looks atomic.Int64
}

func (l *leaving) Err() error {
	if l.looks.Add(-1) < 0 {
		return context.Canceled
	}
	return nil
}

// forgetful is a service that works every call out anew, many at once and as long as they take.
func forgetful() *Service {
	return with(func(c *Config) {
		c.Recent, c.MostRunning, c.MostDear = 0, 8, 8
		c.SolveTimeout, c.QueueTimeout, c.DearTimeout = time.Minute, time.Minute, time.Minute
	})
}

// TestMemoryIsNobodyElses: what is worked out in memory that is used again is told alike
// whoever else works in such memory meanwhile: others who ask for other things, who are
// refused, or who leave in the middle. What is given back is zero from then on.
func TestMemoryIsNobodyElses(t *testing.T) {
	var targets []string
	for _, spec := range CallSpecs() {
		if spec.Path != "/v1/yield" && !strings.Contains(spec.Path, "{") { // how an order was proven may be told otherwise
			targets = append(targets, spec.Path+"?"+spec.Example)
		}
		if strings.HasPrefix(spec.Path, "/v1/solve/") {
			for _, with := range []*strings.Replacer{strings.NewReplacer("fit=easy", "wanted_chance=0.9"), strings.NewReplacer("fit=easy", "step=1in"),
				strings.NewReplacer("1/64in", "1/32in&format=csv"), strings.NewReplacer("width=3-1/2", "width=4-1/16", "0.012", "0.02"), strings.NewReplacer("=5", "=131mm")} {
				targets = append(targets, spec.Path+"?"+with.Replace(spec.Example))
			}
		}
	}
	s := forgetful()
	ask := func(target string, ctx context.Context) string {
		r := httptest.NewRequest(http.MethodGet, target, nil)
		if ctx != nil {
			r = r.WithContext(ctx)
		}
		w := httptest.NewRecorder()
		s.Handler().ServeHTTP(w, r)
		return w.Body.String()
	}
	alone := make([]string, len(targets))
	for i, target := range targets {
		alone[i] = ask(target, nil)
	}
	var all sync.WaitGroup
	for n := range 8 {
		all.Go(func() {
			for i := range targets {
				i = (i*(2*n+1) + n*len(targets)/8) % len(targets) // each in an order of its own
				gone := &leaving{Context: t.Context()}
				gone.looks.Store(int64(i % 40))
				ask(targets[len(targets)-1-i], gone)
				if got := ask(targets[i], nil); got != alone[i] {
					assert.Equal(t, alone[i], got, targets[i])
				}
			}
		})
	}
	all.Wait()
	refused := slices.DeleteFunc(slices.Clone(alone), func(a string) bool { return !strings.Contains(a, `"/problems/`) })
	assert.Less(t, len(refused), len(alone)/3)
}
