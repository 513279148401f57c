package edge

import (
	"context"
	"net/http"
	"net/url"

	"go.opentelemetry.io/otel/attribute"
	"go.opentelemetry.io/otel/exporters/otlp/otlptrace/otlptracehttp"
	"go.opentelemetry.io/otel/propagation"
	"go.opentelemetry.io/otel/sdk/resource"
	sdk "go.opentelemetry.io/otel/sdk/trace"
	"go.opentelemetry.io/otel/trace"
)

// Trace returns the trace and the span that a request is part of, by its
// traceparent header (W3C Trace Context); it is not valid without a good one.
func Trace(h http.Header) trace.SpanContext {
	return trace.SpanContextFromContext(propagation.TraceContext{}.Extract(context.Background(), propagation.HeaderCarrier(h)))
}

// Tracer sends a span for each request to a collector, by OTLP over HTTP
// (OpenTelemetry protocol 1.x). A nil one sends nothing.
type Tracer struct{ provider *sdk.TracerProvider }

// NewTracer sends to the collector at an address, nil for none. Of requests that
// begin a trace themselves it tells a share, 0 to 1; of others what their caller
// decided. What the collector does not take in time is dropped, and no request
// waits for it.
func NewTracer(collector string, share float64, release, revision string) (*Tracer, error) {
	if collector == "" {
		return nil, nil
	}
	address, err := url.JoinPath(collector, "v1/traces")
	if err != nil {
		return nil, err
	}
	exporter, err := otlptracehttp.New(context.Background(), otlptracehttp.WithEndpointURL(address))
	if err != nil {
		return nil, err
	}
	about := resource.NewSchemaless(attribute.String("service.name", "creasefit"), attribute.String("service.version", release), attribute.String("vcs.ref.head.revision", revision))
	return &Tracer{sdk.NewTracerProvider(sdk.WithBatcher(exporter), sdk.WithResource(about), sdk.WithSampler(sdk.ParentBased(sdk.TraceIDRatioBased(share))))}, nil
}

// Begin begins the span of a request. It is ended by End.
func (t *Tracer) Begin(r *http.Request) trace.Span {
	if t == nil {
		return nil
	}
	ctx := trace.ContextWithRemoteSpanContext(context.Background(), Trace(r.Header))
	_, span := t.provider.Tracer("creasefit").Start(ctx, r.Method, trace.WithSpanKind(trace.SpanKindServer),
		trace.WithAttributes(attribute.String("http.request.method", r.Method), attribute.String("url.path", r.URL.Path)))
	return span
}

// End ends a span, if there is one, with what became of the request; its names
// are those of OpenTelemetry's conventions for HTTP, but for the kind.
func End(span trace.Span, method, route, kind string, status int) {
	if span == nil {
		return
	}
	span.SetName(method + " " + route)
	span.SetAttributes(attribute.String("http.route", route), attribute.Int("http.response.status_code", status))
	if kind != "" {
		span.SetAttributes(attribute.String("creasefit.kind", kind))
	}
	span.End()
}

// Shutdown sends what has not been sent, until the context ends.
func (t *Tracer) Shutdown(ctx context.Context) error {
	if t == nil {
		return nil
	}
	return t.provider.Shutdown(ctx)
}

// checkCollector says what is wrong with the address of a collector.
func checkCollector(address string) error {
	u, err := url.Parse(address)
	if err == nil && address != "" && (u.Host == "" || u.Scheme != "http" && u.Scheme != "https") {
		err = &url.Error{Op: "use", URL: address, Err: url.InvalidHostError("write one such as http://127.0.0.1:4318")}
	}
	return err
}
