package client

import (
	"encoding/json"
	"net/http"
	"net/url"
	"strings"
	"sync"
)

// memory keeps the latest answers with their tags.
type memory struct {
	mutex   sync.Mutex
	most    int
	answers map[string]*remembered // by address
	order   []string               // of the addresses, the oldest first
}

// remembered is an answer with its tag.
type remembered struct {
	tag, media string
	body       []byte
}

// mostQuery is how long a request is that may stand in an address.
const mostQuery = 4000

// Remember keeps the latest answers, so many of them, but for those to very long
// requests. When one is asked for again the service is only asked whether it is
// still the same (If-None-Match), which costs no calculation. It is to be called
// before the first request.
func (c *Client) Remember(answers int) {
	c.known = &memory{most: answers, answers: map[string]*remembered{}}
}

// find returns what is remembered of an address.
func (m *memory) find(target string) *remembered {
	if m == nil {
		return nil
	}
	m.mutex.Lock()
	defer m.mutex.Unlock()
	return m.answers[target]
}

// keep remembers an answer that may be kept.
func (m *memory) keep(target string, header http.Header, body []byte) {
	tag := header.Get("ETag")
	if m == nil || m.most <= 0 || tag == "" || strings.Contains(header.Get("Cache-Control"), "no-store") {
		return
	}
	m.mutex.Lock()
	defer m.mutex.Unlock()
	if m.answers[target] == nil {
		m.order = append(m.order, target)
	}
	m.answers[target] = &remembered{tag, header.Get("Content-Type"), body}
	if len(m.order) > m.most {
		delete(m.answers, m.order[0])
		m.order = m.order[1:]
	}
}

// queryOf writes the names of a request as a query: a list by repeating its
// name, an object as JSON.
func queryOf(request Request) (string, error) {
	names, err := members(request)
	if err != nil {
		return "", err
	}
	query := url.Values{}
	for name, value := range names {
		values, ok := value.([]any)
		if !ok {
			values = []any{value}
		}
		for _, v := range values {
			text, ok := v.(string)
			if !ok {
				written, err := json.Marshal(v)
				if err != nil {
					return "", err
				}
				text = string(written)
			}
			query.Add(name, text)
		}
	}
	return query.Encode(), nil
}
