package guide

import (
	"slices"

	"creasefit/internal/pattern"
)

// mirror is how one way on a blank lies to another one that is its image.
type mirror uint8

// The mirrors, which may be both.
const (
	across mirror = 1 << iota // left and right change places
	upward                    // bottom and top change places
)

// family is ways on a blank that are images of one another.
type family struct {
	members []int  // the first is told
	how     string // how the others lie to it: "across", "upward", "half" a turn, "corners"; "" for none
}

// hows are the sets of mirrors that are told in a few words.
var hows = []struct {
	how     string
	mirrors []mirror
}{
	{"corners", []mirror{across, upward, across | upward}}, {"across", []mirror{across}}, {"upward", []mirror{upward}}, {"half", []mirror{across | upward}},
}

// families gathers ways that are images of one another about the middle of the
// blank, in the order of their first members.
func families(p *pattern.Piece, ways [][]pattern.Vertex) (all []family) {
	done := make([]bool, len(ways))
	for i := range ways {
		if done[i] {
			continue
		}
		f := family{members: []int{i}}
		for _, h := range hows {
			var images []int
			for _, m := range h.mirrors {
				image := m.image(p, ways[i])
				back := backwards(image)
				k := slices.IndexFunc(ways, func(way []pattern.Vertex) bool { return slices.Equal(way, image) || slices.Equal(way, back) })
				if k > i && !done[k] && !slices.Contains(images, k) {
					images = append(images, k)
				}
			}
			if len(images) == len(h.mirrors) {
				f.members, f.how = append(f.members, images...), h.how
				break
			}
		}
		for _, k := range f.members {
			done[k] = true
		}
		all = append(all, f)
	}
	return all
}

// image returns a way mirrored.
func (m mirror) image(p *pattern.Piece, way []pattern.Vertex) []pattern.Vertex {
	image := slices.Clone(way)
	for i := range image {
		v := &image[i]
		if m&across != 0 {
			v.X, v.Bulge = p.Width.Sub(v.X), -v.Bulge
		}
		if m&upward != 0 {
			v.Y, v.Bulge = p.Height.Sub(v.Y), -v.Bulge
		}
	}
	return image
}

// backwards returns a way gone from its end.
func backwards(way []pattern.Vertex) []pattern.Vertex {
	back := make([]pattern.Vertex, len(way))
	for i, v := range way {
		back[len(way)-1-i].Point = v.Point
		if i+1 < len(way) {
			back[len(way)-2-i].Bulge = -v.Bulge
		}
	}
	return back
}

// also says where else what was told is done.
func (w *writer) also(f *family) string {
	if f.how == "" {
		return ""
	}
	return w.say("also."+f.how, nil)
}
