package pdf

import (
	"math"

	"creasefit/internal/draw"
)

// views lays the same drawing out with letters of several sizes.
type views struct {
	d     *draw.Drawing
	known [mostSizes]*draw.Drawing
}

// leastInside is the least size of the letters in a picture that can be read,
// in mm: 5.1 points.
const leastInside = 1.8

// The sizes of letters that are tried, in mm: each is larger than the one
// before by a fixed ratio.
const (
	firstLetters = 2.2
	ratio        = 1.08
	mostSizes    = 60 // up to 220 mm, for the largest sheets there are
)

// view is a drawing as large as a part of a page allows; without a drawing if
// there is no room.
type view struct {
	d     *draw.Drawing
	scale float64
	wide  float64 // of the part of the page
}

// letters returns the size of the letters on the page.
func (v *view) letters() float64 {
	if v.d == nil {
		return 0
	}
	return v.scale * v.d.Lettering
}

// drawn returns the longest side of a blank on the page.
func (v *view) drawn() float64 {
	long := 0.0
	if v.d != nil {
		for i := range v.d.Figures {
			long = max(long, v.d.Figures[i].Size.X, v.d.Figures[i].Size.Y)
		}
	}
	return long * v.scale
}

// good reports whether the picture can be read and is as large as wanted, in
// mm, or half as large as life.
func (v *view) good(drawn float64) bool {
	return v.letters() >= leastInside && (v.scale >= 0.5 || v.drawn() >= drawn)
}

// within finds the smallest letters that can be read at the scale that they
// leave for the figures, or else those that come out largest.
func (v *views) within(wide, high float64) (best view) {
	if high < 10*leastInside {
		return view{}
	}
	most := v.most(wide, high)
	for i := range v.known {
		if letters(i)*most < leastInside && i+1 < len(v.known) {
			continue // they could not be read even without the texts beside the blanks
		}
		d := v.lettered(i)
		if at := (view{d, fit(d, wide, high), wide}); at.letters() > best.letters() {
			best = at
		}
		if best.letters() >= leastInside {
			break
		}
	}
	return best
}

// most returns a scale that no picture comes up to.
func (v *views) most(wide, high float64) float64 {
	scale := 1.0
	for i := range v.d.Figures {
		size := v.d.Figures[i].Size
		scale = min(scale, wide/size.X, high/size.Y)
	}
	return scale
}

// letters returns the size of letters of a number.
func letters(i int) float64 { return firstLetters * math.Pow(ratio, float64(i)) }

// lettered returns the drawing with the letters of a number.
func (v *views) lettered(i int) *draw.Drawing {
	if v.known[i] == nil {
		v.known[i] = v.d.Lettered(letters(i))
	}
	return v.known[i]
}

// fit returns the largest scale, in whole hundredths of 1 : n, at which the
// figures and the legend have room; no figure is enlarged.
func fit(d *draw.Drawing, wide, high float64) float64 {
	for n := 100.0; ; n = math.Ceil(n * 1.02) {
		scale := 100 / n
		if pack(d, wide/scale, nil) <= high/scale || n > 1e6 {
			return scale
		}
	}
}

// pack puts the figures and the legend into rows from the left and returns how
// high all rows are; infinite if a figure is too wide. put, if any, gets the
// upper left corner of each.
func pack(d *draw.Drawing, wide float64, put func(f *draw.Figure, x, y float64)) float64 {
	gap := 2 * d.Lettering
	x, y, row := 0.0, 0.0, 0.0
	for i := range len(d.Figures) + 1 {
		f := &d.Legend
		if i < len(d.Figures) {
			f = &d.Figures[i]
		}
		w := f.Box.Width()
		if w > wide {
			return math.Inf(1)
		}
		if x > 0 && x+w > wide {
			x, y, row = 0, y+row+gap, 0
		}
		if put != nil {
			put(f, x, y)
		}
		x, row = x+w+gap, max(row, f.Box.Height())
	}
	return y + row
}

// tall returns the height of a view with what is said below it.
func (v *view) tall(t *text) float64 {
	if v.d == nil {
		return 0
	}
	return pack(v.d, v.wide/v.scale, nil)*v.scale + t.caption()
}

// picture prints a view with what it is below it.
func (s *sheet) picture(v *view, left, y float64, t *text) {
	s.d = v.d
	high := pack(v.d, v.wide/v.scale, func(f *draw.Figure, x, down float64) {
		s.show(f, window{left + (x-f.Box.Low.X)*v.scale, y + (down+f.Box.High.Y)*v.scale, v.scale, f.Box, false})
	})
	note, _ := s.scale(v.scale)
	s.f.areas(draw.Light().Quiet)
	text := s.g.Labels.Figure + ", " + note + ". " + s.d.Say("Not a template: set the readings on a ruler.")
	s.block(draw.Wrap(text, smallest, v.wide), left, y+high*v.scale+0.6*t.size, smallest)
}
