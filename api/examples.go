package api

import (
	"context"
	"encoding/json"
	"net/url"
	"strings"

	"creasefit/api/ask"
	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// solveExample is a request that the kind can be made for: a set of tasting
// cards, or a box of tea for a kind that thin contents leave nothing of. The
// ruler is fine enough for all.
func solveExample(k *enclosure.Kind) (query, body string) {
	query, body, _ = solvedExample(k)
	return query, body
}

// checkExample is the check of what the example of a solution gives, as
// somebody would read it off the pieces.
func checkExample(k *enclosure.Kind) (query, body string) {
	query, body, s := solvedExample(k)
	if s == nil {
		return query, body // the specification's generator refuses this kind
	}
	lists := measuredLists(s.ReadOff())
	more, _ := json.Marshal(lists) // texts always have a literal
	return query + "&" + url.Values(lists).Encode(), body[:len(body)-1] + "," + string(more[1:])
}

// solvedExample is the example of a kind with its solution, nil if it has none.
func solvedExample(k *enclosure.Kind) (query, body string, s *solve.Solution) {
	inQuery, inBody := "", ""
	if k.Design != "" {
		inQuery, inBody = "design="+url.QueryEscape(k.Design)+"&", `"design":`+k.Design+`,`
	}
	for _, thickness := range [...]string{"0.09", "1"} {
		query = inQuery + "unit=in&width=3-1/2&height=5&thickness=" + thickness + "&caliper=0.012&fit=easy&ruler=1/64in"
		body = `{` + inBody + `"unit":"in","width":"3-1/2","height":5,"thickness":` + thickness + `,"caliper":0.012,"fit":"easy","ruler":"1/64in"}`
		if s = exampleOf(k, query); s != nil {
			break
		}
	}
	return query, body, s
}

// exampleOf returns the solution of a query, nil if there is none.
func exampleOf(k *enclosure.Kind, query string) *solve.Solution {
	asked := ask.NewSolve(k).Take()
	asked.AddQuery(query)
	asked.Parse()
	if !asked.Check() {
		return nil
	}
	s, err := solve.Solve(context.Background(), asked.Q.Request)
	if err != nil {
		return nil
	}
	return s
}

// portfolioCheckExample is the check of a tray in a sleeve as they are solved.
func portfolioCheckExample() (query, body string) {
	const common = "unit=in&width=5&height=4&thickness=1&caliper=0.012&fit=easy"
	asked := ask.NewForm(ask.Portfolios()).Take()
	asked.AddQuery(common + "&layers=tray&layers=sleeve")
	asked.Parse()
	asked.Check()
	p, err := solve.SolvePortfolio(context.Background(), asked.Q.Layers)
	if err != nil {
		return common, "" // the specification's generator refuses it
	}
	query = common
	var layers []string
	for _, s := range p.Solutions {
		more, _ := json.Marshal(measuredLists(s.ReadOff()))
		layer := `{"kind":"` + s.Request.Kind.Name + `",` + string(more[1:])
		layers = append(layers, layer)
		query += "&layers=" + url.QueryEscape(layer)
	}
	return query, `{"unit":"in","width":5,"height":4,"thickness":1,"caliper":0.012,"fit":"easy","layers":[` + strings.Join(layers, ",") + `]}`
}

// measuredLists are measurements by their names in a request.
func measuredLists(own *solve.Measurements) map[string][]string {
	finest := measure.Finest(measure.Inch)
	lists := map[string][]string{}
	for _, b := range own.Blanks {
		lists["blank"] = append(lists["blank"], string(ask.AppendSize(nil, measure.Inch, b[0], b[1])))
	}
	for name, sizes := range map[string][]measure.Length{"marks": own.Marks, "rises": own.Rises, "depths": own.Depths} {
		for _, l := range sizes {
			lists[name] = append(lists[name], finest.FormatURL(l))
		}
	}
	return lists
}
