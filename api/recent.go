package api

import (
	"bytes"
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
