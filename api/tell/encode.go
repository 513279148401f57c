package tell

import (
	"reflect"
	"strconv"
	"strings"
	"sync"
	"unsafe"

	"creasefit/api/wire"
)

// AppendJSON appends a value as JSON, its members named by json tags and in the
// order of the type, as encoding/json has it, but for what our answers want
// and it does not give: a nil list is an empty one, numbers have no exponents,
// and a list of structs whose first field is tagged member is an object of
// members in the list's order.
//
// A type is looked at once: what is left of it is a list of functions and the
// offsets of its fields, which nearly every call waits for. Fields are read at
// their offsets, since asking package reflect for each takes as long as writing it.
func AppendJSON(dst []byte, v any) []byte {
	value := reflect.ValueOf(v)
	if value.Kind() != reflect.Pointer {
		held := reflect.New(value.Type())
		held.Elem().Set(value)
		value = held
	}
	return writerOf(value.Type().Elem())(dst, value.UnsafePointer())
}

// writer appends the value of one type that lies at an address.
type writer func(dst []byte, at unsafe.Pointer) []byte

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
	first, known := writers.LoadOrStore(t, writer(func(dst []byte, at unsafe.Pointer) []byte {
		ready.Wait()
		return done(dst, at)
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
		return func(dst []byte, at unsafe.Pointer) []byte { return append(dst, *(*wire.JSON)(at)...) }
	}
	switch t.Kind() {
	case reflect.Bool:
		return func(dst []byte, at unsafe.Pointer) []byte { return strconv.AppendBool(dst, *(*bool)(at)) }
	case reflect.Int:
		return func(dst []byte, at unsafe.Pointer) []byte { return strconv.AppendInt(dst, int64(*(*int)(at)), 10) }
	case reflect.Int64:
		return func(dst []byte, at unsafe.Pointer) []byte { return strconv.AppendInt(dst, *(*int64)(at), 10) }
	case reflect.Float64:
		return func(dst []byte, at unsafe.Pointer) []byte { return AppendNumber(dst, *(*float64)(at)) }
	case reflect.String:
		return func(dst []byte, at unsafe.Pointer) []byte { return AppendString(dst, *(*string)(at)) }
	case reflect.Pointer:
		write := writerOf(t.Elem())
		return func(dst []byte, at unsafe.Pointer) []byte { return write(dst, *(*unsafe.Pointer)(at)) }
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
	write, begin, end := writerOf(t.Elem()), byte('['), byte(']')
	if t.Elem().Kind() == reflect.Struct && t.Elem().Field(0).Tag.Get("member") != "" {
		write, begin, end = memberWriter(write), '{', '}'
	}
	size, n := t.Elem().Size(), 0
	if t.Kind() == reflect.Array {
		n = t.Len()
	}
	return func(dst []byte, at unsafe.Pointer) []byte {
		first, n := at, n
		if t.Kind() == reflect.Slice {
			list := *(*[]struct{})(at) // of whatever: its length and where it begins
			first, n = unsafe.Pointer(unsafe.SliceData(list)), len(list)
		}
		dst = append(dst, begin)
		for i := range n {
			if i > 0 {
				dst = append(dst, ',')
			}
			dst = write(dst, unsafe.Add(first, uintptr(i)*size))
		}
		return append(dst, end)
	}
}

// memberWriter writes a struct as a member named by its first field, a text.
func memberWriter(write writer) writer {
	return func(dst []byte, at unsafe.Pointer) []byte {
		return write(append(AppendString(dst, *(*string)(at)), ':'), at)
	}
}

// member is one member of an object.
type member struct {
	offset uintptr
	lead   string                    // ,"name":
	empty  func(unsafe.Pointer) bool // whether it is left out; nil for those that never are
	write  writer
}

// structWriter writes an object.
func structWriter(t reflect.Type) writer {
	members := membersOf(t)
	return func(dst []byte, at unsafe.Pointer) []byte {
		from := len(dst)
		dst = appendMembers(dst, at, members)
		if len(dst) == from {
			return append(dst, "{}"...)
		}
		dst[from] = '{' // in place of the first comma
		return append(dst, '}')
	}
}

// appendMembers appends the members, each behind a comma.
func appendMembers(dst []byte, at unsafe.Pointer, members []member) []byte {
	for i := range members {
		m := &members[i]
		field := unsafe.Add(at, m.offset)
		if m.empty != nil && m.empty(field) {
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
		m := member{offset: f.Offset}
		switch {
		case f.Anonymous:
			m.write = inlineWriter(f.Type)
		case name != "-":
			m.lead, m.write = string(append(AppendString([]byte{','}, name), ':')), writerOf(f.Type)
		default:
			continue
		}
		if f.Anonymous && f.Type.Kind() == reflect.Pointer || strings.Contains(rest, "omitempty") {
			m.empty = emptiness(f.Type)
		}
		list = append(list, m)
	}
	return list
}

// inlineWriter writes the members of an embedded struct among those of the
// one that it is embedded in.
func inlineWriter(t reflect.Type) writer {
	if t.Kind() == reflect.Pointer {
		write := inlineWriter(t.Elem())
		return func(dst []byte, at unsafe.Pointer) []byte { return write(dst, *(*unsafe.Pointer)(at)) }
	}
	members := membersOf(t)
	return func(dst []byte, at unsafe.Pointer) []byte { return appendMembers(dst, at, members) }
}

// emptiness returns what reports whether an optional member is left out.
func emptiness(t reflect.Type) func(unsafe.Pointer) bool {
	switch t.Kind() {
	case reflect.Slice:
		return func(at unsafe.Pointer) bool { return len(*(*[]struct{})(at)) == 0 }
	case reflect.String:
		return func(at unsafe.Pointer) bool { return *(*string)(at) == "" }
	case reflect.Pointer:
		return func(at unsafe.Pointer) bool { return *(*unsafe.Pointer)(at) == nil }
	default:
		return func(at unsafe.Pointer) bool { return reflect.NewAt(t, at).Elem().IsZero() }
	}
}
