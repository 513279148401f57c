package api

import (
	"bytes"
	"encoding/binary"
	"sync"
)

// recent remembers answers that were given lately. Every calculation is a
// pure function, and pages and spreadsheets send the same few requests again
// and again. It holds two generations: an answer that nobody asks for while
// the younger one fills up is forgotten with the older one.
type recent struct {
	mutex       sync.Mutex
	young, old  map[requestKey][]byte
	held, limit int // bytes in the younger generation
	most        int // of one answer

	once [1 << 12]uint64 // parts of keys that were offered lately, each where another part of it says
}

// newRecent returns a memory of about the given number of bytes, none for 0, and
// for answers of so many at the most.
func newRecent(limit, most int) *recent {
	return &recent{young: map[requestKey][]byte{}, limit: limit / 2, most: most}
}

// find returns the answer to the request with that key, before it is narrowed
// and encoded. It must not be changed.
func (m *recent) find(key requestKey) ([]byte, bool) {
	m.mutex.Lock()
	defer m.mutex.Unlock()
	if a, ok := m.young[key]; ok {
		return a, true
	}
	a, ok := m.old[key]
	if ok {
		m.add(key, a)
	}
	return a, ok
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
	if len(body) > m.most {
		return
	}
	m.mutex.Lock()
	defer m.mutex.Unlock()
	m.add(key, bytes.Clone(body))
}

// add puts an answer into the younger generation.
func (m *recent) add(key requestKey, body []byte) {
	size := len(key) + len(body)
	if m.held+size > m.limit {
		m.old, m.young, m.held = m.young, map[requestKey][]byte{}, 0
	}
	m.young[key] = body
	m.held += size
}
