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
// A type is looked at once: what is left of it is a list of functions, each of
// which takes its value from where the type says that it lies. Nearly every call
// waits for them, and the same through values of reflect takes half as long
// again.
func AppendJSON(dst []byte, v any) []byte {
	value := reflect.ValueOf(v)
	if value.Kind() != reflect.Pointer {
		held := reflect.New(value.Type())
		held.Elem().Set(value)
		value = held
	}
	known := memories.Get().(*memory)
	defer func() {
		*known = memory{} // it keeps no answer alive
		memories.Put(known)
	}()
	return writerOf(value.Type().Elem())(dst, value.UnsafePointer(), known)
}

// writer appends the value of one type that lies at an address.
type writer func(dst []byte, at unsafe.Pointer, known *memory) []byte

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
	first, known := writers.LoadOrStore(t, writer(func(dst []byte, at unsafe.Pointer, known *memory) []byte {
		ready.Wait()
		return done(dst, at, known)
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
		return func(dst []byte, at unsafe.Pointer, _ *memory) []byte { return append(dst, *(*string)(at)...) }
	}
	switch t.Kind() {
	case reflect.Bool:
		return func(dst []byte, at unsafe.Pointer, _ *memory) []byte { return strconv.AppendBool(dst, *(*bool)(at)) }
	case reflect.Int:
		return func(dst []byte, at unsafe.Pointer, _ *memory) []byte {
			return strconv.AppendInt(dst, int64(*(*int)(at)), 10)
		}
	case reflect.Int64:
		return func(dst []byte, at unsafe.Pointer, _ *memory) []byte {
			return strconv.AppendInt(dst, *(*int64)(at), 10)
		}
	case reflect.Float64:
		return func(dst []byte, at unsafe.Pointer, _ *memory) []byte { return AppendNumber(dst, *(*float64)(at)) }
	case reflect.String:
		return func(dst []byte, at unsafe.Pointer, _ *memory) []byte { return AppendString(dst, *(*string)(at)) }
	case reflect.Pointer:
		return through(writerOf(t.Elem()))
	case reflect.Slice:
		write := listWriter(t.Elem())
		return func(dst []byte, at unsafe.Pointer, known *memory) []byte {
			list := *(*[]struct{})(at) // of whatever it is, it has an address and a length
			return write(dst, unsafe.Pointer(unsafe.SliceData(list)), len(list), known)
		}
	case reflect.Array:
		write := listWriter(t.Elem())
		return func(dst []byte, at unsafe.Pointer, known *memory) []byte { return write(dst, at, t.Len(), known) }
	case reflect.Struct:
		return knowing(t, structWriter(t))
	default:
		panic("no answer is a " + t.String()) // a type of ours that no test has written
	}
}

// through writes what a pointer points to.
func through(write writer) writer {
	return func(dst []byte, at unsafe.Pointer, known *memory) []byte {
		return write(dst, *(*unsafe.Pointer)(at), known)
	}
}

// listWriter writes a number of values of a type that follow one another as a list, or as an object of
// members.
func listWriter(t reflect.Type) func(dst []byte, at unsafe.Pointer, n int, known *memory) []byte {
	write, size, begin, end := writerOf(t), t.Size(), byte('['), byte(']')
	if t.Kind() == reflect.Struct && t.Field(0).Tag.Get("member") != "" {
		value := write
		begin, end, write = '{', '}', func(dst []byte, at unsafe.Pointer, known *memory) []byte {
			return value(append(AppendString(dst, *(*string)(at)), ':'), at, known)
		}
	}
	return func(dst []byte, at unsafe.Pointer, n int, known *memory) []byte {
		dst = append(dst, begin)
		for i := range n {
			if i > 0 {
				dst = append(dst, ',')
			}
			dst = write(dst, unsafe.Add(at, uintptr(i)*size), known)
		}
		return append(dst, end)
	}
}

// member is one member of an object.
type member struct {
	lead  string                       // ,"name":
	at    uintptr                      // where it lies in the struct
	empty func(at unsafe.Pointer) bool // says that it is left out; nil if it never is
	write writer
}

// structWriter writes an object.
func structWriter(t reflect.Type) writer {
	write := membersWriter(t)
	return func(dst []byte, at unsafe.Pointer, known *memory) []byte {
		from := len(dst)
		if dst = write(dst, at, known); len(dst) == from {
			return append(dst, "{}"...)
		}
		dst[from] = '{' // in place of the first comma
		return append(dst, '}')
	}
}

// membersWriter writes the members of a struct, each behind a comma.
func membersWriter(t reflect.Type) writer {
	members := membersOf(t, 0)
	return func(dst []byte, at unsafe.Pointer, known *memory) []byte {
		for i := range members {
			m := &members[i]
			place := unsafe.Add(at, m.at)
			if m.empty == nil || !m.empty(place) {
				dst = m.write(append(dst, m.lead...), place, known)
			}
		}
		return dst
	}
}

// membersOf lists the members of a struct that lies so far into another one, those of
// embedded structs among its own.
func membersOf(t reflect.Type, at uintptr) []member {
	var list []member
	for i := range t.NumField() {
		f := t.Field(i)
		name, rest, _ := strings.Cut(f.Tag.Get("json"), ",")
		m := member{at: at + f.Offset}
		switch {
		case f.Anonymous && f.Type.Kind() == reflect.Pointer:
			m.empty, m.write = emptiness(f.Type), through(membersWriter(f.Type.Elem()))
			list = append(list, m)
		case f.Anonymous:
			list = append(list, membersOf(f.Type, m.at)...)
		case name != "-":
			if strings.Contains(rest, "omitempty") {
				m.empty = emptiness(f.Type)
			}
			m.lead, m.write = string(append(AppendString([]byte{','}, name), ':')), writerOf(f.Type)
			list = append(list, m)
		}
	}
	return list
}

// emptiness says of a value of a type whether it is left out where it is optional.
func emptiness(t reflect.Type) func(at unsafe.Pointer) bool {
	switch kind := t.Kind(); {
	case kind == reflect.String || kind == reflect.Slice:
		return func(at unsafe.Pointer) bool { return len(*(*string)(at)) == 0 } // a list begins as a text does
	case t.Size() == 8:
		return func(at unsafe.Pointer) bool { return *(*uint64)(at) == 0 } // most numbers and addresses
	default:
		return func(at unsafe.Pointer) bool {
			for _, b := range unsafe.Slice((*byte)(at), t.Size()) {
				if b != 0 {
					return false
				}
			}
			return true
		}
	}
}
