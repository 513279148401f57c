package api

import (
	"bytes"
	"encoding/binary"
	"sync"
)

// generations remembers what was needed lately, in two generations: what nobody
// asks for while the younger one fills up is forgotten with the older one.
type generations[V any] struct {
	mutex       sync.Mutex
	young, old  map[requestKey]V
	held, limit int // bytes in the younger generation
}

// newGenerations returns a memory of about the given number of bytes.
func newGenerations[V any](limit int) generations[V] {
	return generations[V]{young: map[requestKey]V{}, limit: limit / 2}
}

// find returns what is remembered by a key; size says how large it is. It must not
// be changed.
func (m *generations[V]) find(key requestKey, size func(V) int) (V, bool) {
	m.mutex.Lock()
	defer m.mutex.Unlock()
	if v, ok := m.young[key]; ok {
		return v, true
	}
	v, ok := m.old[key]
	if ok {
		m.add(key, v, size(v))
	}
	return v, ok
}

// keep remembers something of a size.
func (m *generations[V]) keep(key requestKey, v V, size int) {
	m.mutex.Lock()
	defer m.mutex.Unlock()
	m.add(key, v, size)
}

// add puts something into the younger generation.
func (m *generations[V]) add(key requestKey, v V, size int) {
	size += len(key)
	if m.held+size > m.limit {
		m.old, m.young, m.held = m.young, map[requestKey]V{}, 0
	}
	m.young[key] = v
	m.held += size
}

// recent remembers answers that were given lately. Every calculation is a
// pure function, and pages and spreadsheets send the same few requests again
// and again.
type recent struct {
	generations[[]byte]
	most int // of one answer

	once [1 << 12]uint64 // parts of keys that were offered lately, each where another part of it says
}

// newRecent returns a memory of about the given number of bytes, none for 0, and
// for answers of so many at the most.
func newRecent(limit, most int) *recent {
	return &recent{generations: newGenerations[[]byte](limit), most: most}
}

// find returns the answer to the request with that key, before it is narrowed
// and encoded. It must not be changed.
func (m *recent) find(key requestKey) ([]byte, bool) {
	return m.generations.find(key, func(body []byte) int { return len(body) })
}

// offer remembers an answer when it is offered again: most are never asked for a
// second time, and copying those costs more than the others save.
func (m *recent) offer(key requestKey, body []byte) {
	if m.limit > 0 && m.offered(key) {
		m.keep(key, body)
	}
}

// offered reports whether the answer was offered lately, and notes that it was.
func (m *recent) offered(key requestKey) bool {
	place, mark := &m.once[binary.LittleEndian.Uint16(key[:])%uint16(len(m.once))], binary.LittleEndian.Uint64(key[8:])
	m.mutex.Lock()
	defer m.mutex.Unlock()
	known := *place == mark
	*place = mark
	return known
}

// keep remembers an answer; the body is copied.
func (m *recent) keep(key requestKey, body []byte) {
	if len(body) <= m.most {
		m.generations.keep(key, bytes.Clone(body), len(body))
	}
}
