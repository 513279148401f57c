package mail

import (
	"bytes"
	"embed"
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"

	"creasefit/internal/measure"
)

//go:embed posts/*.json
var tables embed.FS

// Posts returns the posts in the order of their listing. What they refer to is
// shared and must not be changed; the list is the caller's.
func Posts() []*Post { return slices.Clone(posts()) }

// posts reads the tables once: a file a post, as Post has it.
var posts = sync.OnceValue(func() (all []*Post) {
	for _, name := range [...]string{"us", "uk", "ca", "de", "au", "be", "upu"} {
		text, err := tables.ReadFile("posts/" + name + ".json")
		var table struct {
			Post
			Unit string
		}
		if err == nil {
			err = strictly(text, &table)
		}
		if err != nil {
			panic("mail: " + name + ": " + err.Error()) // the tables are our own
		}
		if table.Post.Unit = measure.Inch; table.Unit == measure.Millimetre.String() {
			table.Post.Unit = measure.Millimetre
		}
		all = append(all, &table.Post)
	}
	return all
})

// strictly reads JSON, in which every member has a place.
func strictly(text []byte, to any) error {
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	return d.Decode(to)
}

// UnmarshalJSON reads bounds by their sources.
func (l *Limits) UnmarshalJSON(text []byte) error {
	var groups []struct {
		Source string
		Bounds []Limit
	}
	err := strictly(text, &groups)
	for _, g := range groups {
		for _, bound := range g.Bounds {
			bound.Source = g.Source
			*l = append(*l, bound)
		}
	}
	return err
}

// UnmarshalJSON reads a bound, such as "length >= 140 mm", or an object of it and what
// else is said of it.
func (l *Limit) UnmarshalJSON(text []byte) error {
	var w struct {
		At, Grace, Doubt string
		Hearsay          bool
		Unless           []Limit
	}
	if text[0] == '"' {
		text = fmt.Appendf(nil, `{"at": %s}`, text)
	}
	if err := strictly(text, &w); err != nil {
		return err
	}
	words := strings.SplitN(w.At, " ", 3)
	if len(words) < 3 {
		return fmt.Errorf("%q is no bound", w.At)
	}
	var of Quantity
	for ; of.String() != words[0]; of++ {
		if of == OfRatio {
			return fmt.Errorf("%q is no quantity", words[0])
		}
	}
	*l = Limit{Least: words[1][0] == '>', Open: len(words[1]) == 1, Doubt: w.Doubt, Hearsay: w.Hearsay, Unless: w.Unless}
	var err error
	if l.Bound, err = amount(of, words[2]); err == nil && w.Grace != "" {
		l.Grace, err = amount(of, w.Grace)
	}
	return err
}

// units are what an amount is counted in, a ratio without one.
var units = map[string]float64{"mm": 1e6, "in": 25.4e6, "g": picogram, "oz": ounce * picogram, "": ratioUnit}

// amount reads so much of a quantity.
func amount(of Quantity, text string) (Amount, error) {
	number, unit, _ := strings.Cut(text, " ")
	n, err := strconv.ParseFloat(number, 64)
	if units[unit] == 0 || (unit == "") != (of == OfRatio) {
		return Amount{}, fmt.Errorf("%q has no unit of ours", text)
	}
	return Amount{of, int64(math.Round(n * units[unit]))}, err
}

// UnmarshalText reads one trait.
func (t *Trait) UnmarshalText(text []byte) error {
	for i, name := range [...]string{"rigid", "uneven", "clasp", "plastic", "box", "irregular", "single-card", "folded-card", "address-across"} {
		if name == string(text) {
			*t = 1 << i
			return nil
		}
	}
	return fmt.Errorf("%q is no trait", text)
}
