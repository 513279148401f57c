package fold

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// findings returns the lines of what a proof finds.
func findings(p Proof) (lines []string) {
	for _, f := range p.Faults {
		lines = append(lines, f.String())
	}
	return lines
}

func TestFindings(t *testing.T) {
	for name, c := range map[string]struct {
		p    *pattern.Pattern
		want string
	}{
		"inner panel too long": {
			func() *pattern.Pattern { l := rightLetter(); l.inner += l.t; return l.pattern() }(),
			`panel "inner" passes through fold at outer score`},
		"panel no wider than half of its fold": {
			func() *pattern.Pattern { l := rightLetter(); l.inner = l.t / 2; return l.pattern() }(),
			`panel "inner" is taken up by the fold at middle score`},
		"slits too short": {
			func() *pattern.Pattern { b := rightBand(); b.slit1, b.slit2 = 22, 22; return b.pattern() }(),
			`joint "tabs" has cuts that do not reach by 0.450000 mm`},
		"slits from the same edge": {
			changed(rightBand().pattern(), func(p *pattern.Pattern) {
				cut := &p.Pieces[0].Cuts[1]
				cut.Path = poly(pt(cut.At.Millimetres(), 44.45), pt(cut.At.Millimetres(), 44.45-23.5))
			}), `joint "tabs" has cuts that do not reach by 20.950000 mm`},
		"slit through": {
			func() *pattern.Pattern { b := rightBand(); b.slit1 = b.height; return b.pattern() }(),
			`joint "tabs" has a cut right through a panel`},
		"tabs apart": {
			func() *pattern.Pattern { b := rightBand(); b.front1 -= 0.25; return b.pattern() }(),
			`joint "tabs" has its cuts on two lines, apart by 0.250000 mm`},
		"locked tab through a panel that it does not lock into": {
			changed(rightBand().pattern(), func(p *pattern.Pattern) { p.Pieces[0].Creases[0].Fold = pattern.Valley }),
			`panel "left tab" passes through back`},
		"slot too narrow": {
			changed(rightBand().pattern(), func(p *pattern.Pattern) {
				cut := &p.Pieces[0].Cuts[0]
				cut.Kind, cut.Width, cut.Path = pattern.Slot, mm(0.2), nil
			}), `joint "tabs" left slit is narrower than the stock by 0.104800 mm`},
		"lap over the edge": {
			changed(rightWrap().pattern(), func(p *pattern.Pattern) {
				p.Pieces[0].Glues[0].Area = rect(206, 1, 208, 43)
			}), `glue "lap" reaches out of lap by 3.000000 mm`},
		"lap one caliper off": {
			func() *pattern.Pattern { w := rightWrap(); w.side2 -= w.t; return w.pattern() }(),
			`glue "lap" does not lie on front by 0.300000 mm`},
		"lap on the wrong face": {
			changed(rightWrap().pattern(), func(p *pattern.Pattern) { p.Pieces[0].Glues[0].Face = pattern.Inside }),
			`glue "lap" has its two faces looking the same way`},
		"window under the glue": {
			changed(rightWrap().pattern(), func(p *pattern.Pattern) {
				p.Pieces[0].Panels[0].Hole = poly(pt(1, 10), pt(1, 20), pt(5, 20), pt(5, 10))
			}), `glue "lap" reaches out of front by 4.000000 mm`},
		"seam open": {
			changed(rightWrap().pattern(), func(p *pattern.Pattern) { p.Pieces[0].Seams[0].Apart = mm(0.1) }),
			`seam "front edge" does not meet by 0.200000 mm`},
		"contents too big": {
			changed(rightWrap().pattern(), func(p *pattern.Pattern) { p.Cavity.Width = mm(81.25) }),
			`contents "width" is too big for the cavity by 0.250000 mm`},
		"nothing holds the contents": {
			changed(rightWrap().pattern(), func(p *pattern.Pattern) { p.Cavity.Bounded = []pattern.Axis{pattern.Height} }),
			`contents "height" is not held on both sides`},
		"contents higher than a flap that no axis names": {
			changed(rightWrap().pattern(), func(p *pattern.Pattern) {
				p.Cavity.Bounded, p.Cavity.Thickness = nil, mm(20.75)
			}), ""},
		// its inner top edge is at 62.2 + 15 cos 140 - 0.2 sin 140 = 50.580776, the tab's inner face opposite at 0.6
		"wall leaning over the contents": {
			changed(rightTray().pattern(), func(p *pattern.Pattern) {
				for i := range p.Pieces[0].Creases {
					if p.Pieces[0].Creases[i].To == 4 {
						p.Pieces[0].Creases[i].Angle = 140
					}
				}
			}), `contents "width" is too big for the cavity by 10.019224 mm`},
	} {
		t.Run(name, func(t *testing.T) {
			proof := Prove(c.p, measure.Length{})
			found := findings(proof)
			if c.want == "" {
				assert.Empty(t, found)
				return
			}
			assert.False(t, proof.Closes && proof.Holds)
			assert.Contains(t, join(found), c.want)
		})
	}
}

