package search

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
)

// join is the least rectangle of two laid side by side along an axis, with a
// kerf between them.
func join(a sheet.Axis, low, high sheet.Extent, kerf measure.Length) sheet.Extent {
	if a == sheet.Width {
		return sheet.Extent{Width: measure.Sum(low.Width, kerf, high.Width), Height: measure.Max(low.Height, high.Height)}
	}
	return sheet.Extent{Width: measure.Max(low.Width, high.Width), Height: measure.Sum(low.Height, kerf, high.Height)}
}

// strip is a layout with its least rectangle and a text that is the same for
// layouts that are cut alike.
type strip struct {
	layout *layout
	need   sheet.Extent
	key    string
}

// tidy puts the strips of every run of parallel cuts into the order that a
// person would cut them in: the longest first, so that one trim serves all
// shorter ones, then the widest, equal ones together.
func (p *problem) tidy(l *layout) strip {
	if l.low == nil {
		it := p.kinds[l.kind].items[0]
		w, h := p.order.Items[it].Lying(l.turned)
		return strip{l, sheet.Extent{Width: w, Height: h}, strconv.Itoa(int(l.kind)) + strconv.FormatBool(l.turned)[:1]}
	}
	parts := p.strips(l, l.axis, nil)
	slices.SortStableFunc(parts, func(x, y strip) int {
		return cmp.Or(
			y.need.Along(l.axis.Other()).Compare(x.need.Along(l.axis.Other())),
			y.need.Along(l.axis).Compare(x.need.Along(l.axis)),
			cmp.Compare(x.key, y.key))
	})
	keys := make([]string, len(parts))
	for i := range parts {
		keys[i] = parts[i].key
	}
	whole := parts[len(parts)-1]
	for i := len(parts) - 2; i >= 0; i-- {
		low := parts[i]
		whole = strip{
			&layout{axis: l.axis, low: low.layout, high: whole.layout},
			join(l.axis, low.need, whole.need, p.order.Kerf),
			"",
		}
	}
	whole.key = l.axis.String()[:1] + "(" + strings.Join(keys, ",") + ")"
	return whole
}

// strips gathers the tidied parts of a run of parallel cuts.
func (p *problem) strips(l *layout, a sheet.Axis, parts []strip) []strip {
	if l.low == nil || l.axis != a {
		return append(parts, p.tidy(l))
	}
	return p.strips(l.high, a, p.strips(l.low, a, parts))
}
