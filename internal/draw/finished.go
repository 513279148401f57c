package draw

import (
	"slices"

	"creasefit/internal/assembly"
	"creasefit/internal/fold"
	"creasefit/internal/pattern"
)

// cleared is how much of the contents' thickness is drawn, so that no face of theirs
// lies in one of the paper's and it is plain which is in front.
const cleared = 0.97

// NewFinished draws an enclosure as it stands on the table, closed round its
// contents: a small picture without lengths and without words.
func NewFinished(p *pattern.Pattern, o Options) *Drawing {
	l := o.layout(nil)
	s := l.closed(p, &o)
	margin := 0.04 * max(s.box.Width(), s.box.Height())
	l.lettering = max(s.box.Width(), s.box.Height()) / 60
	d := l.drawing(Finished, p, o, func(o Options) *Drawing { return NewFinished(p, o) })
	d.Description, d.Width, d.Height = d.Title, s.box.Width()+2*margin, s.box.Height()+2*margin
	d.Figures = []Figure{{Name: d.Title, Lines: s.lines, Box: s.box, Size: s.box.High, At: Point{margin - s.box.Low.X, margin - s.box.Low.Y}}}
	return d
}

// closed is an enclosure closed round its contents.
func (l *layout) closed(p *pattern.Pattern, o *Options) *still {
	return l.standing(p, closed(p, o))
}

// standing draws all of a frame.
func (l *layout) standing(p *pattern.Pattern, frame assembly.Frame) *still {
	s := l.newStill(p, frame, slices.Repeat([]bool{true}, len(frame.Model.Plates)))
	s.draw(nil)
	return s
}

// closed is how an enclosure stands, closed round its contents.
func closed(p *pattern.Pattern, o *Options) assembly.Frame {
	frame := assembly.Frame{Model: fold.Fold(p, 1), Contents: contentsOf(p)}
	if len(o.Beside) > 0 {
		assembly.Adorn(&frame, o.Whole(p), 1, 0)
	}
	tuck(p, &frame, ownGlues(p))
	return frame
}

// contentsOf is what stands inside; nil where the enclosure goes into something.
func contentsOf(p *pattern.Pattern) *assembly.Block {
	room, ok := fold.Contents(p)
	if !ok || room.Size[2] <= 0 {
		return nil
	}
	b := &assembly.Block{}
	for k := range b.Up {
		b.Up[k] = room.Ways[2][k] * room.Size[2] * cleared
	}
	for _, c := range room.Corners {
		b.Base = append(b.Base, between(c, fold.Vec{c[0] - b.Up[0], c[1] - b.Up[1], c[2] - b.Up[2]}, 0.5))
	}
	return b
}
