// Package fold is the fold proof: it folds a flat pattern up in space and
// measures whether it closes and holds its contents.
//
// Panels are rigid plates of the stock's caliper, centred on mid-caliper,
// where the creases lie too. They form a tree from the root of their piece,
// each turned about its crease: a valley towards the viewer, so that the
// insides meet, a mountain away. Further pieces lie or stand where their places say. A crease of 180 degrees becomes a flat spine
// as wide as what it goes round and one caliper, square to both panels; half
// of that width is taken from the sheet on each side of the score.
//
// Coordinates are float64 millimetres. For blanks up to 1 m and a dozen
// creases in a row they are right to about 1e-12 m, so that lengths rounded
// to the nanometre are exact. Arcs are measured as chords that stay within a
// quarter of a micrometre of them.
//
// A piece with curved creases is bent: it is folded as facets, plane strips along
// the straight lines that it bends about, whose ends lie on the arcs. Chords of
// a crease are within 1/800 of its width of the arc, in its middle on it. Bent
// panels of one piece are a surface at mid-caliper: what is glued lies from zero
// to one caliper apart, and they are not asked whether they pass through one
// another, since their corners give way.
//
// The package does not stretch paper, round a crease, weigh glue or
// friction, or ask whether the last step of folding can be reached without
// bending a panel. It knows no kinds and none of their formulas.
package fold

import (
	"fmt"
	"math"

	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Proof is what the folded pattern measures.
type Proof struct {
	// Closes is true if every seam, glue area and joint meets within the
	// tolerance and no two plates pass through one another.
	Closes bool
	// Gap is the greatest distance of a seam, glue area or joint from where it
	// should be, to the nanometre.
	Gap       measure.Length
	Tolerance measure.Length // as asked for
	// Holds is true if the contents stand in the cavity without touching a
	// plate, with a clearance of at least zero along each bounded axis, and so
	// does every piece that goes into another one or crosses it.
	Holds      bool
	Clearances []Clearance // along the bounded axes, in the cavity's order, then of the nestings and the locks
	Plays      []Play      // of the joints, in the order of pieces and joints
	// Extent is the size of the box round the folded plates along the contents'
	// width, height and thickness.
	Extent [3]measure.Length
	Faults []Finding // everything that fails; empty for a good proof
}

// Clearance is the room between the plates along an axis minus the size of
// the contents, in total; it is negative if they are too big. For a pattern
// that goes into something it is the size of that minus the folded pattern's.
type Clearance struct {
	Between   string // the name of the nesting or the lock, "" for the contents
	Axis      pattern.Axis
	Clearance measure.Length
}

// Play is how far the two cuts of a joint reach past one another; a negative
// play is what they lack to seat.
type Play struct {
	Joint string
	Play  measure.Length
}

// Finding is one thing that fails in the folded pattern.
type Finding struct {
	Part    string         // what it is: panel, seam, glue, joint or contents
	Name    string         // which one
	Problem string         // what is wrong with it
	By      measure.Length // by how much, zero where that says nothing
}

// String returns the finding as one line.
func (f Finding) String() string {
	s := fmt.Sprintf("%s %q %s", f.Part, f.Name, f.Problem)
	if f.By.IsZero() {
		return s
	}
	return fmt.Sprintf("%s by %.6f mm", s, f.By.Millimetres())
}

// find records a finding; by is in millimetres.
func (m *model) find(part, name, problem string, by float64) {
	m.findings = append(m.findings, Finding{part, name, problem, length(by)})
}

// length rounds millimetres to the nanometre. Values beyond 1e9 m, which only
// a broken pattern can give, are cut off there.
func length(mm float64) measure.Length {
	const most = 1e12
	return measure.Nanometres(int64(math.Round(max(-most, min(most, mm)) * 1e6)))
}

// Prove folds the pattern up and measures it. The tolerance is what seams,
// glue areas and joints may be off, and 1 nm more for the arithmetic: zero for
// exact sizes, and the ruler's rounding for rounded ones. A pattern whose
// indices point nowhere gives a proof that neither closes nor holds.
func Prove(p *pattern.Pattern, tolerance measure.Length) Proof {
	proof := Proof{Tolerance: tolerance}
	if proof.Faults = unsound(p); len(proof.Faults) > 0 {
		return proof
	}
	m := build(p, 1)
	defer m.done()
	p = m.pattern
	m.standOn()
	m.shapes()
	var plays []Play
	proof.Gap, plays = m.gap(tolerance)
	m.crossing(max(0, tolerance.Millimetres()))
	proof.Plays = plays
	open := len(m.findings)
	m.clearances = make([]Clearance, 0, len(p.Cavity.Bounded)+len(p.Nests)+2*len(p.Locks))
	switch {
	case p.Cavity.Into:
		m.inside()
	case p.Cavity.Sides > 0:
		newWell(m).contents()
	case p.Cavity.Round:
		m.round()
	default:
		m.contents()
	}
	m.nests()
	m.locks()
	proof.Closes, proof.Holds = open == 0, len(m.findings) == open
	proof.Clearances = m.clearances
	proof.Extent = m.extents()
	proof.Faults = m.findings
	return proof
}

// Extent folds the pattern up and returns the size of the box round its plates
// along the contents' width, height and thickness, as a Proof has it, without
// proving anything. A pattern whose indices point nowhere has none.
func Extent(p *pattern.Pattern) (extent [3]measure.Length) {
	if len(unsound(p)) > 0 {
		return extent
	}
	m := build(p, 1)
	defer m.done()
	m.standOn()
	return m.extents()
}

// Gap folds the pattern up and returns the greatest distance of a seam, glue area or
// joint from where it should be, as a Proof has it, without proving anything. A
// pattern whose indices point nowhere has none.
func Gap(p *pattern.Pattern, tolerance measure.Length) measure.Length {
	if len(unsound(p)) > 0 {
		return measure.Length{}
	}
	m := build(p, 1)
	defer m.done()
	gap, _ := m.gap(tolerance)
	return gap
}

// gap measures seams, glue areas and joints, and finds those that are off by more
// than the tolerance and what comes to 1 nm more, for the arithmetic.
func (m *model) gap(tolerance measure.Length) (measure.Length, []Play) {
	off := tolerance.Millimetres() + 1.5e-6
	closures := m.closures(off)
	joints, plays := m.joints(off)
	return length(max(closures, joints)), plays
}

// extents is the size of the box round all plates.
func (m *model) extents() (sizes [3]measure.Length) {
	for axis := range sizes {
		s := m.extent(pattern.Axis(axis), anyPiece)
		sizes[axis] = length(s.high - s.low)
	}
	if m.pattern.Cavity.Round {
		_, radius := m.axis()
		sizes[pattern.Width] = length(2 * (radius + m.half))
		sizes[pattern.Thickness] = sizes[pattern.Width]
	}
	return sizes
}
