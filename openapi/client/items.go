package client

import (
	"encoding/json"
	"strings"
)

// MarshalJSON writes an item of an order, with the names of its enclosure
// among its own.
func (i ItemsValue) MarshalJSON() ([]byte, error) {
	type own ItemsValue // without this method
	return withEnclosure(own(i), i.Enclosure)
}

// MarshalJSON writes a layer of a portfolio in the same way.
func (l LayersValueSolve) MarshalJSON() ([]byte, error) {
	type own LayersValueSolve
	return withEnclosure(own(l), l.Enclosure)
}

// withEnclosure writes a value with the kind and the names of an enclosure, if
// there is one, among its own members.
func withEnclosure(own any, enclosure Request) ([]byte, error) {
	if enclosure == nil {
		return json.Marshal(own)
	}
	names, err := members(enclosure)
	if err != nil {
		return nil, err
	}
	text, err := json.Marshal(own)
	if err != nil {
		return nil, err
	}
	names["kind"] = strings.TrimPrefix(enclosure.path(), "/v1/solve/")
	if err := json.Unmarshal(text, &names); err != nil { // adds its members
		return nil, err
	}
	return json.Marshal(names)
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
