// Package client calls a Creasefit service from Go: one method and one type of
// request for each calculation, generated from the specification, so that what
// does not exist does not compile. It needs the standard library alone.
//
// Lengths are texts as people write them ("3 5/8 in", "92.1 mm"); what is left
// empty takes the service's default. An answer that is none is an error that
// errors.As finds as *Problem. A busy service is asked again after as long as
// it says.
//
// It checks nothing itself, and keeps no answers unless it is told to.
package client

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"mime"
	"net/http"
	"net/url"
	"strings"
)

// Client calls one service. Several goroutines may use it at once.
type Client struct {
	base  string // without a slash at its end
	http  *http.Client
	known *memory // nil: nothing is remembered
}

// New returns a client of the service at an address such as
// http://127.0.0.1:8080. Timeouts, proxies and credentials are those of calls;
// nil stands for http.DefaultClient.
func New(address string, calls *http.Client) (*Client, error) {
	u, err := url.Parse(address)
	if err != nil {
		return nil, err
	}
	if u.Scheme != "http" && u.Scheme != "https" || u.Host == "" {
		return nil, fmt.Errorf("creasefit: %q is no address of a service such as http://127.0.0.1:8080", address)
	}
	if calls == nil {
		calls = http.DefaultClient
	}
	return &Client{base: strings.TrimRight(address, "/"), http: calls}, nil
}

// Request is what a calculation takes: each type whose name begins with
// Request.
type Request interface {
	path() string
}

// named is a request whose kind is known when the program runs.
type named struct {
	kind  string
	names any
}

func (n named) path() string { return "/v1/solve/" + url.PathEscape(n.kind) }

// MarshalJSON writes the names alone.
func (n named) MarshalJSON() ([]byte, error) { return json.Marshal(n.names) }

// Solve asks for the measurements of an enclosure of a kind, by name; names is
// what becomes a JSON object of the kind's names, such as a map or one of the
// types whose name begins with RequestSolve.
func (c *Client) Solve(ctx context.Context, kind string, names any) (*Solution, error) {
	return post[Solution](ctx, c, named{kind, names})
}

// File is an answer in another format than JSON.
type File struct {
	MediaType string // without parameters: "image/svg+xml"
	Bytes     []byte
}

// File asks for the answer to a request in one of the formats that the
// specification lists for it: a drawing as "svg", a guide as "pdf".
func (c *Client) File(ctx context.Context, request Request, format string) (*File, error) {
	content, media, err := c.calculate(ctx, request, format)
	if err != nil {
		return nil, err
	}
	media, _, err = mime.ParseMediaType(media)
	return &File{media, content}, err
}

// post asks for the answer to a request.
func post[A any](ctx context.Context, c *Client, request Request) (*A, error) {
	content, _, err := c.calculate(ctx, request, "json")
	return decoded[A](content, err)
}

// get asks for a list; the values fill the gaps of the path.
func get[A any](ctx context.Context, c *Client, path string, values ...any) (*A, error) {
	for i, v := range values {
		values[i] = url.PathEscape(fmt.Sprint(v))
	}
	target := fmt.Sprintf(path, values...)
	content, _, err := c.ask(ctx, target, nil)
	return decoded[A](content, err)
}

// decoded reads an answer, if there is one.
func decoded[A any](content []byte, err error) (*A, error) {
	if err != nil {
		return nil, err
	}
	answer := new(A)
	return answer, json.Unmarshal(content, answer)
}

// calculate asks for the answer to a request in a format: by POST, or by GET if
// answers are remembered and the address is short enough.
func (c *Client) calculate(ctx context.Context, request Request, format string) (content []byte, media string, err error) {
	target := request.path() + "?format=" + url.QueryEscape(format)
	if c.known != nil {
		query, err := queryOf(request)
		if err != nil {
			return nil, "", err
		}
		if len(query) <= mostQuery {
			return c.ask(ctx, target+"&"+query, nil)
		}
	}
	body, err := json.Marshal(request)
	if err != nil {
		return nil, "", err
	}
	return c.ask(ctx, target, body)
}

// ask sends a request, by POST if it has a body, and returns the answer with its
// media type. What is remembered is asked for only if it has changed.
func (c *Client) ask(ctx context.Context, target string, body []byte) (content []byte, media string, err error) {
	method, known := http.MethodPost, (*remembered)(nil)
	if body == nil {
		method, known = http.MethodGet, c.known.find(target)
	}
	request, err := http.NewRequestWithContext(ctx, method, c.base+target, bytes.NewReader(body))
	if err != nil {
		return nil, "", err
	}
	if body != nil {
		request.Header.Set("Content-Type", "application/json")
	}
	if known != nil {
		request.Header.Set("If-None-Match", known.tag)
	}
	response, err := c.send(request)
	if err != nil {
		return nil, "", err
	}
	defer response.Body.Close()
	if response.StatusCode == http.StatusNotModified && known != nil {
		return known.body, known.media, nil
	}
	if content, err = io.ReadAll(response.Body); err == nil && method == http.MethodGet {
		c.known.keep(target, response.Header, content)
	}
	return content, response.Header.Get("Content-Type"), err
}
