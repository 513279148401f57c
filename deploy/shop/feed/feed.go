package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net/http"
	"net/url"
	"strconv"
	"strings"
)

// feed is what kits are asked about and counted with.
type feed struct {
	service    string
	sheet      string
	sheetPrice float64
	batch      int
	hour, glue float64
}

// kit is one line of the list with what came back.
type kit struct {
	cells                 map[string]string // of the list, by heading
	length, width, height float64           // of the packed kit, millimetres
	weight                float64           // grams; zero if that of its paper or its contents is not known
	empty                 float64           // share of the packed kit that is neither contents nor their sides, 0 to 1
	paper, minutes, cost  float64
	problem               string
}

// Seconds of work by hand: for a position of the trimmer, and for a cut at it.
const secondsSetting, secondsCut = 40, 15

// pointers are the values of a solution that a kit wants, in millimetres and grams.
var pointers = []string{"/outside/width/mm", "/outside/height/mm", "/outside/thickness/mm", "/outside/mass_g", "/given/width/mm", "/given/height/mm", "/given/thickness/mm"}

// read reads a list as a shop exports it and asks about every line.
func (f *feed) read(list io.Reader) ([]*kit, error) {
	query := url.Values{"call": {"/v1/solve"}, "columns": {strings.Join(pointers, ",")}}
	answer, err := http.Post(f.service+"/v1/batch?"+query.Encode(), "text/csv", list)
	if err != nil {
		return nil, err
	}
	defer answer.Body.Close()
	if answer.StatusCode != http.StatusOK {
		return nil, refusal(answer.Body)
	}
	rows, err := readRows(answer.Body, answer.Header.Get("Table-Dialect"))
	if err != nil || len(rows) == 0 {
		return nil, errors.Join(errors.New("the list has no rows"), err)
	}
	kits := make([]*kit, 0, len(rows)-1)
	for _, row := range rows[1:] {
		kits = append(kits, newKit(rows[0], row))
	}
	return kits, f.price(kits)
}

// refusal is the error of a problem document.
func refusal(body io.Reader) error {
	var p struct{ Detail string }
	if err := json.NewDecoder(body).Decode(&p); err != nil {
		return err
	}
	return errors.New(p.Detail)
}

// readRows reads a table as it comes back: in the dialect it was sent in.
func readRows(body io.Reader, dialect string) ([][]string, error) {
	r := csv.NewReader(body)
	for name, c := range map[string]rune{"semicolon": ';', "tab": '\t', "bar": '|'} {
		if strings.HasPrefix(dialect, "separator="+name) {
			r.Comma = c
		}
	}
	return r.ReadAll()
}

// newKit reads a row: the cells of the list, its line, its problem, the values.
func newKit(header, row []string) *kit {
	own := len(header) - len(pointers) - 2
	k := &kit{cells: map[string]string{}, problem: row[own+1]}
	for i, heading := range header[:own] {
		k.cells[strings.ToLower(strings.TrimPrefix(heading, "\ufeff"))] = row[i]
	}
	v := make([]float64, len(pointers))
	for i, text := range row[own+2:] {
		v[i] = number(text)
	}
	// Of the three sizes of a parcel the length is the longest.
	k.length, k.width, k.height = v[0], v[1], v[2]
	if k.width > k.length {
		k.length, k.width = k.width, k.length
	}
	if outside := v[0] * v[1] * v[2]; outside > 0 {
		k.empty = max(0, 1-v[4]*v[5]*v[6]/outside)
	}
	if contents := number(k.cells["weight"]); contents > 0 && v[3] > 0 {
		k.weight = contents + v[3]
	}
	return k
}

// number reads a number with either decimal mark; zero for anything else.
func number(text string) float64 {
	x, _ := strconv.ParseFloat(strings.Replace(strings.TrimSpace(text), ",", ".", 1), 64)
	return x
}

// names are the headings that an item of an order takes as they are.
var names = []string{"kind", "width", "height", "thickness", "caliper", "stock", "fit", "ruler"}

// price asks for the cut plan of every kit without a problem and adds up what one
// costs.
func (f *feed) price(kits []*kit) error {
	var lines bytes.Buffer
	var asked []*kit
	for _, k := range kits {
		if k.problem != "" {
			continue
		}
		item := map[string]any{"count": f.batch}
		for _, name := range names {
			if text := k.cells[name]; text != "" {
				item[name] = strings.Replace(text, ",", ".", 1)
			}
		}
		line := map[string]any{"call": "/v1/yield", "sheet": []any{map[string]any{"size": f.sheet, "price": f.sheetPrice}}, "items": []any{item}, "show": "sheets,work"}
		if unit := k.cells["unit"]; unit != "" {
			line["unit"] = unit
		}
		if err := json.NewEncoder(&lines).Encode(line); err != nil {
			return err
		}
		asked = append(asked, k)
	}
	if len(asked) == 0 {
		return nil
	}
	answer, err := http.Post(f.service+"/v1/batch", "application/x-ndjson", &lines)
	if err != nil {
		return err
	}
	defer answer.Body.Close()
	d := json.NewDecoder(answer.Body)
	for _, k := range asked {
		if err := f.priceFrom(d, k); err != nil {
			return err
		}
	}
	return nil
}

// priceFrom reads one cut plan.
func (f *feed) priceFrom(d *json.Decoder, k *kit) error {
	var line struct {
		Answer *struct {
			Sheets int
			Work   struct{ Settings, Cuts int }
		}
		Problem *struct{ Detail string }
	}
	if err := d.Decode(&line); err != nil {
		return fmt.Errorf("the cut plans break off: %w", err)
	}
	if line.Problem != nil {
		k.problem = "! cut plan: " + line.Problem.Detail
		return nil
	}
	n := float64(f.batch)
	k.paper = float64(line.Answer.Sheets) * f.sheetPrice / n
	k.minutes = float64(line.Answer.Work.Settings*secondsSetting+line.Answer.Work.Cuts*secondsCut) / 60 / n
	k.cost = k.paper + k.minutes/60*f.hour + f.glue
	return nil
}
