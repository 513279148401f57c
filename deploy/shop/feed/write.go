package main

import (
	"encoding/csv"
	"encoding/json"
	"io"
	"math"
	"strconv"
)

// writeTable writes the feed for carriers and spreadsheets.
func writeTable(w io.Writer, kits []*kit) error {
	table := csv.NewWriter(w)
	table.UseCRLF = true
	rows := [][]string{{"id", "title", "price", "length_mm", "width_mm", "height_mm", "weight_g", "empty_percent", "paper", "minutes", "cost", "problem"}}
	for _, k := range kits {
		row := []string{k.cells["id"], k.cells["title"], k.cells["price"]}
		for _, x := range []float64{k.length, k.width, k.height, k.weight, 100 * k.empty, k.paper, k.minutes, k.cost} {
			row = append(row, written(x, k.problem))
		}
		rows = append(rows, append(row, k.problem))
	}
	return table.WriteAll(rows)
}

// written is a number to two places; what is not known is left empty.
func written(x float64, problem string) string {
	if x == 0 || problem != "" {
		return ""
	}
	return strconv.FormatFloat(math.Round(x*100)/100, 'f', -1, 64)
}

// product is a Product of schema.org with its packed sizes.
type product struct {
	Type   string    `json:"@type"`
	ID     string    `json:"sku"`
	Name   string    `json:"name"`
	Depth  quantity  `json:"depth"`
	Width  quantity  `json:"width"`
	Height quantity  `json:"height"`
	Weight *quantity `json:"weight,omitempty"`
}

// quantity is a QuantitativeValue of schema.org; its unit codes are those of
// UN/CEFACT Recommendation 20: MMT for millimetres, GRM for grams.
type quantity struct {
	Type  string  `json:"@type"`
	Value float64 `json:"value"`
	Unit  string  `json:"unitCode"`
}

// writeProducts writes the kits without a problem as a list of schema.org.
func writeProducts(w io.Writer, kits []*kit) error {
	items := []product{}
	for _, k := range kits {
		if k.problem != "" {
			continue
		}
		length := func(mm float64) quantity { return quantity{"QuantitativeValue", math.Round(mm*10) / 10, "MMT"} }
		p := product{Type: "Product", ID: k.cells["id"], Name: k.cells["title"], Depth: length(k.length), Width: length(k.width), Height: length(k.height)}
		if k.weight > 0 {
			p.Weight = &quantity{"QuantitativeValue", math.Round(k.weight*10) / 10, "GRM"}
		}
		items = append(items, p)
	}
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	return e.Encode(map[string]any{"@context": "https://schema.org", "@type": "ItemList", "itemListElement": items})
}
