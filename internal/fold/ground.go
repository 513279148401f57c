package fold

import "creasefit/internal/pattern"

// ground returns where the first copy of a piece lies before it is folded.
func (m *model) ground(index int) Frame {
	for i := range m.pattern.Places {
		if place := &m.pattern.Places[i]; place.Piece == index {
			return m.lay(place)
		}
	}
	return still()
}

// lay returns the motion that a place says.
func (m *model) lay(place *pattern.Place) Frame {
	shift := lying(place.Lie)
	shift.Origin = Vec{place.X.Millimetres(), place.Y.Millimetres(), place.Above.Millimetres()}
	if place.On == place.Piece {
		return shift
	}
	on := &m.pattern.Pieces[place.On]
	return m.panel(place.On, on.Root).move.after(&shift)
}

// lying turns a blank that lies inside up into another way to lie.
func lying(l pattern.Lie) Frame {
	switch l {
	case pattern.FaceDown:
		return Frame{X: Vec{-1, 0, 0}, Y: Vec{0, 1, 0}, Z: Vec{0, 0, -1}}
	case pattern.AlongWidth:
		return Frame{X: Vec{1, 0, 0}, Y: Vec{0, 0, 1}, Z: Vec{0, -1, 0}}
	case pattern.AlongHeight:
		return Frame{X: Vec{0, 1, 0}, Y: Vec{0, 0, 1}, Z: Vec{1, 0, 0}}
	default:
		return still()
	}
}

// addCopies adds a copy of a folded piece for each of its places after the
// first. Copies are the same in all but where they stand.
func (m *model) addCopies() {
	copies := make([]int, len(m.pattern.Pieces))
	end := len(m.plates)
	for i := range m.pattern.Places {
		place := &m.pattern.Places[i]
		if copies[place.Piece]++; copies[place.Piece] > 1 {
			m.addCopy(place, copies[place.Piece]-1, end)
		}
	}
}

// addCopy moves the plates of a piece's first copy; end is where the plates of
// first copies end.
func (m *model) addCopy(place *pattern.Place, number, end int) {
	first := m.first[place.Piece]
	back := m.panel(place.Piece, m.pattern.Pieces[place.Piece].Root).move.back()
	to := m.lay(place)
	move, shift := to.after(&back), len(m.plates)-first
	for k := first; k < end && m.plates[k].piece == place.Piece; k++ {
		pl := m.plates[k]
		pl.copy, pl.move = number, move.after(&pl.move)
		if pl.parent >= 0 {
			pl.parent += shift
		}
		m.plates = append(m.plates, pl)
	}
}
