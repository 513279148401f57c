package api

import (
	"context"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/wire"
	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
	"creasefit/internal/tolerance"
)

// manyHolders is a request of n holders for a tin, measured inside.
func manyHolders(n int) string {
	random := rand.New(rand.NewPCG(16, 2))
	list := make([]string, n)
	for i := range list {
		list[i] = fmt.Sprintf(`{"id":"h%d","width":%d,"height":%d,"thickness":%d}`, i, 40+random.IntN(80), 60+random.IntN(80), 40+random.IntN(80))
	}
	return `{"contents":"tea-tin","unit":"mm","holders":[` + strings.Join(list, ",") + `]}`
}

// Of holders that were measured inside, what is told is the difference of the
// sizes, worked out here in plain numbers, and the order is theirs.
func TestMatchOfMeasuredHolders(t *testing.T) {
	m := decode[wire.Matches](postJSON(t, "/v1/match", manyHolders(400)).ok())
	require.Equal(t, 400, m.Count)
	require.Len(t, m.Ranked, 400)
	random, sizes := rand.New(rand.NewPCG(16, 2)), map[string][3]float64{}
	for i := range 400 {
		sizes[fmt.Sprintf("h%d", i)] = [3]float64{float64(40 + random.IntN(80)), float64(60 + random.IntN(80)), float64(40 + random.IntN(80))}
	}
	tin, last, fits := [3]float64{76, 95, 76}, -1.0, 0
	for i, r := range m.Ranked {
		total, least := 0.0, math.Inf(1)
		for axis, room := range r.Room {
			left := sizes[r.ID][axis] - tin[axis]
			assert.InDelta(t, left, room.Left.MM, 1e-9)
			total, least = total+math.Abs(left), min(least, left)
		}
		assert.Equal(t, least >= 0, r.Fits, r.ID)
		if r.Fits {
			fits++
			assert.Equal(t, fits, i+1, "what fits stands first")
			if r.Chance >= 0.5 {
				assert.GreaterOrEqual(t, total, last, "the closest first")
				last = total
			}
			assert.Empty(t, r.Why)
		} else {
			assert.Equal(t, "tight", r.Verdict)
			assert.Contains(t, strings.Join(r.Why, ";"), "too little along the")
		}
	}
	assert.Equal(t, fits, m.Fits)
	assert.Positive(t, fits)
}

// A list is named by its content and asked for again when it is forgotten.
func TestMatchRemembersAList(t *testing.T) {
	s := quiet()
	first := decode[wire.Matches](call(t, s, "POST", "/v1/match", manyHolders(30), "Content-Type", "application/json").ok())
	again := decode[wire.Matches](call(t, s, "POST", "/v1/match", `{"contents":"tea-tin","unit":"mm","only":"fits","top":1,"list":"`+first.List+`"}`, "Content-Type", "application/json").ok())
	require.Len(t, again.Ranked, 1)
	assert.Equal(t, first.Ranked[0], again.Ranked[0])
	assert.Equal(t, first.List, again.List)
	assert.NotEqual(t, first.List, decode[wire.Matches](postJSON(t, "/v1/match", manyHolders(29)).ok()).List)
	forgotten := call(t, quiet(), "POST", "/v1/match", `{"contents":"tea-tin","list":"`+first.List+`"}`, "Content-Type", "application/json")
	require.Equal(t, 400, forgotten.Code)
	assert.Contains(t, forgotten.Body.String(), "send the holders again")
}

// A request has the address that equals it where that is short enough for those in between.
func TestLongRequestsHaveNoAddress(t *testing.T) {
	for n, has := range map[int]bool{2: true, 100: false} {
		location := postJSON(t, "/v1/match", manyHolders(n)).ok().Header().Get("Content-Location")
		assert.Equal(t, has, location != "", "%d holders", n)
		assert.LessOrEqual(t, len(location), mostContentLocation)
	}
}

