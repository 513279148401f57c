package draw

import (
	"math"
	"strings"

	"creasefit/internal/assembly"
	"creasefit/internal/pattern"
)

// NewPicture draws steps of an order of work, from 0, that are told together.
// Cutting, scoring and slitting show that step's lines alone on the blank, with
// their readings. All else is drawn in space, before the first step and after each,
// with arrows in the habits of folding diagrams: a filled head where paper comes
// towards its inside, a half head where it goes the other way, a hollow one for what
// is put in. What the picture shows is said in words in its description.
func NewPicture(p *pattern.Pattern, order *assembly.Order, steps []int, o Options) *Drawing {
	p = o.Whole(p)
	var flat, moving []int
	for _, step := range steps {
		if order.Steps[step].Do <= assembly.Slit {
			flat = append(flat, step)
		} else {
			moving = append(moving, step)
		}
	}
	words := o.layout(p)
	stills := words.moments(p, order, moving)
	if o.Description == "" {
		var texts []string
		for _, step := range steps {
			texts = append(texts, words.tell(p, &order.Steps[step]))
		}
		o.Description = strings.Join(texts, " ")
	}
	var draw func(Options) *Drawing
	draw = func(o Options) *Drawing {
		l := o.layout(p)
		l.suit(suitable(p))
		d := l.drawing(Picture, p, o, draw)
		rows := l.strip(stills, l.numbers(len(stills)))
		for _, step := range flat {
			for _, i := range order.Steps[step].Pieces {
				rows = append(rows, []Figure{l.bench(p, i, order.Steps[step].Do)})
			}
		}
		d.Lettering = l.lettering
		d.rows(rows)
		return d
	}
	return draw(o)
}

// Work is what is made with the order of its work: an enclosure, or one of several
// round one another.
type Work struct {
	Name    string // "" for one alone
	Pattern *pattern.Pattern
	Options Options
	Order   func() (*assembly.Order, error) // finds it
}

// Pictures returns how steps of works that are told together are drawn, and how many
// there are. They are counted from 1, through one work after another. The error is
// that of an order.
func Pictures(works []Work) (picture func(steps []int) *Drawing, n int, err error) {
	orders := make([]*assembly.Order, len(works))
	for i := range works {
		works[i].Options.keep()
		if orders[i], err = works[i].Order(); err != nil {
			return nil, 0, err
		}
		n += len(orders[i].Steps)
	}
	return func(steps []int) *Drawing {
		k, before := 0, 0
		for ; steps[0]-before > len(orders[k].Steps); k++ {
			before += len(orders[k].Steps)
		}
		from0 := make([]int, len(steps))
		for i, n := range steps {
			from0[i] = n - before - 1
		}
		return NewPicture(works[k].Pattern, orders[k], from0, works[k].Options)
	}, n, nil
}

// rows lays figures out in rows, each in the middle of its row's height.
func (d *Drawing) rows(rows [][]Figure) {
	margin, gap := 0.5*d.Lettering, d.Lettering
	for _, row := range rows {
		wide := -gap
		for i := range row {
			wide += row[i].Box.Width() + gap
		}
		d.Width = max(d.Width, wide+2*margin)
		d.Height += tallest(row) + gap
	}
	d.Height += 2*margin - gap
	top := d.Height - margin
	for _, row := range rows {
		left, high := margin, tallest(row)
		for i := range row {
			row[i].put(left, top-(high-row[i].Box.Height())/2)
			left += row[i].Box.Width() + gap
		}
		top -= high + gap
		d.Figures = append(d.Figures, row...)
	}
}

func tallest(row []Figure) (high float64) {
	for i := range row {
		high = max(high, row[i].Box.Height())
	}
	return high
}

// tell says in words what a step's picture shows.
func (l *layout) tell(p *pattern.Pattern, s *assembly.Step) string {
	var parts []string
	add := func(text string) {
		for _, known := range parts {
			if known == text {
				return
			}
		}
		parts = append(parts, text)
	}
	for _, i := range s.Pieces {
		piece := &p.Pieces[i]
		add(l.say(piece.Name) + ": " + l.size(piece.Width, piece.Height))
	}
	for _, t := range s.Turns {
		c := &p.Pieces[t.Piece].Creases[t.Crease]
		add(l.say(c.Name) + ": " + l.say(toward(c.Fold)) + " " + l.degrees(c.Angle*math.Abs(t.To-t.From)))
	}
	for _, a := range s.Glues {
		g, _, _ := a.Of(p)
		add(l.say("glue") + ": " + l.say(g.Name))
	}
	for _, n := range s.Nests {
		add(l.say(p.Nests[n].Name))
	}
	for _, n := range s.Locks {
		add(l.say(p.Locks[n].Name))
	}
	for _, j := range s.Joints {
		add(l.say(p.Pieces[j.Piece].Joints[j.Joint].Name))
	}
	for _, t := range s.Travels {
		if t.Piece < 0 {
			add(l.say("contents"))
		}
	}
	return l.say(s.Do.String()) + ": " + strings.Join(parts, "; ") + "."
}

// toward says which way a fold goes, for someone who sees the inside.
func toward(f pattern.Fold) string {
	switch f {
	case pattern.Valley:
		return "towards you"
	case pattern.Mountain:
		return "away from you"
	default:
		return "flat"
	}
}
