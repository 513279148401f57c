package api

import (
	"context"
	"encoding/json"
	"net/url"

	"creasefit/internal/enclosure"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// checkExample is the check of what the example of a solution gives, as
// somebody would read it off the pieces. It is empty for a kind that the
// example cannot be made of, which the specification's generator refuses.
func checkExample(k *enclosure.Kind) (query, body string) {
	query, body = solveExample()
	r := newReading(kindTable(k, measurementFormats))
	defer r.release()
	pairs, err := url.ParseQuery(query)
	if err != nil {
		return "", ""
	}
	for _, p := range r.table.params {
		if pairs.Has(p.Name) {
			r.add(p.Name, pairs.Get(p.Name))
		}
	}
	r.parse()
	s, err := solve.Solve(context.Background(), r.solveRequest(k))
	if err != nil {
		return "", ""
	}
	return measured(query, body, s.ReadOff())
}

// measured adds measurements to a query and to a JSON body.
func measured(query, body string, own *solve.Measurements) (string, string) {
	finest := finestMark(measure.Inch)
	lists := map[string][]string{}
	for _, b := range own.Blanks {
		lists["blank"] = append(lists["blank"], string(appendSizeURL(nil, finest, b)))
	}
	for name, sizes := range map[string][]measure.Length{"marks": own.Marks, "rises": own.Rises, "depths": own.Depths} {
		for _, l := range sizes {
			lists[name] = append(lists[name], finest.FormatURL(l))
		}
	}
	more, err := json.Marshal(lists)
	if err != nil {
		return "", ""
	}
	return query + "&" + url.Values(lists).Encode(), body[:len(body)-1] + "," + string(more[1:])
}
