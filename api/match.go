package api

import (
	"cmp"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"runtime"
	"slices"
	"sync"
	"time"

	"creasefit/api/ask"
	"creasefit/api/tell"
	"creasefit/api/wire"
	"creasefit/internal/solve"
)

// matchTime is how long a match may take: ten thousand holders that are made are
// ten thousand solves.
const matchTime = 5 * time.Second

// matches are all pairs, the best first, by what is many in them.
type matches struct {
	ids     []string
	results []solve.Match
	fits    int
	order   []int // of those that are told
	list    string
}

// newMatch answers with what goes together.
//
//	@Summary		What goes into what
//	@Description	One thing against many holders, or many things against one, ranked: those that fit, the closest first, then the others with what keeps them out. A holder is its inside, or a request of solve by name. Holders may come as CSV and are remembered for a while under the name of their content. More of them than fit into one request, or as they come, are lines of /v1/batch?call=match with the thing in its address, a line a holder: each is answered at once, in memory that does not grow.
//	@ID				match
//	@Tags			enclosures
//	@Success		200	{object}	wire.Matches
//	@Router			/v1/match [get]
//	@Router			/v1/match [post]
func newMatch(lists *recent) computing {
	recall := func(list string) (texts []string, ok bool) {
		known, ok := lists.find(listKey(list))
		return texts, ok && json.Unmarshal(known, &texts) == nil
	}
	return &calculation[*ask.Match, *matches]{
		form: ask.NewMatch(recall, tell.FormatNames(tableFormats)...), path: "/v1/match", formats: tableFormats, table: tell.MatchColumns,
		allow: func(*ask.Match) time.Duration { return matchTime },
		compute: func(ctx context.Context, q *ask.Match) (*matches, error) {
			m, err := compare(ctx, q)
			if err != nil {
				return nil, err
			}
			texts, _ := json.Marshal(q.Content) // texts always have a literal
			sum := sha256.Sum256(texts)
			m.list = hex.EncodeToString(sum[:8])
			lists.keep(listKey(m.list), texts)
			return m, nil
		},
		answer: func(m *matches, x *answering) any {
			a := &wire.Matches{Unit: x.Unit().String(), Count: len(m.ids), Fits: m.fits, Ranked: make([]wire.Ranked, len(m.order)), List: m.list}
			for i, n := range m.order {
				a.Ranked[i] = wire.OfMatch(m.ids[n], &m.results[n], x.Unit())
			}
			return a
		},
	}
}

// listKey is where a list of holders is remembered.
func listKey(list string) requestKey { return sha256.Sum256([]byte("list " + list)) }

// compare makes all pairs, on all processors, and ranks them.
func compare(ctx context.Context, q *ask.Match) (*matches, error) {
	m := &matches{ids: make([]string, max(len(q.What), len(q.Into)))}
	m.results = make([]solve.Match, len(m.ids))
	one := func(i int) error {
		thing, into := q.What[min(i, len(q.What)-1)], q.Into[min(i, len(q.Into)-1)]
		if m.ids[i] = into.ID; len(q.What) > 1 {
			m.ids[i] = thing.ID
		}
		var err error
		m.results[i], err = hold(ctx, q, &thing.Thing, &into)
		return err
	}
	if err := inParallel(len(m.ids), one); err != nil {
		return nil, err
	}
	for i := range m.results {
		if m.results[i].Fits {
			m.fits++
		}
		if m.results[i].Fits || q.Only.Is("all") {
			m.order = append(m.order, i)
		}
	}
	slices.SortStableFunc(m.order, func(a, b int) int { return solve.CompareMatches(&m.results[a], &m.results[b]) })
	if q.Top.Given {
		m.order = m.order[:min(len(m.order), q.Top.Count())]
	}
	return m, nil
}

// hold puts one thing into one holder.
func hold(ctx context.Context, q *ask.Match, thing *solve.Thing, into *ask.Holder) (solve.Match, error) {
	if into.Inside != nil {
		return into.Inside.Hold(thing, q.Answered(), q.Turn.Is("yes")), nil
	}
	s, err := solve.Solve(ctx, into.Made)
	if err != nil {
		return solve.Match{Refused: err}, ctx.Err()
	}
	return s.Hold(ctx, thing)
}

// inParallel does n things on all processors and returns the first error. A panic is
// the caller's, who answers for it: alone it would end the service.
func inParallel(n int, do func(int) error) error {
	workers := min(runtime.GOMAXPROCS(0), n)
	errs, causes := make([]error, workers), make([]any, workers)
	var group sync.WaitGroup
	for w := range workers {
		group.Go(func() {
			defer func() { causes[w] = recover() }()
			for i := w; i < n && errs[w] == nil; i += workers {
				errs[w] = do(i)
			}
		})
	}
	group.Wait()
	for _, cause := range causes {
		if cause != nil {
			panic(cause)
		}
	}
	return cmp.Or(errs...)
}
