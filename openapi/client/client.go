// Package client calls a Creasefit service from Go: one method and one type of
// request for each calculation, generated from the specification, so that what
// does not exist does not compile. It needs the standard library alone.
//
// Lengths are texts as people write them ("3 5/8 in", "92.1 mm"); what is left
// empty takes the service's default. An answer that is none is an error that
// errors.As finds as *Problem.
//
// It checks nothing itself, sends no request twice and keeps no answers.
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
	base string // without a slash at its end
	http *http.Client
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

// File is an answer in another format than JSON.
type File struct {
	MediaType string // without parameters: "image/svg+xml"
	Bytes     []byte
}

// File asks for the answer to a request in one of the formats that the
// specification lists for it: a drawing as "svg", a guide as "pdf".
func (c *Client) File(ctx context.Context, request Request, format string) (*File, error) {
	response, err := c.calculate(ctx, request, format)
	if err != nil {
		return nil, err
	}
	defer response.Body.Close()
	content, err := io.ReadAll(response.Body)
	if err != nil {
		return nil, err
	}
	media, _, err := mime.ParseMediaType(response.Header.Get("Content-Type"))
	return &File{media, content}, err
}

// post asks for the answer to a request.
func post[A any](ctx context.Context, c *Client, request Request) (*A, error) {
	response, err := c.calculate(ctx, request, "json")
	return read[A](response, err)
}

// get asks for a list; the values fill the gaps of the path.
func get[A any](ctx context.Context, c *Client, path string, values ...any) (*A, error) {
	for i, v := range values {
		values[i] = url.PathEscape(fmt.Sprint(v))
	}
	response, err := c.send(ctx, http.MethodGet, fmt.Sprintf(path, values...), "", nil)
	return read[A](response, err)
}

// read reads an answer, if there is one.
func read[A any](response *http.Response, err error) (*A, error) {
	if err != nil {
		return nil, err
	}
	defer response.Body.Close()
	answer := new(A)
	return answer, json.NewDecoder(response.Body).Decode(answer)
}

// calculate sends a request.
func (c *Client) calculate(ctx context.Context, request Request, format string) (*http.Response, error) {
	body, err := json.Marshal(request)
	if err != nil {
		return nil, err
	}
	return c.send(ctx, http.MethodPost, request.path()+"?format="+url.QueryEscape(format), "application/json", bytes.NewReader(body))
}

// send returns the answer, whose body is to be closed, or the problem.
func (c *Client) send(ctx context.Context, method, target, media string, body io.Reader) (*http.Response, error) {
	request, err := http.NewRequestWithContext(ctx, method, c.base+target, body)
	if err != nil {
		return nil, err
	}
	if media != "" {
		request.Header.Set("Content-Type", media)
	}
	response, err := c.http.Do(request)
	if err != nil {
		return nil, err
	}
	if response.StatusCode != http.StatusOK {
		defer response.Body.Close()
		return nil, refusal(response)
	}
	return response, nil
}

// refusal is the problem that the service answered with, or what something
// before it said.
func refusal(response *http.Response) error {
	p := new(Problem)
	media, _, _ := mime.ParseMediaType(response.Header.Get("Content-Type"))
	if media == "application/problem+json" && json.NewDecoder(response.Body).Decode(p) == nil {
		return p
	}
	return fmt.Errorf("creasefit: %s %s: answered %s", response.Request.Method, response.Request.URL.Path, response.Status)
}

// Error is the sentence that says what is wrong; Errors names each value.
func (p *Problem) Error() string { return "creasefit: " + p.Detail }
