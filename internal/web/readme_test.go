package web_test

import (
	"bytes"
	"image/png"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/browser"
	"creasefit/internal/golden"
)

// mostPicture is how large a picture of the README may be, in bytes.
const mostPicture = 150 << 10

// The README shows the path in three pictures: the page on a phone, a step of the
// work, the template. They are taken here.
func TestReadmePictures(t *testing.T) {
	server, _ := service(t, nil)
	const jar = "contents=honey-jar&stock=index-110&sheet=craft-12&unit=in"
	p := browser.Open(t, server+"/?"+jar, chromedp.EmulateViewport(390, 1180))
	p.Until(settled)
	phone, err := chromedp.Run(p.Context(), chromedp.CaptureScreenshot())
	require.NoError(t, err)
	taken := map[string][]byte{"phone.png": phone}
	for name, query := range map[string]string{"step.png": "&view=step&picture=4&pixels=700", "template.png": "&view=template&pixels=500"} {
		answer, body := fetch(t, server+"/v1/drawing/tray?"+jar+query+"&format=png")
		require.Equal(t, http.StatusOK, answer.StatusCode, body)
		taken[name] = []byte(body)
	}
	readme, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	for name, picture := range taken {
		file := filepath.Join("..", "..", "testdata", "readme", name)
		if golden.Updating() {
			require.NoError(t, os.WriteFile(file, picture, 0o644))
		}
		committed, err := os.ReadFile(file)
		require.NoError(t, err, "take it with -update")
		assert.LessOrEqual(t, len(committed), mostPicture, name)
		assert.True(t, strings.Contains(string(readme), "testdata/readme/"+name), "%s is shown", name)
		is, err := png.DecodeConfig(bytes.NewReader(picture))
		require.NoError(t, err)
		was, err := png.DecodeConfig(bytes.NewReader(committed))
		require.NoError(t, err)
		assert.Equal(t, is.Width, was.Width, "%s is another one now: take it with -update and look at it", name)
		assert.InDelta(t, is.Height, was.Height, 0.1*float64(was.Height), name)
	}
}
