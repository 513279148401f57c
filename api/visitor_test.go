package api

import (
	"bufio"
	"bytes"
	"fmt"
	"io"
	"net"
	"net/http"
	"strconv"
	"strings"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/require"
)

// visitor is a caller who costs next to nothing, so that what is measured is the
// service: one connection that is kept open, and bytes that were made before.
type visitor struct {
	address string
	conn    net.Conn
	in      *bufio.Reader
	body    []byte
}

// dial connects to a service.
func dial(t testing.TB, address string) *visitor {
	v := &visitor{address: strings.TrimPrefix(address, "http://")}
	require.NoError(t, v.connect())
	t.Cleanup(func() { _ = v.conn.Close() })
	return v
}

func (v *visitor) connect() (err error) {
	if v.conn, err = net.Dial("tcp", v.address); err == nil {
		v.in = bufio.NewReaderSize(v.conn, 32<<10)
	}
	return err
}

// ask sends a request as it is and returns the status and the body, which holds
// until the next one. It connects anew where the service hung up.
func (v *visitor) ask(request []byte) (status int, body []byte, err error) {
	if _, err = v.conn.Write(request); err != nil {
		return 0, nil, err
	}
	status, length, ends := 0, 0, false
	for n := 0; ; n++ {
		text, err := v.in.ReadSlice('\n')
		if err != nil {
			return 0, nil, err
		}
		switch {
		case n == 0:
			status, err = strconv.Atoi(string(text[9:12]))
		case len(text) <= 2:
			if cap(v.body) < length {
				v.body = make([]byte, length)
			}
			_, err = io.ReadFull(v.in, v.body[:length])
			if err == nil && ends {
				_ = v.conn.Close()
				err = v.connect()
			}
			return status, v.body[:length], err
		case bytes.HasPrefix(text, []byte("Content-Length: ")):
			length, err = strconv.Atoi(string(bytes.TrimSpace(text[16:])))
		case bytes.HasPrefix(text, []byte("Connection: close")):
			ends = true
		}
		if err != nil {
			return 0, nil, err
		}
	}
}

// asking is a request of which every sending is another one, unless it is always
// the same.
type asking struct {
	text []byte
	at   int // where its number is, which is six digits
	same bool
}

// asked counts the requests that were different.
var asked atomic.Int64

// newAsking is a POST of a body, in which so many millionths stand for a number.
func newAsking(path, body string, same bool) *asking {
	const number = "%06d"
	text := fmt.Sprintf("%s %s HTTP/1.1\r\nHost: tidewater.example\r\nContent-Type: application/json\r\nContent-Length: %d\r\n\r\n%s",
		http.MethodPost, path, len(body)+2, body)
	at := strings.Index(text, number)
	return &asking{[]byte(strings.Replace(text, number, "304800", 1)), at, same}
}

// next returns the bytes to send.
func (a *asking) next() []byte {
	if !a.same {
		n := 300_000 + asked.Add(1)%100_000
		for i := 5; i >= 0; i-- {
			a.text[a.at+i] = byte('0' + n%10)
			n /= 10
		}
	}
	return a.text
}
