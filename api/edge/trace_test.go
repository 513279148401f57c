package edge

import (
	"context"
	"io"
	"net/http"
	"net/http/httptest"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	collector "go.opentelemetry.io/proto/otlp/collector/trace/v1"
	otlp "go.opentelemetry.io/proto/otlp/trace/v1"
	"google.golang.org/protobuf/proto"
)

// TestTraceHeaders: examples and rules of W3C Trace Context, 3.2.
func TestTraceHeaders(t *testing.T) {
	const id, span = "4bf92f3577b34da6a3ce929d0e0e4736", "00f067aa0ba902b7"
	for header, good := range map[string]bool{
		"00-" + id + "-" + span + "-01": true, "00-" + id + "-" + span + "-00": true, "cc-" + id + "-" + span + "-01-what-comes-later": true,
		"": false, "ff-" + id + "-" + span + "-01": false, "00-" + id + "-" + span + "-01-more": false, "00-" + id + "-" + span: false,
		"00-00000000000000000000000000000000-" + span + "-01": false, "00-" + id + "-0000000000000000-01": false, "00-4BF92F3577B34DA6A3CE929D0E0E4736-" + span + "-01": false,
	} {
		from := Trace(http.Header{"Traceparent": {header}})
		assert.Equal(t, good, from.IsValid(), header)
		if good {
			assert.Equal(t, id, from.TraceID().String())
			assert.Equal(t, span, from.SpanID().String())
		}
	}
}

// TestSpansReachACollector: what a collector is sent, read by the protocol's own
// types: a request that is part of a trace stays in it, and one that its caller
// does not want told is not.
func TestSpansReachACollector(t *testing.T) {
	var told []*otlp.ResourceSpans
	service := httptest.NewServer(http.HandlerFunc(func(_ http.ResponseWriter, r *http.Request) {
		body, err := io.ReadAll(r.Body)
		assert.NoError(t, err)
		var request collector.ExportTraceServiceRequest
		assert.NoError(t, proto.Unmarshal(body, &request))
		assert.Equal(t, "/v1/traces", r.URL.Path)
		told = append(told, request.ResourceSpans...)
	}))
	defer service.Close()
	tracer, err := NewTracer(service.URL, 1, "0.1.0", "abc")
	require.NoError(t, err)
	ask := func(flags string) {
		r := httptest.NewRequest(http.MethodGet, "/v1/solve/sleeve?unit=in", nil)
		r.Header.Set("Traceparent", "00-4bf92f3577b34da6a3ce929d0e0e4736-00f067aa0ba902b7-"+flags)
		End(tracer.Begin(r), r.Method, "/v1/solve/:kind", "sleeve", http.StatusOK)
	}
	ask("01")
	ask("00")
	require.NoError(t, tracer.Shutdown(context.Background()))
	require.Len(t, told, 1)
	require.Len(t, told[0].ScopeSpans, 1)
	spans := told[0].ScopeSpans[0].Spans
	require.Len(t, spans, 1)
	assert.Equal(t, "GET /v1/solve/:kind", spans[0].Name)
	assert.Equal(t, otlp.Span_SPAN_KIND_SERVER, spans[0].Kind)
	assert.Equal(t, []byte{0x4b, 0xf9, 0x2f, 0x35, 0x77, 0xb3, 0x4d, 0xa6, 0xa3, 0xce, 0x92, 0x9d, 0x0e, 0x0e, 0x47, 0x36}, spans[0].TraceId)
	assert.Equal(t, []byte{0x00, 0xf0, 0x67, 0xaa, 0x0b, 0xa9, 0x02, 0xb7}, spans[0].ParentSpanId)
	said := map[string]string{}
	for _, a := range append(spans[0].Attributes, told[0].Resource.Attributes...) {
		said[a.Key] = a.Value.String()
	}
	for name, value := range map[string]string{"http.route": "/v1/solve/:kind", "url.path": "/v1/solve/sleeve", "http.response.status_code": "200", "creasefit.kind": "sleeve", "service.name": "creasefit", "vcs.ref.head.revision": "abc"} {
		assert.Contains(t, said[name], value, name)
	}
}

// TestWithoutACollectorNothingIsSent and nothing is in the way.
func TestWithoutACollectorNothingIsSent(t *testing.T) {
	tracer, err := NewTracer("", 1, "", "")
	require.NoError(t, err)
	span := tracer.Begin(httptest.NewRequest(http.MethodGet, "/", nil))
	assert.Nil(t, span)
	End(span, "GET", "/", "", 200)
	assert.NoError(t, tracer.Shutdown(context.Background()))
	for address, good := range map[string]bool{"": true, "http://127.0.0.1:4318": true, "https://collector.example/otlp": true, "127.0.0.1:4318": false, "collector": false, "ftp://collector.example": false} {
		assert.Equal(t, good, checkCollector(address) == nil, address)
	}
}

// TestFlightHoldsSoMuch, and one answer whatever its size.
func TestFlightHoldsSoMuch(t *testing.T) {
	f := NewFlight(100)
	assert.True(t, f.Enter(150))
	assert.False(t, f.Enter(1))
	f.Leave(150)
	assert.True(t, f.Enter(60))
	assert.True(t, f.Enter(40))
	assert.False(t, f.Enter(1))
	f.Leave(60)
	f.Leave(40)
	assert.Zero(t, f.Held())
}
