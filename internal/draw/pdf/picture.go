package pdf

import (
	"math"

	"creasefit/internal/draw"
)

// picture is the picture of a step as a column has it.
type picture struct {
	d          *draw.Drawing
	scale      float64
	wide, high float64 // of the column, and of what the picture takes of it
}

// ladder is a picture in a column, as large as fits and smaller and smaller, each
// made once it is wanted.
type ladder struct {
	d             *draw.Drawing
	wide, letters float64 // of the column; the least letters
	steps         []*picture
}

// How much smaller a picture is than the one before it, and how many there are.
const (
	nextSize = 0.8
	rungs    = 6
)

// redrawn is how often a picture is drawn anew for its letters to come out large
// enough: larger ones widen it.
const redrawn = 12

// fitted returns the picture that is no higher than wanted, with letters that are
// large enough; what hardly gets lower by that stays as wide as it is.
func (l *ladder) fitted(high float64) *picture {
	best := l.rung(0)
	for k := 1; best.high > high && k < rungs; k++ {
		p := l.rung(k)
		if p.high > 0.9*best.high || p.scale*p.d.Lettering < l.letters*0.999 {
			break
		}
		best = p
	}
	return best
}

// rung returns one of the pictures.
func (l *ladder) rung(k int) *picture {
	for len(l.steps) <= k {
		l.steps = append(l.steps, l.smaller(math.Pow(nextSize, float64(len(l.steps)))))
	}
	return l.steps[k]
}

// smaller makes a picture whose longer side is a part of what fits the column, with
// letters that are large enough if that can be had: a tall one may widen for them.
func (l *ladder) smaller(part float64) *picture {
	p := &picture{d: l.d, wide: l.wide}
	longer := func() float64 { return max(p.d.Width, p.d.Height) }
	most := longer() * min(l.wide/p.d.Width, 1) * part
	last, slope := shrunk{}, 0.0
	for tries := 0; ; tries++ {
		p.scale = min(l.wide/p.d.Width, most/longer(), 1)
		p.high = p.d.Height * p.scale
		if tries == redrawn || p.scale*p.d.Lettering >= l.letters*0.9999 {
			return p
		}
		now := shrunk{d: p.d, scale: p.scale}
		if tries > 0 {
			slope = now.slope(&last)
		}
		last = now
		p.d = p.d.Lettered(now.sought(l.letters, slope))
	}
}

// picture prints a picture in the middle of its column.
func (s *sheet) picture(p *picture, x, y float64) {
	plain := s.d
	defer func() { s.d = plain }()
	s.d = p.d
	x += (p.wide - p.d.Width*p.scale) / 2
	for i := range p.d.Figures {
		f := &p.d.Figures[i]
		s.show(f, window{x + f.At.X*p.scale, y + (p.d.Height-f.At.Y)*p.scale, p.scale, f.Box, false})
	}
}

// pattern prints the pattern on pages of its own.
func (s *sheet) pattern() {
	s.open = false
	for i := range s.d.Figures {
		s.figure(i)
	}
	s.legend(&s.d.Legend)
	e := &element{tag: "Figure", alt: s.d.Description}
	for page := s.written; page < len(s.pages); page++ {
		s.f.enclose(page, e)
	}
}
