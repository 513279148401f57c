package fold

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// lidOverTray is the hand-made tray with a lid of the same make over it. Its
// tabs are inside, so that across the width the lid is narrower inside than
// its base by three calipers, and the tray wider outside by one.
func lidOverTray(playW, playH float64) *pattern.Pattern {
	under := rightTray()
	t, over := under.t, under
	over.w, over.h = under.w+4*under.t+playW, under.h+2*under.t+playH
	p, lid := under.pattern(), over.pattern().Pieces[0]
	lid.Name = "lid"
	p.Pieces = append(p.Pieces, lid)
	p.Places = []pattern.Place{{Piece: 1, Lie: pattern.FaceDown,
		X: mm(under.w + (over.w-under.w)/2), Y: mm((under.h - over.h) / 2), Above: mm(under.deep + t/2)}}
	p.Nests = []pattern.Nesting{{Name: "lid over tray", Inner: 0, Outer: 1, Axes: []pattern.Axis{pattern.Width, pattern.Height}}}
	return p
}

func TestLidOverTray(t *testing.T) {
	for _, play := range []float64{0, 0.3, 1.5} {
		proof := Prove(lidOverTray(play, play+0.5), measure.Length{})
		require.Empty(t, proof.Faults)
		require.Len(t, proof.Clearances, 4)
		for i, want := range []float64{play, play + 0.5} {
			assert.Equal(t, "lid over tray", proof.Clearances[2+i].Between)
			assert.InDelta(t, want, proof.Clearances[2+i].Clearance.Millimetres(), 1e-6)
		}
	}
}

// A lid that is too narrow, or that stands where the tray is, is found.
func TestLidThatBinds(t *testing.T) {
	proof := Prove(lidOverTray(-0.2, 0.5), mm(1))
	assert.False(t, proof.Holds, "no rounding makes room for another piece")
	assert.Contains(t, findings(proof), `nesting "lid over tray" is too tight along the width by 0.200000 mm`)
	p := lidOverTray(0.3, 0.3)
	p.Places[0].X = p.Places[0].X.Add(mm(0.2))
	assert.False(t, Prove(p, mm(1)).Closes, "a lid out of its place passes through the tray")
	p = lidOverTray(0.3, 0.3)
	p.Nests[0].Axes = []pattern.Axis{pattern.Thickness}
	assert.Contains(t, findings(Prove(p, measure.Length{})), `nesting "lid over tray" does not hold on both sides along the thickness`)
	p.Nests[0].Outer = 2
	assert.Contains(t, findings(Prove(p, measure.Length{})), `nesting "lid over tray" points at piece 2 of 2`)
}

// upright is a strip of 100 x 20 mm with slots of the given width and depth at
// 30 and 70 mm, from the top or from the bottom.
func upright(width, depth float64, fromTop bool) pattern.Piece {
	half := width / 2
	outline := poly(pt(0, 0), pt(100, 0), pt(100, 20), pt(70+half, 20), pt(70+half, 20-depth), pt(70-half, 20-depth), pt(70-half, 20),
		pt(30+half, 20), pt(30+half, 20-depth), pt(30-half, 20-depth), pt(30-half, 20), pt(0, 20))
	if !fromTop {
		outline = poly(pt(0, 0), pt(30-half, 0), pt(30-half, depth), pt(30+half, depth), pt(30+half, 0),
			pt(70-half, 0), pt(70-half, depth), pt(70+half, depth), pt(70+half, 0), pt(100, 0), pt(100, 20), pt(0, 20))
	}
	return pattern.Piece{Name: "strip", Quantity: 2, Width: mm(100), Height: mm(20), Panels: []pattern.Panel{{Name: "strip", Outline: outline}}}
}

