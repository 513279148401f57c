package svg

import (
	"creasefit/internal/draw"
)

// paths writes named lines one by one; nameless ones that look alike share an
// element.
func (p *picture) paths(lines []draw.Line, layer draw.Layer) {
	for i := 0; i < len(lines); {
		l := &lines[i]
		if p.text("<path"); l.Fill {
			p.text(` stroke="none" fill="`)
			p.colour(p.colours.Of(layer))
			p.text(`"`)
		}
		p.text(` d="`)
		for p.path(&lines[i]); i+1 < len(lines) && l.Name == "" && lines[i+1].Name == "" && l.Fill == lines[i+1].Fill; {
			i++
			p.path(&lines[i])
		}
		i++
		if l.Name == "" {
			p.text(`"/>`)
			continue
		}
		p.text(`"><title>`)
		p.escaped(l.Name)
		p.text("</title></path>")
	}
}

// path writes the data of one line.
func (p *picture) path(l *draw.Line) {
	places := 6 // nanometres: what the piece itself consists of
	if l.Layer == draw.Measures || l.Name == "" && l.Layer != draw.Paper && l.Layer < draw.MarkPath {
		places = 2
	}
	p.text("M")
	p.point(l.Path[0].Point, places)
	for i, v := range l.Path {
		if i+1 == len(l.Path) && !l.Closed {
			break
		}
		next := l.Path[(i+1)%len(l.Path)]
		switch {
		case v.IsArc():
			p.arc(v, next.Point, places)
		case i+1 == len(l.Path): // Z draws it
		case v.Y == next.Y:
			p.text("H")
			p.number(next.X, places)
		case v.X == next.X:
			p.text("V")
			p.number(next.Y, places)
		default:
			p.text("L")
			p.point(next.Point, places)
		}
	}
	if l.Closed {
		p.text("Z")
	}
}

// arc writes a circular arc; the y axis points upwards, so that a positive
// sweep is one counterclockwise.
func (p *picture) arc(from draw.Vertex, to draw.Point, places int) {
	arc := draw.ArcBetween(from.Point, to, from.Bulge)
	p.text("A")
	p.number(arc.Radius, 6)
	p.text(" ")
	p.number(arc.Radius, 6)
	p.text(" 0 ")
	p.flag(from.Bulge > 1 || from.Bulge < -1)
	p.flag(from.Bulge > 0)
	p.point(to, places)
}
