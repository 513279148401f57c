package pdf

import "creasefit/internal/draw"

// Parts returns which parts of pieces the pages of a template show, in the order that
// they are printed in.
func Parts(d *draw.Drawing, o Options) (parts []draw.Box, err error) {
	short, long, err := o.paper(d.Step)
	if err != nil {
		return nil, err
	}
	if d.Lettering > draw.Lettering {
		d = d.Lettered(draw.Lettering)
	}
	s, err := newPrinter(d.Title, d.Language, d, short.Millimetres(), long.Millimetres()).laid()
	if err != nil {
		return nil, err
	}
	for _, area := range s.order() {
		for i, spot := range s.spots {
			if b := &s.blocks[i]; spot.Area == area && b.of != nil {
				parts = append(parts, b.part)
			}
		}
	}
	return parts, nil
}
