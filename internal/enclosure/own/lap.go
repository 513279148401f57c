package own

import "creasefit/internal/measure"

// leastLap is the narrowest lap that the kinds of the catalogue take.
var leastLap = measure.Millimetres(3)

// laps refuses glue that has no room to hold: what two glued panels share, at the
// ideal sizes, must be as wide as a lap is at the least. A design with limits says by
// itself how narrow that may be.
func (p *planner) laps() {
	if len(p.Limits) > 0 {
		return
	}
	s := sight{values: p.values}
	for i := range p.stated.sewn {
		j := &p.stated.sewn[i]
		one, other := s.where(&j.blocks[0].at), s.where(&j.blocks[1].at)
		for axis := range one {
			if j.Type != Glue || axis == j.blocks[0].flat {
				continue
			}
			shared := shared(one[axis], other[axis])
			if least := leastLap; shared < float64(least.Nanometres())-touching {
				f := impossible(j.place, j.A.Panel+" has "+measure.Nanometres(int64(max(0, shared))).Plain(measure.Millimetre)+" of "+j.B.Panel+" to be glued to",
					"let "+j.A.Panel+" reach farther, or glue it to what it comes to lie on")
				f.Expected = "at least " + least.Plain(measure.Millimetre)
				p.faults = append(p.faults, f)
				break
			}
		}
	}
}