// Two strips along the width and two along the height cross in half-lap
// slots, on a base that they stand on.
func TestStripsThatCross(t *testing.T) {
	caliper := 0.5
	crossing := func(width, depth float64) *pattern.Pattern {
		base := pattern.Piece{Name: "base", Width: mm(100), Height: mm(100), Panels: []pattern.Panel{{Name: "base", Outline: rect(0, 0, 100, 100)}}}
		p := &pattern.Pattern{Caliper: mm(caliper), Pieces: []pattern.Piece{base, upright(width, depth, true), upright(width, depth, false)}, Cavity: cavity(0, 1, 1, 0),
			Locks: []pattern.Lock{{Name: "strip in slot", A: 1, B: 2, Slotted: true}}}
		for _, at := range []float64{30, 70} {
			p.Places = append(p.Places, pattern.Place{Piece: 1, Y: mm(at), Above: mm(caliper / 2), Lie: pattern.AlongWidth},
				pattern.Place{Piece: 2, X: mm(at), Above: mm(caliper / 2), Lie: pattern.AlongHeight})
		}
		return p
	}
	right := crossing(0.6, 10.5)
	proof := Prove(right, measure.Length{})
	assert.Empty(t, proof.Faults)
	assert.Equal(t, []Clearance{{"strip in slot", pattern.Thickness, mm(1)}, {"strip in slot", pattern.Width, mm(0.1)}}, proof.Clearances,
		"10.5 and 10.5 deep in 20 mm, 0.6 mm wide for 0.5 mm")
	assert.Len(t, Fold(right, 1).Plates, 5)
	assert.Equal(t, 1, Fold(right, 1).Plates[4].Copy)
	through := func(p *pattern.Pattern) (n int) {
		for _, f := range Prove(p, mm(2)).Faults {
			if f.Problem == "passes through strip" {
				n++
			}
		}
		return n
	}
	assert.Equal(t, 4, through(crossing(0.4, 10.5)), "slots narrower than the stock, at four crossings")
	assert.Contains(t, findings(Prove(crossing(0.4, 10.5), mm(2))), `lock "strip in slot" is too tight along the width by 0.100000 mm`)
	assert.Equal(t, 4, through(crossing(0.6, 9.9)), "depths that do not add up to the height")
	assert.Contains(t, findings(Prove(crossing(0.6, 9.9), mm(2))), `lock "strip in slot" is too tight along the thickness by 0.200000 mm`)
	lonely := crossing(0.6, 10.5)
	lonely.Places = lonely.Places[:1]
	assert.False(t, Prove(lonely, mm(2)).Holds, "there is nothing that it crosses")
	right.Places[3].X = mm(70.2)
	assert.Equal(t, 2, through(right), "one strip out of line")
}

// Slits have no width: the other strip presses them open as far as it is thick,
// and a strip beside a slit still passes through paper.
func TestStripsThatCrossInSlits(t *testing.T) {
	slitted := func(name, from string, y, inner float64) pattern.Piece {
		p := pattern.Piece{Name: name, Width: mm(100), Height: mm(20), Panels: []pattern.Panel{{Name: name, Outline: rect(0, 0, 100, 20)}}}
		for _, at := range []float64{70, 30} { // in no order
			p.Cuts = append(p.Cuts, pattern.Cut{Kind: pattern.Slit, From: from, At: mm(at), Depth: mm(10.5), Path: poly(pt(at, y), pt(at, inner))})
		}
		return p
	}
	p := &pattern.Pattern{Caliper: mm(0.5), Pieces: []pattern.Piece{slitted("long", "top", 20, 9.5), slitted("cross", "bottom", 0, 10.5)},
		Cavity: cavity(0, 100, 100, 20, pattern.Width, pattern.Height, pattern.Thickness), Locks: []pattern.Lock{{Name: "strip in slot", A: 0, B: 1}},
		Places: []pattern.Place{{Y: mm(30), Lie: pattern.AlongWidth}, {Piece: 1, On: 1, X: mm(30), Lie: pattern.AlongHeight}, {Piece: 1, On: 1, X: mm(70), Lie: pattern.AlongHeight}}}
	p.Cavity.Into = true
	proof := Prove(p, measure.Length{})
	assert.Empty(t, proof.Faults)
	assert.Equal(t, Clearance{"strip in slot", pattern.Thickness, mm(1)}, proof.Clearances[3])
	p.Places[1].X = mm(30.1)
	assert.Contains(t, findings(Prove(p, mm(1))), `panel "long" passes through cross`)
	p.Places[1].X, p.Locks = mm(30), nil
	assert.Len(t, findings(Prove(p, mm(1))), 2, "without the lock nothing opens the slits")
}

// A strip that is placed on itself stands on the floor: it is as high as it is
// cut, along the third axis.
func TestPieceOnTheFloor(t *testing.T) {
	p := &pattern.Pattern{Caliper: mm(0.5), Pieces: []pattern.Piece{upright(0.5, 10, true)}, Cavity: cavity(0, 100, 6, 20, pattern.Width, pattern.Thickness),
		Places: []pattern.Place{{Y: mm(7), Lie: pattern.AlongWidth}, {Y: mm(12), Lie: pattern.AlongWidth}}}
	p.Cavity.Into = true
	proof := Prove(p, measure.Length{})
	assert.Empty(t, proof.Faults)
	assert.Equal(t, [3]measure.Length{mm(100), mm(5.5), mm(20)}, proof.Extent)
}
