package api

import (
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/ask"
	"creasefit/api/wire"
	"creasefit/internal/enclosure"
	"creasefit/internal/enclosure/own"
	"creasefit/internal/fault"
	"creasefit/internal/repertoire"
	"creasefit/internal/solve"
)

// describedBody is a request about the design that the service shows first.
func describedBody(more string) string {
	return `{"design":` + ask.ExampleDesign() + `,"unit":"in","width":"3-1/2","height":5,"thickness":0.5,"caliper":0.012` + more + `}`
}

// A design stands wherever a kind does: solve, drawing, guide, check, a layer, an
// item and a line.
func TestADesignStandsWhereAKindDoes(t *testing.T) {
	s := decode[wire.Solution](postJSON(t, "/v1/solve/own", describedBody("")).ok())
	assert.Equal(t, "own", s.Kind)
	assert.True(t, s.Proof.Closes && s.Proof.Holds)
	again := decode[wire.Solution](get(t, s.Links.Self).ok())
	assert.Equal(t, s.Pieces, again.Pieces, "a link carries the design")
	get(t, s.Links.Drawing).ok()
	get(t, s.Links.Guide).ok()
	assert.Contains(t, postJSON(t, "/v1/guide/own.md", describedBody("")).ok().Body.String(), "Fold")

	kind := decode[wire.Solution](get(t, "/v1/solve/sleeve?unit=in&width=3-1/2&height=5&thickness=0.5&caliper=0.012&scores=two&reveal=1/4in").ok())
	assert.Equal(t, kind.Outside, s.Outside, "the sleeve of the catalogue")
	assert.Equal(t, kind.Sure.Chance, s.Sure.Chance)

	check := decode[wire.Check](postJSON(t, "/v1/check/own", describedBody(`,"blank":"9 x 4-3/4 in","marks":["3-5/8","4-1/4","7-7/8","8-1/2"]`)).ok())
	assert.True(t, check.Proof.Closes)

	layers := decode[wire.Portfolio](postJSON(t, "/v1/solve/portfolio",
		`{"unit":"in","width":5,"height":4,"thickness":2,"caliper":0.012,"layers":["tray",{"kind":"own","design":`+ask.ExampleDesign()+`}]}`).ok())
	assert.Len(t, layers.Layers, 2)

	postJSON(t, "/v1/yield", `{"unit":"in","sheet":"12x12in","effort_ms":10000,"items":[{"kind":"own","design":`+ask.ExampleDesign()+
		`,"width":"3-1/2","height":5,"thickness":0.5,"caliper":0.012,"count":2}]}`).ok()

	holders := decode[wire.Matches](postJSON(t, "/v1/match", `{"unit":"in","width":"3-1/2","height":5,"thickness":0.5,"holders":[
		{"id":"described","kind":"own","design":`+ask.ExampleDesign()+`,"unit":"in","width":"3-1/2","height":5,"thickness":0.5,"caliper":0.012},
		{"id":"of the catalogue","kind":"sleeve","scores":"two","reveal":"1/4in","unit":"in","width":"3-1/2","height":5,"thickness":0.5,"caliper":0.012}]}`).ok())
	require.Len(t, holders.Ranked, 2)
	holders.Ranked[0].ID = holders.Ranked[1].ID
	assert.Equal(t, holders.Ranked[1], holders.Ranked[0])

	line := `{"call":"/v1/solve/own",` + describedBody("")[1:]
	a := call(t, quiet(), http.MethodPost, "/v1/batch", line+"\n", "Content-Type", "application/x-ndjson").ok()
	assert.Contains(t, a.Body.String(), `"status":200`)
	assert.Contains(t, a.Body.String(), `"kind":"own"`)
}

// unreachable is a design with a fold that no order of work leads to.
const unreachable = `{"design":"Stand for a menu","pieces":[{"piece":"stand","panels":[
		{"panel":"base","across":{"covers":"width"},"up":{"covers":"height"}},
		{"panel":"left wall","on":"base","edge":"left","reach":"25 mm"},
		{"panel":"front lip","on":"base","edge":"bottom","reach":"5 mm"},
		{"panel":"wing","on":"front lip","edge":"left","fold":"mountain","reach":"93 mm"},
		{"panel":"flap","on":"left wall","edge":"bottom","fold":"mountain","angle":"180","reach":"12 mm"}]}]}`

// A fold that no order of work leads to is refused by every call, with its place.
func TestFoldsThatNothingLeadsToAreRefused(t *testing.T) {
	body := `{"unit":"mm","width":60,"height":90,"thickness":20,"caliper":0.3,"design":` + unreachable + `}`
	for _, path := range []string{"/v1/solve/own", "/v1/guide/own"} {
		p := postJSON(t, path, body).problem(http.StatusUnprocessableEntity)
		require.Len(t, p.Errors, 1)
		assert.Contains(t, p.Errors[0].Detail, "nothing leads to the folds of flap")
		if path == "/v1/solve/own" {
			assert.Equal(t, "design.pieces[0].panels[4]", p.Errors[0].Name)
		}
	}
}

