package client

import (
	"context"
	"encoding/json"
	"errors"
	"io"
	"iter"
	"net/http"
)

// Line is one calculation of a batch.
type Line struct {
	ID      string // comes back with the answer; may be empty
	Request Request
}

// LineAnswer is the answer to one line of a batch, or its problem.
type LineAnswer struct {
	Line    int             `json:"line"` // from 1
	ID      string          `json:"id"`
	Status  int             `json:"status"` // that the request would have alone
	Answer  json.RawMessage `json:"answer"`
	Problem *Problem        `json:"problem"`
}

// Into reads the answer into the type that the request's own method returns;
// that of a drawing is an object of the FOLD format. The line's problem is an
// error.
func (a LineAnswer) Into(answer any) error {
	if a.Problem != nil {
		return a.Problem
	}
	return json.Unmarshal(a.Answer, answer)
}

// Batch sends lines as they come and yields their answers in the same order
// while it sends. A line that cannot be answered is a LineAnswer with its
// problem; an error of the whole stream comes last. When the loop over the
// answers ends early, the stream is given up and no further line is taken.
func (c *Client) Batch(ctx context.Context, lines iter.Seq[Line]) iter.Seq2[LineAnswer, error] {
	return func(yield func(LineAnswer, error) bool) {
		sending, cancel := context.WithCancel(ctx)
		defer cancel()
		body, sink := io.Pipe()
		defer body.Close()
		go func() { sink.CloseWithError(writeLines(sink, lines)) }()
		response, err := c.stream(sending, body)
		if err != nil {
			yield(LineAnswer{}, err)
			return
		}
		defer response.Body.Close()
		readAnswers(ctx, response.Body, yield)
	}
}

// stream sends the lines of a batch; it ends with the context.
func (c *Client) stream(ctx context.Context, lines io.Reader) (*http.Response, error) {
	request, err := http.NewRequestWithContext(ctx, http.MethodPost, c.base+"/v1/batch", lines)
	if err != nil {
		return nil, err
	}
	request.Header.Set("Content-Type", "application/x-ndjson")
	return c.send(request)
}

// writeLines writes a line of JSON for each calculation.
func writeLines(w io.Writer, lines iter.Seq[Line]) error {
	e := json.NewEncoder(w)
	for l := range lines {
		names, err := members(l.Request)
		if err != nil {
			return err
		}
		names["call"] = l.Request.path()
		if l.ID != "" {
			names["id"] = l.ID
		}
		if err := e.Encode(names); err != nil {
			return err
		}
	}
	return nil
}

// readAnswers yields answers up to the line that says that all are done.
func readAnswers(ctx context.Context, r io.Reader, yield func(LineAnswer, error) bool) {
	d := json.NewDecoder(r)
	for {
		var next struct {
			LineAnswer
			Done bool `json:"done"`
		}
		err := d.Decode(&next)
		switch {
		case err != nil && ctx.Err() != nil:
			err = ctx.Err() // the connection says that it is closed
		case errors.Is(err, io.EOF):
			err = io.ErrUnexpectedEOF // a stream that breaks off is not done
		}
		if err != nil {
			yield(LineAnswer{}, err)
			return
		}
		if next.Done || !yield(next.LineAnswer, nil) {
			return
		}
	}
}
