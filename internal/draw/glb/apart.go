package glb

import (
	"math"
	"slices"

	"creasefit/internal/assembly"
	"creasefit/internal/fold"
)

// room is what is left free between things that are made side by side, in mm.
const room = 20

// approach is how many poses bring what was made aside to where it is joined.
const approach = 4

// apart makes what is joined later beside all else, to the right of it: the order of
// work knows only that it is not in the way of what it is not joined to yet.
func (s *skeleton) apart(clips []clip) {
	for j := len(clips) - 1; j > 0; j-- {
		c := &clips[j]
		group := s.travelling(c.step)
		if group == nil || !s.worked(clips[:j], group) {
			continue
		}
		right, left := math.Inf(-1), math.Inf(1)
		for i := range clips[:j+1] {
			for k, span := range clips[i].spans {
				if slices.Contains(group, k) {
					left = min(left, span[0])
				} else {
					right = max(right, span[1])
				}
			}
		}
		by := right - left + room
		for i := range clips[:j] {
			for _, stances := range clips[i].stances {
				aside(stances, group, by)
			}
			for _, k := range group {
				clips[i].spans[k][0], clips[i].spans[k][1] = clips[i].spans[k][0]+by, clips[i].spans[k][1]+by
			}
		}
		var coming [][]stance
		for k := range approach {
			stances := slices.Clone(c.stances[0])
			aside(stances, group, by*(1-float64(k)/approach))
			coming = append(coming, stances)
		}
		c.stances = append(coming, c.stances...)
	}
}

func aside(stances []stance, group []int, by float64) {
	for _, k := range group {
		stances[k].shift[0] += by
	}
}

// travelling returns the joints of the pieces that a step moves as wholes, nil if
// it moves at most the contents.
func (s *skeleton) travelling(step *assembly.Step) (group []int) {
	pieces := false
	for _, t := range step.Travels {
		if t.Piece < 0 {
			group = append(group, 1+len(s.model.Plates))
			continue
		}
		pieces = true
		for i := range s.model.Plates {
			if pl := &s.model.Plates[i]; pl.Parent < 0 && pl.Piece == t.Piece && pl.Copy == t.Copy {
				group = append(group, 1+i)
			}
		}
	}
	if !pieces {
		return nil
	}
	return group
}

// worked reports whether something of a group has been folded by then.
func (s *skeleton) worked(clips []clip, group []int) bool {
	for i := range clips {
		for _, t := range clips[i].step.Turns {
			for _, k := range group {
				if k <= len(s.model.Plates) && s.model.Plates[k-1].Piece == t.Piece {
					return true
				}
			}
		}
	}
	return false
}

// nowhere is a span that holds nothing yet.
var nowhere = [][2]float64{{math.Inf(1), math.Inf(-1)}}

// reach widens the spans by what is there in a frame.
func (s *skeleton) reach(spans [][2]float64, f *assembly.Frame) {
	widened := func(joint int, ring []fold.Vec) {
		for _, v := range ring {
			spans[joint][0], spans[joint][1] = min(spans[joint][0], v[0]), max(spans[joint][1], v[0])
		}
	}
	for i := range f.Model.Plates {
		root := i
		for f.Model.Plates[root].Parent >= 0 {
			root = f.Model.Plates[root].Parent
		}
		if f.Present[root] {
			widened(1+root, f.Model.Plates[i].Outline)
		}
	}
	if f.Contents != nil {
		widened(1+len(f.Model.Plates), f.Contents.Base)
	}
}