// What is wrong with a design is told with the place in it.
func TestProblemsNameThePlaceInTheDesign(t *testing.T) {
	for _, c := range []struct{ from, to, place, hint string }{
		{`"edge":"left"`, `"edge":"lefft"`, "design.pieces[0].panels[1].edge", "left"},
		{`"on":"back"`, `"on":"bock"`, "design.pieces[0].panels[1].on", "back"},
		{`"glue":"lap"`, `"glue":"lapp"`, "design.joins[0]", "lap"},
		{`"name":"lap"`, `"name":"width"`, "design.pieces[0].panels[4].reach", ""},
	} {
		body := strings.Replace(describedBody(""), c.from, c.to, 1)
		require.NotEqual(t, describedBody(""), body)
		p := postJSON(t, "/v1/solve/own", body).problem(http.StatusBadRequest)
		require.NotEmpty(t, p.Errors)
		assert.Equal(t, c.place, p.Errors[0].Name)
		assert.Contains(t, p.Errors[0].Hint, c.hint)
	}
	p := get(t, "/v1/solve/own?unit=in&width=3").problem(http.StatusBadRequest)
	assert.Equal(t, "design", p.Errors[0].Name)
	assert.True(t, json.Valid([]byte(ask.ExampleDesign())))
}

// A body that cannot be read is told of once, as that of any other kind is.
func TestBodiesWithoutADesign(t *testing.T) {
	for name, c := range map[string]struct {
		media  string
		body   io.Reader
		status int
	}{
		"another media type": {"text/xml", strings.NewReader("<design/>"), http.StatusUnsupportedMediaType},
		"none at all":        {"application/json", strings.NewReader(""), http.StatusBadRequest},
		"too large":          {"application/json", strings.NewReader(`{"design":"` + strings.Repeat("a", int(DefaultConfig().MostBody)) + `"}`), http.StatusRequestEntityTooLarge},
		"no JSON":            {"application/json", strings.NewReader(`{"design":`), http.StatusBadRequest},
		"no object":          {"application/json", strings.NewReader(`[{"design":{}}]`), http.StatusBadRequest},
		"broken off":         {"application/json", io.MultiReader(strings.NewReader(`{"design":`), iotest.ErrReader(io.ErrUnexpectedEOF)), http.StatusBadRequest},
	} {
		said := make([]string, 0, 2)
		for _, path := range []string{"/v1/solve/own", "/v1/solve/sleeve"} {
			text, err := io.ReadAll(c.body)
			request := httptest.NewRequest(http.MethodPost, path, io.MultiReader(strings.NewReader(string(text)), failing{err}))
			request.Header.Set("Content-Type", c.media)
			w := httptest.NewRecorder()
			shared().Handler().ServeHTTP(w, request)
			assert.Equal(t, c.status, w.Code, "%s: %s", name, w.Body)
			said = append(said, decode[wire.Problem](answer{t, w}).Detail)
			c.body = io.MultiReader(strings.NewReader(string(text)), failing{err})
		}
		if name != "none at all" { // of a design that is what is missing
			assert.Equal(t, said[1], said[0], name)
		}
	}
}

// A size of a design that has the name of something that every request has is refused.
func TestSizesOfADesignHaveNamesOfTheirOwn(t *testing.T) {
	body := strings.ReplaceAll(strings.ReplaceAll(describedBody(""), `"name":"lap"`, `"name":"caliper"`), `"reach":"lap"`, `"reach":"caliper"`)
	p := postJSON(t, "/v1/solve/own", body).problem(http.StatusBadRequest)
	assert.Equal(t, "design.sizes", p.Errors[0].Name)
	assert.Equal(t, "caliper", p.Errors[0].Value)
}

// What a design leaves to choose is a name of its requests, and given back.
func TestChoicesOfADesignAreNames(t *testing.T) {
	design := strings.Replace(ask.ExampleDesign(), `"pieces":`, `"choices":[{"name":"foot","of":["open","closed"],"help":"What is below."}],"pieces":`, 1)
	design = strings.Replace(design, `{"panel":"lap"`, `{"panel":"foot","on":"back","edge":"bottom","narrower":"1/8 in","reach":{"like":"right side"},"when":{"foot":"closed"}},{"panel":"lap"`, 1)
	body := func(more string) string { return strings.Replace(describedBody(more), ask.ExampleDesign(), design, 1) }
	open := decode[wire.Solution](postJSON(t, "/v1/solve/own", body("")).ok())
	closed := decode[wire.Solution](postJSON(t, "/v1/solve/own", body(`,"foot":"closed"`)).ok())
	assert.Equal(t, len(open.Pieces[0].Panels)+1, len(closed.Pieces[0].Panels))
	again := decode[wire.Solution](get(t, closed.Links.Self).ok())
	assert.Equal(t, closed.Pieces, again.Pieces)
	assert.Contains(t, postJSON(t, "/v1/solve/own", body(`,"foot":"ajar"`)).Body.String(), "closed")
}

