package png

import (
	"image"
	"image/color"
	imagedraw "image/draw"
	"math"

	"golang.org/x/image/vector"

	"creasefit/internal/draw"
)

// point is a place of the picture in pixels, y downwards.
type point struct{ x, y float64 }

// levels is how many parts of a pixel a shape may cover: enough for the eye,
// and few enough for a palette.
const levels = 11

// brush paints shapes into a picture of at most 256 colours, one after the
// other. Every shape is rasterized in the box round it alone.
type brush struct {
	image *image.Paletted
	inks  []draw.Colour
	known map[color.RGBA]uint8
	next  [][256][levels + 1]uint16 // by ink, colour below and level: one more than the colour that it makes, 0 if not known yet
	r     vector.Rasterizer
	cover image.Alpha
	shape []point
	rings []int // where each ring of the shape ends
}

// newBrush returns a brush for a picture that is all ground.
func newBrush(w, h int, ground draw.Colour) *brush {
	b := &brush{image: image.NewPaletted(image.Rect(0, 0, w, h), nil), known: make(map[color.RGBA]uint8, 64)}
	b.colour(rgba(ground)) // number 0, which the new picture is full of
	return b
}

func rgba(c draw.Colour) color.RGBA { return color.RGBA{c.R, c.G, c.B, 255} }

// ink returns the number of a colour to paint with, which gets a place in the
// palette.
func (b *brush) ink(c draw.Colour) int {
	for i, known := range b.inks {
		if known == c {
			return i
		}
	}
	b.colour(rgba(c))
	b.inks = append(b.inks, c)
	b.next = append(b.next, [256][levels + 1]uint16{})
	return len(b.inks) - 1
}

// colour returns the place of a colour in the palette: that of the nearest one
// when the palette is full.
func (b *brush) colour(c color.RGBA) uint8 {
	if i, ok := b.known[c]; ok {
		return i
	}
	at := len(b.image.Palette)
	if at < 256 {
		b.image.Palette = append(b.image.Palette, c)
	} else {
		at = b.image.Palette.Index(c)
	}
	b.known[c] = uint8(at)
	return uint8(at)
}

// over returns the colour that an ink makes of one below it.
func (b *brush) over(ink int, below uint8, level int) uint8 {
	n := &b.next[ink][below][level]
	if *n == 0 {
		from, to := b.image.Palette[below].(color.RGBA), b.inks[ink]
		mix := func(from, to uint8) uint8 {
			return uint8((int(from)*(levels-level) + int(to)*level + levels/2) / levels)
		}
		*n = 1 + uint16(b.colour(color.RGBA{mix(from.R, to.R), mix(from.G, to.G), mix(from.B, to.B), 255}))
	}
	return uint8(*n - 1)
}

// row lays an ink over one pixel row where the cover, up to 255, says.
func (b *brush) row(x, y int, cover []uint8, ink int) {
	pixels := b.image.Pix[y*b.image.Stride+x:][:len(cover)]
	for i, a := range cover {
		if level := (int(a)*levels + 127) / 255; level > 0 {
			pixels[i] = b.over(ink, pixels[i], level)
		}
	}
}

// end closes the ring of the points that were added to the shape.
func (b *brush) end() {
	begun := 0
	if n := len(b.rings); n > 0 {
		begun = b.rings[n-1]
	}
	if len(b.shape) > begun {
		b.rings = append(b.rings, len(b.shape))
	}
}

// bandRows is how many rows of a shape are rasterized at once, so that a large
// one needs little more memory than a small one.
const bandRows = 256

// paint paints the shape and forgets it: rings of the same direction add up,
// those of the other direction are holes.
func (b *brush) paint(ink int) {
	box := b.bounds()
	if box.Dx() > 0 {
		for top := box.Min.Y; top < box.Max.Y; top += bandRows {
			b.band(image.Rect(box.Min.X, top, box.Max.X, min(top+bandRows, box.Max.Y)), ink)
		}
	}
	b.shape, b.rings = b.shape[:0], b.rings[:0]
}

// band paints what of the shape lies in a box.
func (b *brush) band(box image.Rectangle, ink int) {
	b.r.Reset(box.Dx(), box.Dy())
	from, x, y := 0, float64(box.Min.X), float64(box.Min.Y)
	for _, to := range b.rings {
		ring := b.shape[from:to]
		from = to
		b.r.MoveTo(float32(ring[0].x-x), float32(ring[0].y-y))
		for _, p := range ring[1:] {
			b.r.LineTo(float32(p.x-x), float32(p.y-y))
		}
		b.r.ClosePath()
	}
	size := box.Dx() * box.Dy()
	if cap(b.cover.Pix) < size {
		b.cover.Pix = make([]uint8, size)
	}
	b.cover.Pix, b.cover.Stride, b.cover.Rect = b.cover.Pix[:size], box.Dx(), image.Rectangle{Max: box.Size()}
	b.r.DrawOp = imagedraw.Src
	b.r.Draw(&b.cover, b.cover.Rect, image.Opaque, image.Point{})
	for row := range box.Dy() {
		b.row(box.Min.X, box.Min.Y+row, b.cover.Pix[row*box.Dx():][:box.Dx()], ink)
	}
}

// bounds returns the whole pixels of the picture that the shape lies in.
func (b *brush) bounds() image.Rectangle {
	if len(b.shape) == 0 {
		return image.Rectangle{}
	}
	low, high := b.shape[0], b.shape[0]
	for _, p := range b.shape {
		low = point{min(low.x, p.x), min(low.y, p.y)}
		high = point{max(high.x, p.x), max(high.y, p.y)}
	}
	return image.Rect(int(math.Floor(low.x)), int(math.Floor(low.y)), int(math.Ceil(high.x)), int(math.Ceil(high.y))).Intersect(b.image.Rect)
}

// bar paints a straight line of a width. Most lines are level or upright:
// what such a one covers of a pixel is a product.
func (b *brush) bar(from, to point, width float64, ink int) {
	long := math.Hypot(to.x-from.x, to.y-from.y)
	if long == 0 {
		return
	}
	x, y := (to.x-from.x)/long*width/2, (to.y-from.y)/long*width/2
	if math.Abs(x) < 1e-9 || math.Abs(y) < 1e-9 {
		b.block(point{min(from.x, to.x) - math.Abs(y), min(from.y, to.y) - math.Abs(x)}, point{max(from.x, to.x) + math.Abs(y), max(from.y, to.y) + math.Abs(x)}, ink)
		return
	}
	b.shape = append(b.shape, point{from.x + y, from.y - x}, point{from.x - y, from.y + x}, point{to.x - y, to.y + x}, point{to.x + y, to.y - x})
	b.end()
	b.paint(ink)
}

// block paints an upright rectangle.
func (b *brush) block(low, high point, ink int) {
	b.shape = append(b.shape, low, high)
	box := b.bounds()
	b.shape = b.shape[:0]
	if box.Empty() {
		return
	}
	part := func(pixel int, low, high float64) float64 {
		return max(0, min(high, float64(pixel+1))-max(low, float64(pixel)))
	}
	if cap(b.cover.Pix) < box.Dx() {
		b.cover.Pix = make([]uint8, box.Dx())
	}
	cover := b.cover.Pix[:box.Dx()]
	for y := box.Min.Y; y < box.Max.Y; y++ {
		down := 255 * part(y, low.y, high.y)
		for i := range cover {
			cover[i] = uint8(down*part(box.Min.X+i, low.x, high.x) + 0.5)
		}
		b.row(box.Min.X, y, cover, ink)
	}
}
