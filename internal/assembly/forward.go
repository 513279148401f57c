package assembly

import "slices"

// order tells the way apart backwards.
func (t *taking) order(moves []move, from []state) *Order {
	o := &Order{t: t, moves: moves, from: from}
	emptied := slices.IndexFunc(moves, func(m move) bool { return m.leaving != nil && t.isContents(m.leaving.units) })
	made := make([]bool, len(t.p.Pieces))
	for k := len(moves) - 1; k >= 0; k-- {
		s := t.step(&moves[k], &from[k], k < emptied)
		for _, piece := range s.Pieces {
			o.make(t, made, piece)
		}
		o.add(s, k)
	}
	for piece := range made {
		o.make(t, made, piece)
	}
	return o
}

func (o *Order) add(s Step, move int) { o.Steps, o.of = append(o.Steps, s), append(o.of, move) }

// make makes the blanks of a piece ready, once.
func (o *Order) make(t *taking, made []bool, piece int) {
	if made[piece] {
		return
	}
	made[piece] = true
	p := &t.p.Pieces[piece]
	o.add(Step{Do: Cut, Pieces: []int{piece}, Groups: 1}, -1)
	if p.Scored() {
		o.add(Step{Do: Score, Pieces: []int{piece}, Groups: 1}, -1)
	}
	const all = 1 - 1e-9
	if blank := p.Width.Millimetres() * p.Height.Millimetres(); len(p.Cuts) > 0 || p.Area() < all*blank {
		o.add(Step{Do: Slit, Pieces: []int{piece}, Groups: 1}, -1)
	}
}

// step tells a move backwards. full says that the contents are inside.
func (t *taking) step(m *move, from *state, full bool) Step {
	if m.leaving != nil {
		return t.joining(m.leaving)
	}
	s := Step{Do: Fold, Groups: len(m.openings)}
	if full {
		s.Do = Close
	}
	for k := range m.openings {
		o := &m.openings[k]
		s.Flex = max(s.Flex, o.flex)
		for _, h := range o.hinges {
			s.Turns = append(s.Turns, t.turned(o, h, 0, k, from))
		}
		if o.child >= 0 {
			s.Turns = append(s.Turns, t.turned(o, o.child, 1, k, from))
		}
		t.addLinked(&s, o.parted)
	}
	for _, turn := range s.Turns {
		s.Pieces = append(s.Pieces, turn.Piece)
	}
	t.settle(&s)
	return s
}

// turned tells how a crease of an opening closes; column is where the way of a
// pair has it.
func (t *taking) turned(o *opening, h, column, group int, from *state) Turn {
	hinge := &t.rig.Hinges[h]
	unit := &t.rig.Units[hinge.Unit]
	turn := Turn{Piece: unit.Piece, Copy: unit.Copy, Crease: hinge.Crease, To: from.turned[h], Group: group}
	crease := &t.p.Pieces[unit.Piece].Creases[hinge.Crease]
	if turn.Panel = crease.To; o.near {
		turn.Panel = crease.From
	}
	for k := len(o.path) - 1; k >= 0; k-- {
		turn.Path = append(turn.Path, o.path[k][column])
	}
	return turn
}

// joining tells how something that was moved away comes to its place.
func (t *taking) joining(l *leaving) Step {
	s := Step{Do: Glue, Groups: 1, Nests: l.nests, Locks: l.locks, Flex: l.flex}
	for _, u := range l.units {
		unit := &t.rig.Units[u]
		s.Travels = append(s.Travels, Travel{Piece: unit.Piece, Copy: unit.Copy, Way: l.way.Times(-1), By: l.by, Turned: t.pose.Frame(unit.Root).Z[2] < -0.5})
		if unit.Piece >= 0 {
			s.Pieces = append(s.Pieces, unit.Piece)
		}
	}
	switch {
	case len(l.nests) > 0:
		s.Do = Join
	case len(l.locks) > 0:
		s.Do, s.Groups = Lock, len(l.units)
	case len(s.Pieces) == 0:
		s.Do = PutIn
		s.Pieces = []int{t.p.Cavity.Piece}
	}
	t.addLinked(&s, l.parted)
	for _, k := range l.nests {
		s.Pieces = append(s.Pieces, t.p.Nests[k].Inner, t.p.Nests[k].Outer)
	}
	for _, k := range l.locks {
		s.Pieces = append(s.Pieces, t.p.Locks[k].A, t.p.Locks[k].B)
	}
	for _, at := range t.p.Places {
		if s.Do == Glue && len(s.Travels) > 0 && at.Piece == s.Travels[0].Piece && len(l.parted) == 0 {
			s.Pieces = append(s.Pieces, at.On)
		}
	}
	t.settle(&s)
	return s
}

