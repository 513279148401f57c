// Command contactsheet writes a page that shows every kind in every format that a
// page can show, with a picture of every step, to be looked at before golden files
// are accepted. Models are played by the workbench, files for machines are read by
// other programs in tests. It is a tool for developers and no part of the service.
//
//	go run ./deploy/contactsheet -out /some/folder
//
// PDF pages are shown if pdftoppm is installed. The page checks nothing.
package main

import (
	"bytes"
	"flag"
	"fmt"
	"html"
	"io"
	"log"
	"os"
	"os/exec"
	"path/filepath"

	"creasefit/internal/draw"
	"creasefit/internal/draw/drawtest"
	"creasefit/internal/draw/pdf"
	"creasefit/internal/draw/png"
	"creasefit/internal/draw/svg"
	"creasefit/internal/guide"
	"creasefit/internal/measure"
)

func main() {
	out := flag.String("out", "contactsheet", "the folder to write to; it is made if it is missing")
	flag.Parse()
	if err := write(*out); err != nil {
		log.Fatal(err)
	}
}

// page is the page in the making.
type page struct {
	folder string
	text   bytes.Buffer
}

func write(folder string) error {
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	p := &page{folder: folder}
	p.text.WriteString(`<!doctype html><meta charset="utf-8"><title>Contact sheet</title><style>body{font:14px sans-serif}` +
		`section{display:flex;flex-wrap:wrap;gap:12px;align-items:flex-start}img{max-width:520px;max-height:520px;border:1px solid #bbb}figcaption{color:#555}</style>`)
	sleeve := draw.New(drawtest.Sleeve(), draw.Options{Title: "Sleeve for a tin of tea", Step: measure.Marks(measure.Millimetre)[3]})
	if err := p.drawing("sleeve", sleeve); err != nil {
		return err
	}
	for _, s := range drawtest.Every() {
		if err := p.drawing(s.Name, s.Draw()); err != nil {
			return fmt.Errorf("%s: %w", s.Name, err)
		}
		if err := p.guides(&s); err != nil {
			return fmt.Errorf("%s: %w", s.Name, err)
		}
	}
	if err := p.drawing("cut plan", drawtest.DrawPlan()); err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(folder, "index.html"), p.text.Bytes(), 0o644)
}

// guides shows the guide of a sample in every language as it is printed.
func (p *page) guides(s *drawtest.Sample) error {
	p.text.WriteString("<section>\n")
	defer p.text.WriteString("</section>\n")
	for _, language := range guide.Languages() {
		g, err := guide.Write(s.Solution, guide.Options{Language: language})
		if err != nil {
			return err
		}
		o := s.Options()
		o.Language = language
		if o.Say, err = guide.Words(language); err != nil {
			return err
		}
		pictures := s.Pictures(o)
		var b bytes.Buffer
		if err := pdf.EncodeGuide(&b, &g, draw.New(&s.Solution.Pattern, o), pdf.Guide{Steps: pictures}, pdf.Options{}); err != nil {
			return err
		}
		if err := p.file(s.Name+"-guide-"+language+".pdf", b.Bytes()); err != nil {
			return err
		}
		for i := range g.Steps {
			picture := svg.Append(nil, pictures(g.Steps[i].Order), svg.Options{})
			if err := p.file(fmt.Sprintf("%s-step-%d-%s.svg", s.Name, i+1, language), picture); err != nil {
				return err
			}
		}
	}
	return nil
}

// drawing shows one drawing in every format that a page can show.
func (p *page) drawing(name string, d *draw.Drawing) error {
	fmt.Fprintf(&p.text, "<h2>%s</h2><section>\n", html.EscapeString(name))
	defer p.text.WriteString("</section>\n")
	encoders := []struct {
		name  string
		write func(io.Writer) error
	}{
		{"light.svg", func(w io.Writer) error { return svg.Encode(w, d, svg.Options{}) }},
		{"dark.svg", func(w io.Writer) error { return svg.Encode(w, d, svg.Options{Dark: true}) }},
		{"preview.png", func(w io.Writer) error { return png.Encode(w, d, png.Options{Width: 520}) }},
		{"print.pdf", func(w io.Writer) error { return pdf.Encode(w, d, pdf.Options{}) }},
	}
	for _, e := range encoders {
		var b bytes.Buffer
		if err := e.write(&b); err != nil {
			return err
		}
		if err := p.file(name+"-"+e.name, b.Bytes()); err != nil {
			return err
		}
	}
	return nil
}

// file keeps a file and shows it.
func (p *page) file(name string, b []byte) error {
	if err := os.WriteFile(filepath.Join(p.folder, name), b, 0o644); err != nil {
		return err
	}
	shown := []string{name}
	if filepath.Ext(name) == ".pdf" {
		shown = p.pages(name)
	}
	for _, s := range shown {
		fmt.Fprintf(&p.text, `<figure><img src="%s" alt=""><figcaption>%s, %d bytes</figcaption></figure>`+"\n",
			html.EscapeString(s), html.EscapeString(s), len(b))
	}
	return nil
}

// pages turns the pages of a PDF file into pictures.
func (p *page) pages(name string) []string {
	root := filepath.Join(p.folder, name)
	if err := exec.Command("pdftoppm", "-r", "60", "-png", root, root).Run(); err != nil {
		log.Printf("%s is not shown: %v", name, err)
	}
	found, err := filepath.Glob(root + "-*.png")
	if err != nil {
		return nil
	}
	for i := range found {
		found[i] = filepath.Base(found[i])
	}
	return found
}
