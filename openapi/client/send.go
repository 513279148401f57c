package client

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"mime"
	"net/http"
	"strconv"
	"time"
)

// How often a request is sent at most, and how long the client waits at most
// when the service asks it to come back later.
const (
	mostAttempts = 4
	mostWait     = 30 * time.Second
)

// send returns an answer, whose body is to be closed, or the problem. Where the
// service is busy the request is sent again when its Retry-After has passed;
// calculations change nothing, so that none is done in vain. A stream is sent
// once.
func (c *Client) send(request *http.Request) (*http.Response, error) {
	for attempt := 1; ; attempt++ {
		response, err := c.http.Do(request)
		if err != nil || response.StatusCode == http.StatusOK || response.StatusCode == http.StatusNotModified {
			return response, err
		}
		wait, later := comeBack(response)
		if !later || attempt == mostAttempts || request.Body != nil && request.GetBody == nil {
			defer response.Body.Close()
			return nil, refusal(response)
		}
		_, _ = io.Copy(io.Discard, response.Body) // so that the connection serves again
		response.Body.Close()
		if err := pause(request.Context(), wait); err != nil {
			return nil, err
		}
		if request.GetBody != nil {
			if request.Body, err = request.GetBody(); err != nil {
				return nil, err
			}
		}
	}
}

// comeBack reports whether the service asks to come back later, and when.
func comeBack(response *http.Response) (wait time.Duration, later bool) {
	if response.StatusCode != http.StatusTooManyRequests && response.StatusCode != http.StatusServiceUnavailable {
		return 0, false
	}
	after := response.Header.Get("Retry-After")
	if seconds, err := strconv.Atoi(after); err == nil && seconds >= 0 {
		wait = time.Duration(seconds) * time.Second
	} else if at, err := http.ParseTime(after); err == nil {
		wait = max(0, time.Until(at))
	} else {
		return 0, false
	}
	return wait, wait <= mostWait
}

// pause waits, or ends with the context's error.
func pause(ctx context.Context, wait time.Duration) error {
	timer := time.NewTimer(wait)
	defer timer.Stop()
	select {
	case <-timer.C:
		return nil
	case <-ctx.Done():
		return ctx.Err()
	}
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