// Every count of a kind, and a size that is given or is not, has a design of its own.
func TestADesignHoldsForItsCountAlone(t *testing.T) {
	for request, name := range map[string]string{"fold=accordion": "fold-accordion.panels-4", "fold=accordion&panels=6": "fold-accordion.panels-6",
		"fold=gate": "fold-gate", "fold=gate&gap=3mm": "fold-gate.gap-given"} {
		assert.Equal(t, "folded-card."+name, decode[wire.Design](get(t, "/v1/kinds/folded-card/design?"+request).ok()).Name)
	}
}

// A kind is told as the design that agrees with the request, and the designs to learn
// from are listed; each is one that /v1/solve/own takes.
func TestKindsAreToldAsDesigns(t *testing.T) {
	thin := decode[wire.Design](get(t, "/v1/kinds/sleeve/design?unit=in&width=3-1/2&height=5&thickness=0.09&caliper=0.012").ok())
	assert.Equal(t, "sleeve.scores-one", thin.Name, "as the kind would be scored")
	thick := decode[wire.Design](get(t, "/v1/kinds/sleeve/design?scores=two").ok())
	assert.Equal(t, "sleeve.scores-two", thick.Name)
	tray := decode[wire.Design](get(t, "/v1/kinds/tray/design?corners=outside").ok())
	assert.Equal(t, "tray.corners-outside.walls-single", tray.Name)
	assert.Equal(t, "tray.corners-inside.walls-double", decode[wire.Design](get(t, "/v1/kinds/tray/design?walls=double&corners=inside").ok()).Name)
	assert.Equal(t, "shape", get(t, "/v1/kinds/sleeve/design?shape=round").problem(http.StatusUnprocessableEntity).Errors[0].Name)
	p := get(t, "/v1/kinds/prism-box/design").problem(http.StatusNotFound)
	assert.Contains(t, p.Errors[0].Detail, "not given as a design")
	list := decode[wire.DesignList](get(t, "/v1/designs").ok())
	assert.GreaterOrEqual(t, len(list.Designs), 8)
	for _, d := range list.Designs {
		assert.NotEmpty(t, d.Title)
		assert.NotEmpty(t, d.Help)
		body := `{"design":` + string(d.Design) + `,"unit":"mm","width":90,"height":127,"thickness":20,"caliper":0.3}`
		s := decode[wire.Solution](call(t, quiet(), http.MethodPost, d.Links.Solve, body, "Content-Type", "application/json").ok())
		assert.True(t, s.Proof.Closes && s.Proof.Holds)
		guide := call(t, quiet(), http.MethodPost, "/v1/guide/own", body, "Content-Type", "application/json").ok()
		assert.Contains(t, guide.Body.String(), `"steps":[{`, "an order of work is found: %s", d.Name)
	}
}

// Designs are kept ready for whoever sends them again, but only so many: anybody may
// send as many as there are.
func TestDesignsKeptReadyAreFew(t *testing.T) {
	d := quiet().kinds.own
	for i := range mostDescribed + 1 {
		text := strings.Replace(ask.ExampleDesign(), `{"design":"`, fmt.Sprintf(`{"design":"%d `, i), 1)
		require.NotEqual(t, text, ask.ExampleDesign())
		e, p := d.entry(shared().host, nil, text)
		require.Nil(t, p)
		again, _ := d.entry(shared().host, nil, text)
		assert.Same(t, e, again)
		assert.LessOrEqual(t, len(d.ready), mostDescribed)
		assert.Equal(t, i%mostDescribed+1, len(d.ready))
	}
}

// A check is of what can be made, too: sizes that close are refused where nothing leads
// to the folds, by the place of the fold.
func TestAFoldThatNothingLeadsToIsNotChecked(t *testing.T) {
	k, err := own.Read([]byte(unreachable))
	require.NoError(t, err)
	s, err := solve.Solve(t.Context(), sampleRequest(k, nil))
	require.NoError(t, err)
	more, err := json.Marshal(measuredLists(s.ReadOff()))
	require.NoError(t, err)
	p := postJSON(t, "/v1/check/own", `{"unit":"mm","width":100,"height":150,"thickness":20,"caliper":0.3,"design":`+unreachable+","+string(more[1:])).problem(http.StatusUnprocessableEntity)
	require.Len(t, p.Errors, 1)
	assert.Equal(t, "design.pieces[0].panels[4]", p.Errors[0].Name)
	assert.Contains(t, p.Errors[0].Hint, "fold one of the two the other way")
}

// Of several designs that a request contradicts the nearest is told of, wherever it stands.
func TestTheNearestDesignIsToldOf(t *testing.T) {
	tray, _ := repertoire.Lookup("tray")
	far, near := own.Example{With: map[string]string{"corners": "inside", "walls": "single"}}, own.Example{With: map[string]string{"corners": "outside", "walls": "single"}}
	q := &ask.KindDesign{}
	q.Request = &solve.Request{Kind: tray, Options: map[string]enclosure.Value{"corners": {Choice: "outside"}, "walls": {Choice: "double"}}}
	for _, of := range [][]own.Example{{far, near}, {near, far}} {
		e, err := agreeing(t.Context(), of, q)
		assert.Nil(t, e)
		var f fault.Fault
		require.ErrorAs(t, err, &f)
		assert.Equal(t, "walls", f.Field)
		assert.Equal(t, "double", f.Value)
	}
}
