package tell

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestFormatsHaveNames: each its own name and extension, and those that are drawn
// come last.
func TestFormatsHaveNames(t *testing.T) {
	all, names, extensions := make([]Format, formats), map[string]bool{}, map[string]bool{}
	for f := range Format(formats) {
		all[f] = f
		names[f.String()], extensions[f.Extension()] = true, true
		assert.NotContains(t, f.MediaType(), ";")
		assert.Contains(t, f.Media(), f.MediaType())
		for _, name := range []string{f.String(), f.Extension()} {
			found, ok := FormatNamed(name, []Format{f})
			assert.True(t, ok && found == f, name)
		}
	}
	assert.Len(t, names, formats)
	assert.Len(t, extensions, formats)
	assert.Equal(t, []string{"json", "csv", "xml", "text", "markdown", "html", "ndjson", "svg", "pdf", "png", "dxf", "fold", "glb"}, FormatNames(all))
	for f, drawn := range map[Format]bool{JSON: false, HTML: false, Lines: false, SVG: true, PDF: true, GLB: true} {
		assert.Equal(t, drawn, f.IsPicture(), f.String())
	}
	_, ok := FormatNamed("pdf", []Format{JSON, CSV})
	assert.False(t, ok, "it is not offered")
}

// TestAcceptedIsWhatTheCallerWantsMost: the examples and the rules of RFC 9110,
// 12.5.1: the most specific range counts, then the greatest weight.
func TestAcceptedIsWhatTheCallerWantsMost(t *testing.T) {
	offered := []Format{JSON, CSV, XML, Text, HTML, PNG}
	for header, want := range map[string]Format{
		"": JSON, "*/*": JSON, "application/json": JSON, "image/heic": JSON,
		"text/csv": CSV, "Text/CSV": CSV, "text/html": HTML, "image/*": PNG, "text/*": CSV,
		"text/plain; q=0.5, text/html, text/x-dvi; q=0.8, text/x-c":                        HTML,
		"text/*;q=0.3, text/plain;q=0.7, text/plain;format=flowed, */*;q=0.5":              Text,
		"text/*;q=0.3, text/csv;q=0, application/json;q=0.2":                               Text,
		"application/json;q=0.2, */*;q=0.1, text/csv;q=0.19":                               JSON,
		"text/csv;q=2, application/xml;q=0.1":                                              XML,
		"text/csv;q=nonsense, application/xml;q=0.001":                                     XML,
		"application/json;q=0, text/csv;q=0":                                               JSON,
		"text/html,application/xhtml+xml,application/xml;q=0.9,image/avif,*/*;q=0.8":       HTML,
		"application/json;q=0.9,text/csv ; charset=utf-8 ; Q = 1":                          CSV,
		"image/png;q=0.4,application/xml;q=0.5,application/json;q=0.3,text/plain;q=0.4999": XML,
	} {
		assert.Equal(t, want.String(), Accepted(header, offered).String(), header)
	}
	for parameters, want := range map[string]float64{"": 1, "q=0.5": 0.5, " q = 0 ": 0, "level=1;q=0.25": 0.25, "q=-1": 0, "q=1.1": 0, "q=NaN": 0, "level=1": 1} {
		assert.Equal(t, want, weight(parameters), parameters)
	}
}
