package pattern_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/pattern"
)

// Lists of one memory are apart from one another even when they grow, and lie where others
// lay that were given back, of which nothing is left in them, so that nothing more is made room for.
func TestMemoryIsUsedAgain(t *testing.T) {
	var m pattern.Memory
	layOut := func() (lists [][]pattern.Cell) {
		for n := range 20 {
			lists = append(lists, m.Cells.Take(n))
		}
		return lists
	}
	for range 3 {
		lists := layOut()
		assert.Nil(t, lists[0])
		for n, list := range lists {
			assert.Len(t, list, n)
			for i := range list {
				assert.Zero(t, list[i])
				list[i].Name = string(rune('a' + n))
			}
			_ = append(list, pattern.Cell{Name: "grown"})
		}
		for n, list := range lists {
			for i := range list {
				assert.Equal(t, string(rune('a'+n)), list[i].Name)
			}
		}
		m.GiveBack()
	}
	most := func(take func()) float64 { return testing.AllocsPerRun(50, func() { take(); m.GiveBack() }) }
	for name, take := range map[string]func(){ // more than is spared, so that each anew would show
		"pieces": func() { m.Pieces.Take(200) }, "strips": func() { m.Strips.Take(200) }, "cells": func() { m.Cells.Take(200) }, "scores": func() { m.Scores.Take(200) }, "panels": func() { m.Panels.Take(200) },
		"creases": func() { m.Creases.Take(200) }, "cuts": func() { m.Cuts.Take(200) }, "glues": func() { m.Glues.Take(200) }, "seams": func() { m.Seams.Take(200) },
		"joints": func() { m.Joints.Take(200) }, "lengths": func() { m.Lengths.Take(200) }, "corners": func() { m.Corners.Take(200) },
	} {
		assert.Zero(t, most(take), name)
	}
}