// addLinked adds what is glued and locked by a step.
func (t *taking) addLinked(s *Step, links []int) {
	for _, k := range links {
		l := &t.links[k]
		s.Pieces = append(s.Pieces, t.rig.Units[t.rig.Plates[l.own].Unit].Piece, t.rig.Units[t.rig.Plates[l.other].Unit].Piece)
		if l.glue == nil {
			s.Joints = append(s.Joints, l.joint)
		} else {
			s.Glues = append(s.Glues, l.area)
		}
	}
}

// settle says what a step does, and names each thing once.
func (t *taking) settle(s *Step) {
	slices.Sort(s.Pieces)
	s.Pieces = slices.Compact(s.Pieces)
	joints := s.Joints
	s.Joints = nil
	for _, j := range joints {
		if !slices.Contains(s.Joints, j) {
			s.Joints = append(s.Joints, j)
		}
	}
	switch {
	case len(s.Turns) == 0:
	case len(s.Joints) > 0:
		s.Do = Lock
	case len(s.Glues) > 0:
		s.Do = Glue
	}
}

// Frame returns how everything stands along a step: 0 before it, 1 after it.
func (o *Order) Frame(step int, at float64) Frame {
	if o.whole != nil {
		return o.dressing(step, at)
	}
	t := *o.t
	t.pose = t.rig.Closed()
	move := o.of[step]
	if move < 0 { // as before the next move
		for next := step; next < len(o.of) && move < 0; next++ {
			move, at = o.of[next], 0
		}
	}
	if move >= 0 {
		t.goBack(o.from[move])
		t.partly(&o.moves[move], 1-at)
	}
	f := Frame{Model: t.pose.Model()}
	f.Present = make([]bool, len(f.Model.Plates))
	for i := range f.Present {
		f.Present[i] = o.made(step, f.Model.Plates[i].Piece)
	}
	if unit := len(t.rig.Units) - 1; t.rig.Units[unit].Piece < 0 && o.filled(step, at) {
		f.Contents = t.block()
	}
	return f
}

// partly makes a part of a move.
func (t *taking) partly(m *move, part float64) {
	before := t.keep()
	t.turn(m.openings, before, part)
	if m.leaving != nil {
		t.travel(m.leaving, before, part)
	}
}

// made reports whether a piece has been cut before a step is over.
func (o *Order) made(step, piece int) bool {
	return slices.ContainsFunc(o.Steps[:step+1], func(s Step) bool { return s.Do == Cut && s.Pieces[0] == piece })
}

// filled reports whether the contents are on their way or inside.
func (o *Order) filled(step int, at float64) bool {
	k := slices.IndexFunc(o.Steps, func(s Step) bool { return s.Do == PutIn })
	return k >= 0 && (k < step || k == step && at > 0)
}

// block is the contents as they stand.
func (t *taking) block() *Block {
	up := t.rig.Room.Ways[2].Times(t.rig.Room.Size[2])
	b := &Block{Up: up}
	for _, c := range t.pose.Corners() {
		b.Base = append(b.Base, c.Minus(up.Times(0.5)))
	}
	return b
}

// isContents reports whether units are the contents alone.
func (t *taking) isContents(units []int) bool {
	return len(units) == 1 && t.rig.Units[units[0]].Piece < 0
}