func TestMatchInTables(t *testing.T) {
	call(t, shared(), "POST", "/v1/match?contents=tea-tin", matchSpec().Table, "Content-Type", "text/csv").ok() // as the specification has it
	table := "\ufeffid;width;height;thickness;tolerance\na;80 mm;100 mm;80 mm;1 mm\nb;60;95;77;\n"
	asCSV := call(t, shared(), "POST", "/v1/match?contents=tea-tin&unit=mm&format=csv", table, "Content-Type", "text/csv").ok()
	rows, err := csv.NewReader(asCSV.Body).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, []string{"a", "yes", "loose"}, rows[1][:3])
	assert.Equal(t, []string{"b", "no", "tight", "0", "-16"}, rows[2][:5])
	for body, says := range map[string]string{"id\na\n": "no header with two names", "id,width\na,\"8": "cannot be read", "id,width\na,8,9\n": "cannot be read", "id,wdth\na,8\n": "wdth", "width,height\n8,9\n": "id"} {
		bad := call(t, shared(), "POST", "/v1/match?contents=tea-tin&unit=mm", body, "Content-Type", "text/csv")
		assert.Equal(t, 400, bad.Code, body)
		assert.Contains(t, bad.Body.String(), says, body)
	}
}

// One holder and many things, and a quarter turn.
func TestMatchOfManyThings(t *testing.T) {
	body := `{"unit":"mm","turn":"yes","things":[{"id":"tin","contents":"tea-tin"},{"id":"card","width":120,"height":70,"thickness":1},{"id":"crate","width":200,"height":200,"thickness":200}],
		"holders":[{"id":"box","width":80,"height":130,"thickness":80}]}`
	m := decode[wire.Matches](postJSON(t, "/v1/match", body).ok())
	assert.Equal(t, []string{"tin", "card", "crate"}, []string{m.Ranked[0].ID, m.Ranked[1].ID, m.Ranked[2].ID})
	assert.True(t, m.Ranked[1].Turned)
	assert.Equal(t, 2, m.Fits)
	for body, says := range map[string]string{
		`{"unit":"mm","things":[{"id":"a","width":9},{"id":"b","width":9}],"holders":[{"id":"a","width":9},{"id":"b","width":9}]}`: "too many pairs",
		`{"unit":"mm","width":5,"things":[{"id":"a","width":9}],"holders":[{"id":"a","width":9}]}`:                                 "sizes of their own",
		`{"unit":"mm","width":5,"holders":[{"id":"a","kind":"sleave","width":9}]}`:                                                 "did you mean sleeve",
		`{"unit":"mm","width":5,"holders":[{"id":"a"}]}`:                                                                           "a size inside",
		`{"unit":"mm","width":5}`: "needs holders",
	} {
		bad := postJSON(t, "/v1/match", body)
		assert.Equal(t, 400, bad.Code, body)
		assert.Contains(t, bad.Body.String(), says)
	}
}

// Holders may come one by one, as many as there are: a line each in a batch whose
// address says the thing. Each is answered as the match of all answers it.
func TestMatchOfHoldersAsTheyCome(t *testing.T) {
	all := decode[wire.Matches](postJSON(t, "/v1/match", manyHolders(300)))
	want := map[string]wire.Ranked{}
	for _, r := range all.Ranked {
		want[r.ID] = r
	}
	var body struct{ Holders []json.RawMessage }
	require.NoError(t, json.Unmarshal([]byte(manyHolders(300)), &body))
	var lines strings.Builder
	for _, holder := range body.Holders {
		fmt.Fprintf(&lines, `{"holders":[%s]}`+"\n", holder)
	}
	a := call(t, shared(), "POST", "/v1/batch?call=match&contents=tea-tin&unit=mm", lines.String(), "Content-Type", mediaLines).ok()
	answers := readLines(t, a.Body.String())
	require.Len(t, answers, len(body.Holders)+1)
	for _, line := range answers[:len(body.Holders)] {
		var one wire.Matches
		require.NoError(t, json.Unmarshal(line.Answer, &one))
		require.Len(t, one.Ranked, 1)
		assert.Equal(t, want[one.Ranked[0].ID], one.Ranked[0])
	}
}

