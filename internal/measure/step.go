package measure

// Unit is the unit that a request reads bare numbers in and is answered in.
type Unit uint8

// The units of a ruler. The zero Unit is no unit: there is no silent default.
const (
	NoUnit Unit = iota
	Inch
	Millimetre
)

// String returns the unit as it is written on the wire: "in", "mm" or "".
func (u Unit) String() string {
	switch u {
	case Inch:
		return "in"
	case Millimetre:
		return "mm"
	default:
		return ""
	}
}

// Step is the distance between two ruler marks that readings are multiples
// of. The zero Step is no step; it is never valid in a calculation.
type Step struct {
	size Length
	unit Unit
}

// Size returns the distance between two marks.
func (s Step) Size() Length { return s.size }

// Unit returns the unit the step is written in.
func (s Step) Unit() Unit { return s.unit }

// IsZero reports whether the step is unset.
func (s Step) IsZero() bool { return s.size.nm == 0 }

// Nearest returns the multiple of the step nearest to l, halves away from
// zero.
func (s Step) Nearest(l Length) Length {
	half := s.size.nm / 2
	if l.nm < 0 {
		half = -half
	}
	return Length{(l.nm + half) / s.size.nm * s.size.nm}
}

// Down returns the greatest multiple of the step that is at most l.
func (s Step) Down(l Length) Length {
	n := l.nm / s.size.nm
	if l.nm%s.size.nm < 0 {
		n--
	}
	return Length{n * s.size.nm}
}

// Up returns the least multiple of the step that is at least l.
func (s Step) Up(l Length) Length { return s.Down(l.Neg()).Neg() }

// inchSteps and millimetreSteps are the marks of a ruler from coarse to fine.
var (
	inchSteps = []Step{
		{Length{nmPerInch}, Inch}, {Length{nmPerInch / 2}, Inch}, {Length{nmPerInch / 4}, Inch}, {Length{nmPerInch / 8}, Inch},
		{Length{nmPerInch / 16}, Inch}, {Length{nmPerInch / 32}, Inch}, {Length{nmPerInch / 64}, Inch},
	}
	millimetreSteps = []Step{
		{Length{10 * nmPerMillimetre}, Millimetre}, {Length{5 * nmPerMillimetre}, Millimetre},
		{Length{nmPerMillimetre}, Millimetre}, {Length{nmPerMillimetre / 2}, Millimetre},
	}
)

// Marks returns the ruler marks of a unit from the coarsest (1 in, 10 mm) to
// the finest (1/64 in, 0.5 mm). The slice is shared and must not be changed.
func Marks(u Unit) []Step {
	if u == Millimetre {
		return millimetreSteps
	}
	return inchSteps
}

// Finest returns the finest ruler mark of a unit; of millimetres for no unit.
func Finest(u Unit) Step {
	if u == NoUnit {
		u = Millimetre
	}
	marks := Marks(u)
	return marks[len(marks)-1]
}

// SearchSteps returns the steps that a solution is looked for at, coarse to
// fine: 1/2, 1/4, 1/8, 1/16, 1/32 in (1/64 in as well if finest is that), or
// 5, 1, 0.5 mm; none finer than finest. Appending to them makes a copy.
func SearchSteps(finest Step) []Step {
	marks := Marks(finest.unit)[1:]
	for i, s := range marks {
		if s.size.Less(finest.size) {
			return marks[:i:i]
		}
	}
	return marks[:len(marks):len(marks)]
}

// CoarsestMark returns the coarsest mark of the unit's ruler that l lies on,
// or false if it lies on none. Zero lies on every mark.
func CoarsestMark(l Length, u Unit) (Step, bool) {
	for _, s := range Marks(u) {
		if l.IsMultipleOf(s) {
			return s, true
		}
	}
	return Step{}, false
}
