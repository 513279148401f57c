package edge

import (
	"bytes"
	"net"
	"strconv"
	"sync"
	"time"
)

// Shedding is a listener whose connections themselves answer calls that there is
// no room for. A server that reads them first has, of four times as many as it can
// answer, little time left for those that it lets in. They are counted by the lane
// alone, and neither logged nor traced. They also send an answer together with its head.
type Shedding struct {
	net.Listener
	Caller  func(peer string) string // who calls from an address; empty where only the request says
	Crowded func(caller string) bool // whether one more call of a caller would be turned away
	Answer  []byte                   // what it is told then
}

// Accept hands out connections, of which those of callers who are known by their address
// shed.
func (l *Shedding) Accept() (net.Conn, error) {
	connection, err := l.Listener.Accept()
	if tcp, ok := connection.(*net.TCPConn); ok {
		caller := l.Caller(tcp.RemoteAddr().String())
		return &sheddingConn{together: together{TCPConn: tcp}, listener: l, caller: caller, between: caller != ""}, err
	}
	return connection, err
}

// sheddingConn is such a connection. It knows where a request begins as long as
// each came alone and whole in one reading; from the first that did not, the
// server reads all.
type sheddingConn struct {
	together
	listener *Shedding
	caller   string
	between  bool      // what is read next begins a request
	writable time.Time // until then an answer may be received; zero once the server reads
	ahead    []byte    // what was read while the server was busy and took one byte of it
}

// Read returns what the server is to read: whatever is no whole call that there
// is no room for.
func (c *sheddingConn) Read(into []byte) (int, error) {
	if len(c.ahead) > 0 {
		n := copy(into, c.ahead)
		c.ahead = c.ahead[n:]
		return n, nil
	}
	if c.between && len(into) == 1 {
		return c.readAhead(into)
	}
	for {
		n, err := c.TCPConn.Read(into)
		if n == 0 || !c.between {
			return n, err
		}
		whole, plain := framed(into[:n])
		c.between = whole
		if !plain || !c.listener.Crowded(c.caller) {
			c.writable = time.Time{} // the server sets a deadline of its own
			return n, err
		}
		if err := c.turnAway(); err != nil {
			return 0, err
		}
		time.Sleep(breath)
	}
}

// aheads are where requests are read into that come while the server is busy.
var aheads = sync.Pool{New: func() any { return new([4 << 10]byte) }}

// readAhead reads what comes while the server is busy with a call and waits for a
// single byte, so that it stays known where the next request begins.
func (c *sheddingConn) readAhead(into []byte) (int, error) {
	buffer := aheads.Get().(*[4 << 10]byte)
	defer aheads.Put(buffer)
	n, err := c.TCPConn.Read(buffer[:])
	if n == 0 {
		return 0, err
	}
	c.between, _ = framed(buffer[:n])
	c.ahead = append([]byte(nil), buffer[1:n]...)
	return copy(into, buffer[:1]), err
}

// breath is how long a connection is not read after it was told to come back in a
// second: who asks again at once would be answered in the place of others.
const breath = 50 * time.Millisecond

// leastAnswering is how long a caller may take at least to receive that there is
// no room.
const leastAnswering = time.Second

// turnAway answers in the server's place, whose own deadline is of the request
// before. One deadline serves several answers.
func (c *sheddingConn) turnAway() error {
	if now := time.Now(); c.writable.Before(now.Add(leastAnswering)) {
		c.writable = now.Add(8 * leastAnswering)
		if err := c.SetWriteDeadline(c.writable); err != nil {
			return err
		}
	}
	_, err := c.Write(c.listener.Answer)
	return err
}

// framed reports whether some bytes are one request of HTTP/1.1, whole and nothing
// more, and whether it asks for a calculation in a plain way: by POST or with a
// query, wanting neither a page, nor a cell, nor to be read by another origin, nor
// anything of the connection. Lines end where net/http ends them.
func framed(b []byte) (whole, plain bool) {
	line, rest, _ := bytes.Cut(b, []byte("\n"))
	plain = asksPlainly(bytes.TrimSuffix(line, []byte("\r")))
	length := -1
	for {
		var found bool
		if line, rest, found = bytes.Cut(rest, []byte("\n")); !found {
			return false, false
		}
		if line = bytes.TrimSuffix(line, []byte("\r")); len(line) == 0 {
			break
		}
		name, value, _ := bytes.Cut(line, []byte(":"))
		switch {
		case bytes.ContainsAny(name, " \t"), isHeader(name, "Transfer-Encoding"), isHeader(name, "Expect"):
			return false, false
		case isHeader(name, "Content-Length"):
			n, err := strconv.ParseUint(string(bytes.TrimSpace(value)), 10, 31)
			if err != nil || length >= 0 {
				return false, false
			}
			length = int(n)
		case isHeader(name, "Connection"), isHeader(name, "Upgrade"), isHeader(name, "Origin"), isHeader(name, "Accept") && bytes.Contains(value, []byte("text/html")):
			plain = false
		}
	}
	whole = len(rest) == max(0, length)
	return whole, whole && plain
}

// isHeader reports whether a line begins with a header's name.
func isHeader(name []byte, is string) bool {
	return len(name) == len(is) && bytes.EqualFold(name, []byte(is))
}

// asksPlainly reports whether a request's first line asks for a calculation.
func asksPlainly(line []byte) bool {
	method, rest, _ := bytes.Cut(line, []byte(" "))
	target, version, _ := bytes.Cut(rest, []byte(" "))
	return string(version) == "HTTP/1.1" && bytes.HasPrefix(target, []byte("/v1/")) && !bytes.Contains(target, []byte("errors=cell")) &&
		(string(method) == "POST" || string(method) == "GET" && bytes.IndexByte(target, '?') > 0)
}