// A match with a holder that is made says what a check of its readings says:
// ten thousand random pairs, three hundred of them in a short run.
func TestMatchAgreesWithCheck(t *testing.T) {
	pairs := 10_000
	if testing.Short() {
		pairs = 300
	}
	random, ctx, fit := rand.New(rand.NewPCG(16, 3)), context.Background(), 0
	size := func(from, to int64) measure.Length {
		return measure.Micrometres(100 * (from*10 + random.Int64N((to-from)*10)))
	}
	for made := 0; made < pairs; {
		k := repertoire.Kinds()[random.IntN(len(repertoire.Kinds()))]
		r := &solve.Request{Kind: k, Unit: measure.Millimetre, Width: size(50, 120), Height: size(50, 120), Thickness: size(1, 40), Caliper: measure.Micrometres(300),
			CaliperTolerance: measure.Micrometres(20), Ruler: measure.Finest(measure.Millimetre), CutError: measure.Micrometres(400), ScoreError: measure.Micrometres(400),
			FitName: "easy", Fit: enclosure.FitNamed("easy", measure.Millimetre)}
		s, err := solve.Solve(ctx, r)
		if err != nil {
			continue
		}
		for range 20 {
			off := func(l measure.Length) measure.Length {
				return measure.Max(measure.Millimetres(1), l.Add(size(0, 6)).Sub(measure.Millimetres(3)))
			}
			thing := &solve.Thing{Width: off(r.Width), Height: off(r.Height), Thickness: off(r.Thickness), SizeTolerance: tolerance.Within(measure.Micrometres(300))}
			m, err := s.Hold(ctx, thing)
			require.NoError(t, err)
			q := *s.Request
			q.Width, q.Height, q.Thickness, q.SizeTolerance, q.ThicknessTolerance = thing.Width, thing.Height, thing.Thickness, thing.SizeTolerance, thing.ThicknessTolerance
			c, err := solve.CheckOwn(ctx, &q, s.ReadOff())
			made++
			if err != nil {
				require.Error(t, m.Refused, k.Name)
				continue
			}
			require.NoError(t, m.Refused, k.Name)
			assert.Equal(t, c.Works, m.Fits, k.Name)
			assert.InDelta(t, c.Sure.Chance, m.Chance, 1e-12)
			for i, f := range c.Fits {
				assert.Equal(t, f.Nominal, m.Rooms[i].Left)
			}
			if m.Fits {
				fit++
			}
		}
	}
	assert.Greater(t, fit, pairs/10)
	assert.Less(t, fit, pairs*9/10)
}

// Ten thousand holders in one request: measured inside, and solved for one by one.
func BenchmarkMatch(b *testing.B) {
	one := strings.NewReplacer(`},{`, "}]}\n"+`{"holders":[{`).Replace(manyHolders(10_000))
	one = one[strings.Index(one, "[")+1 : len(one)-2]
	for name, body := range map[string]string{"measured": manyHolders(10_000), "solved": manyMade(10_000), "as they come": `{"holders":[` + one + "]}"} {
		b.Run(name, func(b *testing.B) {
			s := quiet()
			for b.Loop() {
				s.recent = newRecent(0, 0)
				request := newRequest("POST", "/v1/match", body, headers{"Content-Type", "application/json"})
				if name == "as they come" {
					request = newRequest("POST", "/v1/batch?call=match&contents=tea-tin&unit=mm", body, headers{"Content-Type", mediaLines})
				}
				w := httptest.NewRecorder()
				s.Handler().ServeHTTP(w, request)
				require.Equal(b, 200, w.Code, w.Body.String())
			}
		})
	}
}

// manyMade is a request of n sleeves of different sizes for a tin.
func manyMade(n int) string {
	list := make([]string, n)
	for i := range list {
		list[i] = fmt.Sprintf(`{"id":"h%d","kind":"sleeve","width":"%d.%d mm","height":95,"thickness":76,"caliper":0.3}`, i, 60+i/10%60, i%10)
	}
	return `{"contents":"tea-tin","unit":"mm","holders":[` + strings.Join(list, ",") + `]}`
}
