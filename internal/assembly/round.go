package assembly

import (
	"cmp"
	"math"
	"slices"
)

// round chooses the opening that moves least, with all that are like it: alone,
// with a crease beyond it, or with the stock giving way. What is not glued opens
// with what hangs on it.
func (t *taking) round(openings []opening, flex bool) (move, bool) {
	slices.SortStableFunc(openings, func(a, b opening) int { return cmp.Compare(len(a.far), len(b.far)) })
	o, ok := t.first(openings, flex)
	if !ok {
		return move{}, false
	}
	all := []opening{o}
	for _, other := range openings {
		if !t.like(&o, &other) || !other.settle(t, o.child >= 0, o.flex) {
			continue
		}
		if more := append(all[:len(all):len(all)], other); t.frees(more) {
			all = more
		}
	}
	slices.SortStableFunc(all, func(a, b opening) int { return cmp.Compare(len(b.far), len(a.far)) })
	return move{openings: all, place: t.offset}, true
}

// first returns the first opening that is free; if the stock may give way, as
// little as it must.
func (t *taking) first(openings []opening, flex bool) (opening, bool) {
	alone := func(o *opening) bool { return t.frees([]opening{*o}) }
	tries := []func(o *opening) bool{alone, func(o *opening) bool { return t.corridor(o, 0) }}
	for k := 1; flex && k < mostFlexes; k++ {
		tries = append(tries, func(o *opening) bool {
			flexes := t.flexes(t.beyond(o.hinges[0], o.far))
			if k >= len(flexes) {
				return false
			}
			o.flex = flexes[k]
			return alone(o) || t.corridor(o, 0)
		})
	}
	for k := 0; flex && k < len(bows); k++ {
		tries = append(tries, func(o *opening) bool { return t.corridor(o, bows[k]) })
	}
	for _, free := range tries {
		for _, o := range openings {
			if free(&o) {
				return o, true
			}
		}
	}
	return opening{}, false
}

// settle makes an opening free the way that another one like it is.
func (o *opening) settle(t *taking, pair bool, flex float64) bool {
	if o.flex = flex; pair {
		return t.corridor(o, 0)
	}
	return t.frees([]opening{*o})
}

// like reports whether two openings are told as one.
func (t *taking) like(a, b *opening) bool {
	g, h := &t.rig.Hinges[a.hinges[0]], &t.rig.Hinges[b.hinges[0]]
	if a.hinges[0] == b.hinges[0] || a.near || b.near || a.class != b.class || math.Abs(math.Abs(g.Degrees)-math.Abs(h.Degrees)) > 1e-6 {
		return false
	}
	apart := !slices.ContainsFunc(a.far, func(i int) bool { return slices.Contains(b.far, i) })
	return apart && len(a.far) == len(b.far) && len(a.parted) == len(b.parted) ||
		a.child < 0 && len(a.parted) == 0 && len(b.parted) == 0 && len(a.carried) == 0 && len(b.carried) == 0
}
