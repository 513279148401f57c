package drawtest_test

import (
	"bytes"
	"flag"
	"fmt"
	"html"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"creasefit/internal/draw"
	"creasefit/internal/draw/drawtest"
	"creasefit/internal/draw/pdf"
	"creasefit/internal/draw/png"
	"creasefit/internal/draw/svg"
	"creasefit/internal/guide"
	"creasefit/internal/measure"
)

var sheet = flag.String("sheet", "", "folder to write a page with pictures of every kind into, to be looked at")

// page is the page in the making.
type page struct {
	*testing.T
	text bytes.Buffer
}

// TestContactSheet writes a page that shows every kind in every format that a page can show,
// with a picture of every step, to be looked at before golden files are accepted. Pages of
// PDF are shown if pdftoppm is installed.
func TestContactSheet(t *testing.T) {
	if *sheet == "" {
		t.Skip("no folder is named: go test ./internal/draw/drawtest -run ContactSheet -sheet /some/folder")
	}
	require.NoError(t, os.MkdirAll(*sheet, 0o755))
	p := &page{T: t}
	p.text.WriteString(`<!doctype html><meta charset="utf-8"><title>Contact sheet</title><style>body{font:14px sans-serif}` +
		`section{display:flex;flex-wrap:wrap;gap:12px;align-items:flex-start}img{max-width:520px;max-height:520px;border:1px solid #bbb}figcaption{color:#555}</style>`)
	p.drawing("sleeve", draw.New(drawtest.Sleeve(), draw.Options{Title: "Sleeve for a tin of tea", Step: measure.Marks(measure.Millimetre)[3]}))
	for _, s := range drawtest.Every() {
		p.drawing(s.Name, s.Draw())
		p.guides(&s)
	}
	p.drawing("cut plan", drawtest.DrawPlan())
	require.NoError(t, os.WriteFile(filepath.Join(*sheet, "index.html"), p.text.Bytes(), 0o644))
}

// guides shows the guide of a sample in every language as it is printed.
func (p *page) guides(s *drawtest.Sample) {
	p.text.WriteString("<section>\n")
	for _, language := range guide.Languages() {
		g, err := guide.Write(s.Solution, guide.Options{Language: language})
		require.NoError(p, err)
		o := s.Options()
		o.Language = language
		o.Say, err = guide.Words(language)
		require.NoError(p, err)
		pictures := s.Pictures(o)
		var b bytes.Buffer
		require.NoError(p, pdf.EncodeGuide(&b, &g, draw.New(&s.Solution.Pattern, o), pdf.Guide{Steps: pictures}, pdf.Options{}))
		p.file(s.Name+"-guide-"+language+".pdf", b.Bytes())
		for i := range g.Steps {
			p.file(fmt.Sprintf("%s-step-%d-%s.svg", s.Name, i+1, language), svg.Append(nil, pictures(g.Steps[i].Order), svg.Options{}))
		}
	}
	p.text.WriteString("</section>\n")
}

// drawing shows one drawing in every format that a page can show.
func (p *page) drawing(name string, d *draw.Drawing) {
	fmt.Fprintf(&p.text, "<h2>%s</h2><section>\n", html.EscapeString(name))
	p.file(name+"-light.svg", svg.Append(nil, d, svg.Options{}))
	p.file(name+"-dark.svg", svg.Append(nil, d, svg.Options{Dark: true}))
	var preview, print bytes.Buffer
	require.NoError(p, png.Encode(&preview, d, png.Options{Width: 520}))
	p.file(name+"-preview.png", preview.Bytes())
	require.NoError(p, pdf.Encode(&print, d, pdf.Options{}))
	p.file(name+"-print.pdf", print.Bytes())
	p.text.WriteString("</section>\n")
}

// file keeps a file and shows it.
func (p *page) file(name string, b []byte) {
	path := filepath.Join(*sheet, name)
	require.NoError(p, os.WriteFile(path, b, 0o644))
	shown := []string{path}
	if filepath.Ext(name) == ".pdf" {
		if err := exec.Command("pdftoppm", "-r", "60", "-png", path, path).Run(); err != nil {
			p.Logf("%s is not shown: %v", name, err)
		}
		var err error
		shown, err = filepath.Glob(path + "-*.png")
		require.NoError(p, err)
	}
	for _, s := range shown {
		s = html.EscapeString(filepath.Base(s))
		fmt.Fprintf(&p.text, `<figure><img src="%s" alt=""><figcaption>%s, %d bytes</figcaption></figure>`+"\n", s, s, len(b))
	}
}