// Plates of paper whose creases end at one corner give way to each other while they
// are moved, by half of a caliper; those at other corners do not, nor does board.
func TestCornersGiveWay(t *testing.T) {
	for caliper, gives := range map[float64]bool{0.4: true, 1.5: false} {
		y := rightTray()
		y.t = caliper
		m := build(y.pattern(), 1)
		for i := range m.plates {
			tab := &m.plates[i]
			if tab.panel < 5 {
				continue
			}
			for wall := 3; wall <= 4; wall++ {
				a, b := m.bends(i, wall)
				if met := m.meetInCorner(tab, &m.plates[wall]); met && gives {
					assert.Equal(t, []float64{m.half, m.half}, []float64{a, b}, m.name(tab))
				} else {
					assert.Zero(t, a+b, m.name(tab))
				}
				beside := (tab.flat[0].x < y.w/2) == (wall == 3)
				assert.Equal(t, beside, m.meetInCorner(tab, &m.plates[wall]), "%s and %s", m.name(tab), m.name(&m.plates[wall]))
			}
		}
	}
	p := pattern.Pattern{Caliper: mm(0.4), Pieces: []pattern.Piece{strip(0, 40, []string{"back", "side", "front", "lap"}, []float64{40, 0.5, 40, 15}, square, square, square)}}
	m := build(&p, 1)
	a, b := m.bends(3, 0)
	assert.Zero(t, a+b, "the root hangs by no crease")
	narrow := strip(0, 40, []string{"back", "side", "front"}, []float64{40, 0.3, 40}, square, square)
	p.Pieces = []pattern.Piece{narrow, narrow}
	p.Places = []pattern.Place{{Piece: 1, X: mm(200)}}
	m = build(&p, 1)
	assert.True(t, m.meetInCorner(m.panel(0, 1), m.panel(0, 2)))
	assert.False(t, m.meetInCorner(m.panel(0, 1), m.panel(1, 2)), "creases of two blanks do not meet")
}

func join(lines []string) (all string) {
	for _, l := range lines {
		all += l + "\n"
	}
	return all
}

// changed returns the pattern after a change.
func changed(p *pattern.Pattern, change func(*pattern.Pattern)) *pattern.Pattern {
	change(p)
	return p
}

// TestWindow lets a standing panel of a second piece pass through the window
// of the first, and through the paper beside it.
func TestWindow(t *testing.T) {
	for at, passes := range map[float64]bool{45: false, 20: true, 70: true, 105: false} {
		sheet := pattern.Piece{Name: "sheet", Width: mm(100), Height: mm(100), Panels: []pattern.Panel{
			{Name: "sheet", Outline: rect(0, 0, 100, 100), Hole: poly(pt(40, 40), pt(40, 60), pt(60, 60), pt(60, 40))}}}
		stand := strip(0, 10, []string{"foot", "mast"}, []float64{8, 60}, square)
		p := &pattern.Pattern{Caliper: mm(0.5), Pieces: []pattern.Piece{sheet, stand}, Cavity: cavity(0, 1, 1, 0),
			Places: []pattern.Place{{Piece: 1, On: 0, X: mm(at - 8), Y: mm(45), Above: mm(-30)}}}
		proof := Prove(p, measure.Length{})
		if passes {
			assert.Equal(t, []string{`panel "sheet" passes through mast`}, findings(proof), at)
		} else {
			assert.Empty(t, proof.Faults, at)
		}
	}
}

