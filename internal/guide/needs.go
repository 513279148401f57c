package guide

import (
	"math"

	"creasefit/internal/measure"
)

// item writes one material or tool.
func (w *writer) item(key string, a args) Item {
	w.take()
	text := w.say(key, a)
	return Item{text, w.take()}
}

// materials lists what is used up.
func (w *writer) materials() []Item {
	r := w.s.Request
	var width, height measure.Length
	for i := range w.s.Pattern.Pieces {
		p := &w.s.Pattern.Pieces[i]
		width, height = measure.Max(width, p.Width), measure.Max(height, p.Height)
	}
	paper := args{"caliper": fine(r.Caliper), "width": width, "height": height, "grammage": int(math.Round(r.Grammage))}
	key := "material.stock"
	if w.s.Pattern.Stiff() {
		key = "material.board"
	}
	if r.Grammage > 0 {
		key += ".weight"
	}
	items := []Item{w.item(key, paper)}
	switch {
	case r.SheetWidth.IsZero() && len(w.s.Pattern.Pieces) > 1: // of one the first step tells
		items = append(items, w.item("material.piece", paper))
	case !r.SheetWidth.IsZero():
		items = append(items, w.item("material.sheet", args{"width": known(r.SheetWidth), "height": known(r.SheetHeight)}))
	}
	if w.s.Ornament != nil {
		items = append(items, w.item("material.ornament", args{"width": w.s.Ornament.HalfWidth.Times(2), "height": w.s.Ornament.Height}))
	}
	if w.adhesive() {
		items = append(items, w.item("material.glue", nil), w.item("material.slip", nil))
	}
	return items
}

// tools lists what lies on the table.
func (w *writer) tools() []Item {
	items := []Item{w.ruled(), w.item("tool.knife", nil), w.item("tool.pencil", nil)}
	if w.scored() {
		key := "tool.score"
		if w.s.Pattern.Stiff() {
			key = "tool.score.board"
		}
		items = append(items, w.item(key, nil))
	}
	if w.adhesive() {
		items = append(items, w.item("tool.weight", nil))
	}
	return items
}

// ruled is the ruler, with the marks that it has to have.
func (w *writer) ruled() Item { return w.item("tool.ruler", args{"step": w.step(w.marks)}) }

// adhesive reports whether anything is glued.
func (w *writer) adhesive() bool {
	return w.s.Ornament != nil || w.layered() || w.glued()
}

// cautions lists what keeps people whole. None of them replaces local rules.
func (w *writer) cautions() []string {
	text := []string{w.say("caution.blade", nil)}
	if w.adhesive() {
		text = append(text, w.say("caution.glue", nil))
	}
	return append(text, w.say("caution.food", nil), w.say("caution.children", nil), w.say("caution.rules", nil))
}
