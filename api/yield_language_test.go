package api

import (
	"net/url"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A cut plan in German has no English word, in its picture and in its steps, of one
// sheet and of an order.
func TestCutPlanInGerman(t *testing.T) {
	words := regexp.MustCompile(`\pL+`)
	for _, item := range []string{`{"blank":"90 x 60.5 mm","count":20}`, `{"blank":"90 x 60 mm"}`, `{"kind":"tray","width":76,"height":95,"thickness":40,"caliper":0.4,"count":9}`} {
		for _, format := range []string{"svg", "text"} {
			names := url.Values{"unit": {"mm"}, "sheet": {"a4"}, "margin": {"5"}, "effort_ms": {"10000"}, "items": {item}, "language": {"de"}, "format": {format}}
			text := call(t, shared(), "GET", "/v1/yield?"+names.Encode(), "").ok().Body.String()
			if format == "svg" {
				text = strings.Join(regexp.MustCompile(`>[^<]+<`).FindAllString(text, -1), " ")
			}
			assert.Contains(t, text, "Stell ")
			assert.NotContains(t, text, "60.5", "a German decimal mark")
			for _, word := range words.FindAllString(text, -1) {
				assert.NotContains(t, []string{"the", "of", "and", "sheet", "sheets", "Set", "Cut", "cut", "item", "by", "left", "paper", "plan", "tray", "Keep", "No", "Turn", "margin", "half", "Work", "settings", "turns", "offcuts", "Take", "Stack"}, word, text)
			}
		}
	}
}
