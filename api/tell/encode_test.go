package tell

import (
	"bytes"
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// node has every shape that answers are made of.
type node struct {
	Text     string   `json:"text"`
	Rest     string   `json:"rest,omitempty"`
	Whole    int      `json:"whole"`
	Long     int64    `json:"long,omitempty"`
	Yes      bool     `json:"yes"`
	Real     float64  `json:"real"`
	Maybe    *float64 `json:"maybe,omitempty"`
	Pair     [2]inner `json:"pair"`
	List     []node   `json:"list,omitempty"`
	Below    *node    `json:"below,omitempty"`
	Ints     []int    `json:"ints,omitempty"`
	Hidden   string   `json:"-"`
	Embedded          // its members stand among these
	*Pointed          // absent if it is nil
}

type inner struct {
	A float64 `json:"a"`
}

// Embedded and Pointed are embedded.
type Embedded struct {
	Inside string `json:"inside"`
}

// Pointed is embedded by a pointer.
type Pointed struct {
	Far float64 `json:"far"`
}

func drawNode(depth int) *rapid.Generator[node] {
	return rapid.Custom(func(t *rapid.T) node {
		n := node{
			Text: rapid.String().Draw(t, "text"), Rest: rapid.StringN(0, 3, -1).Draw(t, "rest"), Whole: rapid.Int().Draw(t, "whole"),
			Long: rapid.Int64().Draw(t, "long"), Yes: rapid.Bool().Draw(t, "yes"), Real: rapid.Float64().Draw(t, "real") + 0, Hidden: "never told",
			Pair: [2]inner{{rapid.Float64Range(-1e6, 1e6).Draw(t, "a") + 0}, {float64(rapid.Int32().Draw(t, "nm")) / 1e6}},
			Ints: rapid.SliceOfN(rapid.Int(), 0, 3).Draw(t, "ints"), Embedded: Embedded{rapid.String().Draw(t, "inside")},
		}
		if rapid.Bool().Draw(t, "pointers") {
			n.Maybe, n.Pointed = &n.Real, &Pointed{n.Pair[0].A}
		}
		if depth > 0 {
			n.List = rapid.SliceOfN(drawNode(depth-1), 0, 2).Draw(t, "list")
			n.Below = new(drawNode(depth-1).Draw(t, "below"))
		}
		return n
	})
}

// TestSameAsTheStandardEncoder holds the encoder to encoding/json: what is
// written reads back to the same values, and has the same members in the same
// order.
func TestSameAsTheStandardEncoder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := drawNode(2).Draw(t, "node")
		want, err := json.Marshal(n)
		require.NoError(t, err)
		got := AppendJSON([]byte("before"), &n)
		require.Equal(t, "before", string(got[:6]))
		require.True(t, json.Valid(got[6:]), "%s", got)
		var back node
		require.NoError(t, json.Unmarshal(got[6:], &back))
		again, err := json.Marshal(back)
		require.NoError(t, err)
		require.Equal(t, string(want), string(again))
	})
}

// TestWhatTheStandardEncoderDoesNot covers what the answers want otherwise.
func TestWhatTheStandardEncoderDoesNot(t *testing.T) {
	type named struct {
		Name string  `json:"-" member:"name"`
		At   float64 `json:"at"`
	}
	assert.Equal(t, `{"b":{"at":1},"a\u003c":{"at":0.5}}`, string(AppendJSON(nil, []named{{"b", 1}, {"a<", 0.5}})), "the order is kept")
	assert.Equal(t, `[]`, string(AppendJSON(nil, []int(nil))))
	assert.Equal(t, `{}`, string(AppendJSON(nil, struct{}{})))
	assert.Equal(t, `"\u003cb\u003e \u000a \"\\ ü `+"\ufffd"+`"`, string(AppendString(nil, "<b> \n \"\\ ü \xff")))
	assert.Equal(t, `{"text":"","whole":0,"yes":false,"real":0,"pair":[{"a":0},{"a":0}],"inside":""}`, string(AppendJSON(nil, node{})))
	assert.Panics(t, func() { AppendJSON(nil, map[string]int{}) }, "a map has no order")
}

// TestNumbers checks that numbers have no exponent, no tail and no negative
// zero, and read back to what they are.
func TestNumbers(t *testing.T) {
	for text, x := range map[string]float64{
		"0": math.Copysign(0, -1), "3.625": 3.625, "-0.000001": -1e-6, "1000000": 1e6, "0.1": 0.1, "92.075": 92.075, "-12": -12,
		"100000000000000000000": 1e20, "0.0000001": 1e-7, "999999999.000001": 999999999.000001,
	} {
		assert.Equal(t, text, string(AppendNumber(nil, x)))
	}
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.OneOf(rapid.Float64(), rapid.Float64Range(-1e10, 1e10)).Draw(t, "x")
		text := string(AppendNumber(nil, x))
		back, err := strconv.ParseFloat(text, 64)
		require.NoError(t, err)
		require.Equal(t, x, back)
		require.NotContains(t, text, "e")
	})
}

// TestEveryCharacterAtEveryPlace of a text is written as encoding/json writes it, which
// escapes some more with letters and & as well (RFC 8259, 7: what is written reads back).
func TestEveryCharacterAtEveryPlace(t *testing.T) {
	for c := range 256 {
		for length := 1; length <= 18; length++ {
			for at := range length {
				text := []byte(strings.Repeat("a", length))
				text[at] = byte(c)
				got := AppendString(nil, string(text))
				var back string
				require.NoError(t, json.Unmarshal(got, &back), "%q", text)
				require.Equal(t, strings.ToValidUTF8(string(text), "\ufffd"), back)
				require.Equal(t, strings.ContainsAny(string(text), "\"\\<>") || c < ' ', bytes.ContainsRune(got, '\\'), "%q", text)
			}
		}
	}
}
