package draw

import (
	"fmt"
	"strings"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Reading is one length of a pattern, for a table.
type Reading struct {
	Piece string
	What  string
	From  string // the edge it is measured from; "" for a size
	At    measure.Length
}

// list lists everything that is set on a ruler.
func (l *layout) list(p *pattern.Pattern) []Reading {
	n := 0
	for i := range p.Pieces {
		n += 2 + 2*len(p.Pieces[i].Cuts)
		for _, s := range p.Pieces[i].Strips {
			n += 2 * len(s.Cells)
		}
	}
	readings := make([]Reading, 0, n)
	for i := range p.Pieces {
		readings = l.listPiece(readings, &p.Pieces[i])
	}
	return readings
}

func (l *layout) listPiece(to []Reading, p *pattern.Piece) []Reading {
	name := l.say(p.Name)
	to = append(to, Reading{name, l.say("blank width"), "", p.Width}, Reading{name, l.say("blank height"), "", p.Height})
	for i := range p.Strips {
		s := &p.Strips[i]
		from := l.say("left")
		if s.Across == pattern.Height {
			from = l.say("bottom")
		}
		at := s.Positions()
		for j, c := range s.Cells {
			to = append(to, Reading{name, l.say(c.Name), "", c.Size})
			if j < len(s.Scores) && s.Scores[j].Fold != pattern.Flat {
				score := &s.Scores[j]
				what := l.say(score.Name) + ", " + l.say(score.Fold.String()) + " " + l.degrees(score.Angle)
				to = append(to, Reading{name, what, from, at[j+1]})
			}
		}
	}
	for i := range p.Cuts {
		if c := &p.Cuts[i]; c.Kind != pattern.Relief {
			to = l.listCut(to, name, c)
		}
	}
	return to
}

func (l *layout) listCut(to []Reading, piece string, c *pattern.Cut) []Reading {
	what := l.say(c.Name)
	if c.On == "" {
		to = append(to, Reading{piece, what, l.say(pattern.Beside(c.From)), c.At})
	}
	from := c.From
	if from != "" {
		from = l.say(from)
	}
	return append(to, Reading{piece, what + " " + l.say("depth"), from, c.Depth})
}

// describe says in words what the drawing shows.
func (l *layout) describe(p *pattern.Pattern) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s ", l.say("Flat pattern, the inside facing up."))
	for i := range p.Pieces {
		piece := &p.Pieces[i]
		fmt.Fprintf(&b, "%s: %s × %s", l.say(piece.Name), l.length(piece.Width), l.length(piece.Height))
		l.describeStrips(&b, piece)
		for _, c := range piece.Cuts {
			if c.Kind == pattern.Relief {
				continue
			}
			fmt.Fprintf(&b, "; %s %s", l.say(c.Name), l.length(c.Depth))
			if c.From != "" {
				b.WriteString(", " + l.say("from the "+c.From))
			}
		}
		b.WriteString(". ")
	}
	return strings.TrimSpace(b.String())
}

func (l *layout) describeStrips(b *strings.Builder, p *pattern.Piece) {
	for i := range p.Strips {
		s := &p.Strips[i]
		from := l.say("from the left")
		if s.Across == pattern.Height {
			from = l.say("from the bottom")
		}
		for j, at := range s.Positions() {
			if j > 0 && j <= len(s.Scores) && s.Scores[j-1].Fold != pattern.Flat {
				score := &s.Scores[j-1]
				fmt.Fprintf(b, "; %s %s %s, %s %s", l.say(score.Name), l.length(at), from, l.say(score.Fold.String()), l.degrees(score.Angle))
			}
		}
	}
}
