package client_test

import (
	"context"
	"fmt"
	"io"
	"iter"
	"net/http"
	"net/http/httptest"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/openapi/client"
)

// lengths is a batch of so many lengths; line i is i millimetres, and each
// hundredth has none.
func lengths(count int) iter.Seq[client.Line] {
	return func(yield func(client.Line) bool) {
		for i := range count {
			request := client.RequestRuler{Length: []string{fmt.Sprintf("%d mm", i+1)}}
			if i%100 == 99 {
				request.Length = nil
			}
			if !yield(client.Line{ID: fmt.Sprint("line ", i), Request: request}) {
				return
			}
		}
	}
}

func TestBatchKeepsTheOrder(t *testing.T) {
	const count = 3000
	answered := 0
	for answer, err := range dial(t).Batch(t.Context(), lengths(count)) {
		require.NoError(t, err)
		require.Equal(t, fmt.Sprint("line ", answered), answer.ID)
		answered++
		require.Equal(t, answered, answer.Line)
		var ruler client.Ruler
		if answered%100 == 0 {
			require.Equal(t, http.StatusBadRequest, answer.Status)
			require.ErrorAs(t, answer.Into(&ruler), new(*client.Problem))
			continue
		}
		require.NoError(t, answer.Into(&ruler))
		require.InDelta(t, answered, ruler.Lengths[0].MM, 0)
	}
	assert.Equal(t, count, answered)
}

// TestBatchAnswersWhileItSends asks for the second line only when the first is
// answered, and gives up before the third.
func TestBatchAnswersWhileItSends(t *testing.T) {
	turn, sent := make(chan struct{}, 1), 0
	ended := make(chan struct{})
	lines := func(yield func(client.Line) bool) {
		defer close(ended)
		for line := range lengths(50) {
			<-turn
			sent++
			if !yield(line) {
				return
			}
		}
	}
	turn <- struct{}{}
	answered := 0
	for _, err := range dial(t).Batch(t.Context(), lines) {
		require.NoError(t, err)
		if answered++; answered == 2 {
			break
		}
		turn <- struct{}{}
	}
	turn <- struct{}{} // the line that finds the stream given up
	<-ended
	assert.Equal(t, 3, sent)
}

func TestBatchThatBreaksOffIsAnError(t *testing.T) {
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		_, _ = io.Copy(io.Discard, r.Body)
		_, _ = io.WriteString(w, `{"line":1,"status":200,"answer":{}}`+"\n")
	}))
	defer server.Close()
	c, err := client.New(server.URL, server.Client())
	require.NoError(t, err)
	var errs []error
	for _, err := range c.Batch(t.Context(), lengths(2)) {
		errs = append(errs, err)
	}
	require.Len(t, errs, 2)
	assert.NoError(t, errs[0])
	assert.ErrorIs(t, errs[1], io.ErrUnexpectedEOF)
}

func TestBatchEndsWithItsContext(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	defer cancel()
	var last error
	for _, err := range dial(t).Batch(ctx, lengths(1_000_000)) {
		cancel()
		last = err
	}
	assert.ErrorIs(t, last, context.Canceled)
}
