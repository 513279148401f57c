package guide

import (
	"encoding/json"
	"fmt"
	"strings"
)

// message is one text of a catalogue: pieces by plural form, "other" for one
// that does not depend on a count. It counts by the argument {n}.
//
// In a catalogue it is a string with arguments in braces, "{at} from the
// left", a name in a case as {of:dat}; or an object of such strings by plural
// form.
type message struct {
	forms map[string][]piece
}

// piece is literal text, or an argument if key is set.
type piece struct{ literal, key, form string }

// UnmarshalJSON reads a string or an object of strings by plural form.
func (m *message) UnmarshalJSON(data []byte) error {
	if data[0] == '"' {
		data = fmt.Appendf(nil, `{"other": %s}`, data)
	}
	var forms map[string]string
	if err := json.Unmarshal(data, &forms); err != nil {
		return err
	}
	m.forms = make(map[string][]piece, len(forms))
	for form, text := range forms {
		pieces, err := split(text)
		if err != nil {
			return err
		}
		m.forms[form] = pieces
	}
	return nil
}

// split parts a text at its arguments.
func split(text string) ([]piece, error) {
	var pieces []piece
	for rest := text; rest != ""; {
		literal, after, found := strings.Cut(rest, "{")
		if literal != "" {
			pieces = append(pieces, piece{literal: literal})
		}
		if !found {
			break
		}
		inside, tail, closed := strings.Cut(after, "}")
		key, form, _ := strings.Cut(inside, ":")
		if !closed || key == "" {
			return nil, fmt.Errorf("unfinished argument in %q", text)
		}
		pieces, rest = append(pieces, piece{key: key, form: form}), tail
	}
	return pieces, nil
}

// args are the values of a message's arguments: a measure.Length is a reading,
// a fine one a small size, a noun the name of a part, an int a count, a string
// stands as it is, told is a message of its own.
type args map[string]any

// told is a message inside another one.
type told struct {
	key string
	a   args
}

// say writes a message. An unknown message or argument stays in its braces,
// which no guide of any test has.
func (w *writer) say(key string, a args) string { return w.write(w.c.Messages[key], key, a) }

// tell writes a message that stands by itself.
func (w *writer) tell(t told) string { return w.say(t.key, t.a) }

// write writes a message and notes the numbers that it has.
func (w *writer) write(m *message, key string, a args) string {
	if m == nil {
		return "{" + key + "}"
	}
	pieces := m.forms["other"]
	if n, ok := a["n"].(int); ok {
		if counted, ok := m.forms[w.c.form(n)]; ok {
			pieces = counted
		}
	}
	var b strings.Builder
	for _, p := range pieces {
		b.WriteString(p.literal)
		if p.key != "" {
			b.WriteString(w.argument(p, a))
		}
	}
	return b.String()
}
