package tell

import (
	"math/bits"
	"reflect"
	"slices"
	"sync"
	"unsafe"
)

// memory is where in an answer some values were written. Most measures of an answer
// come again in it, since corners lie in rows and panels are as wide as others: what
// was written once is copied.
type memory [64]struct {
	plain    *plainType
	words    []uint64 // the value
	from, to int      // what it came to
}

var memories = sync.Pool{New: func() any { return new(memory) }}

// plainType is a type of texts and numbers alone: two values whose memory is the same
// come to the same. It has so many words of eight bytes.
type plainType struct{ words uintptr }

// leastMembers is how many members a value has at the least that is worth looking up.
const leastMembers = 5

// knowing is a writer that copies what it wrote before, if the type is plain.
func knowing(t reflect.Type, write writer) writer {
	if t.NumField() < leastMembers {
		return write
	}
	for i := range t.NumField() {
		switch t.Field(i).Type.Kind() {
		case reflect.String, reflect.Float64, reflect.Int64:
		case reflect.Int:
			if t.Field(i).Type.Size() != 8 {
				return write
			}
		default:
			return write
		}
	}
	plain := &plainType{t.Size() / 8}
	return func(dst []byte, at unsafe.Pointer, known *memory) []byte {
		words := unsafe.Slice((*uint64)(at), plain.words)
		var mix uint64
		for _, w := range words {
			mix = bits.RotateLeft64(mix, 7) ^ w
		}
		place := &known[mix*0x9e3779b97f4a7c15>>58] // golden ratio: Knuth, The Art of Computer Programming, 6.4
		if place.plain == plain && slices.Equal(place.words, words) {
			return append(dst, dst[place.from:place.to]...)
		}
		from := len(dst)
		dst = write(dst, at, known)
		place.plain, place.words, place.from, place.to = plain, words, from, len(dst)
		return dst
	}
}