// TestTolerance accepts what is off by less than the ruler's rounding.
func TestTolerance(t *testing.T) {
	w := rightWrap()
	w.front += 0.2
	w.side2 -= 0.1
	assert.NotEmpty(t, Prove(w.pattern(), mm(0.14)).Faults)
	proof := Prove(w.pattern(), mm(0.25))
	assert.Empty(t, proof.Faults)
	assert.Equal(t, mm(0.147214), proof.Gap) // sqrt(0.2^2 + 0.4^2) - 0.3 at the edge
}

// TestPlay adds the depths of the band's two slits up.
func TestPlay(t *testing.T) {
	proof := Prove(rightBand().pattern(), measure.Length{})
	assert.Equal(t, []Play{{"tabs", mm(23 + 23.5 - 44.45)}}, proof.Plays)
}

// TestUnsound gives patterns whose indices point nowhere.
func TestUnsound(t *testing.T) {
	for name, change := range map[string]func(*pattern.Pattern){
		"no piece":        func(p *pattern.Pattern) { p.Pieces = nil },
		"no panel":        func(p *pattern.Pattern) { p.Pieces[0].Panels = nil },
		"root":            func(p *pattern.Pattern) { p.Pieces[0].Root = 9 },
		"crease from":     func(p *pattern.Pattern) { p.Pieces[0].Creases[0].From = -1 },
		"crease to":       func(p *pattern.Pattern) { p.Pieces[0].Creases[0].To = 5 },
		"turned twice":    func(p *pattern.Pattern) { p.Pieces[0].Creases[0].To = 4 },
		"turned root":     func(p *pattern.Pattern) { p.Pieces[0].Creases[0].To = 2 },
		"loose panel":     func(p *pattern.Pattern) { p.Pieces[0].Creases = p.Pieces[0].Creases[1:] },
		"no length":       func(p *pattern.Pattern) { p.Pieces[0].Creases[0].A = p.Pieces[0].Creases[0].B },
		"angle":           func(p *pattern.Pattern) { p.Pieces[0].Creases[0].Angle = 181 },
		"glue":            func(p *pattern.Pattern) { p.Pieces[0].Glues = []pattern.Glue{{Panel: 7}} },
		"seam":            func(p *pattern.Pattern) { p.Pieces[0].Seams = []pattern.Seam{{PanelB: 7}} },
		"joint":           func(p *pattern.Pattern) { p.Pieces[0].Joints[0].B = 2 },
		"cut of no depth": func(p *pattern.Pattern) { p.Pieces[0].Cuts[0] = pattern.Cut{From: "top"} },
		"place":           func(p *pattern.Pattern) { p.Places = []pattern.Place{{Piece: 0, On: 1}} },
		"cavity":          func(p *pattern.Pattern) { p.Cavity.Panel = 5 },
		"axis":            func(p *pattern.Pattern) { p.Cavity.Bounded = []pattern.Axis{pattern.Diagonal} },
		"clockwise": func(p *pattern.Pattern) {
			p.Pieces[0].Panels[0].Outline = poly(pt(0, 0), pt(0, 44.45), pt(12.7, 44.45), pt(12.7, 0))
		},
		"empty outline": func(p *pattern.Pattern) { p.Pieces[0].Panels[0].Outline = nil },
	} {
		t.Run(name, func(t *testing.T) {
			p := changed(rightBand().pattern(), change)
			proof := Prove(p, measure.Length{})
			assert.NotEmpty(t, proof.Faults)
			assert.False(t, proof.Closes)
			Fold(p, 0.5)
		})
	}
}
