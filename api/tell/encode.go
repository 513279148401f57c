package tell

import (
	"reflect"
	"strconv"
	"strings"
	"sync"

	"creasefit/api/wire"
)

// AppendJSON appends a value as JSON, its members named by json tags and in the
// order of the type, as encoding/json has it, but for what our answers want
// and it does not give: a nil list is an empty one, numbers have no exponents,
// and a list of structs whose first field is tagged member is an object of
// members in the list's order.
//
// A type is looked at once: what is left of it is a list of functions, which
// nearly every call waits for.
func AppendJSON(dst []byte, v any) []byte {
	value := reflect.ValueOf(v)
	return writerOf(value.Type())(dst, value)
}

// writer appends a value of one type.
type writer func(dst []byte, v reflect.Value) []byte

// writers are those of the types seen so far.
var writers sync.Map // of reflect.Type

// writerOf returns the writer of a type.
func writerOf(t reflect.Type) writer {
	if known, ok := writers.Load(t); ok {
		return known.(writer)
	}
	// A type that is part of itself, and whoever else asks meanwhile, finds one
	// that waits until this is done.
	var done writer
	var ready sync.WaitGroup
	ready.Add(1)
	first, known := writers.LoadOrStore(t, writer(func(dst []byte, v reflect.Value) []byte {
		ready.Wait()
		return done(dst, v)
	}))
	if known {
		return first.(writer)
	}
	done = newWriter(t)
	ready.Done()
	writers.Store(t, done)
	return done
}

func newWriter(t reflect.Type) writer {
	if t == reflect.TypeFor[wire.JSON]() {
		return func(dst []byte, v reflect.Value) []byte { return append(dst, v.String()...) }
	}
	switch t.Kind() {
	case reflect.Bool:
		return func(dst []byte, v reflect.Value) []byte { return strconv.AppendBool(dst, v.Bool()) }
	case reflect.Int, reflect.Int64:
		return func(dst []byte, v reflect.Value) []byte { return strconv.AppendInt(dst, v.Int(), 10) }
	case reflect.Float64:
		return func(dst []byte, v reflect.Value) []byte { return AppendNumber(dst, v.Float()) }
	case reflect.String:
		return func(dst []byte, v reflect.Value) []byte { return AppendString(dst, v.String()) }
	case reflect.Pointer:
		write := writerOf(t.Elem())
		return func(dst []byte, v reflect.Value) []byte { return write(dst, v.Elem()) }
	case reflect.Slice, reflect.Array:
		return listWriter(t)
	case reflect.Struct:
		return structWriter(t)
	default:
		panic("no answer is a " + t.String()) // a type of ours that no test has written
	}
}

// listWriter writes a list, or an object of members.
func listWriter(t reflect.Type) writer {
	write := writerOf(t.Elem())
	if t.Elem().Kind() == reflect.Struct && t.Elem().Field(0).Tag.Get("member") != "" {
		return joined('{', '}', func(dst []byte, v reflect.Value) []byte {
			return write(append(AppendString(dst, v.Field(0).String()), ':'), v)
		})
	}
	return joined('[', ']', write)
}

// joined writes the entries of a list with commas between.
func joined(begin, end byte, write writer) writer {
	return func(dst []byte, v reflect.Value) []byte {
		dst = append(dst, begin)
		for i := range v.Len() {
			if i > 0 {
				dst = append(dst, ',')
			}
			dst = write(dst, v.Index(i))
		}
		return append(dst, end)
	}
}

// member is one member of an object.
type member struct {
	field    int
	lead     string // ,"name":
	optional bool   // left out if it is zero or empty
	write    writer
}

// structWriter writes an object.
func structWriter(t reflect.Type) writer {
	members := membersOf(t)
	return func(dst []byte, v reflect.Value) []byte {
		from := len(dst)
		dst = appendMembers(dst, v, members)
		if len(dst) == from {
			return append(dst, "{}"...)
		}
		dst[from] = '{' // in place of the first comma
		return append(dst, '}')
	}
}

// appendMembers appends the members, each behind a comma.
func appendMembers(dst []byte, v reflect.Value, members []member) []byte {
	for i := range members {
		m := &members[i]
		field := v.Field(m.field)
		if m.optional && isEmpty(field) {
			continue
		}
		dst = m.write(append(dst, m.lead...), field)
	}
	return dst
}

// membersOf lists the members of a struct.
func membersOf(t reflect.Type) []member {
	var list []member
	for i := range t.NumField() {
		f := t.Field(i)
		name, rest, _ := strings.Cut(f.Tag.Get("json"), ",")
		switch {
		case f.Anonymous:
			list = append(list, member{field: i, optional: f.Type.Kind() == reflect.Pointer, write: inlineWriter(f.Type)})
		case name != "-":
			lead := string(append(AppendString([]byte{','}, name), ':'))
			list = append(list, member{field: i, lead: lead, optional: strings.Contains(rest, "omitempty"), write: writerOf(f.Type)})
		}
	}
	return list
}

// inlineWriter writes the members of an embedded struct among those of the
// one that it is embedded in.
func inlineWriter(t reflect.Type) writer {
	if t.Kind() == reflect.Pointer {
		write := inlineWriter(t.Elem())
		return func(dst []byte, v reflect.Value) []byte { return write(dst, v.Elem()) }
	}
	members := membersOf(t)
	return func(dst []byte, v reflect.Value) []byte { return appendMembers(dst, v, members) }
}

// isEmpty reports whether an optional member is left out.
func isEmpty(v reflect.Value) bool {
	if v.Kind() == reflect.Slice {
		return v.Len() == 0
	}
	return v.IsZero()
}
