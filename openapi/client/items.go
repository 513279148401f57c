package client

import (
	"encoding/json"
	"strings"
)

// LayerOf is an enclosure as a layer of a portfolio, with the names of its own
// request: a RequestSolveTray or its like.
func LayerOf(enclosure Request) LayersValueSolve { return partOf[LayersValueSolve](enclosure) }

// ItemOf is an enclosure as an item of an order, of which every piece is wanted.
func ItemOf(enclosure Request) ItemsValue { return partOf[ItemsValue](enclosure) }

// partOf writes an enclosure with its kind among its names, and reads that as a
// part of another request.
func partOf[P any](enclosure Request) (part P) {
	names, err := members(enclosure)
	if err == nil {
		names["kind"] = strings.TrimPrefix(enclosure.path(), "/v1/solve/")
		var text []byte
		if text, err = json.Marshal(names); err == nil {
			err = json.Unmarshal(text, &part)
		}
	}
	if err != nil {
		panic(err) // a request is texts and numbers
	}
	return part
}

// members lists what a request names.
func members(request Request) (map[string]any, error) {
	text, err := json.Marshal(request)
	if err != nil {
		return nil, err
	}
	var names map[string]any
	return names, json.Unmarshal(text, &names)
}
