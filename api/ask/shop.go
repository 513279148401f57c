package ask

import (
	"creasefit/internal/sheet"
)

// Shop is what an item has beside its size where orders come from many callers:
// the paper that it is cut from, when it is cut, and pieces for trials.
type Shop struct {
	Paper    Text
	Priority Count
	Spares   Count
}

func (q *Shop) bind(b *Names) {
	b.bind(&q.Paper, itemPaperName("The paper that it is cut from: one that a sheet names."))
	b.bind(&q.Priority, Name{Name: "priority", Example: "1", Help: "When it is cut: 1 first. Default: after all that have one."}.numbers(1, 9))
	b.bind(&q.Spares, Name{Name: "spares", Example: "2",
		Help: "So many more than count, for trials. Default: none."}.numbers(1, sheet.MostPieces))
}

func itemPaperName(help string) Name {
	return Name{Name: "paper", MostCharacters: MostValue, Example: "kraft", Help: help}
}

// settle refuses pieces for trials of what is not counted.
func (q *Shop) settle(r *Reading, count *Count) {
	q.Paper.Text = r.label(&q.Paper)
	if q.Spares.Given && !count.Given {
		r.conflict(&q.Spares, "without a count all of a sheet is cut, and there is nothing to add to", "add count")
	}
}

// add gives an item what is said of it here.
func (q *Shop) add(it sheet.Item) sheet.Item {
	it.Paper, it.Priority, it.Spares = q.Paper.Text, q.Priority.Count(), q.Spares.Count()
	it.Count += it.Spares
	return it
}
